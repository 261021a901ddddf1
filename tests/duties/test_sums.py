"""A trainer works sums in front of a class."""

import pytest

from inspector.duties.work_a_sum import list_sums, work_a_sum
from inspector.refused import Refused
from inspector.rulebook.sums import functions
from inspector.units import System

PIN = {"diameter_m": "5/8 in", "ultimate_pa": "800 MPa", "plane_count": "2"}


def test_a_sum_shows_formula_figures_as_typed_result_range_and_source() -> None:
    """97.12 kN: the worked figure of public coupling guidance for 18 t and 22 t."""
    worked = work_a_sum("d-value-n", {"towing_kg": "18 t", "trailer_kg": "22,000 kg"})
    assert [fact.text for fact in worked.inputs] == ["18 t", "22,000 kg"]
    assert [fact.text for fact in worked.results] == ["97.1 kN"]
    assert worked.formula and worked.valid and worked.sources and worked.title


def test_single_against_double_shear_is_a_factor_of_two() -> None:
    one = work_a_sum("pin_shear_n", PIN | {"plane_count": "1"})
    assert one.results[0].text == "76 kN"


def test_results_print_in_the_units_asked_for() -> None:
    assert "lbf" in work_a_sum("pin_shear_n", PIN, system=System.IMPERIAL).results[0].text


@pytest.mark.parametrize(
    ("name", "typed", "field"),
    [
        ("no-such-sum", {}, "sum"),
        ("pin_shear_n", {"diameter_m": "5/8 in"}, "ultimate_pa"),
        ("pin_shear_n", PIN | {"colour": "1"}, "colour"),
        ("pin_shear_n", PIN | {"diameter_m": "thick"}, "diameter_m"),
        ("pin_shear_n", PIN | {"plane_count": "1.5"}, "plane_count"),
        ("pin_shear_n", PIN | {"diameter_m": "-1 mm"}, "pin_shear_n"),
        ("pin_shear_n", PIN | {"plane_count": "0"}, "pin_shear_n"),
    ],
)
def test_what_cannot_be_worked_is_refused_by_field(name: str, typed: dict[str, str], field: str) -> None:
    with pytest.raises(Refused) as refusal:
        work_a_sum(name, typed)
    assert refusal.value.field == field
    assert refusal.value.what_to_do


def test_the_list_is_searched_by_words_and_tells_what_each_sum_wants() -> None:
    found = {one.name: one for one in list_sums("pin shear")}
    assert "pin_shear_n" in found
    assert [wanted.name for wanted in found["pin_shear_n"].inputs][:2] == ["diameter_m", "ultimate_pa"]
    assert found["pin_shear_n"].inputs[-1].otherwise == "1.25"
    assert len(list_sums()) == len(functions())
    assert list_sums("no such words at all") == ()
