"""The binding must not eat references to None: on Python 3.11 that ends the process after some 5,000 calls."""

import sys
from collections.abc import Callable

import pytest
from PySide6.QtGui import QStandardItemModel
from PySide6.QtWidgets import QLabel

_CALLS = 500


def drift_per_call(call: Callable[[], object]) -> float:
    """How many references to None a call keeps or eats."""
    call()
    before = sys.getrefcount(None)
    for _ in range(_CALLS):
        call()
    return (sys.getrefcount(None) - before) / _CALLS


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="None is immortal from Python 3.12 on")
def test_a_method_that_returns_nothing_leaves_the_count_of_none_alone(qapp: object) -> None:
    """Setting a label's text a thousand times costs no reference."""
    label = QLabel()
    assert abs(drift_per_call(lambda: label.setText("x"))) < 0.1


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="None is immortal from Python 3.12 on")
def test_a_model_that_answers_none_leaves_the_count_of_none_alone(qapp: object) -> None:
    """An empty cell is asked for on every repaint."""
    model = QStandardItemModel(2, 2)
    assert abs(drift_per_call(lambda: model.data(model.index(1, 1)))) < 0.1


def test_the_measure_itself_can_tell_a_drift(qapp: object) -> None:
    """A call that keeps None is found out."""
    if sys.version_info >= (3, 12):
        pytest.skip("None is immortal from Python 3.12 on")
    kept: list[None] = []
    assert drift_per_call(lambda: kept.append(None)) == pytest.approx(1, abs=0.1)
