"""How a trip stands, on one screen of a wheelhouse: `logbook aboard LOG`.

What is most dangerous stands first, then what is aboard, then how long it lasts, then what becomes of it on turning now or
later; at the end what was assumed and what none of it is.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime
from textwrap import wrap

from logbook.model.figures import PenFigures, Totals, TripFigures
from logbook.model.hail import HailedFish
from logbook.model.language import N_
from logbook.render import shown
from logbook.render.aboard_choices import choices_table, days_or_dash
from logbook.render.cautions import ICING, IN_SHORT
from logbook.render.clock import clock_of
from logbook.render.kept import TOO_FEW, by_species
from logbook.render.language import _, _c
from logbook.render.shown import one_line
from logbook.render.text import WIDTH, bare, table, trip_name
from logbook.render.told import told

BOUND_BY = {
    "ice days": N_("the first fish is over the limit before all of it is ashore"),
    "ice": N_("the loose ice is gone before she docks"),
    "hold": N_("the hold is full"),
}
"""What binds the time to turn, in words; translated where they are shown."""

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
        choices_table(figures),
        _assumed(figures),
        wrap(_(IN_SHORT), WIDTH),
    )
    return "\n\n".join("\n".join(part) for part in parts if part)


def _labelled(label: str, words: str) -> str:
    """Return a line of the screen with what it is about before it."""
    return f"{label:<{len(_INDENT) - 1}} {words}"


def _wrapped(line: str) -> list[str]:
    return wrap(line, WIDTH, subsequent_indent=_INDENT)


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
        weather = self.figures.weather
        if weather.icing_on_deck is None:
            return []
        icing = _(weather.icing_on_deck)
        if weather.icing_on_deck_at is None:
            said = _("ICE ON DECK: {icing}.").format(icing=icing)
        else:
            said = _("ICE ON DECK: {icing}, {when}.").format(icing=icing, when=self.when(weather.icing_on_deck_at))
        return [f"{said} {_(ICING.head)}"]

    def head(self) -> list[str]:
        """Return which trip it is, and of when it stands so."""
        head = self.figures.trip
        name = trip_name(head)
        if head.docked is not None:
            said = _("Docked {when} at {port}.") if head.port else _("Docked {when}.")
            word = said.format(when=self.when(head.docked), port=one_line(head.port or ""))
        else:
            later = head.as_of != head.last_word
            said = _("Last word {when}; figures as of {as_of}.") if later else _("Last word {when}.")
            word = said.format(when=self.when(head.last_word), as_of=self.when(head.as_of))
        return [f"{one_line(name, _NAME)}: {_(head.state)}", *wrap(f"{word} {self.clock.words}", WIDTH)]

    def fish(self) -> list[str]:
        """Return what is aboard by species and grade, the most of it first."""
        figures = self.figures
        gaps = [gap for gap in figures.totals.incomplete if not any(word in gap for word in _BESIDE)]
        return [
            _kept(figures.totals),
            *table(by_species(self.kept, _INDENT), "<><"),
            *(line for gap in gaps for line in _wrapped(_INDENT + _("without {gap}").format(gap=bare(told(gap))))),
            *self._scale(),
        ]

    def _scale(self) -> list[str]:
        """Return what the scale may say of the most of the fish at sea, after how her earlier hails lay beside it."""
        hails = self.figures.hail
        if self.figures.trip.docked is not None or not any(hail.bias_trips for hail in hails.values()):
            return []
        expected = [
            _("{species} {weight} ({low} to {high})").format(
                species=one_line(name, 18),
                weight=_tonnage(hail.expected_out_turn_kg),
                low=_tonnage(hail.expected_low_kg),
                high=_tonnage(hail.expected_high_kg),
            )
            for name, hail in hails.items()
            if hail.expected_out_turn_kg is not None
        ]
        if expected:
            said = _("expected, as on her earlier trips: {species}").format(species=", ".join(expected[:_EXPECTED]))
        else:
            said = _("not expected: {why}").format(why=_(TOO_FEW))
        return _wrapped(_labelled(_c("label, seven letters", "Scale"), said))

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
            yield _labelled(_c("label, seven letters", "Pens") if n == 0 else "", line)

    def _ice(self) -> Iterator[str]:
        ice, head = self.figures.ice, self.figures.trip
        if ice.left_kg is None:
            said = _("loose ice not known: the log does not say what was loaded or left")
        else:
            lasts = ice.lasts_until if head.docked is None else None
            ends = lasts is not None and lasts > head.as_of
            said = (_("{weight} loose, {how}; gone {when}") if ends else _("{weight} loose, {how}")).format(
                weight=bare(shown.weight(ice.left_kg)),
                how=_(ice.left_by) if ice.left_by else "",
                when=self.when(lasts) if lasts is not None else "",
            )
        yield _labelled(_c("label, seven letters", "Ice"), said)

    def _age(self) -> Iterator[str]:
        age = self.figures.age
        if age.oldest_ice_days is None:
            return
        mean = f"{days_or_dash(age.mean_ice_days)}, {days_or_dash(age.mean_equivalent_ice_days)}"
        said = _("oldest {oldest} days, as if kept at 0 C {as_if}; mean {mean}; limit {limit}").format(
            oldest=days_or_dash(age.oldest_ice_days),
            as_if=days_or_dash(age.oldest_equivalent_ice_days),
            mean=_("not known") if age.mean_ice_days is None else mean,
            limit=days_or_dash(age.limit_days),
        )
        yield _labelled(_c("label, seven letters", "Age"), said)
        over = (age.oldest_equivalent_ice_days or 0) > age.limit_days
        if over or age.over_limit_kg:
            much = bare(shown.weight(age.over_limit_kg)) if age.over_limit_kg else _("fish whose weight is not known")
            yield _INDENT + _("OVER THE LIMIT: {weight}").format(weight=much)

    def ahead(self) -> list[str]:
        """Return when she docks, the next sale, and the time to turn with what binds it."""
        landing, state = self.figures.landing, self.figures.trip.state
        if state not in ("at sea", "homeward"):
            return []
        if landing.docked is None:
            return _wrapped(_docks(_why_not_known(self.figures)))
        said = (
            _("{when} at {port}, passage {miles}")
            if state == "homeward"
            else _("{when} at {port} if she turns now, passage {miles}")
        )
        port = one_line(landing.port) if landing.port else _c("some port", "port")
        miles = bare(shown.miles_unit(landing.passage_nm))
        lines = [_docks(said.format(when=self.when(landing.docked), port=port, miles=miles))]
        if landing.sales:
            sale = landing.sales[0]
            said = self.when(sale.at)
            if sale.turn_for_home_by:
                turn = self.when(sale.turn_for_home_by)
                said = _("{when}; to make it, turn by {turn}").format(when=said, turn=turn)
            lines.append(_labelled(_c("label, seven letters", "Sale"), said))
        if state == "at sea":
            lines += self._turn()
        return lines

    def _turn(self) -> Iterator[str]:
        landing = self.figures.landing
        if landing.turn_for_home_by is None or landing.bound_by is None:
            yield _turn(_("nothing that is logged binds the time to turn"))
            return
        binds = _(BOUND_BY[landing.bound_by])
        if landing.turn_for_home_by <= self.figures.trip.as_of:
            yield _turn(_("FOR HOME NOW: {why}").format(why=binds))
            return
        yield _turn(_("for home by {when} at the latest:").format(when=self.when(landing.turn_for_home_by)))
        yield _INDENT + _("then {what}").format(what=binds)
        more = [
            words.format(when=self.when(moment))
            for words, moment in (
                (_("in poor weather by {when}"), landing.turn_for_home_by_poor_weather),
                (_("last shot by {when}"), landing.last_shot_by),
            )
            if moment is not None
        ]
        if more:
            yield from _wrapped(f"{_INDENT}{'; '.join(more)}")


def _docks(words: str) -> str:
    return _labelled(_c("label, seven letters", "Docks"), words)


def _turn(words: str) -> str:
    return _labelled(_c("label, seven letters", "Turn"), words)


def _kept(totals: Totals) -> str:
    """Return how much fish there is in all, and how full that makes the hold."""
    tows = bare(shown.many(totals.tows, "tow", "tows"))
    full = totals.hold_full_percent
    if totals.kept_kg is None:
        said = _("weight not known, {tows}") if totals.tows else _("no tows logged")
    else:
        said = _("{weight} kept in {tows}") if full is None else _("{weight} kept in {tows}, hold {full} full")
    words = said.format(weight=bare(shown.weight(totals.kept_kg)), tows=tows, full=bare(shown.percent_unit(full)))
    return _labelled(_c("label, seven letters", "Fish"), words)


def _in_pen(pen: PenFigures) -> str:
    """Return how full a pen is; what lies in it where that can't be told."""
    if pen.full_percent is not None:
        return bare(shown.percent_unit(pen.full_percent))
    return "?" if pen.kept_kg is None else bare(shown.weight(pen.kept_kg))


