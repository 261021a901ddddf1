"""A line that people read, and a machine prints: a name must not break out of its line or carry signs that steer."""

import re

from inspector.language import tr
from inspector.refused import Refused

_LONGEST = 120
_LONGEST_TEXT = 20_000  # some pages; what is longer is a paper to be attached
_STEERS = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")


def check_line(field: str, text: str) -> None:
    """Refuse a text of several lines, with signs that do not print, or far too long for a heading."""
    if not text.isprintable():
        why = tr("It has signs that do not print, or more than one line.")
        raise Refused(field, why, tr("Write it anew as one line of plain text."))
    if len(text) > _LONGEST:
        why = tr("It has {count} signs.", count=len(text))
        raise Refused(field, why, tr("Write at most {most} signs; the rest belongs in the note.", most=_LONGEST))


def check_text(field: str, text: str) -> None:
    """Refuse sentences with signs that steer a screen or turn the reading round, or far too long to be read."""
    if not text.isprintable() and _STEERS.search(text):
        raise Refused(field, tr("It has signs that do not print."), tr("Write it anew as plain text."))
    if len(text) > _LONGEST_TEXT:
        why = tr("It has {count} signs.", count=len(text))
        what = tr("Write at most {most} signs, and attach the rest as a file.", most=_LONGEST_TEXT)
        raise Refused(field, why, what)


def file_name(text: str) -> str:
    """The text as the name of a file that every system can keep: letters, figures, dot, dash, underscore."""
    plain = "".join(one if one.isascii() and (one.isalnum() or one in "._-") else "_" for one in text)
    return plain.lstrip(".")[-_LONGEST:] or "_"
