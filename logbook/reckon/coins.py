"""Sums of money to the last coin: how they are rounded and how a sum is shared so that nothing is lost.

Knows neither fish nor trips. Every sum that leaves here has two decimals, as most currencies have (ISO 4217, from memory).
"""

from collections.abc import Iterable, Sequence
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction

from logbook.model.quantity import Money

COINS = 100
"""The smallest coins in one of the currency's units."""

_HALF = Fraction(1, 2)
_PRICE = Context(prec=15, rounding=ROUND_HALF_UP)
"""As many figures as the longest number that is read from a log, so that a typed price per kilogram stays as typed."""


def to_coin(exact: Fraction | Decimal) -> Money:
    """Return a sum rounded to the nearest coin; halves go away from nought, so that a loss is rounded as a gain is.

    The only place where money is rounded.

    Source:
        Regulation (EC) No 1103/97, Article 5: to the nearest cent, a result exactly half-way is rounded up.
    """
    coins = Fraction(exact) * COINS
    size = int(abs(coins) + _HALF)
    return _money(size if coins >= 0 else -size)


def _money(coins: int) -> Money:
    """Return a number of the smallest coins as a sum, exactly."""
    return Money(Decimal(f"{coins}e-2"))


def _coins(money: Money) -> int:
    """Return a sum that is already rounded to the coin in the smallest coins."""
    return int(Fraction(money) * COINS)


def add_money(sums: Iterable[Money]) -> Money:
    """Return the sum of some sums of money to the coin; 0.00 of none."""
    return to_coin(sum(map(Fraction, sums), Fraction(0)))


def per(money: Decimal, amount: Decimal) -> Decimal:
    """Return money for one of an amount that is not 0, to 15 figures: a price, not rounded to the coin."""
    return _PRICE.divide(money, amount)


def share_out(whole: Money, parts: Sequence[Decimal]) -> tuple[Money, ...]:
    """Return a sum shared in proportion, so that the shares add up to it to the last coin.

    Everyone gets the whole coins of the exact share; the coins that are left go one each to the largest remainders, of equal
    ones to the first. A loss is shared as a gain of the same size.

    Args:
        whole: What is shared, to the coin.
        parts: Numbers of shares, none below 0, not all of them 0.

    Source:
        The largest remainder method (Hamilton 1792).
    """
    coins, total = _coins(whole), sum(map(Fraction, parts), Fraction(0))
    exact = [abs(coins) * Fraction(part) / total for part in parts]
    shares = [int(share) for share in exact]
    by_remainder = sorted(range(len(exact)), key=lambda n: shares[n] - exact[n])
    for n in by_remainder[: abs(coins) - sum(shares)]:
        shares[n] += 1
    return tuple(_money(share if coins >= 0 else -share) for share in shares)
