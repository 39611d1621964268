"""What editions show, against the table of them: money, names, words and positions are close by default."""

from datetime import timedelta

import pytest
from msgspec.structs import asdict

from logbook.model.edition import CREW, EDITIONS, EXACT, GROUND, OFFICE, PUBLIC, RECTANGLE
from logbook.model.fleet import Edition, Fleet
from logbook.redact.policy import policy_of
from tests.read.logs import FLEET, fleet

SHOWN = {
    "money": {OFFICE},
    "problems": {OFFICE},
    "margin": {OFFICE},
    "rest": {OFFICE},
    "skippers": {OFFICE, CREW},
    "crews": {OFFICE},
    "words": {OFFICE, CREW},
    "put_back": {OFFICE, CREW},
    "turning": {OFFICE},
    "fasts": {OFFICE, CREW},
}


@pytest.mark.parametrize("edition", EDITIONS)
def test_an_edition_shows_what_the_table_says_and_nothing_else(edition: str) -> None:
    policy = asdict(policy_of(edition, Fleet()))

    yes_or_no = {name: value for name, value in policy.items() if isinstance(value, bool)}
    assert yes_or_no == {name: edition in who for name, who in SHOWN.items()}
    assert policy["positions"] == (EXACT if edition == OFFICE else GROUND)
    assert policy["held_back"] == timedelta(0)


@pytest.mark.parametrize(
    ("edition", "said", "positions"),
    [
        (CREW, None, GROUND),
        (CREW, GROUND, GROUND),
        (CREW, RECTANGLE, RECTANGLE),
        (CREW, EXACT, EXACT),
        (PUBLIC, None, GROUND),
        (PUBLIC, GROUND, GROUND),
        (PUBLIC, RECTANGLE, RECTANGLE),
        (PUBLIC, EXACT, RECTANGLE),
        (OFFICE, GROUND, EXACT),
    ],
)
def test_positions_are_as_the_fleet_file_says_but_never_finer_than_a_rectangle_for_the_public(
    edition: str, said: str | None, positions: str
) -> None:
    policy = policy_of(edition, Fleet(editions=(Edition(name=edition, positions=said),)))

    assert policy.positions == positions


def test_the_office_is_held_nothing_back_and_the_public_is_shown_no_fast_whatever_the_fleet_file_says() -> None:
    said = tuple(Edition(name=name, fasts=True, after=timedelta(days=5)) for name in EDITIONS)

    assert policy_of(OFFICE, Fleet(editions=said)).held_back == timedelta(0)
    assert policy_of(CREW, Fleet(editions=said)).held_back == timedelta(days=5)
    assert policy_of(PUBLIC, Fleet(editions=said)).held_back == timedelta(days=5)
    assert not policy_of(PUBLIC, Fleet(editions=said)).fasts


def test_a_fleet_file_that_says_no_fasts_hides_them_from_the_crew_alone() -> None:
    typed = fleet(FLEET + "editions: {crew: {positions: exact, fasts: no, after: 2 days}, office: {fasts: no}}\n")

    assert not policy_of(CREW, typed).fasts
    assert policy_of(CREW, typed).positions == EXACT
    assert policy_of(CREW, typed).held_back == timedelta(days=2)
    assert policy_of(OFFICE, typed).fasts


@pytest.mark.parametrize("name", [CREW, PUBLIC])
def test_where_what_is_said_of_editions_cannot_be_read_nothing_tells_of_places(name: str) -> None:
    said = Fleet(editions=(Edition(name=name, positions=EXACT, fasts=True),), editions_unread=True)
    policy = policy_of(name, said)

    assert (policy.positions, policy.fasts) == (GROUND, False)
    assert policy.held_back > timedelta(days=200_000)
    assert policy_of(OFFICE, said).positions == EXACT
