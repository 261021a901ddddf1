"""The names a unit may be typed by, for each dimension, and what to type where none is found."""

from inspector.language import once_a_language, tr
from inspector.units.dimensions import Dimension

PSI = "pound_force_per_square_inch"
_LENGTH = {
    "um": "micrometer",
    "µm": "micrometer",
    "mm": "millimeter",
    "cm": "centimeter",
    "m": "meter",
    "in": "inch",
    "ft": "foot",
}
_LENGTH |= {'"': "inch", "″": "inch", "inch": "inch", "inches": "inch", "'": "foot", "feet": "foot"}
_TONS = {"short ton": "short_ton", "short tons": "short_ton", "long ton": "long_ton", "long tons": "long_ton"}
_MASS = {"kg": "kilogram", "t": "metric_ton", "tonne": "metric_ton", "tonnes": "metric_ton", "g": "gram"} | _TONS
_MASS |= {"lb": "pound", "lbs": "pound"}
_FORCE = {"N": "newton", "kN": "kilonewton", "kgf": "kilogram_force", "tf": "tonne_force", "lbf": "pound_force"}
_FORCE |= {"kg": "kilogram_force", "t": "tonne_force", "tonne": "tonne_force", "tonnes": "tonne_force"}
_FORCE |= {"lb": "pound_force", "lbs": "pound_force"} | {name: f"{unit}_force" for name, unit in _TONS.items()}

UNITS: dict[Dimension, dict[str, str]] = {
    Dimension.LENGTH: _LENGTH,
    Dimension.FORCE: _FORCE,
    Dimension.MASS: _MASS,
    Dimension.TORQUE: {"N m": "newton_meter", "Nm": "newton_meter", "lbf ft": "pound_foot", "ft lb": "pound_foot"}
    | {"kN m": "kilonewton_meter", "kNm": "kilonewton_meter"},
    Dimension.SPEED: {"km/h": "kilometer_per_hour", "mph": "mile_per_hour", "m/s": "meter_per_second"},
    Dimension.ANGLE: {"deg": "degree", "°": "degree", "rad": "radian"},
    Dimension.DAYS: {"d": "day", "day": "day", "days": "day", "h": "hour", "year": "year", "years": "year"},
    Dimension.YEARS: {"year": "year", "years": "year", "y": "year", "d": "day", "day": "day", "days": "day"},
    Dimension.SECONDS: {"s": "second", "min": "minute", "h": "hour"},
    Dimension.STRESS: {"MPa": "megapascal", "N/mm2": "megapascal", "N/mm²": "megapascal", "Pa": "pascal"}
    | {"kPa": "kilopascal", "GPa": "gigapascal", "psi": PSI, "ksi": f"kilo{PSI}"},
    Dimension.AREA: {"mm2": "square_millimeter", "mm²": "square_millimeter", "cm2": "square_centimeter"}
    | {
        "cm²": "square_centimeter",
        "m2": "square_meter",
        "m²": "square_meter",
        "in2": "square_inch",
        "in²": "square_inch",
    },
    Dimension.MODULUS: {"mm3": "cubic_millimeter", "mm³": "cubic_millimeter", "cm3": "cubic_centimeter"}
    | {"cm³": "cubic_centimeter", "in3": "cubic_inch", "in³": "cubic_inch"},
    Dimension.INERTIA: {"mm4": "fourth_millimeter", "mm⁴": "fourth_millimeter", "cm4": "fourth_centimeter"}
    | {"cm⁴": "fourth_centimeter", "in4": "fourth_inch", "in⁴": "fourth_inch"},
    Dimension.STIFFNESS: {"kN/m": "kilonewton_per_meter", "N/mm": "kilonewton_per_meter", "N/m": "newton_per_meter"}
    | {"lbf/in": "pound_force_per_inch"},
    Dimension.ENERGY: {"J": "joule", "kJ": "kilojoule", "ft lbf": "foot_pound"},
    Dimension.RATE: {"mm/year": "millimeter", "mm/y": "millimeter", "um/year": "micrometer", "µm/year": "micrometer"}
    | {"in/year": "inch", "in/y": "inch"},
    Dimension.LINEAR_MASS: {"kg/m": "kilogram_per_meter"},
    Dimension.ACCELERATION: {"m/s2": "meter_per_second_squared", "m/s²": "meter_per_second_squared"},
    Dimension.TEMPERATURE: {"°C": "radian", "C": "radian", "degC": "radian", "°F": "fahrenheit", "F": "fahrenheit"},
    Dimension.RATIO: {"%": "percent", "": "radian"},
    Dimension.FACTOR: {"": "radian", ":1": "radian"},
    Dimension.COUNT: {"": "radian"},
}


def spoken_units() -> dict[str, str]:
    """The times and rates that have words, as the officer's language writes them, by which the tables know them."""
    times = {
        "day": tr("{count} day", count=""),
        "days": tr("{count} days", count=""),
        "year": tr("{count} year", count=""),
        "years": tr("{count} years", count=""),
        "mm/year": tr("mm/year"),
        "in/year": tr("in/year"),
    }
    return {word.strip().casefold(): unit for unit, word in times.items()}


def advice(dimension: Dimension) -> str:
    """What to write in a field of this dimension."""
    return _advice()[dimension]


@once_a_language
def _advice() -> dict[Dimension, str]:
    return {
        Dimension.LENGTH: tr("Write a number with mm, cm, m, in or ft, for example 2.9 mm or 3/4 in."),
        Dimension.FORCE: tr("Write a number with t, kg, kN, lbf, lb or short ton, for example 4.75 t."),
        Dimension.MASS: tr("Write a number with kg, t or lb, for example 2650 kg."),
        Dimension.TORQUE: tr("Write a number with N m or lbf ft, for example 110 N m."),
        Dimension.SPEED: tr("Write a number with km/h or mph, for example 8 km/h."),
        Dimension.ANGLE: tr("Write a number of degrees, for example 60 deg."),
        Dimension.DAYS: tr("Write a number of days, for example 90 days."),
        Dimension.YEARS: tr("Write a number of years, for example 4.5 years."),
        Dimension.SECONDS: tr("Write a number with s or min, for example 0.4 s."),
        Dimension.STRESS: tr("Write a number with MPa or ksi, for example 235 MPa."),
        Dimension.AREA: tr("Write a number with mm2, cm2 or in2, for example 198 mm2."),
        Dimension.MODULUS: tr("Write a number with mm3, cm3 or in3, for example 392.8 mm3."),
        Dimension.INERTIA: tr("Write a number with mm4, cm4 or in4, for example 43.6 cm4."),
        Dimension.STIFFNESS: tr("Write a number with kN/m, N/mm or lbf/in, for example 43.6 kN/m."),
        Dimension.ENERGY: tr("Write a number with J or kJ, for example 18 kJ."),
        Dimension.RATE: tr("Write a number with mm/year, for example 0.15 mm/year."),
        Dimension.LINEAR_MASS: tr("Write a number with kg/m, for example 0.3 kg/m."),
        Dimension.ACCELERATION: tr("Write a number with m/s2, for example 2 m/s2."),
        Dimension.TEMPERATURE: tr("Write a number with °C or °F, for example 82 °C."),
        Dimension.RATIO: tr("Write a number or a percentage, for example 12 %."),
        Dimension.FACTOR: tr("Write a plain number, for example 5."),
        Dimension.COUNT: tr("Write a whole number, for example 3."),
    }
