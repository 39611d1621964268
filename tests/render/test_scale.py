import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.render.projection import fitted, northing
from logbook.render.scale import graticule, round_step, round_ticks


@pytest.mark.parametrize(
    ("most", "ticks"),
    [
        (0.0, (0.0, 1.0)),
        (1.0, (0.0, 0.25, 0.5, 0.75, 1.0)),
        (49.1, (0.0, 20.0, 40.0, 60.0)),
        (1320.0, (0.0, 500.0, 1000.0, 1500.0)),
    ],
)
def test_a_scale_has_round_steps(most: float, ticks: tuple[float, ...]) -> None:
    assert round_ticks(most) == pytest.approx(ticks)


@given(st.floats(min_value=1e-6, max_value=1e12), st.integers(min_value=1, max_value=8))
def test_a_scale_reaches_what_it_must_show_in_few_steps(most: float, about: int) -> None:
    ticks = round_ticks(most, about)

    assert ticks[-1] >= most * (1 - 1e-6)
    assert len(ticks) <= about + 3
    assert round_step(most, about) > 0


def test_a_graticule_lies_on_whole_minutes() -> None:
    assert graticule(58.52, 59.35, 3) == pytest.approx((58 + 40 / 60, 59.0, 59 + 20 / 60))
    assert graticule(-15.7, -14.4, 3) == pytest.approx((-15.5, -15.0, -14.5))


def test_mercator_stretches_as_published() -> None:
    # Snyder (1987), Map Projections: a Working Manual, USGS PP 1395, table 8 (sphere): y/R at 45° is 0.88137, at 60° 1.31696
    assert northing(45.0) * 3.141592653589793 / 180 == pytest.approx(0.88137, abs=5e-6)
    assert northing(60.0) * 3.141592653589793 / 180 == pytest.approx(1.31696, abs=5e-6)


@given(
    st.floats(min_value=-170, max_value=170), st.floats(min_value=0.01, max_value=20),
    st.floats(min_value=-75, max_value=70), st.floats(min_value=0.01, max_value=5), st.floats(min_value=0.5, max_value=1.5),
)  # fmt: skip
def test_a_chartlet_holds_all_it_must(west: float, wide: float, south: float, high: float, shape: float) -> None:
    left, right, low, top = fitted(west, west + wide, south, south + high, shape)

    assert left <= west + 1e-9
    assert right >= west + wide - 1e-9
    assert low <= south + 1e-9
    assert top >= south + high - 1e-9