def _moments(figures: TripFigures) -> list[datetime]:
    head, landing = figures.trip, figures.landing
    found = [head.as_of, head.last_word, head.docked, landing.docked, landing.turn_for_home_by]
    return [moment for moment in found if moment is not None]


def _tonnage(kilograms: float | None) -> str:
    return bare(shown.weight(kilograms))


def _why_not_known(figures: TripFigures) -> str:
    why = next((told(words) for field, words in figures.landing.basis if field == "docked"), _("not known"))
    return bare(why)


def _assumed(figures: TripFigures) -> list[str]:
    """Return what was filled in or left out, of what, each once."""
    parts = (
        (_("ice"), figures.ice.basis),
        (_c("of the fish", "age"), figures.age.basis),
        (_("the way home"), figures.landing.basis),
    )
    said: list[str] = []
    before: set[str] = set()
    for what, basis in parts:
        ways = dict.fromkeys(
            told(part).removeprefix(_("assumed:")).strip()
            for _field, words in basis
            for part in words.split("; ")
            if "assumed:" in words or "left out" in words
        )
        new = [way for way in ways if way not in before]
        before.update(new)
        if new:
            said.append(f"{what}: {', '.join(new)}")
    return _wrapped(_labelled(_c("label, seven letters", "Assumed"), f"{bare('; '.join(said))}.")) if said else []
