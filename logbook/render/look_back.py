"""A look back at a place, as `logbook here` prints it."""

from textwrap import wrap

from logbook.model.look_back import FastNear, LookBack
from logbook.render import shown
from logbook.render.cautions import FAST
from logbook.render.language import _, speech
from logbook.render.shown import brief_date, brief_day, capital, fixed, one_line
from logbook.render.text import bare, dash, table
from logbook.render.told import told


def look_back_text(back: LookBack, place: str) -> str:
    """Return the look back, without a line's end after the last line; what is dangerous stands first."""
    parts = (_fasts(back), _head(back, place), _years(back), _species(back), _tows(back), _left_out(back))
    return "\n\n".join("\n".join(part) for part in parts if part)


def _head(back: LookBack, place: str) -> list[str]:
    words = _("{place}: tows within {miles} nm, {weeks} weeks before and after {day} of any year")
    return [words.format(place=place, miles=_short(back.within_nm), weeks=_short(back.weeks), day=brief_day(back.at))]


def _short(value: float) -> str:
    """Return a number with one decimal, which is left off where it is nought."""
    return fixed(value, 1).removesuffix(f"{speech().decimal}0")


def _years(back: LookBack) -> list[str]:
    if not back.by_year:
        return [_("No tow is logged near there at that time of any year.")]
    rows: list[tuple[str, ...]] = [
        (_("Year"), _("Tows"), _("Foul"), _("Hours"), _("Kept kg"), _("kg/h"), _("without foul kg/h"))
    ]
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
    rows: list[tuple[str, ...]] = [(_("Species"), _("Kept kg"), _("kg/h"), _("without foul kg/h"))]
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
    rows: list[tuple[str, ...]] = [(_("Best tows"), _("When"), _("Ground"), _("Kept kg"), _("kg/h"))]
    for tow in back.tows:
        when = brief_date(tow.when.date()) if tow.when is not None else "-"
        weights = (dash(shown.kilograms(tow.kept_kg)), dash(shown.kilograms(tow.kept_kg_per_h)))
        name = _("{vessel}, tow {no}").format(vessel=one_line(tow.vessel, 24), no=tow.no)
        rows.append((name, bare(when), one_line(tow.ground or "-", 20), *weights))
    return table(rows, "<<<>>") if back.tows else []


def _fasts(back: LookBack) -> list[str]:
    if not back.fasts:
        return [_("No fast is logged near there. That does not mean clear ground.")]
    rows = [_fast(near) for near in back.fasts]
    return [_("FASTS NEAR THERE"), *table(rows, "<<<<"), *wrap(FAST.told(), 80)]


def _fast(near: FastNear) -> tuple[str, ...]:
    mark = near.mark
    where = shown.position(mark.at) if mark.at is not None else _("track only")
    when = brief_date(mark.when.date()) if mark.when is not None else "-"
    return (
        _("{miles} nm off").format(miles=fixed(near.away_nm, 1)),
        where,
        one_line(mark.what or _("not told what"), 30),
        f"{one_line(mark.vessel, 20)}, {when}",
    )


def _left_out(back: LookBack) -> list[str]:
    return [capital(told(words)) for _field, words in back.basis]
