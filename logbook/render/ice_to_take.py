"""The ice to take for a planned trip, as `logbook ice` prints it."""

from collections.abc import Iterator
from textwrap import wrap

from logbook.model.figures import IceToTake
from logbook.render import shown
from logbook.render.language import _, _n
from logbook.render.shown import brief_number, fixed
from logbook.render.text import WIDTH, bare, table
from logbook.render.told import told


def ice_text(vessel: str, ice: IceToTake) -> str:
    """Return how much ice to take and how that comes about, without a line's end after the last line."""
    planned = _("for {days}, {weight} of fish, sea {temperature}").format(
        days=_days(ice.days),
        weight=shown.weight(ice.catch_kg),
        temperature=shown.celsius_unit(ice.sea_temperature_c),
    )
    lines = [
        bare(_("{vessel}: take {weight} of ice").format(vessel=vessel, weight=shown.weight(ice.advised_kg))),
        bare(planned),
        "",
        *table([tuple(bare(cell) for cell in row) for row in _rows(ice)], "<>>"),
        "",
        *(line for said in _said(vessel, ice) for line in wrap(bare(said), WIDTH)),
    ]
    return "\n".join(lines)


def _rows(ice: IceToTake) -> Iterator[tuple[str, str, str]]:
    melted = shown.kilograms_unit(ice.hold_melt_kg)
    more = [kg - kg / (1 + ice.allowance_percent / 100) for kg in (ice.theory_kg, ice.practice_kg)]
    yield "", _("by physics"), _("by practice")
    yield _("to chill the fish"), shown.kilograms_unit(ice.chilling_kg), ""
    yield _("laid with the fish"), "", shown.kilograms_unit(ice.catch_kg / ice.fish_to_ice)
    yield _("melted by the hold"), melted, melted
    allowance = _("{n} % more").format(n=fixed(ice.allowance_percent))
    yield allowance, shown.kilograms_unit(more[0]), shown.kilograms_unit(more[1])
    yield _("ice"), shown.kilograms_unit(ice.theory_kg), shown.kilograms_unit(ice.practice_kg)


def _said(vessel: str, ice: IceToTake) -> Iterator[str]:
    yield _("By practice 1 kg of ice is laid with {kg} kg of fish.").format(kg=brief_number(ice.fish_to_ice, 2))
    for words in dict.fromkeys(words for _field, words in ice.basis):
        yield f"{shown.capital(told(words))}."
    yield _room(vessel, ice)
    yield _("An estimate for planning: what the ice is like, the weather and the way it is stowed decide.")


def _days(days: float) -> str:
    figure = brief_number(days)
    return figure + " " + _n("day", "days", 1 if figure == "1" else 2)


def _room(vessel: str, ice: IceToTake) -> str:
    if ice.capacity_kg is None or ice.over_capacity_kg is None:
        return _("What ice {vessel} can load is not in the fleet file.").format(vessel=vessel)
    if ice.over_capacity_kg:
        said = _("THAT IS {over} MORE than the {most} she can load: plan for less fish or fewer days.")
        return said.format(over=shown.weight(ice.over_capacity_kg), most=shown.weight(ice.capacity_kg))
    return _("She can load {weight}.").format(weight=shown.weight(ice.capacity_kg))
