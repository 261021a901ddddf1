"""Invented walls."""

from datetime import date

import pytest
from msgspec.structs import replace

from inspector.gear.verdict import WallForecast, WallPoint


@pytest.fixture
def wall() -> WallForecast:
    """A receiver with three readings, above its limit."""
    history = (
        WallPoint(date(2020, 3, 1), 0.0058, 0.0056, "top", "5.8 mm"),
        WallPoint(date(2023, 4, 2), 0.0050, 0.0048, "left", "5.0 mm"),
        WallPoint(date(2026, 5, 3), 0.0043, 0.0041, "bottom face", "4.3 mm"),
    )
    return WallForecast(
        nominal_m=0.0063,
        outside_m=0.0635,
        required_m=0.0030,
        required_because="club's share of the wall as new",
        history=history,
        long_term_m_per_year=0.00025,
        short_term_m_per_year=0.00023,
        floor_m_per_year=0.0001,
        rate_m_per_year=0.00025,
        rate_because="long-term rate",
        wall_now_m=0.0040,
        estimated=False,
        life_years=4.0,
        reaches_required_on=date(2030, 6, 1),
        next_reading_due=date(2028, 5, 1),
    )


@pytest.fixture
def unread(wall: WallForecast) -> WallForecast:
    """The same without any reading."""
    return replace(wall, history=(), estimated=True, long_term_m_per_year=None, short_term_m_per_year=None)
