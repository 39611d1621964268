"""The rest of a trip's report for a terminal: ice, hail and out-turn, gear, weather, rest and money."""

from textwrap import wrap

from logbook.model.figures import TripFigures
from logbook.render import shown
from logbook.render.kept import TOO_FEW
from logbook.render.shown import one_line
from logbook.render.text import WIDTH, bare, dash, table


def besides(figures: TripFigures) -> tuple[list[str], ...]:
    """Return the parts of the report that stand after the passage; those with nothing to tell are empty."""
    return out_turn(figures), gear(figures), weather(figures), rest(figures), money(figures)


def ice(figures: TripFigures) -> list[str]:
    """Return the ice: loaded, laid, melted, left; empty where none of it is known."""
    own = figures.ice
    weights = (
        ("loaded", own.loaded_kg),
        ("laid with fish", own.laid_kg),
        ("melted by the hold", own.hold_melt_kg),
        (f"loose, {own.left_by}" if own.left_by else "loose", own.left_kg),
        ("least by physics, to chill the fish", own.chilling_kg),
    )
    rows = [("Ice", "kg"), *((name, dash(shown.kilograms(kg))) for name, kg in weights)]
    until = own.lasts_until
    lasts = [f"Loose ice lasts until {shown.brief(until, until.utcoffset())}"] if until is not None else []
    return [*table(rows, "<>"), *lasts] if any(kg is not None for _, kg in weights) else []


def out_turn(figures: TripFigures) -> list[str]:
    """Return hail and out-turn, and what earlier hails say of this one's."""
    told = any(hail.out_turn_kg is not None or hail.bias_percent is not None for hail in figures.hail.values())
    rows: list[tuple[str, ...]] = [
        ("Hail and out-turn", "Hail kg", "Out-turn kg", "Difference", "% of hail", "Expected kg", "from", "to")
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
    whose = f" of {', '.join(without)}" if told else ""
    few = wrap(f"No out-turn{whose} is expected: {TOO_FEW}.", WIDTH) if without else []
    return [*(table(rows, "<>>>>>>>") if told else []), *few]


def gear(figures: TripFigures) -> list[str]:
    """Return hours and mishaps of the gear, and time lost."""
    rows = [("Gear", "Hours", "Tows", "Foul", "Since mended h", "Tows since")]
    for name, net in (*figures.gear.items(), *figures.rigging.items()):
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
        f"Lost {bare(shown.hours_unit(hours))}: {one_line(why) or 'not told why'}"
        for why, hours in figures.time_lost_h.items()
    ]
    return [*(table(rows, "<>>>>>") if len(rows) > 1 else []), *lost]


def weather(figures: TripFigures) -> list[str]:
    """Return hours and catch by force and light."""
    told = figures.weather
    parts = [
        (f"force {force}", hours, told.kept_kg_per_h_by_force.get(force))
        for force, hours in told.hours_by_force.items()
    ]
    parts += [(light, hours, told.kept_kg_per_h_by_light.get(light)) for light, hours in told.hours_by_light.items()]
    rows = [(name, dash(shown.hours(hours)), dash(shown.kilograms(rate))) for name, hours, rate in parts]
    icing = [f"Ice on deck: {told.icing} at worst"] if told.icing else []
    return [*(table([("Wind and light", "Hours", "kg/h"), *rows], "<>>") if rows else []), *icing]


def rest(figures: TripFigures) -> list[str]:
    """Return the least rest of each hand and watch."""
    rows: list[tuple[str, ...]] = [("Rest, hours", "Worst 24 h", "Worst 7 days", "Longest", "C188 hours met")]
    for name, least in figures.rest.items():
        met = "-" if least.c188_hours_met is None else "yes" if least.c188_hours_met else "no"
        hours = (least.worst_24h_rest_h, least.worst_7d_rest_h, least.longest_unbroken_h)
        rows.append((one_line(name, 30), *(dash(shown.hours(one)) for one in hours), met))
    said = "Reported from what was logged; the skipper, the flag state and the law decide."
    return [*table(rows, "<>>><"), said] if figures.rest else []


def money(figures: TripFigures) -> list[str]:
    """Return what the catch brought and how it was shared."""
    sold = figures.money
    if sold is None:
        return []
    sums = [
        ("Gross", sold.gross),
        ("a day at sea", sold.gross_per_day_at_sea),
        ("mean price a kg", sold.mean_price_per_kg),
        *((one_line(name, 30), -cost) for name, cost in sold.expenses.items()),
        *([("Net", sold.net)] if sold.net is not None else []),
        *((f"  {one_line(name, 28)}", part) for name, part in sold.settlement.items()),
    ]
    left_out = (*sold.unpriced, *sold.unweighed)
    said = [f"The gross leaves out {', '.join(map(one_line, left_out))}"] if left_out else []
    return [*table([(name, dash(shown.money(value))) for name, value in sums], "<>"), *said]
