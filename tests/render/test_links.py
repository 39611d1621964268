import pytest

from logbook.render.links import relative, trip_page, vessel_page


@pytest.mark.parametrize(
    ("start", "target", "fragment", "link"),
    [
        ("index.html", "trips/a.html", "", "trips/a.html"),
        ("trips/a.html", "index.html", "", "../index.html"),
        ("trips/a.html", "trips/b.html", "", "b.html"),
        ("trips/a.html", "charts/trips/a-age.svg", "", "../charts/trips/a-age.svg"),
        ("trips/a.html", "reckoning.html", "kept", "../reckoning.html#kept"),
        ("reckoning.html", "reckoning.html", "kept", "#kept"),
        ("reckoning.html", "reckoning.html", "", "reckoning.html"),
        ("index.html", "a b#c%.html", "", "a%20b%23c%25.html"),
    ],
)
def test_a_link_leads_from_where_it_stands(start: str, target: str, fragment: str, link: str) -> None:
    assert relative(start, target, fragment) == link


def test_names_become_plain_file_names() -> None:
    assert vessel_page("Solan Bright") == "vessels/solan-bright.html"
    assert vessel_page("Ørnen") != vessel_page("Ornen")
    assert trip_page("solan-bright-2026-03-04") == "trips/solan-bright-2026-03-04.html"
