"""What the archive knows of each ground: by month, depth and year, the same weeks of other years, what befell the gear."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import MAXYEAR, MINYEAR, date, datetime, timedelta

from msgspec.structs import replace

from logbook.model.fleet_figures import GroupFigures
from logbook.model.gear import FastMark
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.places import GroundFigures, TowMark
from logbook.model.tally import Days, GroundTally, Mishaps, Sums, Tally
from logbook.reckon.fleet import fasts_in_order
from logbook.reckon.groups import most_fished
from logbook.reckon.listed import species_of
from logbook.reckon.sums import added, figures_of
from logbook.reckon.tally import BAND_M

WEEKS = timedelta(weeks=3)
_HALF_A_YEAR = timedelta(weeks=26)

DayByDay = Mapping[int, Sums]
"""A trip's tows by the number of their day in the calendar that began in the year 1."""


def reckon_grounds(
    tally: Tally, days: Iterable[Days], mishaps: Sequence[Mishaps], latest: datetime | None
) -> Iterator[GroundFigures]:
    """Give what is known of every ground that a tow names, the most fished first.

    Args:
        tally: Of all trips.
        days: Of those trips at least that fished within three weeks of the day of the latest word, in whatever year.
        mishaps: Of all trips.
        latest: The last word of the archive: the same weeks are those round it, so that the same logs always give the same figures.
    """
    by_day: dict[str, list[DayByDay]] = {}
    for trip in days:
        for folded, own in trip.grounds.items():
            by_day.setdefault(folded, []).append(own)
    fasts: dict[str, list[FastMark]] = {}
    for fast in fasts_in_order(mishaps):
        fasts.setdefault(fold_name(fast.ground or ""), []).append(fast)
    damage: dict[str, list[TowMark]] = {}
    for mark in (mark for one in mishaps for mark in one.damage):
        damage.setdefault(fold_name(mark.ground or ""), []).append(mark)
    folded_names = {ground.name: folded for folded, ground in tally.grounds.items()}
    groups = most_fished([figures_of(ground.name, ground.sums) for ground in tally.grounds.values()])
    for name, group in groups.items():
        folded = folded_names[name]
        yield replace(
            _ground(tally.grounds[folded], group),
            weeks=(latest - WEEKS, latest + WEEKS) if latest is not None else None,
            same_weeks=same_weeks(by_day.get(folded, ()), latest),
            fasts=tuple(fasts.get(folded, ())),
            damage=tuple(damage.get(folded, ())),
        )


def _ground(ground: GroundTally, group: GroupFigures) -> GroundFigures:
    return GroundFigures(
        name=ground.name,
        group=group,
        by_month=tuple((month, figures_of(str(month), own)) for month, own in sorted(ground.months.items())),
        by_depth=ByName((_band(band), figures_of(_band(band), own)) for band, own in sorted(ground.bands.items())),
        by_year=ByName(
            (str(year), figures_of(str(year), own)) for year, own in sorted(ground.years.items(), reverse=True)
        ),
        species=species_of(ground.species, ground.sums),
        weeks=None,
        same_weeks=ByName(),
        best=ground.best,
        fasts=(),
    )


def _band(band: int) -> str:
    return f"{band * BAND_M}–{(band + 1) * BAND_M} m"


def same_weeks(trips: Iterable[DayByDay], moment: datetime | None, weeks: timedelta = WEEKS) -> ByName[GroupFigures]:
    """Return the sums of the same weeks of every year, the latest first; weeks over the turn of a year are named `2025–26`.

    Args:
        trips: Each trip's tows by day.
        moment: Its day is the middle of the weeks; without it there are none.
        weeks: How long before and after that day, in whole days.
    """
    if moment is None:
        return ByName()
    years: dict[int, list[Sums]] = {}
    for days in trips:
        own: dict[int, list[Sums]] = {}
        for day, sums in days.items():
            year = year_of(date.fromordinal(day), moment, weeks)
            if year is not None:
                own.setdefault(year, []).append(sums)
        for year, parts in own.items():
            years.setdefault(year, []).append(_of_one_trip(added(parts)))
    named = [(_name(year, moment, weeks), own) for year, own in sorted(years.items(), reverse=True)]
    return ByName((name, figures_of(name, added(own))) for name, own in named)


def _of_one_trip(sums: Sums) -> Sums:
    return replace(sums, trips=1)


def _name(year: int, moment: datetime, weeks: timedelta) -> str:
    """Return the name of some weeks: the year they lie in, or the two."""
    day = _day_in(moment.date(), year).toordinal()
    first, last = max(day - weeks.days, 1), min(day + weeks.days, date.max.toordinal())
    began, ended = date.fromordinal(first).year, date.fromordinal(last).year
    return str(year) if began == ended or weeks >= _HALF_A_YEAR else f"{began}–{ended % 100:02}"


def year_of(day: date, moment: datetime, weeks: timedelta) -> int | None:
    """Return the year whose weeks a day lies in, over the turn of the year as well.

    Args:
        day: The day.
        moment: Its day of the year is the middle of the weeks.
        weeks: How long before and after that day, in whole days.

    Returns:
        The year of the nearest such day; None where none is near enough.
    """
    years = [year for year in (day.year - 1, day.year, day.year + 1) if MINYEAR <= year <= MAXYEAR]
    away, year = min((abs(day - _day_in(moment.date(), year)), year) for year in years)
    return year if away <= weeks else None


def may_touch(first: date, last: date, moment: datetime, weeks: timedelta = WEEKS) -> bool:
    """Tell whether any day from one to another lies within so many weeks of a moment's day, in whatever year."""
    for year in range(max(first.year - 1, MINYEAR), min(last.year + 1, MAXYEAR) + 1):
        middle = _day_in(moment.date(), year).toordinal()
        if middle - weeks.days <= last.toordinal() and first.toordinal() <= middle + weeks.days:
            return True
    return False


def _day_in(day: date, year: int) -> date:
    """Return the same day of another year; 29 February becomes the day after where there is none."""
    try:
        return day.replace(year=year)
    except ValueError:
        return date(year, 3, 1)
