"""What a catch brought and how it was shared: examples worked by hand, and sums to the last coin whatever is typed."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.money import MoneyFigures
from logbook.model.problem import Severity
from logbook.model.quantity import Money
from logbook.model.trip import Settlement
from logbook.reckon.coins import add_money, per, share_out, to_coin
from logbook.reckon.money import reckon_money
from tests.read.logs import FLEET, fleet, read, trip
from tests.reckon.build import HEAD

DOCKED = "landed:\n  docked: 2026-03-08 05:30\n"


def sold(prices: str, out_turn: str = "", more: str = "") -> MoneyFigures:
    """Return the money of a landing with an out-turn and prices, after four days at sea."""
    weighed = f"  out-turn: {out_turn}\n" if out_turn else ""
    log, problems = read(f"{HEAD}{DOCKED}{weighed}  prices: {prices}\n{more}")
    assert {problem.code for problem in problems if problem.severity is Severity.ERROR} <= {"weight-unreadable"}
    assert log is not None
    made = reckon_money(log, 4.0)
    assert made is not None
    return made


def lines(made: MoneyFigures) -> list[tuple[str, str | None, str, str]]:
    """Return the lines as species, grade, weight and value."""
    return [(line.species, line.grade, f"{line.weight_kg:f}", str(line.value)) for line in made.lines]


def shares(made: MoneyFigures) -> dict[str, str]:
    """Return the settlement as names and texts."""
    return {name: str(money) for name, money in made.settlement.items()}


def test_a_landing_is_sold_by_grade_and_lot() -> None:
    made = sold(
        "{cod: {large: [2100 kg 3.90/kg, 2020 kg 3.75/kg], medium: 3.20/kg}, haddock: 2.15/kg}",
        "{cod: {large: 4120 kg, medium: 1890 kg}, haddock: 2305.5 kg}",
    )

    # By hand: 2100 × 3.90 = 8190; 2020 × 3.75 = 7575; 1890 × 3.20 = 6048; 2305.5 × 2.15 = 4956.825.
    assert lines(made) == [
        ("cod", "large", "2100", "8190.00"),
        ("cod", "large", "2020", "7575.00"),
        ("cod", "medium", "1890", "6048.00"),
        ("haddock", None, "2305.5", "4956.83"),
    ]
    assert made.gross == Decimal("26769.83")
    assert made.gross_per_day_at_sea == Decimal("6692.46")  # 6692.4575
    assert made.mean_price_per_kg == pytest.approx(Decimal("26769.83") / Decimal("8315.5"), rel=Decimal("1e-14"))
    assert (made.unpriced, made.unweighed) == ((), ())
    assert (made.net, dict(made.expenses), dict(made.settlement)) == (None, {}, {})


def test_without_a_price_there_is_no_money() -> None:
    text = "landed:\n  out-turn: {cod: 100 kg}\nsettlement: {expenses: {ice: 900}, shares: {deck: 1}}\n"

    assert reckon_money(trip(HEAD + text), 4.0) is None
    assert reckon_money(trip(HEAD), None) is None


def test_a_price_for_a_measure_that_weighs_nothing_is_none() -> None:
    text = HEAD + DOCKED + "  out-turn: {cod: 10 kg, ling: 3 kg}\n  prices: "
    of = fleet(FLEET.replace("box: 45 kg", "box: 45 kg\n  tub: 0 kg"))
    one, none = (reckon_money(trip(text + prices, of), 4.0) for prices in ("{cod: 3/tub, ling: 2/kg}", "{cod: 3/tub}"))

    assert one is not None
    assert (one.gross, one.unpriced) == (6, ("cod",))
    assert none is None


def test_days_at_sea_not_known_give_no_gross_a_day() -> None:
    log = trip(HEAD + "landed:\n  out-turn: {cod: 100 kg}\n  prices: {cod: 3/kg}\n")

    assert [made and made.gross_per_day_at_sea for made in (reckon_money(log, None), reckon_money(log, 0.0))] == [
        None,
        None,
    ]


def test_a_price_without_a_grade_holds_for_the_grades_with_none_of_their_own() -> None:
    made = sold("{cod: 2/kg, COD: {large: 3/kg}}", "{cod: {large: 100 kg, medium: 50 kg, Small: 25 kg}}")

    assert lines(made) == [("cod", None, "75", "150.00"), ("cod", "large", "100", "300.00")]
    assert made.unpriced == ()


def test_grades_match_whatever_their_case_and_species_by_any_name() -> None:
    made = sold("{COD: {LARGE: 3/kg}, codling: 1/kg}", "{Cod: {large: 10 kg, small: 20 kg}}")

    assert lines(made) == [("cod", "large", "10", "30.00"), ("cod", "small", "20", "20.00")]


def test_a_graded_price_can_not_be_put_on_fish_weighed_without_grades() -> None:
    made = sold("{cod: {large: 3/kg, small: 2/kg}, ling: 1/kg}", "{cod: 1000 kg, ling: 10 kg}")

    assert lines(made) == [("ling", None, "10", "10.00")]
    assert made.unpriced == ("cod",)
    assert made.unweighed == ("large cod", "small cod")


def test_graded_lots_come_out_of_fish_weighed_without_grades() -> None:
    made = sold("{cod: {large: [400 kg 3/kg], small: [350 kg 2/kg]}, COD: 1.50/kg}", "{cod: 1000 kg}")

    assert [line[2] for line in lines(made)] == ["400", "350", "250"]
    assert made.gross == 400 * 3 + 350 * 2 + 250 * Decimal("1.50")
    assert (made.unpriced, made.unweighed) == ((), ())


def test_a_price_without_a_weight_holds_for_what_lots_leave() -> None:
    made = sold("{cod: {large: [300 kg 4/kg]}, COD: 3/kg}", "{cod: {large: 500 kg, small: 100 kg}}")

    assert lines(made) == [("cod", "large", "300", "1200.00"), ("cod", None, "300", "900.00")]


def test_what_lots_leave_without_a_price_is_named() -> None:
    graded = sold(
        "{cod: {large: [300 kg 4/kg], small: [100 kg 2/kg]}}", "{cod: {large: 500 kg, small: 100 kg}, ling: 9 kg}"
    )
    plain = sold("{cod: [300 kg 4/kg, 250 kg 3.50/kg]}", "{cod: {large: 500 kg, small: 100 kg}}")

    assert (graded.unpriced, graded.gross) == (("large cod", "ling"), 1400)
    assert (plain.unpriced, plain.gross) == (("cod",), 2075)


def test_lots_over_the_out_turn_stand_as_typed() -> None:
    made = sold("{cod: {large: [300 kg 4/kg, 250 kg 3/kg]}, COD: 2/kg}", "{cod: {large: 500 kg, small: 10 kg}}")

    assert lines(made) == [
        ("cod", "large", "300", "1200.00"),
        ("cod", "large", "250", "750.00"),
        ("cod", None, "10", "20.00"),
    ]


def test_fish_in_a_lot_is_not_sold_again_by_the_price_of_a_grade() -> None:
    made = sold("{cod: {large: 3/kg}, COD: [700 kg 2/kg]}", "{cod: {large: 1000 kg, small: 100 kg}}")

    assert lines(made) == [("cod", "large", "400", "1200.00"), ("cod", None, "700", "1400.00")]
    assert made.unpriced == ()


def test_without_an_out_turn_lots_alone_count() -> None:
    hailed = "tows:\n  - {shot: 18:00, hauled: 20:00, catch: {cod: 900 kg, ling: 50 kg}}\n"
    made = sold("{cod: [300 kg 4/kg], ling: 2/kg, haddock: {large: 2/kg}}", more=hailed)

    assert lines(made) == [("cod", None, "300", "1200.00")]
    assert made.unweighed == ("ling", "large haddock")
    assert made.unpriced == ()


def test_prices_with_no_weight_at_all_make_no_sum() -> None:
    shared = "settlement: {expenses: {ice: 900}, boat's share: 50 %, shares: {deck: 1}}\n"
    made = sold("{ling: 2/kg}", more=shared)

    assert (made.gross, made.gross_per_day_at_sea, made.mean_price_per_kg, made.net) == (None, None, None, None)
    assert (dict(made.expenses), dict(made.settlement)) == ({"ice": 900}, {})
    assert made.unweighed == ("ling",)


def test_a_weight_that_could_not_be_read_is_named_and_not_sold() -> None:
    weighed = "{cod: {large: 10 buckets, small: 10 kg}, ling: 5 buckets, saithe: 6 buckets}"
    made = sold("{cod: 2/kg, ling: [5 kg 1/kg]}", weighed)

    assert lines(made) == [("cod", None, "10", "20.00"), ("ling", None, "5", "5.00")]
    assert (made.unweighed, made.unpriced) == (("large cod",), ("saithe",))


def test_nothing_weighed_is_neither_sold_nor_missed() -> None:
    made = sold("{cod: 2/kg}", "{cod: 0 kg, ling: 0 kg}")

    assert (made.lines, made.gross, made.unpriced, made.unweighed) == ((), None, (), ())


def test_a_lot_of_nothing_has_no_mean_price() -> None:
    made = sold("{cod: [0 kg 2/kg]}")

    assert (made.gross, made.mean_price_per_kg) == (0, None)


def test_a_price_by_the_box_is_reckoned_before_it_is_rounded() -> None:
    made = sold("{cod: 0.01/box, ling: 140/box}", "{cod: 22.5 kg, ling: 50 kg}")

    # Half a box of 45 kg at one coin is half a coin. 50 kg at 140 a box is 155.5555…
    assert [line[3] for line in lines(made)] == ["0.01", "155.56"]
    assert [str(line.price_per_kg) for line in made.lines] == ["0.000222222222222222", "3.11111111111111"]


TWO = (
    "  - {docked: 2026-03-07 06:00, port: Port Kerrin, out-turn: {cod: 100 kg, ling: 10 kg}, prices: {cod: 3/kg}}\n",
    "  - {docked: 2026-03-09 06:00, port: Sulvik, out-turn: {cod: 50 kg, ling: 10 kg}, prices: {cod: 4/kg, ling: 1/kg}}\n",
)


def test_two_landings_are_each_sold_at_their_own_prices() -> None:
    made = reckon_money(trip(f"{HEAD}landed:\n{TWO[0]}{TWO[1]}"), None)

    assert made is not None
    assert lines(made) == [("cod", None, "100", "300.00"), ("cod", None, "50", "200.00"), ("ling", None, "10", "10.00")]
    assert (made.gross, made.mean_price_per_kg, made.unpriced) == (510, Decimal("3.1875"), ("ling (Port Kerrin)",))


def test_a_landing_without_prices_is_named_beside_one_that_has_them() -> None:
    bare = "  - {docked: 2026-03-09 06:00, out-turn: {cod: {small: 50 kg}}}\n"
    made = reckon_money(trip(f"{HEAD}landed:\n{TWO[0]}{bare}"), None)

    assert made is not None
    assert (made.gross, made.unpriced) == (300, ("ling (Port Kerrin)", "small cod"))


def test_the_order_of_landings_and_of_entries_changes_no_sum() -> None:
    log = trip(f"{HEAD}landed:\n{TWO[0]}{TWO[1]}")
    turned = replace(
        log,
        landings=tuple(
            replace(one, out_turn=one.out_turn[::-1], prices=one.prices[::-1]) for one in log.landings[::-1]
        ),
    )
    one, other = reckon_money(log, 2.0), reckon_money(turned, 2.0)

    assert one is not None
    assert other is not None
    assert sorted(lines(one), key=str) == sorted(lines(other), key=str)
    assert replace(one, lines=()) == replace(other, lines=())


SHARED = """\
settlement:
  expenses: {fuel: 5200, ice: 930, dues: 610.50, Fuel: 0.25}
  boat's share: 45 %
  shares: {skipper: 2, mate: 1.5, engineer: 1.5, deck: 7}
