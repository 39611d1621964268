"""Sales that lie ahead."""

from datetime import UTC, date, datetime, time, timedelta
from itertools import islice

import pytest

from logbook.model.fleet import Sale
from logbook.reckon.sales import clocks, coming_sales
from tests.reckon.build import moment

WEEKDAYS = Sale(days=(0, 1, 2, 3, 4), time=time(7), all_ashore_before=timedelta(hours=3), none_on=(date(2026, 4, 3),))


def sales(after: str, zone: str = "UTC", of: Sale | None = WEEKDAYS, count: int = 3) -> list[str]:
    return [sale.at.isoformat() for sale in islice(coming_sales(of, zone, moment(after)), count)]


def test_sales_are_on_their_days_but_not_on_those_left_out() -> None:
    # 2 April 2026 is a Thursday, 3 April Good Friday.
    assert sales("2026-04-01 07:00") == [
        "2026-04-02T07:00:00+00:00",
        "2026-04-06T07:00:00+00:00",
        "2026-04-07T07:00:00+00:00",
    ]


def test_the_sale_of_the_day_counts_until_it_begins() -> None:
    assert sales("2026-04-01 06:59", count=1) == ["2026-04-01T07:00:00+00:00"]


def test_all_must_be_ashore_so_long_before_it() -> None:
    (sale,) = islice(coming_sales(WEEKDAYS, "UTC", moment("2026-04-01 06:59")), 1)

    assert sale.ashore_by == moment("2026-04-01 04:00")


def test_times_of_sale_are_by_the_fleets_clocks_over_a_change() -> None:
    # Directive 2000/84/EC: summer time began on 29 March 2026.
    assert sales("2026-03-27 08:00", "Europe/London", count=1) == ["2026-03-30T07:00:00+01:00"]
    assert sales("2026-03-26 08:00", "Europe/London", count=1) == ["2026-03-27T07:00:00+00:00"]
    assert sales("2026-03-26 23:30", "+01:00", count=1) == ["2026-03-27T07:00:00+01:00"]


def test_a_port_without_a_market_or_with_no_days_has_no_sales() -> None:
    assert sales("2026-04-01 07:00", of=None) == []
    assert sales("2026-04-01 07:00", of=Sale(days=(), time=time(7), all_ashore_before=timedelta(0))) == []


@pytest.mark.parametrize(("zone", "hours"), [("UTC", 0), ("+05:30", 5.5), ("-03:00", -3), ("Europe/Oslo", 1)])
def test_zones_are_read_as_the_fleet_file_has_them(zone: str, hours: float) -> None:
    there = datetime(2026, 1, 1, tzinfo=UTC).astimezone(clocks(zone))

    assert there.utcoffset() == timedelta(hours=hours)
