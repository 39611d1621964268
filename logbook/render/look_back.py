"""A look back at a place, as `logbook here` prints it."""

from textwrap import wrap

from logbook.model.look_back import FastNear, LookBack
from logbook.render import shown
from logbook.render.cautions import FAST
from logbook.render.shown import brief_date, brief_day, fixed, one_line
from logbook.render.text import bare, dash, table


def look_back_text(back: LookBack, place: str) -> str:
    """Return the look back, without a line's end after the last line; what is dangerous stands first."""
    parts = (_fasts(back), _head(back, place), _years(back), _species(back), _tows(back), _left_out(back))
    return "\n\n".join("\n".join(part) for part in parts if part)


def _head(back: LookBack, place: str) -> list[str]:
    near = f"{fixed(back.within_nm, 1).removesuffix('.0')} nm"
    weeks = fixed(back.weeks, 1).removesuffix(".0")
    return [f"{place}: tows within {near}, {weeks} weeks before and after {brief_day(back.at)} of any year"]


def _years(back: LookBack) -> list[str]:
    if not back.by_year:
        return ["No tow is logged near there at that time of any year."]
    rows: list[tuple[str, ...]] = [("Year", "Tows", "Foul", "Hours", "Kept kg", "kg/h", "without foul kg/h")]
    for year, group in back.by_year.items():
        rates = (group.kept_kg_per_h, group.kept_kg_per_h_clean)
        rows.append(
            (
                year,
                str(group.tows),
                str(group.foul_tows),
                dash(shown.hours(group.towed_h)),
                dash(shown.kilograms(group.kept_kg)),
                *(dash(shown.kilograms(rate)) for rate in rates),
            )
        )
    return table(rows, "<>>>>>>")


def _species(back: LookBack) -> list[str]:
    rows: list[tuple[str, ...]] = [("Species", "Kept kg", "kg/h", "without foul kg/h")]
    for one in back.species:
        rates = (one.kept_kg_per_h, one.kept_kg_per_h_clean)
        rows.append(
            (
                one_line(one.name, 30),
                dash(shown.kilograms(one.kept_kg)),
                *(dash(shown.kilograms(rate)) for rate in rates),
            )
        )
    return table(rows, "<>>>") if back.species else []


def _tows(back: LookBack) -> list[str]:
    rows: list[tuple[str, ...]] = [("Best tows", "When", "Ground", "Kept kg", "kg/h")]
    for tow in back.tows:
        when = brief_date(tow.when.date()) if tow.when is not None else "-"
        weights = (dash(shown.kilograms(tow.kept_kg)), dash(shown.kilograms(tow.kept_kg_per_h)))
        rows.append(
            (f"{one_line(tow.vessel, 24)}, tow {tow.no}", bare(when), one_line(tow.ground or "-", 20), *weights)
        )
    return table(rows, "<<<>>") if back.tows else []


def _fasts(back: LookBack) -> list[str]:
    if not back.fasts:
        return ["No fast is logged near there. That does not mean clear ground."]
    rows = [_fast(near) for near in back.fasts]
    return ["FASTS NEAR THERE", *table(rows, "<<<<"), *wrap(str(FAST), 80)]


def _fast(near: FastNear) -> tuple[str, ...]:
    mark = near.mark
    where = shown.position(mark.at) if mark.at is not None else "track only"
    when = brief_date(mark.when.date()) if mark.when is not None else "-"
    return (
        f"{fixed(near.away_nm, 1)} nm off",
        where,
        one_line(mark.what or "not told what", 30),
        f"{one_line(mark.vessel, 20)}, {when}",
    )


def _left_out(back: LookBack) -> list[str]:
    return [words[:1].upper() + words[1:] for _, words in back.basis]
