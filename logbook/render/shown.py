"""How values are shown: the one place that rounds, puts in thin spaces and words for what is missing.

Every function takes a value or None and returns text; for None the dash with its words. Halves are
rounded away from nought, as people do. Words, the decimal mark and the order of a date are those
of the language in force; nothing here depends on the machine's language or clock.
"""

from collections.abc import Callable, Mapping
from datetime import date, datetime, timedelta
from decimal import ROUND_HALF_UP, Context, Decimal
from functools import cache, lru_cache
from math import isfinite
from typing import Any

from markupsafe import Markup

from logbook.model.language import N_
from logbook.model.quantity import METRES_PER_FATHOM, POUND_KG, Position
from logbook.render.language import Speech, _, _c, _n, speech

THIN = "\u202f"
"""A narrow space that no line breaks at."""

DASH = "–"

DAYS = N_("days")


def missing() -> Markup:
    """Return what stands in a table where nothing is known; the words are there for those who hear the page."""
    return _nothing('<span class="none">–<span class="unseen"> {}</span></span>', _("not known"))


def not_known() -> Markup:
    """Return what stands elsewhere where nothing is known."""
    return _nothing('<span class="none">– {}</span>', _("not known"))


@cache
def _nothing(form: str, said: str) -> Markup:
    return Markup(form).format(said)  # noqa: S704 - the forms are those above


_EXACT = Context(prec=400)
_LARGEST = 1e9
_NEAR = 1e-6

Number = Decimal | float | int


def fixed(value: Number, places: int = 0) -> str:
    """Return a number with that many decimals, thin spaces between thousands and a true minus sign."""
    if type(value) is float and _rounds_as_binary(value, places):
        text = f"{value:,.{places}f}".replace(",", THIN)
    else:
        text = _rounded(value if isinstance(value, Decimal) else Decimal(repr(value)), places)
    decimal = speech().decimal
    return text if decimal == "." else text.replace(".", decimal)


def _rounds_as_binary(value: float, places: int) -> bool:
    """Tell whether a number rounds the same as it is written and as it is kept: half way between two it may not.

    Most of a page's numbers do, and so cost half as much.
    """
    scaled = value * 10.0**places
    return 0 < scaled < _LARGEST and abs(scaled % 1 - 0.5) > _NEAR


@lru_cache(maxsize=4096)
def _rounded(exact: Decimal, places: int) -> str:
    if not exact.is_finite():
        return str(exact)
    rounded = exact.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP, context=_EXACT)
    text = f"{rounded.copy_abs():,f}".replace(",", THIN)
    return f"\u2212{text}" if rounded < 0 else text


def _nearest(value: float) -> int:
    """Return the whole number nearest to one that is not less than nought; from a half on the next."""
    whole = int(value)
    return whole + (value - whole >= 0.5)  # noqa: PLR2004 - a half


def brief_number(value: Number, places: int = 1) -> str:
    """Return a number with at most that many decimals, without noughts at its end that say nothing."""
    whole, mark, rest = fixed(value, places).partition(speech().decimal)
    return f"{whole}{mark}{rest.rstrip('0')}" if rest.strip("0") else whole


def _shows(places: int, unit: str = "") -> Callable[[Number | None], str]:
    """Return a filter for numbers with that many decimals: bare ones for tables, or with a unit to stand by themselves."""

    def show(value: Number | None) -> str:
        if value is None:
            return not_known() if unit else missing()
        return f"{fixed(value, places)}{THIN}{_(unit)}" if unit else fixed(value, places)

    return show


count = _shows(0)
kilograms = _shows(0)
kilograms_unit = _shows(0, "kg")
per_hour = _shows(0, N_("kg/h"))
hours = _shows(1)
hours_unit = _shows(1, N_("h"))
days = _shows(1)
days_unit = _shows(1, DAYS)
miles = _shows(1)
miles_unit = _shows(1, N_("nm"))
knots = _shows(1)
knots_unit = _shows(1, N_("kn"))
square_km = _shows(2)
square_km_unit = _shows(2, "km²")
ratio = _shows(1)
percent = _shows(1)
percent_unit = _shows(0, "%")
celsius = _shows(1)
celsius_unit = _shows(1, "°C")
metres = _shows(0)
metres_unit = _shows(0, "m")


