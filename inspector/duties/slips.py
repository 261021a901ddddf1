"""Slips of the key in a figure: a point forgotten, a point too far, inches for millimetres."""

from inspector.language import tr
from inspector.units import Dimension, Figure, System, read, show

_USUAL = (0.5, 1.25)  # what a reading may be of what is expected before a slip is looked for
_FITS = (0.6, 1.1)  # what a mended reading must then be of it


def slip_of(typed: Figure, expected: Figure, system: System) -> str:
    """What the slip may have been, in words; empty where the reading is near enough or no slip explains it."""
    if expected.si <= 0 or _USUAL[0] <= typed.si / expected.si <= _USUAL[1]:
        return ""
    for times, words in _slips():
        meant = typed.si * times
        if _FITS[0] <= meant / expected.si <= _FITS[1]:
            return words.format(meant=show(meant, Dimension.LENGTH, system), expected=expected.as_typed)
    return ""


def _slips() -> tuple[tuple[float, str], ...]:
    """By what a slip is mended, and how it is asked about."""
    inch, millimetre = (read(text, Dimension.LENGTH, field="").si for text in ("1 in", "1 mm"))
    return (
        (0.1, tr("About {expected} was to be expected. Was a point forgotten, and {meant} read?")),
        (10.0, tr("About {expected} was to be expected. Is the point in the wrong place, and was {meant} read?")),
        (0.01, tr("About {expected} was to be expected. Was a point forgotten, and {meant} read?")),
        (millimetre / inch, tr("About {expected} was to be expected. Were millimetres meant, and {meant} read?")),
        (1000.0, tr("About {expected} was to be expected. Were metres meant, and {meant} read?")),
        (inch / millimetre, tr("About {expected} was to be expected. Were inches meant, and {meant} read?")),
    )
