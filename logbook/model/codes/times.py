"""Times, days, and what is legal but doubtful, explained."""

from logbook.model.codes.entry import Chapter, Where, explained

TIMES = Chapter(
    id="times",
    title="Times and days",
    entries=(
        explained(
            "day-unreadable",
            "A day among the tows is no date, or nothing before it tells its year.",
            "The line is left out; times that follow are put in order by those before.",
            "- day: the next one\n- 1810-1940, cod 2 baskets",
            "- day: 2026-03-05\n- 1810-1940, cod 2 baskets",
            Where.TOWS,
        ),
        explained(
            "duration-range",
            "A length of time is longer than anything at sea takes.",
            "It is not used.",
            "gear:\n  - {at: 23:00, net: rockhopper, event: mended, took: 4000 days}",
            "gear:\n  - {at: 23:00, net: rockhopper, event: mended, took: 4 h}",
        ),
        explained(
            "duration-unreadable",
            "This is no length of time.",
            "It is not used.",
            "gear:\n  - {at: 23:00, net: rockhopper, event: mended, took: a while}",
            "gear:\n  - {at: 23:00, net: rockhopper, event: mended, took: 1 h 20 min}",
        ),
        explained(
            "hauled-before-shot",
            "By their dates a tow was hauled before it was shot.",
            "The time of hauling is not used.",
            "- {shot: 2026-03-05 22:30, hauled: 2026-03-05 21:30}",
            "- {shot: 2026-03-05 20:30, hauled: 2026-03-05 21:30}",
            Where.TOWS,
        ),
        explained(
            "hours-unreadable",
            "The hours of a watch are spans of full hours or times that don't overlap, and these are not.",
            "The watch has no hours.",
            "watches: {port: 00-06 04-18, starboard: 06-12 18-24}",
            "watches: {port: 00-06 12-18, starboard: 06-12 18-24}",
        ),
        explained(
            "no-such-day",
            "There is no such day in the calendar.",
            "The time is not used.",
            "- {shot: 2026-03-32 18:10}",
            "- {shot: 2026-03-31 18:10}",
            Where.TOWS,
        ),
        explained(
            "no-such-time",
            "There is no such time of day; hours go to 23, minutes to 59.",
            "The time is not used.",
            "- {shot: 25:10}",
            "- {shot: 21:10}",
            Where.TOWS,
        ),
        explained(
            "period-backwards",
            "A period ends before it begins.",
            "The period is not used.",
            "rest:\n  - {who: A. Fell, from: 2026-03-05 06:00, to: 2026-03-05 02:00}",
            "rest:\n  - {who: A. Fell, from: 2026-03-05 02:00, to: 2026-03-05 06:00}",
        ),
        explained(
            "time-24",
            "24:00 may mean midnight at either end of its day.",
            "The time is not used.",
            "- {shot: 22:00, hauled: 24:00}",
            "- {shot: 22:00, hauled: 00:00}",
            Where.TOWS,
        ),
        explained(
            "time-before-bare",
            "A time without its date comes out after one that follows it in the log and has its date. One of the two is a slip.",
            "The time without its date is not used, since the written date is more certain.",
            "- {shot: 2026-03-05 22:00, hauled: 2026-03-05 22:30}\n- {shot: 23:00, hauled: 23:50}\n- {shot: 2026-03-05 23:30, hauled: 23:55}",
            "- {shot: 2026-03-05 22:00, hauled: 2026-03-05 22:30}\n- {shot: 22:40, hauled: 23:20}\n- {shot: 2026-03-05 23:30, hauled: 23:55}",
            Where.TOWS,
        ),
        explained(
            "time-clock-change",
            "The clock of the log's zone changes that night, so the time comes twice, or not at all.",
            "The earlier reading is taken.",
            "vessel: Solan Bright\nzone: Europe/Oslo\nsailed: 2026-10-24 20:00\ntows:\n  - {shot: 2026-10-25 02:30, hauled: 2026-10-25 05:00}",
            "vessel: Solan Bright\nzone: Europe/Oslo\nsailed: 2026-10-24 20:00\ntows:\n  - {shot: 2026-10-25 02:30 +01:00, hauled: 2026-10-25 05:00}",
            Where.WHOLE,
        ),
        explained(
            "time-doubtful",
            "A time without its date is put on the first day that it fits, and that is long after what came before it. A line may be missing, or a figure wrong.",
            "It is used as it came out.",
            "- 0610-0740, cod 2 baskets\n- 2350-2355, cod 2 baskets",
            "- 0610-0740, cod 2 baskets\n- {shot: 2026-03-04 23:50, hauled: 23:55, catch: {cod: 2 baskets}}",
            Where.TOWS,
        ),
        explained(
            "time-no-anchor",
            "A time without its date counts from what came before it, and nothing before it has a date.",
            "The time is not used.",
            "vessel: Solan Bright\ntows:\n  - {shot: 18:10, hauled: 2026-03-04 19:40}",
            "vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - {shot: 18:10, hauled: 2026-03-04 19:40}",
            Where.WHOLE,
        ),
        explained(
            "time-style",
            "The time is written as it is not done here, with a dot or with am and pm.",
            "It is read as meant; with a dot it wants a look, since it may be a number.",
            "- {shot: 6.40 pm, hauled: 8:10 pm}",
            "- {shot: 18:40, hauled: 20:10}",
            Where.TOWS,
        ),
        explained(
            "time-too-long",
            "A time without its date comes out more than twelve hours after what it belongs to, which no haul and no landing takes. Mostly it is a slip of a figure.",
            "The time is not used, and nothing is reckoned from it.",
            "- {shot: 06:10, hauled: 19:40}",
            "- {shot: 06:10, hauled: 07:40}",
            Where.TOWS,
        ),
        explained(
            "time-unreadable",
            "This is no time.",
            "The time is not used.",
            "- {shot: half past six}",
            "- {shot: 18:30}",
            Where.TOWS,
        ),
        explained(
            "weekday-wrong",
            "The weekday and the date of a line don't belong together, so one of the two is a slip.",
            "The day is not used.",
            "- day: Mon 6 March\n- 0810-0940, cod 2 baskets",
            "- day: Fri 6 March\n- 0810-0940, cod 2 baskets",
            Where.TOWS,
        ),
        explained(
            "zone-unknown",
            "There is no such time zone.",
            "The vessel's zone holds, else the fleet's, else UTC; times may be hours wrong.",
            "zone: Atlantis",
            "zone: Europe/Oslo",
        ),
    ),
)