def thousand_pounds(value: Decimal | None) -> str:
    """Return kilograms as thousands of pounds avoirdupois."""
    return missing() if value is None else fixed(value / POUND_KG / 1000)


def money(value: Decimal | None) -> str:
    """Return a sum of money with two decimals; a price that has more is rounded."""
    return missing() if value is None else fixed(value, 2)


def fathoms(value: float | None) -> str:
    """Return a depth in metres as fathoms."""
    return missing() if value is None else fixed(value / METRES_PER_FATHOM)


def weight(value: Number | None) -> str:
    """Return a weight to stand by itself: kilograms below a tonne, tonnes from there on."""
    if value is None:
        return not_known()
    if -1000 < value < 1000:  # noqa: PLR2004 - kilograms in a tonne
        return kilograms_unit(value)
    return f"{tonnes(value)}{THIN}t"


def tonnes(value: Number | None) -> str:
    """Return kilograms as tonnes with two decimals below ten of them, one above."""
    if value is None:
        return missing()
    exact = value if isinstance(value, Decimal) else Decimal(repr(value))
    return fixed(exact.scaleb(-3, context=_EXACT), 2 if abs(exact) < 10_000 else 1)  # noqa: PLR2004 - ten tonnes


def hours_minutes(value: float | None) -> str:
    """Return hours as `1:35`, rounded to the minute."""
    if value is None or not isfinite(value):
        return missing()
    minutes = _nearest(abs(value * 60))
    sign = "\u2212" if value < 0 < minutes else ""
    return f"{sign}{minutes // 60}:{minutes % 60:02d}"


def took(value: timedelta | None) -> str:
    """Return a length of time as `2:15` hours and minutes."""
    return hours_minutes(None if value is None else value / timedelta(hours=1))


def offset_words(offset: timedelta) -> str:
    """Return an offset from UTC as `UTC` or `UTC+01:00`."""
    if not offset:
        return "UTC"
    minutes = abs(offset) // timedelta(minutes=1)
    return f"UTC{'-' if offset < timedelta(0) else '+'}{minutes // 60:02d}:{minutes % 60:02d}"


def other_clock(moment: datetime, said: timedelta | None) -> str:
    """Return a moment's offset with a space before it, where that is not the one already `said` of the page."""
    offset = moment.utcoffset()
    return "" if offset is None or offset == said else f" {offset_words(offset)}"


def clock(moment: datetime | None, said: timedelta | None = None) -> str:
    """Return the time of day, `18:10`; with its offset where that is not the one `said` of the whole page."""
    return missing() if moment is None else f"{moment.hour:02d}:{moment.minute:02d}{other_clock(moment, said)}"


def day(when: date | None) -> str:
    """Return `Thursday 5 March 2026`."""
    return missing() if when is None else _date(_c("date", "{weekday} {day} {month} {year}"), when)


def short_day(when: date | None) -> str:
    """Return `Thu 5 March`."""
    return missing() if when is None else _date(_c("date", "{wkd} {day} {month}"), when)


def brief_day(when: date) -> str:
    """Return `Thu 5 Mar`."""
    return _date(_c("date", "{wkd} {day} {mon}"), when)


def full_date(when: date | None) -> str:
    """Return `5 March 2026`."""
    return missing() if when is None else _date(_c("date", "{day} {month} {year}"), when)


def brief_date(when: date | None) -> str:
    """Return `5 Mar 2026`."""
    return missing() if when is None else _date(_c("date", "{day} {mon} {year}"), when)


def weekday(when: date) -> str:
    """Return `Thu`."""
    return speech().brief_weekdays[when.weekday()]


def moment(when: datetime | None, said: timedelta | None = None) -> str:
    """Return `5 March 2026, 18:10`; with its offset where that is not the one `said` of the whole page."""
    if when is None:
        return missing()
    return _c("date", "{date}, {time}").format(date=full_date(when), time=clock(when, said))


def brief(when: datetime | None, said: timedelta | None = None) -> str:
    """Return `Thu 5 March 18:10`, for where the year is plain."""
    return missing() if when is None else f"{short_day(when)} {clock(when, said)}"


