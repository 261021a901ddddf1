"""A value as it was printed: the tolerance is what its last digit leaves open."""

from decimal import Decimal
from typing import Any

import pytest


def printed(text: str, *, cut_off: bool = False) -> Any:
    """An approximation of the printed text. cut_off: the table cuts digits off instead of rounding them.

    "47.29" stands for 47.285 to 47.295; cut off, for 47.28 to 47.30.
    """
    value = Decimal(text)
    exponent = value.as_tuple().exponent
    assert isinstance(exponent, int)
    unit = Decimal(1).scaleb(exponent)
    return pytest.approx(float(value), rel=1e-9, abs=float(unit if cut_off else unit / 2) * (1 + 1e-9))
