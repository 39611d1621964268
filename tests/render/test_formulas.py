"""Every figure has its entry on the page that says how it is reckoned."""

import pytest
from msgspec.structs import fields

from logbook.model.figures import (
    Age,
    Ice,
    IceToTake,
    LandingFigures,
    PenFigures,
    SpeciesCatch,
    SpeciesTotal,
    Totals,
    TowFigures,
    TripHead,
)
from logbook.model.gear import NetFigures
from logbook.model.money import MoneyFigures
from logbook.model.out_turn import HailedSpecies
from logbook.model.rest import RestFigures
from logbook.model.weather import WeatherFigures
from logbook.render.formulas import CHAPTERS, ENTRIES, LOGGED, RECKONED, Entry

EVERY = [entry for chapter in CHAPTERS for entry in chapter.entries]


@pytest.mark.parametrize(
    "record",
    [
        TripHead,
        TowFigures,
        SpeciesCatch,
        SpeciesTotal,
        Totals,
        Ice,
        IceToTake,
        PenFigures,
        Age,
        LandingFigures,
        HailedSpecies,
        NetFigures,
        WeatherFigures,
        RestFigures,
        MoneyFigures,
    ],
)
def test_every_figure_of_a_record_is_explained(record: type) -> None:
    explained = {key for entry in EVERY for key in entry.keys}

    assert {field.name for field in fields(record)} - explained - {"basis"} == set()


@pytest.mark.parametrize("entry", EVERY, ids=lambda entry: entry.id)
def test_an_entry_says_what_it_is_and_how_it_came_about(entry: Entry) -> None:
    assert entry.how in {LOGGED, RECKONED}
    assert entry.what.endswith(".")
    assert not entry.source or entry.source.endswith(".")


def test_no_two_entries_share_an_id() -> None:
    ids = [entry.id for entry in EVERY] + [chapter.id for chapter in CHAPTERS]

    assert len(set(ids)) == len(ids)
    assert len(ENTRIES) == len(EVERY)
