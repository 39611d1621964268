"""A small fleet made by hand for the tests of pages and charts: records only; of them nothing but the sums over the fleet is reckoned."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

from logbook.model.figures import (
    Age,
    LandingFigures,
    Neighbours,
    ProbeFigures,
    Reckoned,
    SpeciesCatch,
    SpeciesTotal,
    Totals,
    TowFigures,
    TripFigures,
    TripHead,
)
from logbook.model.fleet import Fleet, Ground, Hold, Measure, Net, Port, Vessel
from logbook.model.fleet_figures import FleetFigures
from logbook.model.named import ByName
from logbook.model.names import slug
from logbook.model.problem import Place, Problem, Severity
from logbook.model.quantity import Celsius, Kilograms, Knots, Metres, Position, Span, Weight, Wind
from logbook.model.trip import CatchKept, Fast, GearEvent, Landing, OutTurn, Period, Reading, Tow, Trip, Turned, Weather
from tests.ledger import ledger_of

KG = Decimal
NONE: ByName[Decimal] = ByName()


def vessel(name: str = "Solan Bright", registration: str = "KI 114") -> Vessel:
    return Vessel(
        name=name,
        registration=registration,
        length=Metres(31.0),
        steaming_speed=Knots(9.5),
        poor_weather_speed=Knots(6.5),
        towing_speed=Knots(3.2),
        ice_capacity=Kilograms(KG(30000)),
        hold=Hold(heat_gain_kw=1.9, pens=(("P1", Kilograms(KG(2400))), ("P2", Kilograms(KG(2400))), ("S1", None))),
        nets=(
            Net(
                name="rockhopper",
                side="starboard",
                doors=Kilograms(KG(720)),
                door_spread=Metres(62.0),
                wing_spread=Metres(17.0),
                headline=Metres(24.0),
                mesh_mm=120.0,
            ),
        ),
    )


SOLAN, SKERRY, TERN = vessel(), vessel("Skerry Light", "KI 88"), vessel("Arctic Tern", "KI 201")


def fleet() -> Fleet:
    return Fleet(
        file="fleet.yaml",
        name="Kerrin Isles Trawl Co-operative",
        units=(("depth", "fm"), ("catch", "basket")),
        vessels=(SOLAN, SKERRY, TERN),
        ports=(Port(name="Port Kerrin", at=at(59.667, -12.167)),),
        grounds=(
            Ground(name="The Saddle", corners=(at(58.5, -15.667), at(59.0, -14.833))),
            Ground(name="Gannet Edge", corners=(at(59.05, -15.2), at(59.3, -14.9), at(59.25, -14.4), at(59.02, -14.6))),
        ),
        measures=(Measure(name="basket", default=Kilograms(KG(40)), by_species=(("cod", Kilograms(KG(42))),)),),
    )


def at(latitude: float, longitude: float) -> Position:
    return Position(latitude=latitude, longitude=longitude, typed=f"{latitude} {longitude}")


def place(line: int, file: str = "solan/trip-14.yaml") -> Place:
    return Place(file=file, line=line, column=5)


def problem(
    line: int,
    severity: Severity = Severity.WARNING,
    message: str = "'14 baskts' is no weight",
    file: str = "solan/trip-14.yaml",
) -> Problem:
    return Problem(
        place=place(line, file), severity=severity, code="weight-unreadable", message=message, hint="write 14 baskets"
    )


def tow(
    no: int, shot: datetime, *, days_to: datetime, file: str = "solan/trip-14.yaml", richness: int = 100
) -> tuple[Tow, TowFigures]:
    """Return a tow and its figures; its numbers follow from `no` alone."""
    hauled = shot + timedelta(minutes=70 + no * 7 % 35)
    lat, lon = 58.6 + no * 37 % 70 / 100, -15.6 + no * 53 % 110 / 100
    cod = KG((no * 131 + 40) % 420 * richness // 100)
    haddock = KG((no * 211 + 90) % 760 * richness // 100)
    saithe = KG(no * 17 % 90 if no % 3 == 0 else 0)
    ling = KG(no * 5 % 40 if no % 7 == 0 else 0)
    known = no % 19 != 0
    foul = no % 23 == 7
    ground = "The Saddle" if lat < 59.0 else "Gannet Edge"
    parts = [("haddock", haddock), ("cod", cod), ("saithe", saithe), ("ling", ling)]
    caught = ByName(
        (
            name,
            SpeciesCatch(
                kept_kg=kg,
                put_back_kg=None,
                undersize_kg=None,
                live_kg=kg * KG("1.17"),
                grades=ByName([("large", kg * 3 / 5), ("small", kg * 2 / 5)]),
                basis=(("kept_kg", "assumed: usual state gutted"),) if no % 11 == 0 else (),
            ),
        )
        for name, kg in parts
        if kg and known
    )
    kept = sum((kg for _, kg in parts), KG(0)) if known else None
    hours = (hauled - shot) / timedelta(hours=1)
    age = (days_to - hauled) / timedelta(days=1)
    logged = Tow(
        no=no,
        place=place(20 + no, file),
        shot=shot,
        hauled=hauled,
        start=at(lat, lon),
        end=at(lat + 0.06 * (-1) ** no, lon + 0.09),
        ground=ground,
        side="starboard",
        net="rockhopper",
        pens=("P1",) if no % 2 else ("P2", "S1"),
        depth=Span(least=Metres(174.0), most=Metres(183.0), typed="95-100 fm"),
        kept=CatchKept.KNOWN if known else CatchKept.UNKNOWN,
        fast=Fast(what="rock", at=None) if foul else None,
        damage="wing torn, *two* meshes" if foul else None,
        remarks="Good marks at the turn." if no % 6 == 1 else "",
    )
    distance = 3.1 * hours
    figures = TowFigures(
        no=no,
        side="starboard",
        ground=ground,
        net="rockhopper",
        pens=logged.pens,
        shot=shot,
        hauled=hauled,
        on_ice=hauled + timedelta(hours=1),
        duration_h=hours,
        catch_h=hours,
        distance_nm=distance,
        distance_by="positions" if no % 5 else "usual speed",
        speed_kn=3.1,
        swept_doors_km2=distance * 1.852 * 0.062,
        swept_wings_km2=distance * 1.852 * 0.017,
        depth_m=174.0 + no % 12,
        warp_to_depth=2.9 if no % 4 else None,
        light=("day", "twilight", "night")[no % 3],
        rectangle=f"{46 if lat + 0.03 * (-1) ** no < 59.0 else 47}D{4 if lon + 0.045 < -15.0 else 5}",
        catch=caught,
        kept_kg=kept,
        put_back_kg=KG(no * 3 % 50) if no % 4 == 0 else None,
        live_kg=kept * KG("1.17") if kept is not None else None,
        kept_kg_per_h=float(kept) / hours if kept is not None else None,
        kept_kg_per_km2=float(kept) / (distance * 0.0315) if kept is not None else None,
        foul=foul,
        ice_days=age,
        equivalent_ice_days=age * 1.12,
        basis=(
            *((("ground", "carried"), ("net", "carried"), ("side", "carried")) if no % 8 else ()),
            *((("distance_nm", "assumed: usual speed"),) if no % 5 == 0 else ()),
        ),
    )
    return logged, figures


def trip(
    boat: Vessel = SOLAN,
    sailed: datetime = datetime(2026, 3, 4, 5, 30, tzinfo=UTC),
    *,
    number: str | None = "14",
    tows: int = 72,
    state: str = "landed",
    neighbours: Neighbours | None = None,
    richness: int = 100,
) -> Reckoned:
    """Return a whole trip; one that is not landed ends with its last haul."""
    trip_id = f"{slug(boat.name)}-{sailed:%Y-%m-%d}"
    file = f"{slug(boat.name)}/{sailed:%Y-%m-%d}.yaml"
    cycle = timedelta(minutes=100)
    first = sailed + timedelta(hours=12, minutes=40)
    last = first + cycle * tows
    docked = last + timedelta(hours=13) if state == "landed" else None
    as_of = docked or last
    made = [tow(no, first + cycle * (no - 1), days_to=as_of, file=file, richness=richness) for no in range(1, tows + 1)]
    figures = [figure for _, figure in made]
    catch = totals_of(figures)
    kept = sum((figure.kept_kg or KG(0) for figure in figures), KG(0)) if figures else None
    hours = sum(figure.duration_h or 0 for figure in figures) if figures else None
    ages = [(figure.ice_days or 0.0, figure.kept_kg or KG(0)) for figure in figures]
    by_day: dict[str, Decimal] = {str(day): KG(0) for day in range(int(max((age for age, _ in ages), default=-1)) + 1)}
    for age, kg in ages:
        by_day[str(int(age))] += kg
    head = TripHead(
        id=trip_id,
        vessel=boat.name,
        number=number,
        skipper="M. Aldane",
        state=state,
        sailed=sailed,
        sailed_from="Port Kerrin",
        turned_for_home=last if state in {"landed", "homeward"} else None,
        docked=docked,
        port="Port Kerrin" if docked else None,
        as_of=as_of,
        last_word=docked + timedelta(hours=7) if docked else last,
    )
    log = Trip(
        file=file,
        vessel=boat,
        number=number,
        skipper="M. Aldane",
        hands=11,
        begins=sailed,
        sailed=sailed,
        sailed_from="Port Kerrin",
        ice_loaded=Kilograms(KG(24000)),
        sea_temperature=Celsius(8.0),
        tows=tuple(logged for logged, _ in made),
        readings=(
            Reading(
                place=place(300, file),
                at=first + timedelta(days=1),
                temperatures=(("P1", Celsius(0.4)),),
                ice_left=Kilograms(KG(9000)),
                remarks="Dry at the *after* end.",
            ),
        ),
        weather=(
            Weather(
                place=place(310, file), at=first, wind=Wind(point="SW", force=6, typed="SW 5-6"), sea=4, icing="none"
            ),
        ),
        gear=(
            GearEvent(
                place=place(320, file),
                at=first + timedelta(hours=9),
                part="net",
                name="rockhopper",
                event="mended",
                took=timedelta(hours=2),
            ),
        ),
        time_lost=(
            Period(
                place=place(330, file),
                start=first + timedelta(days=2),
                end=first + timedelta(days=2, hours=11),
                words="dodging",
            ),
        ),
        turned=Turned(at=last) if head.turned_for_home else None,
        bound_for="Port Kerrin",
        wants="20 t ice, 9000 l fuel",
        landings=_landing(docked, catch, file),
        remarks="Half a day lost *dodging* south of the Saddle.\n\n- lost a marker\n- two good nights after it",
    )
    return Reckoned(
        log=log,
        figures=TripFigures(
            trip=head,
            tows=tuple(figures),
            catch=catch,
            totals=Totals(
                tows=tows,
                foul_tows=sum(figure.foul for figure in figures),
                towed_h=hours,
                distance_nm=sum(figure.distance_nm or 0 for figure in figures) if figures else None,
                swept_doors_km2=12.5 if figures else None,
                swept_wings_km2=3.4 if figures else None,
                kept_kg=kept,
                put_back_kg=KG(410) if figures else None,
                live_kg=kept * KG("1.17") if kept is not None else None,
                kept_kg_per_h=float(kept) / hours if kept is not None and hours else None,
                kept_kg_per_day=float(kept) / ((last - first) / timedelta(days=1)) if kept is not None else None,
                days_at_sea=(as_of - sailed) / timedelta(days=1),
                fishing_days=(last - first) / timedelta(days=1) if figures else None,
                tows_per_day=14.4 if figures else None,
                mean_cycle_h=1.67 if figures else None,
                hold_full_percent=None,
                incomplete=("the catch of tows 19, 38 and 57, which is not logged",) if tows >= 57 else (),
                basis=(("distance_nm", "assumed in part: usual speed"),),
            ),
            age=Age(
                as_of=as_of,
                limit_days=10.0,
                oldest_ice_days=max((age for age, _ in ages), default=None),
                mean_ice_days=3.1 if figures else None,
                oldest_equivalent_ice_days=max((age * 1.12 for age, _ in ages), default=None),
                mean_equivalent_ice_days=3.5 if figures else None,
                kept_kg_by_day=ByName(by_day.items()),
                over_limit_kg=KG(0) if figures else None,
                basis=(("oldest_equivalent_ice_days", "assumed: pens at 1 °C where there is no reading"),),
            ),
            landing=LandingFigures(
                port="Port Kerrin",
                expected=docked is None,
                docked=docked or (last + timedelta(hours=14) if state == "homeward" else None),
                passage_nm=121.3,
                passage_h=12.8,
                landing_started=docked + timedelta(hours=1) if docked else None,
                landing_finished=docked + timedelta(hours=7) if docked else None,
                discharge_h=6.0 if docked else None,
                discharge_kg_per_h=5100.0 if docked else None,
                steam_out_h=12.7 if figures else None,
                steam_home_h=13.0 if docked else None,
                turnaround_h=None,
                temperatures=ByName(
                    [
                        ("P1", ProbeFigures(temperature_c=0.4, within_limit=True)),
                        ("P2", ProbeFigures(temperature_c=2.3, within_limit=False)),
                    ]
                )
                if docked
                else ByName(),
                basis=() if docked else (("passage_h", "assumed: steaming speed of the fleet file"),),
            ),
            problems=(problem(33, file=file), problem(41, Severity.NOTE, "'haddok' is read as haddock", file)),
        ),
        neighbours=neighbours or Neighbours(),
    )


def totals_of(figures: list[TowFigures]) -> ByName[SpeciesTotal]:
    """Return the catch of tows added up by species."""
    kept: dict[str, Decimal] = {}
    for figure in figures:
        for name, species in figure.catch.items():
            kept[name] = kept.get(name, KG(0)) + (species.kept_kg or KG(0))
    total = sum(kept.values(), KG(0)) or KG(1)
    made = [
        (
            name,
            SpeciesTotal(
                code={"haddock": "HAD", "cod": "COD", "saithe": "POK"}.get(name),
                kept_kg=kg,
                put_back_kg=KG(120) if name == "cod" else None,
                undersize_kg=None,
                live_kg=kg * KG("1.17") if name != "ling" else None,
                grades=ByName([("large", kg * 3 / 5), ("medium", kg / 5), ("small", kg / 5)] if name != "ling" else []),
                share_percent=float(kg / total * 100),
                basis=(("live_kg", "assumed: usual state gutted"),),
            ),
        )
        for name, kg in sorted(kept.items(), key=lambda pair: -pair[1])
    ]
    if figures:
        skate = SpeciesTotal(
            code=None,
            kept_kg=None,
            put_back_kg=KG(290),
            undersize_kg=None,
            live_kg=None,
            grades=ByName(),
            share_percent=None,
            kept=False,
        )
        made.append(("skate", skate))
    return ByName(made)


def _landing(docked: datetime | None, catch: ByName[SpeciesTotal], file: str) -> tuple[Landing, ...]:
    if docked is None:
        return ()
    out_turn = tuple(
        OutTurn(
            species=name,
            known=None,
            grade=None,
            weight=Weight(kilograms=Kilograms(species.kept_kg), number=species.kept_kg, unit="kg"),
            place=place(400, file),
        )
        for name, species in catch.items()
        if species.kept_kg
    )
    return (
        Landing(
            place=place(400, file),
            docked=docked,
            port="Port Kerrin",
            started=docked,
            finished=docked,
            out_turn=out_turn,
        ),
    )


def whole_fleet() -> tuple[Fleet, tuple[Reckoned, ...], FleetFigures, tuple[Problem, ...]]:
    """Return a fleet of three vessels with twelve trips over two seasons, one at sea and one homeward."""
    trips: list[Reckoned] = []
    starts = [
        datetime(2025, 2, 3, 6, tzinfo=UTC),
        datetime(2025, 5, 6, 4, tzinfo=UTC),
        datetime(2025, 10, 9, 5, tzinfo=UTC),
        datetime(2026, 3, 4, 5, 30, tzinfo=UTC),
    ]
    for boat, shift, states in (
        (SOLAN, 0, ("landed", "landed", "landed", "landed")),
        (SKERRY, 2, ("landed", "landing not logged", "landed", "homeward")),
        (TERN, 5, ("landed", "landed", "landed", "at sea")),
    ):
        ids = [f"{slug(boat.name)}-{start + timedelta(days=shift):%Y-%m-%d}" for start in starts]
        for place_, (start, state) in enumerate(zip(starts, states, strict=True)):
            near = Neighbours(
                previous_id=ids[place_ - 1] if place_ else None, next_id=ids[place_ + 1] if place_ < 3 else None
            )
            trips.append(
                trip(
                    boat,
                    start + timedelta(days=shift),
                    number=str(11 + place_),
                    tows=38 if state == "at sea" else 60 + shift * 3 + place_ * 4,
                    state=state,
                    neighbours=near,
                    richness=70 + 13 * ((place_ * 3 + shift) % 5),
                )
            )
    every = [one for reckoned in trips for one in reckoned.figures.problems]
    lost = problem(7, Severity.ERROR, "this line can't be read: a tab stands in its indentation", "tern/spoilt.yaml")
    return fleet(), tuple(trips), figures_of(trips), (*every, lost)


def figures_of(trips: list[Reckoned]) -> FleetFigures:
    """Return sums over trips; what they come to is the business of other tests."""
    return ledger_of(trips, fleet()).fleet()
