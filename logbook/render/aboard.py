"""How a trip stands, on one screen of a wheelhouse: `logbook aboard LOG`.

What is most dangerous stands first, then what is aboard, then how long it lasts, then what becomes of it on turning now or
later; at the end what was assumed and what none of it is.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime
from decimal import Decimal
from textwrap import wrap

from logbook.model.figures import Choice, PenFigures, Totals, TripFigures
from logbook.model.hail import HailedFish
from logbook.render import shown
from logbook.render.cautions import ICING, IN_SHORT
from logbook.render.clock import clock_of
from logbook.render.kept import TOO_FEW, by_species
from logbook.render.shown import one_line
from logbook.render.text import WIDTH, bare, table

BOUND_BY = {
    "ice days": "the first fish is over the limit before all of it is ashore",
    "ice": "the loose ice is gone before she docks",
    "hold": "the hold is full",
}
"""What binds the time to turn, in words."""

_BINDS = {"ice days": "too old", "ice": "ice gone", "hold": "hold full"}
_HEADS = ("Turn", "", "Docks", "Fish t", "Hold %", "Ice t", "Oldest", "Over t", "Sale", "Binds")
_INDENT = " " * 8
_NAME = 60
_BESIDE = ("put back", "swept", "live weight", "no distance", "no shot time", "no hauled time", "before it was shot")
"""Words of gaps that leave nothing out of what is aboard."""

_PENS_A_LINE = 8
_EXPECTED = 3
"""So many species have an out-turn expected on the screen."""


def aboard_text(figures: TripFigures, kept: Sequence[HailedFish]) -> str:
    """Return the screen, without a line's end after the last line.

    Args:
        figures: The trip's figures.
        kept: Its fish by species and grade, the grades of a species side by side.
    """
    screen = _Screen(figures, kept)
    parts = (
        screen.icing(),
        screen.head(),
        screen.fish(),
        screen.hold(),
        screen.ahead(),
        screen.choices(),
        _assumed(figures),
        wrap(IN_SHORT, WIDTH),
    )
    return "\n\n".join("\n".join(part) for part in parts if part)


class _Screen:
    """The parts of the screen, whose times are told by one clock."""

    def __init__(self, figures: TripFigures, kept: Sequence[HailedFish]) -> None:
        """Find the clock that most of the times have."""
        self.figures, self.kept = figures, kept
        self.clock = clock_of(_moments(figures))

    def when(self, moment: datetime) -> str:
        """Return `Tue 24 Nov 18:17`."""
        return f"{shown.brief_day(moment)} {shown.clock(moment, self.clock.offset)}"

    def icing(self) -> list[str]:
        """Return the line of ice on deck, as it was last looked at; none where there is no ice."""
        told = self.figures.weather
        if told.icing_on_deck is None:
            return []
        since = f", {self.when(told.icing_on_deck_at)}" if told.icing_on_deck_at is not None else ""
        return [f"ICE ON DECK: {told.icing_on_deck}{since}. {ICING.head}"]

    def head(self) -> list[str]:
        """Return which trip it is, and of when it stands so."""
        head = self.figures.trip
        name = one_line(f"{head.vessel}, trip {head.number}" if head.number else head.vessel, _NAME)
        if head.docked is not None:
            port = f" at {one_line(head.port)}" if head.port else ""
            return [
                f"{name}: {head.state}",
                *wrap(f"Docked {self.when(head.docked)}{port}. {self.clock.words}", WIDTH),
            ]
        later = f"; figures as of {self.when(head.as_of)}" if head.as_of != head.last_word else ""
        word = f"Last word {self.when(head.last_word)}{later}. {self.clock.words}"
        return [f"{name}: {head.state}", *wrap(word, WIDTH)]

    def fish(self) -> list[str]:
        """Return what is aboard by species and grade, the most of it first."""
        figures = self.figures
        gaps = [gap for gap in figures.totals.incomplete if not any(word in gap for word in _BESIDE)]
        return [
            _kept(figures.totals),
            *table(by_species(self.kept, _INDENT), "<><"),
            *(line for gap in gaps for line in wrap(f"{_INDENT}without {bare(gap)}", WIDTH, subsequent_indent=_INDENT)),
            *self._scale(),
        ]

    def _scale(self) -> list[str]:
        """Return what the scale may say of the most of the fish at sea, after how her earlier hails lay beside it."""
        hails = self.figures.hail
        if self.figures.trip.docked is not None or not any(hail.bias_trips for hail in hails.values()):
            return []
        told = [
            f"{one_line(name, 18)} {_tonnage(hail.expected_out_turn_kg)}"
            f" ({_tonnage(hail.expected_low_kg)} to {_tonnage(hail.expected_high_kg)})"
            for name, hail in hails.items()
            if hail.expected_out_turn_kg is not None
        ]
        words = (
            f"expected, as on her earlier trips: {', '.join(told[:_EXPECTED])}" if told else f"not expected: {TOO_FEW}"
        )
        return wrap(f"Scale   {words}", WIDTH, subsequent_indent=_INDENT)

    def hold(self) -> list[str]:
        """Return how full the pens are, the ice, and how old the fish is."""
        return [*self._pens(), *self._ice(), *self._age()]

    def _pens(self) -> Iterator[str]:
        pens = [
            f"{one_line(name, 6)} {_in_pen(pen)}" for name, pen in self.figures.pens.items() if pen.tows or pen.kept_kg
        ]
        width = max(map(len, pens), default=0) + 2
        in_line = min(_PENS_A_LINE, (WIDTH - len(_INDENT) + 2) // width)
        for n in range(0, len(pens), in_line):
            line = "".join(pen.ljust(width) for pen in pens[n : n + in_line]).rstrip()
            yield f"{'Pens' if n == 0 else '':<8}{line}"

    def _ice(self) -> Iterator[str]:
        ice, head = self.figures.ice, self.figures.trip
        if ice.left_kg is None:
            yield "Ice     loose ice not known: the log does not say what was loaded or left"
            return
        line = f"Ice     {bare(shown.weight(ice.left_kg))} loose, {ice.left_by}"
        if ice.lasts_until is not None and ice.lasts_until > head.as_of and head.docked is None:
            line += f"; gone {self.when(ice.lasts_until)}"
        yield line

    def _age(self) -> Iterator[str]:
        age = self.figures.age
        if age.oldest_ice_days is None:
            return
        oldest = f"oldest {_days(age.oldest_ice_days)} days, as if kept at 0 C {_days(age.oldest_equivalent_ice_days)}"
        mean = f"{_days(age.mean_ice_days)}, {_days(age.mean_equivalent_ice_days)}"
        mean = "not known" if age.mean_ice_days is None else mean
        yield f"Age     {oldest}; mean {mean}; limit {_days(age.limit_days)}"
        over = (age.oldest_equivalent_ice_days or 0) > age.limit_days
        if over or age.over_limit_kg:
            much = bare(shown.weight(age.over_limit_kg)) if age.over_limit_kg else "fish whose weight is not known"
            yield f"{_INDENT}OVER THE LIMIT: {much}"

    def ahead(self) -> list[str]:
        """Return when she docks, the next sale, and the time to turn with what binds it."""
        landing, state = self.figures.landing, self.figures.trip.state
        if state not in ("at sea", "homeward"):
            return []
        if landing.docked is None:
            return wrap(_not_known(self.figures), WIDTH, subsequent_indent=_INDENT)
        turned = "" if state == "homeward" else " if she turns now"
        lines = [
            f"Docks   {self.when(landing.docked)} at {one_line(landing.port or 'port')}{turned}, passage {bare(shown.miles_unit(landing.passage_nm))}"
        ]
        if landing.sales:
            sale = landing.sales[0]
            by = f"; to make it, turn by {self.when(sale.turn_for_home_by)}" if sale.turn_for_home_by else ""
            lines.append(f"Sale    {self.when(sale.at)}{by}")
        if state == "at sea":
            lines += self._turn()
        return lines

    def _turn(self) -> Iterator[str]:
        landing = self.figures.landing
        if landing.turn_for_home_by is None or landing.bound_by is None:
            yield "Turn    nothing that is logged binds the time to turn"
            return
        if landing.turn_for_home_by <= self.figures.trip.as_of:
            yield f"Turn    FOR HOME NOW: {BOUND_BY[landing.bound_by]}"
            return
        yield f"Turn    for home by {self.when(landing.turn_for_home_by)} at the latest:"
        yield f"        then {BOUND_BY[landing.bound_by]}"
        more = [
            f"{words} by {self.when(moment)}"
            for words, moment in (
                ("in poor weather", landing.turn_for_home_by_poor_weather),
                ("last shot", landing.last_shot_by),
            )
            if moment is not None
        ]
        if more:
            yield from wrap(f"{_INDENT}{'; '.join(more)}", WIDTH, subsequent_indent=_INDENT)

    def choices(self) -> list[str]:
        """Return how things would stand at docking, on turning now or later, a line each."""
        options = self.figures.landing.choices
        if not options or options[0].docked is None:
            return []
        now = options[0].turn
        return table([_HEADS, *(self._choice(choice, now) for choice in options)], "<<<>>>>><<")

    def _choice(self, choice: Choice, now: datetime) -> tuple[str, ...]:
        later = round((choice.turn - now).total_seconds() / 3600)
        return (
            f"+{later} h" if later else "now",
            _brief(choice.turn),
            _brief(choice.docked),
            _tonnes(choice.kept_kg),
            "-" if choice.hold_full_percent is None else bare(shown.fixed(choice.hold_full_percent)),
            _tonnes(choice.ice_left_kg),
            _days(choice.oldest_equivalent_ice_days),
            _over(choice, self.figures.age.limit_days),
            "-" if choice.sale is None else shown.brief_day(choice.sale),
            _BINDS.get(choice.bound_by or "", ""),
        )


def _kept(totals: Totals) -> str:
    """Return how much fish there is in all, and how full that makes the hold."""
    tows = bare(shown.many(totals.tows, "tow", "tows"))
    if totals.kept_kg is None:
        return f"Fish    {f'weight not known, {tows}' if totals.tows else 'no tows logged'}"
    full = totals.hold_full_percent
    room = f", hold {bare(shown.percent_unit(full))} full" if full is not None else ""
    return f"Fish    {bare(shown.weight(totals.kept_kg))} kept in {tows}{room}"


def _in_pen(pen: PenFigures) -> str:
    """Return how full a pen is; what lies in it where that can't be told."""
    if pen.full_percent is not None:
        return bare(shown.percent_unit(pen.full_percent))
    return "?" if pen.kept_kg is None else bare(shown.weight(pen.kept_kg))


