"""The ice to take for a planned trip, as `logbook ice` prints it."""

from collections.abc import Iterator
from textwrap import wrap

from logbook.model.figures import IceToTake
from logbook.render import shown
from logbook.render.shown import fixed
from logbook.render.text import WIDTH, bare, table


def ice_text(vessel: str, ice: IceToTake) -> str:
    """Return how much ice to take and how that comes about, without a line's end after the last line."""
    planned = (
        f"{_days(ice.days)}, {shown.weight(ice.catch_kg)} of fish, sea {shown.celsius_unit(ice.sea_temperature_c)}"
    )
    lines = [
        bare(f"{vessel}: take {shown.weight(ice.advised_kg)} of ice"),
        bare(f"for {planned}"),
        "",
        *table([tuple(bare(cell) for cell in row) for row in _rows(ice)], "<>>"),
        "",
        *(line for said in _said(vessel, ice) for line in wrap(bare(said), WIDTH)),
    ]
    return "\n".join(lines)


def _rows(ice: IceToTake) -> Iterator[tuple[str, str, str]]:
    melted = shown.kilograms_unit(ice.hold_melt_kg)
    more = [kg - kg / (1 + ice.allowance_percent / 100) for kg in (ice.theory_kg, ice.practice_kg)]
    yield "", "by physics", "by practice"
    yield "to chill the fish", shown.kilograms_unit(ice.chilling_kg), ""
    yield "laid with the fish", "", shown.kilograms_unit(ice.catch_kg / ice.fish_to_ice)
    yield "melted by the hold", melted, melted
    yield f"{fixed(ice.allowance_percent)} % more", shown.kilograms_unit(more[0]), shown.kilograms_unit(more[1])
    yield "ice", shown.kilograms_unit(ice.theory_kg), shown.kilograms_unit(ice.practice_kg)


def _said(vessel: str, ice: IceToTake) -> Iterator[str]:
    yield f"By practice 1 kg of ice is laid with {fixed(ice.fish_to_ice, 2).rstrip('0').rstrip('.')} kg of fish."
    for words in dict.fromkeys(words for _, words in ice.basis):
        yield f"{shown.capital(words)}."
    yield _room(vessel, ice)
    yield "An estimate for planning: what the ice is like, the weather and the way it is stowed decide."


def _days(days: float) -> str:
    figure = fixed(days, 1).removesuffix(".0")
    return f"{figure} {'day' if figure == '1' else 'days'}"


def _room(vessel: str, ice: IceToTake) -> str:
    if ice.capacity_kg is None or ice.over_capacity_kg is None:
        return f"What ice {vessel} can load is not in the fleet file."
    if ice.over_capacity_kg:
        return f"THAT IS {shown.weight(ice.over_capacity_kg)} MORE than the {shown.weight(ice.capacity_kg)} she can load: plan for less fish or fewer days."
    return f"She can load {shown.weight(ice.capacity_kg)}."