"""


def test_a_net_is_shared_after_the_boat() -> None:
    made = sold("{cod: 3.35/kg}", "{cod: 9999 kg}", SHARED)

    # By hand: gross 33496.65, expenses 6740.75, net 26755.90; the boat's 45 % 12040.155, so 12040.16; rest 14715.74 over
    # 12 shares, 1226.311666…: 2452.6233…, 1839.4675, 1839.4675, 8584.1816…; two coins are left for remainders of .75.
    assert dict(made.expenses) == {"fuel": Decimal("5200.25"), "ice": 930, "dues": Decimal("610.50")}
    assert made.net == Decimal("26755.90")
    assert shares(made) == {
        "boat": "12040.16",
        "skipper": "2452.62",
        "mate": "1839.47",
        "engineer": "1839.47",
        "deck": "8584.18",
    }


def test_without_a_share_of_the_boat_all_goes_by_shares_and_ties_to_the_first() -> None:
    made = sold("{cod: 1/kg}", "{cod: 100 kg}", "settlement: {shares: {Boat: 1, mate: 1, deck: 1}}\n")

    assert made.net == 100
    assert shares(made) == {"Boat": "33.34", "mate": "33.33", "deck": "33.33"}


def test_a_share_that_goes_by_the_name_of_the_boat_is_added_to_the_boats() -> None:
    made = sold("{cod: 1/kg}", "{cod: 100 kg}", "settlement: {boat's share: 40 %, shares: {Boat: 1, deck: 2}}\n")

    assert shares(made) == {"boat": "60.00", "deck": "40.00"}


def test_a_loss_is_shared_to_the_last_coin() -> None:
    shared = "settlement: {expenses: {fuel: 200.01}, boat's share: 50 %, shares: {mate: 1, deck: 2}}\n"
    made = sold("{cod: 1/kg}", "{cod: 100 kg}", shared)

    # By hand: net -100.01; the boat -50.005, so -50.01; the rest -50.00 in three: -16.666…, -33.333…
    assert shares(made) == {"boat": "-50.01", "mate": "-16.67", "deck": "-33.33"}


@pytest.mark.parametrize(
    "shared",
    ["{expenses: {ice: 10}}", "{boat's share: 50 %}", "{shares: {mate: 0, deck: 0}}", "{shares: {mate: -1, deck: 3}}"],
)
def test_without_shares_nothing_is_settled(shared: str) -> None:
    made = sold("{cod: 1/kg}", "{cod: 100 kg}", f"settlement: {shared}\n")

    assert made.net == (90 if "ice" in shared else 100)
    assert dict(made.settlement) == {}


FUEL = """\
tows:
  - {shot: 18:00, hauled: 20:00, catch: {cod: 900 kg}}
  - {shot: 21:00, hauled: 23:00, catch: {cod: 900 kg}}