def _over(choice: Choice, limit_days: float) -> str:
    """Return the tonnes over the limit; a question mark where some fish is, but of no known weight."""
    if choice.over_limit_kg:
        return _tonnes(choice.over_limit_kg)
    if (choice.oldest_equivalent_ice_days or 0) > limit_days:
        return "?"
    return "-" if choice.over_limit_kg is None else "none"


def _moments(figures: TripFigures) -> list[datetime]:
    head, landing = figures.trip, figures.landing
    found = [head.as_of, head.last_word, head.docked, landing.docked, landing.turn_for_home_by]
    return [moment for moment in found if moment is not None]


def _brief(moment: datetime | None) -> str:
    """Return `Tue 18:17`, for what lies within a week."""
    return "-" if moment is None else f"{shown.weekday(moment)} {moment:%H:%M}"


def _tonnes(kilograms: Decimal | float | None) -> str:
    return "-" if kilograms is None else bare(shown.fixed(kilograms / 1000, 1))


def _tonnage(kilograms: float | None) -> str:
    return bare(shown.weight(kilograms))


def _days(days: float | None) -> str:
    return "-" if days is None else bare(shown.fixed(days, 1))


def _not_known(figures: TripFigures) -> str:
    why = next((words for field, words in figures.landing.basis if field == "docked"), "not known")
    return f"Docks   {bare(why)}"


def _assumed(figures: TripFigures) -> list[str]:
    """Return what was filled in or left out, of what, each once."""
    parts = (("ice", figures.ice.basis), ("age", figures.age.basis), ("the way home", figures.landing.basis))
    said: list[str] = []
    told: set[str] = set()
    for what, basis in parts:
        ways = dict.fromkeys(
            part.removeprefix("assumed:").strip()
            for _, words in basis
            for part in words.split("; ")
            if "assumed:" in words or "left out" in words
        )
        new = [way for way in ways if way not in told]
        told.update(new)
        if new:
            said.append(f"{what}: {', '.join(new)}")
    return wrap(f"Assumed {bare('; '.join(said))}.", WIDTH, subsequent_indent=_INDENT) if said else []
