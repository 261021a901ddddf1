"""What a figure measures, and the figure itself."""

from enum import StrEnum

from msgspec import Struct


class Dimension(StrEnum):
    """What a figure measures; SI unit inside in brackets."""

    LENGTH = "length"  # metre
    FORCE = "force"  # newton; kg and t on gear are forces
    MASS = "mass"  # kilogram
    TORQUE = "torque"  # newton metre
    SPEED = "speed"  # metre per second
    ANGLE = "angle"  # radian
    DAYS = "days"  # day
    YEARS = "years"  # year of 365.25 days
    SECONDS = "seconds"  # second
    STRESS = "stress"  # pascal
    AREA = "area"  # square metre
    MODULUS = "modulus"  # cubic metre
    INERTIA = "inertia"  # metre to the fourth
    STIFFNESS = "stiffness"  # newton per metre
    ENERGY = "energy"  # joule
    RATE = "rate"  # metre per year
    LINEAR_MASS = "linear_mass"  # kilogram per metre
    ACCELERATION = "acceleration"  # metre per second squared
    TEMPERATURE = "temperature"  # degree Celsius
    RATIO = "ratio"  # pure number, shown in per cent
    FACTOR = "factor"  # pure number
    COUNT = "count"  # whole number


class System(StrEnum):
    """Which units are printed first. Both are first class."""

    METRIC = "metric"
    IMPERIAL = "imperial"


class Figure(Struct, frozen=True, gc=False):
    """A value in SI with the text the officer wrote, which is what prints."""

    si: float
    as_typed: str
    dimension: Dimension
