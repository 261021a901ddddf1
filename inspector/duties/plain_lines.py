"""A line that people read, and a machine prints: a name must not break out of its line or carry signs that steer."""

from inspector.language import tr
from inspector.refused import Refused

_LONGEST = 120


def check_line(field: str, text: str) -> None:
    """Refuse a text of several lines, with signs that do not print, or far too long for a heading."""
    if not text.isprintable():
        why = tr("It has signs that do not print, or more than one line.")
        raise Refused(field, why, tr("Write it anew as one line of plain text."))
    if len(text) > _LONGEST:
        why = tr("It has {count} signs.", count=len(text))
        raise Refused(field, why, tr("Write at most {most} signs; the rest belongs in the note.", most=_LONGEST))


def file_name(text: str) -> str:
    """The text as the name of a file that every system can keep: letters, figures, dot, dash, underscore."""
    plain = "".join(one if one.isascii() and (one.isalnum() or one in "._-") else "_" for one in text)
    return plain.lstrip(".")[-_LONGEST:] or "_"