readings:
  - {at: 2026-03-04 21:00, fuel left: 8000 l}
"""


@pytest.mark.parametrize(
    ("loaded", "readings", "litres"),
    [
        ("9000 l", "", None),  # read before fishing was over
        ("9000 l", "  - {at: 2026-03-04 23:00, fuel left: 5400 l}\n", 1800),
        (
            "9000 l",
            "  - {at: 2026-03-05 01:00, fuel left: 5000 l}\n  - {at: 2026-03-05 00:00, fuel left: 5400 l}\n",
            2000,
        ),
        ("9 m3", "  - {at: 2026-03-05 00:00, fuel left: 5400 l}\n", 1800),
        ("9000 l", "  - {at: 2026-03-05 00:00, fuel left: 5 t}\n", None),
        ("9 t", "  - {at: 2026-03-05 00:00, fuel left: 5 t}\n", None),
        ("9 t", "  - {at: 2026-03-05 00:00, fuel left: 500 l}\n", None),
        ("-", "  - {at: 2026-03-05 00:00, fuel left: 5400 l}\n", None),
        ("5000 l", "  - {at: 2026-03-05 00:00, fuel left: 5400 l}\n", None),
    ],
)
def test_fuel_for_a_tonne_is_what_was_loaded_less_what_was_left(
    loaded: str, readings: str, litres: float | None
) -> None:
    made = sold("{cod: 1/kg}", "{cod: 1.5 t, ling: 500 kg}", f"fuel loaded: {loaded}\n{FUEL}{readings}")

    assert made.fuel_litres_per_tonne == litres


@pytest.mark.parametrize("weighed", ["", "{cod: 5 buckets, ling: 5 kg}", "{cod: 0 kg}"])
def test_no_fuel_for_a_tonne_where_the_weight_landed_is_not_known(weighed: str) -> None:
    left = "  - {at: 2026-03-05 00:00, fuel left: 5400 l}\n"
    made = sold("{cod: [10 kg 1/kg]}", weighed, f"fuel loaded: 9000 l\n{FUEL}{left}")

    assert made.fuel_litres_per_tonne is None


def test_without_a_haul_no_reading_is_the_last() -> None:
    fuel = "fuel loaded: 9000 l\nreadings:\n  - {at: 2026-03-05 00:00, fuel left: 5400 l}\n"

    assert sold("{cod: 1/kg}", "{cod: 1 t}", fuel).fuel_litres_per_tonne is None


@pytest.mark.parametrize(
    ("exact", "rounded"),
    [
        ("0.005", "0.01"),
        ("0.0049999", "0.00"),
        ("2.675", "2.68"),
        ("2.665", "2.67"),
        ("7", "7.00"),
        ("-0.005", "-0.01"),
    ],
)
def test_halves_of_a_coin_are_rounded_up(exact: str, rounded: str) -> None:
    # Regulation (EC) No 1103/97, Article 5: exactly half-way is rounded up; both 2.675 and 2.665, so not to the even coin.
    assert str(to_coin(Decimal(exact))) == rounded


@given(st.decimals(-(10**9), 10**9, places=6))
def test_rounding_is_that_of_the_decimal_library(exact: Decimal) -> None:
    assert to_coin(exact) == exact.quantize(Decimal("0.01"), ROUND_HALF_UP)


def test_no_sums_add_up_to_nothing() -> None:
    assert str(add_money(())) == "0.00"


def test_a_typed_price_for_a_kilogram_stays_as_typed() -> None:
    assert str(per(Decimal("123456789.012345"), Decimal(1))) == "123456789.012345"


def test_coins_go_to_the_largest_remainders() -> None:
    # The textbook election of ten seats (largest remainder, Hare quota), from memory; its quotas are exact to two figures:
    # 4.70, 1.60, 1.59, 1.20, 0.61, 0.31.
    votes = [Decimal(n) for n in (47_000, 16_000, 15_900, 12_000, 6_100, 3_100)]

    assert [int(share * 100) for share in share_out(Money(Decimal("0.10")), votes)] == [5, 2, 1, 1, 1, 0]


PARTS = st.lists(st.decimals(0, 1000, places=2), min_size=1, max_size=12).filter(any)
SUMS = st.decimals(-(10**8), 10**8, places=2).map(to_coin)


@given(SUMS, PARTS)
def test_shares_add_up_to_the_whole_and_are_a_coin_from_exact_at_most(whole: Money, parts: list[Decimal]) -> None:
    made = share_out(whole, parts)
    total = sum(map(Fraction, parts))

    assert sum(made) == whole
    assert all(share.as_tuple().exponent == -2 for share in made)
    for share, part in zip(made, parts, strict=True):
        assert abs(Fraction(share) - Fraction(whole) * Fraction(part) / total) < Fraction(1, 100)
    assert [-share for share in made] == list(share_out(Money(-whole), parts))


@given(
    boat=st.none() | st.decimals(0, 100, places=2),
    parts=PARTS,
    expenses=st.lists(st.decimals(0, 10**5, places=3), max_size=4),
    weight=st.decimals(0, 10**5, places=2),
    price=st.decimals(0, 100, places=3),
)
def test_a_settlement_adds_up_to_the_net(
    boat: Decimal | None, parts: list[Decimal], expenses: list[Decimal], weight: Decimal, price: Decimal
) -> None:
    log = trip(f"{HEAD}landed:\n  prices: {{cod: [{weight:f} kg {price:f}/kg]}}\n")
    names = ("Boat", "mate", "MATE", "cook")
    shared = Settlement(
        expenses=tuple((names[n], Money(money)) for n, money in enumerate(expenses)),
        boat_share=boat,  # type: ignore[arg-type]
        shares=tuple((names[n % 4], part) for n, part in enumerate(parts)),
    )
    made = reckon_money(replace(log, settlement=shared), None)

    assert made is not None
    assert made.gross is not None
    assert made.net == made.gross - sum(made.expenses.values())
    assert sum(made.settlement.values()) == made.net


LOTS = st.lists(
    st.tuples(
        st.sampled_from(["large", "small"]),
        st.integers(0, 99_999),
        st.integers(0, 9_999),
        st.sampled_from(["kg", "lb", "box"]),
    ),
    min_size=1,
    max_size=8,
)


@given(lots=LOTS, others=st.booleans())
def test_lines_add_up_to_the_gross_and_all_that_was_landed_is_sold_once_or_named(
    *, lots: list[tuple[str, int, int, str]], others: bool
) -> None:
    typed: dict[str, list[str]] = {}
    for grade, weight, price, unit in lots:
        typed.setdefault(grade, []).append(f"{weight / 100:.2f} kg {price / 100:.2f}/{unit}")
    by_grade = ", ".join(f"{grade}: [{', '.join(of)}]" for grade, of in typed.items())
    made = sold(f"{{cod: {{{by_grade}}}{', COD: 2.35/kg' if others else ''}}}", "{cod: {large: 900 kg, small: 700 kg}}")

    in_lots = {grade: Decimal(sum(lot[1] for lot in lots if lot[0] == grade)) / 100 for grade in ("large", "small")}
    left = {grade: max(Decimal(0), landed - in_lots[grade]) for grade, landed in (("large", 900), ("small", 700))}
    assert made.gross == sum(line.value for line in made.lines)
    weights = sum(line.weight_kg for line in made.lines)
    assert weights == sum(in_lots.values()) + (sum(left.values()) if others else 0)
    assert made.unpriced == (() if others else tuple(f"{grade} cod" for grade, weight in left.items() if weight))
