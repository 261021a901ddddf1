"""Text in, SI inside, text out."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.refused import Refused
from inspector.units import STANDARD_GRAVITY_M_PER_S2, Dimension, System, read, show, show_bound, system_of
from tests.each import each

G = STANDARD_GRAVITY_M_PER_S2


@each(
    ("typed", "dimension", "decimal", "si"),
    [
        ("2.9 mm", Dimension.LENGTH, ".", 0.0029),
        ("2,9 mm", Dimension.LENGTH, ".", 0.0029),
        ("2.9mm", Dimension.LENGTH, ".", 0.0029),
        ("3/4 in", Dimension.LENGTH, ".", 0.01905),
        ('3/4"', Dimension.LENGTH, ".", 0.01905),
        ("1 3/4 in", Dimension.LENGTH, ".", 0.04445),
        ("1¾ in", Dimension.LENGTH, ".", 0.04445),
        ("3 / 4 in", Dimension.LENGTH, ".", 0.01905),
        ("0.125 in", Dimension.LENGTH, ",", 0.003175),
        ("8,000 kg", Dimension.MASS, ".", 8000),
        ("8.000 kg", Dimension.MASS, ",", 8000),
        ("8.000 kg", Dimension.MASS, ".", 8),
        ("12 000 kg", Dimension.MASS, ".", 12000),
        ("12\u202f000 kg", Dimension.MASS, ".", 12000),
        ("1.234,5 kg", Dimension.MASS, ".", 1234.5),
        ("4.75 t", Dimension.FORCE, ".", 4750 * G),
        ("4,75 t", Dimension.FORCE, ".", 4750 * G),
        ("4.75 short ton", Dimension.FORCE, ".", 4.75 * 2000 * 0.45359237 * G),
        ("17,600 lb", Dimension.FORCE, ".", 17600 * 0.45359237 * G),
        ("78 kN", Dimension.FORCE, ".", 78000),
        ("15 %", Dimension.RATIO, ".", 0.15),
        ("110 N m", Dimension.TORQUE, ".", 110),
        ("36 km/h", Dimension.SPEED, ".", 10),
        ("10 years", Dimension.DAYS, ".", 3652.5),
        ("730.5 days", Dimension.YEARS, ".", 2.0),
        ("0.4 s", Dimension.SECONDS, ".", 0.4),
        ("235 MPa", Dimension.STRESS, ".", 235e6),
        ("36 ksi", Dimension.STRESS, ".", 36e3 * 0.45359237 * G / 0.0254**2),
        ("198 mm2", Dimension.AREA, ".", 198e-6),
        ("1.97 in2", Dimension.AREA, ".", 1.97 * 0.0254**2),
        ("392.8 mm3", Dimension.MODULUS, ".", 392.8e-9),
        ("43.6 cm4", Dimension.INERTIA, ".", 43.6e-8),
        ("1.63 in4", Dimension.INERTIA, ".", 1.63 * 0.0254**4),
        ("43.59 kN/m", Dimension.STIFFNESS, ".", 43590),
        ("624 N/mm", Dimension.STIFFNESS, ".", 624000),
        ("79 J", Dimension.ENERGY, ".", 79),
        ("58 ft lbf", Dimension.ENERGY, ".", 58 * 0.45359237 * G * 0.3048),
        ("0.15 mm/year", Dimension.RATE, ".", 0.00015),
        ("80 µm/year", Dimension.RATE, ".", 80e-6),
        ("2 m/s2", Dimension.ACCELERATION, ".", 2),
        ("82 °C", Dimension.TEMPERATURE, ".", 82),
        ("180 °F", Dimension.TEMPERATURE, ".", 82.2222222222222),
        ("−3 mm", Dimension.LENGTH, ".", -0.003),
    ],
)
def test_a_figure_is_read_as_the_officer_meant_it(typed: str, dimension: Dimension, decimal: str, si: float) -> None:
    figure = read(typed, dimension, field="size", decimal=decimal)
    assert figure.si == pytest.approx(si, rel=1e-12)
    assert figure.as_typed == typed


@each(
    ("typed", "dimension"),
    [
        ("", Dimension.LENGTH),
        ("mm", Dimension.LENGTH),
        ("2.9", Dimension.LENGTH),
        ("2.9 kg", Dimension.LENGTH),
        ("2 mt", Dimension.FORCE),
        ("1e3 kg", Dimension.MASS),
        ("3/0 in", Dimension.LENGTH),
        ("1,23,456 kg", Dimension.MASS),
        ("2.9 mm 3", Dimension.LENGTH),
        ("nan mm", Dimension.LENGTH),
        ("inf mm", Dimension.LENGTH),
        ("9" * 80 + " mm", Dimension.LENGTH),
        ("25 kN kN", Dimension.FORCE),
    ],
)
def test_what_is_not_clear_is_refused_with_the_field_and_what_to_do(typed: str, dimension: Dimension) -> None:
    with pytest.raises(Refused) as refusal:
        read(typed, dimension, field="bow diameter")
    assert refusal.value.field == "bow diameter"
    assert refusal.value.why and refusal.value.what_to_do


def test_a_ton_is_asked_about_because_it_can_mean_three_weights() -> None:
    with pytest.raises(Refused, match="three different weights"):
        read("4.75 ton", Dimension.FORCE, field="rating")


_WITH_THOUSANDTHS = st.sampled_from(
    [
        *((Dimension.FORCE, unit) for unit in ("t", "kN", "tf", "short ton", "long tons")),
        *((Dimension.MASS, unit) for unit in ("t", "short ton")),
        *((Dimension.LENGTH, unit) for unit in ("mm", "m", "in", '"', "ft")),
        *((Dimension.STRESS, unit) for unit in ("MPa", "psi")),
        *((Dimension.TEMPERATURE, unit) for unit in ("°C", "°F")),
        *((Dimension.FACTOR, ""), (Dimension.SPEED, "km/h"), (Dimension.DAYS, "days")),
    ]
)
_IN_THOUSANDS = st.sampled_from(
    [
        *((Dimension.FORCE, unit) for unit in ("kg", "lb", "lbs", "lbf", "kgf", "N")),
        *((Dimension.MASS, unit) for unit in ("kg", "lb", "g")),
    ]
)


@given(st.integers(1, 999), st.integers(0, 999), _WITH_THOUSANDTHS, st.sampled_from("-+ "), st.sampled_from(",."))
def test_three_figures_behind_the_sign_that_is_not_the_clubs_are_never_guessed(
    whole: int, after: int, of: tuple[Dimension, str], ahead: str, sign: str
) -> None:
    """Both meanings are named, and each as it is advised to be written is read as it was meant."""
    dimension, unit = of
    decimal = "." if sign == "," else ","
    typed = f"{ahead}{whole}{sign}{after:03d} {unit}".strip()
    with pytest.raises(Refused) as refusal:
        read(typed, dimension, field="rating", decimal=decimal)
    lesser, greater = f"{whole}{decimal}{after:03d}", f"{whole}{after:03d}"
    assert refusal.value.field == "rating" and typed in refusal.value.why
    for told in (refusal.value.why, refusal.value.what_to_do):
        assert lesser in told and greater in told
    first, second = (read(f"{one} {unit}", dimension, field="rating", decimal=decimal).si for one in (lesser, greater))
    assert first < second


@given(st.integers(1, 999), st.integers(0, 999), _IN_THOUSANDS, st.sampled_from(",."))
def test_units_that_nobody_marks_in_thousandths_are_read_in_thousands(
    whole: int, after: int, of: tuple[Dimension, str], sign: str
) -> None:
    dimension, unit = of
    decimal = "." if sign == "," else ","
    grouped = read(f"{whole}{sign}{after:03d} {unit}", dimension, field="rating", decimal=decimal)
    assert grouped.si == read(f"{whole}{after:03d} {unit}", dimension, field="rating", decimal=decimal).si


@given(st.decimals(min_value=0, max_value=99999, places=3, allow_nan=False))
def test_the_decimal_sign_does_not_change_the_value(number: object) -> None:
    point, comma = f"{number:.3f} kg", f"{number:.3f} kg".replace(".", ",")
    in_point_club = read(point, Dimension.MASS, field="mass", decimal=".")
    in_comma_club = read(comma, Dimension.MASS, field="mass", decimal=",")
    assert in_point_club.si == in_comma_club.si == pytest.approx(float(str(number)))


@given(st.floats(min_value=0.0001, max_value=0.9), st.sampled_from(list(System)))
def test_what_is_shown_can_be_read_again(metres: float, system: System) -> None:
    shown = show(metres, Dimension.LENGTH, system)
    assert read(shown, Dimension.LENGTH, field="size").si == pytest.approx(metres, abs=0.0005 * 0.0254 + 0.000005)


@each(
    ("si", "dimension", "system", "text"),
    [
        (0.0027, Dimension.LENGTH, System.METRIC, "2.7 mm"),
        (9.21, Dimension.LENGTH, System.METRIC, "9.21 m"),
        (0.01905, Dimension.LENGTH, System.IMPERIAL, "0.75 in"),
        (232908, Dimension.FORCE, System.METRIC, "232.9 kN"),
        (232908, Dimension.FORCE, System.IMPERIAL, "52\u202f360 lbf"),
        (0.14, Dimension.RATIO, System.METRIC, "14 %"),
        (90, Dimension.DAYS, System.METRIC, "90 days"),
        (1, Dimension.DAYS, System.METRIC, "1 day"),
        (3652.5, Dimension.DAYS, System.METRIC, "10 years"),
        (5, Dimension.FACTOR, System.METRIC, "5"),
        (235e6, Dimension.STRESS, System.METRIC, "235 MPa"),
        (43.59e3, Dimension.STIFFNESS, System.METRIC, "43.59 kN/m"),
        (18350, Dimension.ENERGY, System.METRIC, "18.35 kJ"),
        (0.00015, Dimension.RATE, System.METRIC, "0.15 mm/year"),
        (4.5, Dimension.YEARS, System.METRIC, "4.5 years"),
        (82.2, Dimension.TEMPERATURE, System.METRIC, "82.2 °C"),
    ],
)
def test_values_print_with_their_unit_and_no_idle_zeros(
    si: float, dimension: Dimension, system: System, text: str
) -> None:
    assert show(si, dimension, system) == text


@each(
    ("si", "system", "least", "text"),
    [
        (0.017484, System.METRIC, True, "17.49 mm"),
        (0.017484, System.METRIC, False, "17.48 mm"),
        (0.0171, System.METRIC, True, "17.1 mm"),
        (0.0171, System.METRIC, False, "17.1 mm"),
        (19e-3 * 0.9, System.METRIC, True, "17.1 mm"),
        (0.0171, System.IMPERIAL, True, "0.674 in"),
        (0.0171, System.IMPERIAL, False, "0.673 in"),
    ],
)
def test_a_bound_is_never_milder_in_print_than_it_is(si: float, system: System, least: bool, text: str) -> None:
    assert show_bound(si, Dimension.LENGTH, system, least=least) == text


@given(st.floats(1e-4, 50), st.sampled_from(list(System)), st.booleans())
def test_a_printed_bound_read_back_keeps_the_bound(si: float, system: System, least: bool) -> None:
    printed = read(show_bound(si, Dimension.LENGTH, system, least=least), Dimension.LENGTH, field="bound").si
    assert printed >= si - 1e-9 if least else printed <= si + 1e-9
    assert abs(printed - si) < 3e-5


@each(
    ("typed", "system"),
    [
        ("3/4 in", System.IMPERIAL),
        ('0.118"', System.IMPERIAL),
        ("2 short tons", System.IMPERIAL),
        ("8000 lb", System.IMPERIAL),
        ("2.9 mm", System.METRIC),
        ("4.75 t", System.METRIC),
    ],
)
def test_the_unit_tells_in_which_system_somebody_typed(typed: str, system: System) -> None:
    for otherwise in System:
        assert system_of(typed, otherwise) is system
    assert system_of("4", System.METRIC) is System.METRIC and system_of("", System.IMPERIAL) is System.IMPERIAL
