"""What the archive knows of each ground: by month, depth and year, the same weeks of other years, what befell the gear."""

from collections.abc import Iterable, Sequence
from datetime import MAXYEAR, MINYEAR, date, datetime, timedelta

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures, GroupFigures
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.places import GroundFigures, TowMark
from logbook.reckon.listed import Listed, best_of, grouped, listed, species_of, summed

_BEST = 12
_BAND_M = 50
_WEEKS = timedelta(weeks=3)
_HALF_A_YEAR = timedelta(weeks=26)


def reckon_grounds(trips: Sequence[Reckoned], figures: FleetFigures) -> tuple[GroundFigures, ...]:
    """Return what is known of every ground that a tow names, the most fished first.

    The same weeks are those round the last word of the archive, so that the same logs always give the same figures.
    """
    tows = grouped(listed(trips), lambda one: fold_name(one.tow.ground) if one.tow.ground is not None else None)
    latest = max((trip.figures.trip.last_word for trip in trips), default=None)
    return tuple(
        _ground(name, group, tows[fold_name(name)], figures, latest)
        for name, group in figures.grounds.items()
        if fold_name(name) in tows
    )


def _ground(
    name: str, group: GroupFigures, tows: Sequence[Listed], figures: FleetFigures, latest: datetime | None
) -> GroundFigures:
    months = grouped(tows, lambda one: one.when.month if one.when is not None else None)
    depths = grouped(tows, lambda one: int(one.tow.depth_m // _BAND_M) if one.tow.depth_m is not None else None)
    years = grouped(tows, lambda one: one.when.year if one.when is not None else None)
    return GroundFigures(
        name=name,
        group=group,
        by_month=tuple((month, summed(str(month), own)) for month, own in sorted(months.items())),
        by_depth=ByName((_band(band), summed(_band(band), own)) for band, own in sorted(depths.items())),
        by_year=_years(years),
        species=species_of(tows),
        weeks=(latest - _WEEKS, latest + _WEEKS) if latest is not None else None,
        same_weeks=same_weeks(tows, latest),
        best=best_of(tows, None, _BEST),
        fasts=tuple(
            mark for mark in figures.fasts if mark.ground is not None and fold_name(mark.ground) == fold_name(name)
        ),
        damage=tuple(_damage(tows)),
    )


def _band(band: int) -> str:
    return f"{band * _BAND_M}–{(band + 1) * _BAND_M} m"


def _years(groups: dict[int, list[Listed]]) -> ByName[GroupFigures]:
    return ByName((str(year), summed(str(year), own)) for year, own in sorted(groups.items(), reverse=True))


def same_weeks(tows: Iterable[Listed], moment: datetime | None, weeks: timedelta = _WEEKS) -> ByName[GroupFigures]:
    """Return the sums of the same weeks of every year, the latest first; weeks over the turn of a year are named `2025–26`."""
    years = grouped(
        in_same_weeks(tows, moment, weeks),
        lambda one: year_of(one.when, moment, weeks) if one.when is not None and moment is not None else None,
    )
    named = [
        (_name(year, moment, weeks), own) for year, own in sorted(years.items(), reverse=True) if moment is not None
    ]
    return ByName((name, summed(name, own)) for name, own in named)


def _name(year: int, moment: datetime, weeks: timedelta) -> str:
    """Return the name of some weeks: the year they lie in, or the two."""
    day = _day_in(moment.date(), year).toordinal()
    first, last = max(day - weeks.days, 1), min(day + weeks.days, date.max.toordinal())
    began, ended = date.fromordinal(first).year, date.fromordinal(last).year
    return str(year) if began == ended or weeks >= _HALF_A_YEAR else f"{began}–{ended % 100:02}"


def in_same_weeks(tows: Iterable[Listed], moment: datetime | None, weeks: timedelta = _WEEKS) -> list[Listed]:
    """Return the tows that were made within so many weeks of a moment's day, in whatever year."""
    return [
        one
        for one in tows
        if moment is not None and one.when is not None and year_of(one.when, moment, weeks) is not None
    ]


def year_of(when: datetime, moment: datetime, weeks: timedelta) -> int | None:
    """Return the year whose weeks a time lies in, over the turn of the year as well.

    Args:
        when: The time; its day is that of its own clock.
        moment: Its day of the year is the middle of the weeks.
        weeks: How long before and after that day, in whole days.

    Returns:
        The year of the nearest such day; None where none is near enough.
    """
    years = [year for year in (when.year - 1, when.year, when.year + 1) if MINYEAR <= year <= MAXYEAR]
    away, year = min((abs(when.date() - _day_in(moment.date(), year)), year) for year in years)
    return year if away <= weeks else None


def _day_in(day: date, year: int) -> date:
    """Return the same day of another year; 29 February becomes the day after where there is none."""
    try:
        return day.replace(year=year)
    except ValueError:
        return date(year, 3, 1)


def _damage(tows: Iterable[Listed]) -> Iterable[TowMark]:
    """Give the tows whose gear was damaged or lost, with the words of the log."""
    for one in tows:
        log = one.log
        words = "; ".join(said for said in (log.damage, log.gear_lost) if said) if log is not None else ""
        if words:
            yield one.mark(words=words)
