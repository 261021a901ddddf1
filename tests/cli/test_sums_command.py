"""The command that works a sum for a class; it needs no register."""

import pytest

from inspector.app import main


def typed(capsys: pytest.CaptureFixture[str], *words: str, code: int = 0) -> str:
    capsys.readouterr()
    assert main(["sums", *words]) == code
    said = capsys.readouterr()
    return said.out + said.err


def test_a_sum_is_worked_with_formula_result_range_and_source(capsys: pytest.CaptureFixture[str]) -> None:
    said = typed(capsys, "d_value_n", "towing_kg=18 t", "trailer_kg=22 t")
    for wanted in ("D = g T R / (T + R)", "18 t", "97.1 kN", "Valid:", "Source: UN Regulation 55"):
        assert wanted in said


def test_sums_are_listed_by_words(capsys: pytest.CaptureFixture[str]) -> None:
    said = typed(capsys, "d-value")
    assert "d_value_n  [coupling]" in said and "towing_kg: mass" in said


def test_results_come_in_the_units_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert "lbf" in typed(capsys, "d_value_n", "towing_kg=18 t", "trailer_kg=22 t", "--units", "imperial")


@pytest.mark.parametrize(
    ("words", "why"),
    [
        (["d_value_n", "towing_kg=18 t"], "This input is missing"),
        (["d_value_n", "towing_kg=0 t", "trailer_kg=2 t"], "does not hold"),
        (["no_such", "a=1"], "There is no sum"),
        (["bridle_leg_n", "pull_n=3 kN", "angle_rad=wide"], "does not begin with a number"),
        (["is_webbing_cut_out", "cut_m=2 mm", "width_m=50 mm", "at_edge=perhaps"], "neither yes nor no"),
    ],
)
def test_bad_figures_are_refused_in_words(capsys: pytest.CaptureFixture[str], words: list[str], why: str) -> None:
    said = typed(capsys, *words, code=2)
    assert why in said and "Traceback" not in said
