"""Trips of any shape for tests of sums: made by hand from records, with whatever of a tow may be known or not."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal
from random import Random

from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.figures import Reckoned, SpeciesCatch, SpeciesTotal, TowFigures
from logbook.model.money import MoneyFigures
from logbook.model.named import ByName
from logbook.model.out_turn import HailedSpecies
from logbook.model.quantity import Money
from logbook.model.trip import Fast, Tow
from tests.render import example

KG = Decimal
FIRST = datetime(2024, 11, 3, 5, 30, tzinfo=UTC)
VESSELS = ("Solan Bright", "solan BRIGHT", "Skerry Light")
_BARE = example.trip(tows=1)
_GROUNDS = (None, "The Saddle", "the  SADDLE", "Odd Hole", "Straße", "STRASSE")
_SPECIES = ("cod", "haddock", "ling")
_OUT = ("at sea", "homeward", "landing not logged")


def some_trips(vessels: tuple[str, ...] = VESSELS, most: int = 5) -> st.SearchStrategy[tuple[Reckoned, ...]]:
    """Return a strategy for some trips, each with an id of its own."""
    return st.builds(_trips, st.integers(0, 2**32 - 1), st.integers(0, most), st.just(vessels))


def _trips(seed: int, count: int, vessels: tuple[str, ...]) -> tuple[Reckoned, ...]:
    """Return trips of which chance decides everything; hypothesis' own choices would be too many for it to make."""
    chance = Random(seed)
    return tuple(_trip(chance, vessels, number) for number in range(count))


def _weight(chance: Random) -> Decimal | None:
    """Return a weight that may be not known, nought, round or not."""
    kinds = (None, KG(0), KG(chance.randrange(1, 60)) * 100, KG(chance.randrange(40_000_000)).scaleb(-3))
    return chance.choice(kinds)


def _hours(chance: Random) -> float | None:
    return chance.choice((None, 0.0, chance.randrange(1, 400) / 60, chance.randrange(1, 400) / 60))


def _catch(chance: Random) -> ByName[SpeciesCatch]:
    return ByName(
        (
            name,
            SpeciesCatch(
                kept_kg=_weight(chance), put_back_kg=_weight(chance), undersize_kg=None, live_kg=_weight(chance), grades=ByName(), basis=()
            ),
        )
        for name in chance.sample(_SPECIES, chance.randrange(4))
    )  # fmt: skip


def _tow(chance: Random, no: int, since: datetime) -> tuple[Tow, TowFigures]:
    catch = _catch(chance)
    known = [one.kept_kg for one in catch.values() if one.kept_kg is not None]
    shot = chance.choice((None, since + timedelta(minutes=chance.randrange(400))))
    hauled = chance.choice((None, since + timedelta(minutes=400 + chance.randrange(400))))
    ground, foul = chance.choice(_GROUNDS), chance.random() < 0.3
    figures = replace(
        _BARE.figures.tows[0],
        no=no,
        ground=ground,
        shot=shot,
        hauled=hauled,
        duration_h=_hours(chance),
        catch_h=_hours(chance),
        depth_m=chance.choice((None, 0.0, 50.0, chance.uniform(0, 600))),
        light=chance.choice((None, "day", "twilight", "night")),
        catch=catch,
        kept_kg=chance.choice((None, sum(known, KG(0)), sum(known, KG(0)))),
        put_back_kg=_weight(chance),
        live_kg=_weight(chance),
        foul=foul,
        sorted_with=tuple(chance.sample(range(1, no), min(no - 1, chance.randrange(3)))),
    )
    logged = replace(
        _BARE.log.tows[0],
        no=no,
        shot=shot,
        hauled=hauled,
        ground=ground,
        damage=chance.choice((None, "wing torn")),
        fast=Fast(what="rock", at=None) if foul else None,
    )
    return logged, figures


def _trip(chance: Random, vessels: tuple[str, ...], number: int) -> Reckoned:
    begins = FIRST + timedelta(days=chance.randrange(500))
    docked = chance.choice((None, begins + timedelta(days=chance.randrange(1, 12))))
    pairs = [_tow(chance, no, begins + timedelta(days=no)) for no in range(1, chance.randrange(5) + 1)]
    tows = tuple(figures for _, figures in pairs)
    catch = {
        species: [tow.catch[species] for tow in tows if species in tow.catch]
        for species in _SPECIES
        if any(species in tow.catch for tow in tows)
    }
    kept = [tow.kept_kg for tow in tows if tow.kept_kg is not None]
    head = replace(
        _BARE.figures.trip,
        id=f"trip-{number}",
        vessel=chance.choice(vessels),
        sailed=begins,
        docked=docked,
        state="landed" if docked is not None else chance.choice(_OUT),
        turned_for_home=None,
        as_of=docked or begins,
        last_word=docked or begins + timedelta(days=4),
    )
    figures = replace(
        _BARE.figures,
        trip=head,
        tows=tows,
        catch=ByName((species, _total(parts)) for species, parts in catch.items()),
        totals=replace(
            _BARE.figures.totals,
            kept_kg=sum(kept, KG(0)) if kept else None,
            days_at_sea=chance.choice((None, chance.randrange(500) / 24)),
            kept_kg_per_day=chance.choice((None, 0.0, 700.0, chance.uniform(0, 9000))),
        ),
        age=replace(_BARE.figures.age, mean_ice_days=chance.choice((None, chance.randrange(200) / 24))),
        hail=ByName(
            (species, _hailed(_weight(chance), chance.choice((None, chance.uniform(-50, 50))))) for species in catch
        ),
        money=_money(weight) if (weight := _weight(chance)) is not None else None,
        problems=(),
    )
    log = replace(
        _BARE.log,
        file=f"{number}.yaml",
        vessel=replace(_BARE.log.vessel, name=head.vessel),
        begins=begins,
        sailed=begins,
        tows=tuple(logged for logged, _ in pairs),
        landings=(),
    )
    return replace(_BARE, log=log, figures=figures)


def _total(parts: list[SpeciesCatch]) -> SpeciesTotal:
    kept = [part.kept_kg for part in parts if part.kept_kg is not None]
    weight = sum(kept, KG(0)) if kept else None
    return SpeciesTotal(
        code="COD", kept_kg=weight, put_back_kg=None, undersize_kg=None, live_kg=None,
        grades=ByName([("large", weight)] if kept else []), share_percent=None,
    )  # fmt: skip


def _hailed(out_turn: Decimal | None, percent: float | None) -> HailedSpecies:
    return HailedSpecies(
        hail_kg=None, out_turn_kg=out_turn, difference_kg=None, difference_percent=percent, within_tolerance=None, bias_percent=None,
        expected_out_turn_kg=None, expected_low_kg=None, expected_high_kg=None, bias_trips=0, grades=ByName(),
    )  # fmt: skip


def _money(gross: Decimal) -> MoneyFigures:
    return MoneyFigures(
        lines=(), unpriced=(), unweighed=(), gross=Money(gross), gross_per_day_at_sea=None, mean_price_per_kg=None,
        expenses=ByName(), net=None, settlement=ByName(), fuel_litres_per_tonne=None,
    )  # fmt: skip