def month_name(number: int) -> str:
    """Return `March` for 3, to stand by itself."""
    return capital(speech().months[number - 1])


def month_names() -> tuple[str, ...]:
    """Return the names of the months, to stand by themselves."""
    return tuple(month_name(number) for number in range(1, 13))


def brief_month(number: int) -> str:
    """Return `Mar` for 3."""
    return speech().brief_months[number - 1]


def month(text: str) -> str:
    """Return `March 2026` for `2026-03`."""
    year, _dash, number = text.partition("-")
    return f"{month_name(int(number))} {year}"


def _date(form: str, when: date) -> str:
    """Return a date in the form that the language gives dates."""
    return _dated(form, when, speech())


@lru_cache(maxsize=4096)
def _dated(form: str, when: date, now: Speech) -> str:
    number = when.month - 1
    return form.format(
        weekday=now.weekdays[when.weekday()],
        wkd=now.brief_weekdays[when.weekday()],
        day=when.day,
        month=now.months[number],
        mon=now.brief_months[number],
        year=when.year,
    )


def _angle(degrees: float, width: int, letters: str) -> str:
    """Return an angle in degrees and decimal minutes with its letter, as charts are marked."""
    whole, rest = divmod(_nearest(abs(degrees) * 600), 600)
    letter = letters[0] if degrees >= 0 else letters[1]
    return f"{whole:0{width}d}°{rest // 10:02d}.{rest % 10}′{letter}"


def position(place: Position | None) -> str:
    """Return a position as `58°52.4′N 015°10.0′W`."""
    if place is None:
        return missing()
    return f"{_angle(place.latitude, 2, 'NS')} {_angle(place.longitude, 3, 'EW')}"


def words(text: str | None) -> str:
    """Return words as typed for a table, or the dash where there are none."""
    return text or missing()


def said(text: str | None) -> str:
    """Return words as typed to stand by themselves, or that they are not known."""
    return text or not_known()


def plain(text: str) -> str:
    """Return what is shown as plain text, for where no HTML can stand."""
    return _("not known") if text in (missing(), not_known()) else text


def capital(text: str) -> str:
    """Return a phrase of our own with a capital first letter."""
    return text[:1].upper() + text[1:]


def sentence(text: str) -> str:
    """Return a phrase of our own as a sentence: with a capital first letter and an end."""
    return capital(text) if text.endswith(("?", "!", ".")) else f"{capital(text)}."


def many(number: int, noun: str, plural: str) -> str:
    """Return `1 tow`, `12 tows`; both words are phrases of the catalogue."""
    return f"{fixed(number)} {_n(noun, plural, number)}"


def one_line(text: str, most: int = 40) -> str:
    """Return a name for a chart or a title: on one line, cut where it is over long."""
    line = " ".join(text.split())
    return line if len(line) <= most else line[: most - 1].rstrip() + "…"


FILTERS: Mapping[str, Callable[..., Any]] = {
    "brief": brief,
    "brief_date": brief_date,
    "brief_day": brief_day,
    "capital_first": capital,
    "celsius": celsius,
    "celsius_unit": celsius_unit,
    "clock": clock,
    "count_of": count,
    "day": day,
    "days": days,
    "days_unit": days_unit,
    "fathoms": fathoms,
    "full_date": full_date,
    "hours": hours,
    "hours_minutes": hours_minutes,
    "hours_unit": hours_unit,
    "kilograms": kilograms,
    "kilograms_unit": kilograms_unit,
    "knots": knots,
    "knots_unit": knots_unit,
    "metres": metres,
    "metres_unit": metres_unit,
    "miles": miles,
    "miles_unit": miles_unit,
    "money": money,
    "moment": moment,
    "offset_words": offset_words,
    "month": month,
    "per_hour": per_hour,
    "other_clock": other_clock,
    "percent": percent,
    "percent_unit": percent_unit,
    "position": position,
    "ratio": ratio,
    "said": said,
    "short_day": short_day,
    "sentence": sentence,
    "square_km": square_km,
    "square_km_unit": square_km_unit,
    "thousand_pounds": thousand_pounds,
    "tonnes": tonnes,
    "took": took,
    "weight": weight,
    "words": words,
}
"""The names they go by in templates."""
