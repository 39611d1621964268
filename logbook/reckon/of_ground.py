"""What the archive knows of each ground: by month, depth and year, the same weeks of other years, what befell the gear."""

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import FleetFigures, GroupFigures
from logbook.model.named import ByName
from logbook.model.names import fold_name
from logbook.model.places import GroundFigures, TowMark
from logbook.reckon.listed import Listed, best_of, grouped, listed, species_of, summed

_BEST = 12
_BAND_M = 50
_WEEKS = timedelta(weeks=3)


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
    same = grouped(in_same_weeks(tows, latest), lambda one: one.when.year if one.when is not None else None)
    return GroundFigures(
        name=name,
        group=group,
        by_month=tuple((month, summed(str(month), own)) for month, own in sorted(months.items())),
        by_depth=ByName((_band(band), summed(_band(band), own)) for band, own in sorted(depths.items())),
        by_year=_years(years),
        species=species_of(tows),
        weeks=(latest - _WEEKS, latest + _WEEKS) if latest is not None else None,
        same_weeks=_years(same),
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


def in_same_weeks(tows: Iterable[Listed], moment: datetime | None, weeks: timedelta = _WEEKS) -> list[Listed]:
    """Return the tows that were made within so many weeks of a moment's day, in whatever year."""
    return [one for one in tows if moment is not None and one.when is not None and is_near(one.when, moment, weeks)]


def is_near(when: datetime, moment: datetime, weeks: timedelta) -> bool:
    """Tell whether a time lies within so many weeks of a moment's day of the year, over the turn of the year as well."""
    for year in (when.year - 1, when.year, when.year + 1):
        day = _day_in(moment, year)
        if day is not None and abs(when - day) <= weeks:
            return True
    return False


def _day_in(moment: datetime, year: int) -> datetime | None:
    """Return the same day of another year; 29 February becomes the day after where there is none."""
    try:
        return moment.replace(year=year)
    except ValueError:
        return None if not 1 <= year <= 9999 else moment.replace(year=year, month=3, day=1)  # noqa: PLR2004 - years there are


def _damage(tows: Iterable[Listed]) -> Iterable[TowMark]:
    """Give the tows whose gear was damaged or lost, with the words of the log."""
    for one in tows:
        log = one.log
        words = "; ".join(said for said in (log.damage, log.gear_lost) if said) if log is not None else ""
        if words:
            yield one.mark(words=words)
