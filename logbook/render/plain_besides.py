"""The rest of a trip's report for a terminal: ice, hail and out-turn, gear, weather, rest and money."""

from textwrap import wrap

from logbook.model.figures import TripFigures
from logbook.render import shown
from logbook.render.kept import TOO_FEW
from logbook.render.language import _, _c
from logbook.render.shown import one_line
from logbook.render.text import WIDTH, bare, dash, table
from logbook.render.told import told


def besides(figures: TripFigures) -> tuple[list[str], ...]:
    """Return the parts of the report that stand after the passage; those with nothing to tell are empty."""
    return out_turn(figures), gear(figures), weather(figures), rest(figures), money(figures)


def ice(figures: TripFigures) -> list[str]:
    """Return the ice: loaded, laid, melted, left; empty where none of it is known."""
    own = figures.ice
    weights = (
        (_("loaded"), own.loaded_kg),
        (_("laid with fish"), own.laid_kg),
        (_("melted by the hold"), own.hold_melt_kg),
        (_("loose, {how}").format(how=_(own.left_by)) if own.left_by else _("loose"), own.left_kg),
        (_("least by physics, to chill the fish"), own.chilling_kg),
    )
    rows = [(_("Ice"), "kg"), *((name, dash(shown.kilograms(kg))) for name, kg in weights)]
    until = own.lasts_until
    lasts = [_("Loose ice lasts until {when}").format(when=shown.brief(until, until.utcoffset()))] if until else []
    return [*table(rows, "<>"), *lasts] if any(kg is not None for _name, kg in weights) else []


def out_turn(figures: TripFigures) -> list[str]:
    """Return hail and out-turn, and what earlier hails say of this one's."""
    known = any(hail.out_turn_kg is not None or hail.bias_percent is not None for hail in figures.hail.values())
    rows: list[tuple[str, ...]] = [
        (
            _("Hail and out-turn"),
            _("Hail kg"),
            _("Out-turn kg"),
            _("Difference"),
            _("% of hail"),
            _("Expected kg"),
            _c("of a range", "from"),
            _c("of a range", "to"),
        )
    ]
    for name, hail in figures.hail.items():
        weights = (hail.hail_kg, hail.out_turn_kg, hail.difference_kg)
        expected = (hail.expected_out_turn_kg, hail.expected_low_kg, hail.expected_high_kg)
        rows.append(
            (
                one_line(name, 30),
                *(dash(shown.kilograms(kg)) for kg in weights),
                dash(shown.percent(hail.difference_percent)),
                *(dash(shown.kilograms(kg)) for kg in expected),
            )
        )
    without = [one_line(name, 30) for name, hail in figures.hail.items() if hail.bias_percent is None]
    said = _("No out-turn of {species} is expected: {why}.") if known else _("No out-turn is expected: {why}.")
    few = wrap(said.format(species=", ".join(without), why=_(TOO_FEW)), WIDTH) if without else []
    return [*(table(rows, "<>>>>>>>") if known else []), *few]


def gear(figures: TripFigures) -> list[str]:
    """Return hours and mishaps of the gear, and time lost."""
    rows = [(_("Gear"), _("Hours"), _("Tows"), _("Foul"), _("Since mended h"), _("Tows since"))]
    rigging = ((_(name), part) for name, part in figures.rigging.items())
    for name, net in (*figures.gear.items(), *rigging):
        if net.tows or net.tows_since_mended:
            rows.append(
                (
                    one_line(name, 30),
                    dash(shown.hours(net.towed_h)),
                    str(net.tows),
                    str(net.foul_tows),
                    dash(shown.hours(net.towed_h_since_mended)),
                    str(net.tows_since_mended),
                )
            )
    lost = [
        _("Lost {hours}: {why}").format(hours=bare(shown.hours_unit(hours)), why=one_line(why) or _("not told why"))
        for why, hours in figures.time_lost_h.items()
    ]
    return [*(table(rows, "<>>>>>") if len(rows) > 1 else []), *lost]


def weather(figures: TripFigures) -> list[str]:
    """Return hours and catch by force and light."""
    own = figures.weather
    parts = [
        (_("force {n}").format(n=force), hours, own.kept_kg_per_h_by_force.get(force))
        for force, hours in own.hours_by_force.items()
    ]
    parts += [(_(light), hours, own.kept_kg_per_h_by_light.get(light)) for light, hours in own.hours_by_light.items()]
    rows = [(name, dash(shown.hours(hours)), dash(shown.kilograms(rate))) for name, hours, rate in parts]
    icing = [_("Ice on deck: {icing} at worst").format(icing=_(own.icing))] if own.icing else []
    return [*(table([(_("Wind and light"), _("Hours"), _("kg/h")), *rows], "<>>") if rows else []), *icing]


def rest(figures: TripFigures) -> list[str]:
    """Return the least rest of each hand and watch."""
    rows: list[tuple[str, ...]] = [
        (_("Rest, hours"), _("Worst 24 h"), _("Worst 7 days"), _("Longest"), _("C188 hours met"))
    ]
    for name, least in figures.rest.items():
        met = "-" if least.c188_hours_met is None else _("yes") if least.c188_hours_met else _("no")
        hours = (least.worst_24h_rest_h, least.worst_7d_rest_h, least.longest_unbroken_h)
        rows.append((one_line(name, 30), *(dash(shown.hours(one)) for one in hours), met))
    said = _("Reported from what was logged; the skipper, the flag state and the law decide.")
    return [*table(rows, "<>>><"), said] if figures.rest else []


def money(figures: TripFigures) -> list[str]:
    """Return what the catch brought and how it was shared."""
    sold = figures.money
    if sold is None:
        return []
    sums = [
        (_("Gross"), sold.gross),
        (_("a day at sea"), sold.gross_per_day_at_sea),
        (_("mean price a kg"), sold.mean_price_per_kg),
        *((one_line(name, 30), -cost) for name, cost in sold.expenses.items()),
        *([(_c("money", "Net"), sold.net)] if sold.net is not None else []),
        *((f"  {one_line(told(name), 28)}", part) for name, part in sold.settlement.items()),
    ]
    left_out = (*sold.unpriced, *sold.unweighed)
    said = [_("The gross leaves out {what}").format(what=", ".join(map(one_line, left_out)))] if left_out else []
    return [*table([(name, dash(shown.money(value))) for name, value in sums], "<>"), *said]