_LOOK = "It is used as it stands."


def _tows(catches: tuple[int, ...], depths: tuple[int, ...]) -> str:
    """Return tows two hours apart, each with a catch in baskets and a depth."""
    each = enumerate(zip(catches, depths, strict=True), 3)
    return "\n".join(f"- {2 * n:02}10-{2 * n + 1:02}10, {depth} fm, cod {count} baskets" for n, (count, depth) in each)


_CATCHES, _DEPTHS = (4, 5, 4, 4, 5), (98, 99, 97, 99, 96)

DOUBTS = Chapter(
    id="doubts",
    title="Legal but doubtful",
    entries=(
        explained(
            "catch-odd",
            "A catch is ten times the usual one of the trip or more, or a tenth of it or less: often a slip of a nought or of the unit.",
            _LOOK,
            _tows((4, 5, 4, 4, 50), _DEPTHS),
            _tows(_CATCHES, _DEPTHS),
            Where.TOWS,
        ),
        explained(
            "depth-odd",
            "A depth is ten times the usual one of the trip or more, or a tenth of it or less: often a slip of a nought or of the unit.",
            _LOOK,
            _tows(_CATCHES, (98, 99, 97, 990, 96)),
            _tows(_CATCHES, _DEPTHS),
            Where.TOWS,
        ),
        explained(
            "future",
            "A date lies in the future by the clock of this computer. The year may be a slip, or the clock wrong. Only `logbook check` says so, since the same logs must give the same archive on any day.",
            _LOOK,
            "vessel: Solan Bright\nsailed: 2099-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets",
            "vessel: Solan Bright\nsailed: 2025-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets",
            Where.WHOLE,
        ),
        explained(
            "ice-grew",
            "More ice is left than at the reading before, and none was taken aboard in between.",
            _LOOK,
            "readings:\n  - {at: 21:00, ice left: 9 t}\n  - {at: 22:00, ice left: 11 t}",
            "readings:\n  - {at: 21:00, ice left: 9 t}\n  - {at: 22:00, ice left: 8.8 t}",
        ),
        explained(
            "logs-overlap",
            "Two logs of one vessel are of the same time: one has a wrong date, or both are of the same trip.",
            "Both trips are kept.",
            "A log of a vessel that sails on 14 March, beside another of hers that docks on 16 March.",
            "The first of the two docks before the second sails.",
            Where.FILE,
        ),
        explained(
            "position-jump",
            "A position is so far from the one before it that she would have steamed at more than one and a half times her speed. A degree may be a slip.",
            _LOOK,
            "- {shot: 06:10, hauled: 07:10, from: 58 52.4N 015 10.0W, to: 58 49.0N 015 10.0W}\n- {shot: 08:10, hauled: 09:10, from: 60 52.4N 015 10.0W}",
            "- {shot: 06:10, hauled: 07:10, from: 58 52.4N 015 10.0W, to: 58 49.0N 015 10.0W}\n- {shot: 08:10, hauled: 09:10, from: 58 50.4N 015 10.0W}",
            Where.TOWS,
        ),
        explained(
            "same-trip",
            "Two logs of one vessel sail at the same minute: one is a copy of the other.",
            "Both are kept, and all that was caught counts twice until one is taken away.",
            "A log and its copy, trip.yaml and trip - Copy.yaml, in one folder.",
            "One log a trip; copies elsewhere, or with names that end in .bak.",
            Where.FILE,
        ),
        explained(
            "tow-outside-trip",
            "A tow lies before she sailed or after she docked.",
            _LOOK,
            "- {shot: 2026-03-04 04:00, hauled: 05:00}",
            "- {shot: 2026-03-04 06:00, hauled: 07:00}",
            Where.TOWS,
        ),
        explained(
            "towing-speed",
            "By its positions and times a tow went faster than six knots or slower than one.",
            _LOOK,
            "- {shot: 06:10, hauled: 07:10, from: 58 52.4N 015 10.0W, to: 58 30.0N 015 10.0W}",
            "- {shot: 06:10, hauled: 07:10, from: 58 52.4N 015 10.0W, to: 58 49.0N 015 10.0W}",
            Where.TOWS,
        ),
        explained(
            "tows-overlap",
            "A tow is shot before the one before it is hauled.",
            _LOOK,
            "- 1810-1940, cod 2 baskets\n- 1930-2100, cod 2 baskets",
            "- 1810-1940, cod 2 baskets\n- 2030-2200, cod 2 baskets",
            Where.TOWS,
        ),
        explained(
            "trip-long",
            "Something lies months after the trip began, most likely for a slip in a year.",
            _LOOK,
            "- {shot: 2027-03-04 18:10}",
            "- {shot: 2026-03-04 18:10}",
            Where.TOWS,
        ),
    ),
)
