"""The signs of the units that values have inside, for tables that are read by other programs."""

from inspector.units.dimensions import Dimension

_SIGNS = {
    Dimension.LENGTH: "m",
    Dimension.FORCE: "N",
    Dimension.MASS: "kg",
    Dimension.TORQUE: "N m",
    Dimension.SPEED: "m/s",
    Dimension.ANGLE: "rad",
    Dimension.DAYS: "d",
    Dimension.YEARS: "a",
    Dimension.SECONDS: "s",
    Dimension.STRESS: "Pa",
    Dimension.AREA: "m²",
    Dimension.MODULUS: "m³",
    Dimension.INERTIA: "m⁴",
    Dimension.STIFFNESS: "N/m",
    Dimension.ENERGY: "J",
    Dimension.RATE: "m/a",
    Dimension.LINEAR_MASS: "kg/m",
    Dimension.ACCELERATION: "m/s²",
    Dimension.TEMPERATURE: "°C",
    Dimension.RATIO: "1",
    Dimension.FACTOR: "1",
    Dimension.COUNT: "1",
}


def si_unit(dimension: Dimension) -> str:
    """The sign of the unit in which a value of this dimension is kept; "1" for a pure number."""
    return _SIGNS[dimension]
