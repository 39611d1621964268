"""What each edition shows: close by default, since what skippers fear decides whether honest logs are kept."""

from datetime import timedelta

from logbook.model.edition import CREW, EXACT, GROUND, OFFICE, RECTANGLE, Policy
from logbook.model.fleet import Edition, Fleet

_AT_ONCE = timedelta(0)
_FOR_GOOD = timedelta(days=365_000)


def policy_of(name: str, fleet: Fleet) -> Policy:
    """Return what an edition shows, with what the fleet file says of positions and fasts.

    The office is shown everything. Where what the fleet file says can't be read, nothing tells the others where tows were or gear came fast. Nobody is ever shown more than the fleet file allows; the public is never shown a position finer
    than a rectangle, and no fast.

    Args:
        name: office, crew or public.
        fleet: For its `editions`.
    """
    said = next((edition for edition in fleet.editions if edition.name == name), Edition(name=name))
    office = name == OFFICE
    if fleet.editions_unread and not office:
        said = Edition(name=name, positions=GROUND, fasts=False, after=_FOR_GOOD)
    inside = name in (OFFICE, CREW)
    return Policy(
        name=name,
        money=office,
        problems=office,
        margin=office,
        rest=office,
        skippers=inside,
        crews=office,
        words=inside,
        put_back=inside,
        turning=office,
        positions=_positions(name, said),
        held_back=said.after if said.after is not None and not office else _AT_ONCE,
        fasts=office or (name == CREW and said.fasts is not False),
    )


def _positions(name: str, said: Edition) -> str:
    if name == OFFICE:
        return EXACT
    if name == CREW:
        return said.positions or GROUND
    return GROUND if said.positions in (None, GROUND) else RECTANGLE
