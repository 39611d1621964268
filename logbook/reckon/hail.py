"""The hail that is sent: the skipper's own kept weights in the units they were typed in, and what ashore has to know.

Nothing is put right in it by how earlier hails compared with the scale: it is the skipper's own estimate.
"""

from decimal import Decimal

from logbook.model.figures import TripFigures
from logbook.model.hail import FISH, Counted, HailedFish, HailFigures
from logbook.model.names import fold_name
from logbook.model.trip import Amount, Trip
from logbook.reckon.as_of import until
from logbook.reckon.untold import untold


def reckon_hail(trip: Trip, figures: TripFigures) -> HailFigures:
    """Return what is to be sent ashore of a trip, as of the moment of its figures."""
    head, landing, age = figures.trip, figures.landing, figures.age
    stood = until(trip, head.as_of)
    return HailFigures(
        vessel=head.vessel,
        as_of=head.as_of,
        state=head.state,
        port=landing.port,
        docked=landing.docked,
        expected=landing.expected,
        kept=hailed(stood),
        kept_kg=figures.totals.kept_kg,
        oldest_ice_days=age.oldest_ice_days,
        mean_ice_days=age.mean_ice_days,
        oldest_equivalent_ice_days=age.oldest_equivalent_ice_days,
        sale=landing.sales[0].at if landing.sales else None,
        wants=trip.wants,
        sails_again=trip.sails_again,
        not_known=tuple(stood.tows[n].no for n in untold(stood.tows)),
        unread=len(stood.tows_lost),
    )


def hailed(stood: Trip) -> tuple[HailedFish, ...]:
    """Return the marketable fish of a trip by species and grade in the units typed; the heaviest species first.

    The grades of a species stand together, in the order they were first typed. What there is none of is left out.
    """
    groups: dict[tuple[str, str], list[Amount]] = {}
    for tow in stood.tows:
        for amount in tow.catch:
            groups.setdefault((fold_name(amount.species), fold_name(amount.grade or "")), []).append(amount)
    every = {name: _fish(amounts) for name, amounts in groups.items()}
    made = {name: fish for name, fish in every.items() if any(amount.number for amount in fish.amounts)}
    weights: dict[str, Decimal] = {}
    for (species, _), fish in made.items():
        weights[species] = weights.get(species, Decimal(0)) + (fish.kept_kg or 0)
    ordered = sorted(made, key=lambda name: (-weights[name[0]], name[0]))
    return tuple(made[name] for name in ordered)


def _fish(amounts: list[Amount]) -> HailedFish:
    counted: dict[str, Decimal] = {}
    weighed = [amount.weight for amount in amounts if amount.weight is not None]
    for weight in weighed:
        counted[weight.unit] = counted.get(weight.unit, Decimal(0)) + weight.number
    fish = sum(amount.count or 0 for amount in amounts if amount.weight is None)
    if fish:
        counted[FISH] = Decimal(fish)
    return HailedFish(
        species=amounts[0].species,
        grade=amounts[0].grade,
        amounts=tuple(Counted(number=number, unit=unit) for unit, number in counted.items()),
        kept_kg=sum((weight.kilograms for weight in weighed), Decimal(0)) if weighed else None,
    )
