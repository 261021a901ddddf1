"""A sheet that was filled in on a screen: what stands in its fields, and whether it still asks what was printed.

Bytes in. Fields are read by name from every page, in whichever of the two ways a viewer keeps a tick.
"""

import io
import logging
from collections.abc import Iterator
from typing import Any

from msgspec import Struct
from pypdf import PdfReader
from pypdf.errors import PyPdfError
from pypdf.generic import NameObject

from inspector.gear.photo_read import BoxRead, BoxState, RoomRead, Seen
from inspector.gear.sheet_fields import SHEET_NAME
from inspector.language import tr
from inspector.paper.pages import page_texts
from inspector.paper.photo import MOST_BYTES
from inspector.refused import Refused

_MOST_FIELDS = 20_000
_DEEPEST = 8  # how far a field's name may be spread over its parents
_SLACK_PT = 2.0  # a viewer may round the place of a field
_DRAWN = {"/Ink", "/Line", "/Polygon", "/PolyLine", "/Circle", "/Square", "/Stamp", "/FreeText", "/Highlight"}
_OFF = "/Off"
logging.getLogger("pypdf").setLevel(logging.CRITICAL)  # what it thinks of a file is told by what it raises


class Field(Struct, frozen=True):
    """One field as it stands on a page: where in points, what it says to a reader, what was filled in."""

    page: int
    rect: tuple[float, float, float, float]
    tooltip: str
    is_box: bool
    value: str
    shown: str


class FilledForm(Struct, frozen=True):
    """A form as it came back. code: the text of its hidden field; texts: of each page, without spaces.

    is_drawn: somebody drew or wrote over it, so its picture tells more than its fields.
    """

    code: str
    fields: dict[str, Field]
    texts: tuple[str, ...]
    is_drawn: bool

    @property
    def boxes(self) -> tuple[BoxRead, ...]:
        """Its boxes; one that is ticked in one way and not in the other is unsure."""
        return tuple(_box(name, one) for name, one in self.fields.items() if one.is_box)

    @property
    def rooms(self) -> tuple[RoomRead, ...]:
        """What was typed or chosen, where something was."""
        written = ((name, one.value.strip()) for name, one in self.fields.items() if not one.is_box)
        return tuple(RoomRead(name, b"", text) for name, text in written if text and name != SHEET_NAME)

    def asks_the_same(self, printed: "FilledForm") -> bool:
        """Whether text, fields, their places and what they say are those of the sheet as it was printed."""
        if self.texts != printed.texts or self.fields.keys() != printed.fields.keys():
            return False
        return all(_is_the_same(one, printed.fields[name]) for name, one in self.fields.items())


def read_form(data: bytes) -> FilledForm | None:
    """The form in a PDF; None where it has none of ours, as a scan or a flattened copy. Refused where it is broken."""
    if len(data) > MOST_BYTES:
        why = tr("The file has {size} MB, more than {most} MB.", size=len(data) // 10**6, most=MOST_BYTES // 10**6)
        raise Refused(tr("file"), why, tr("Save it again from the viewer it was filled in with."))
    try:
        fields, is_drawn = _fields_of(data)
    except Refused:
        raise
    except (PyPdfError, ValueError, KeyError, TypeError, AttributeError, IndexError, RecursionError, OSError) as error:
        raise _broken() from error
    hidden = fields.get(SHEET_NAME)
    return FilledForm(hidden.value, fields, page_texts(data), is_drawn) if hidden else None


def _fields_of(data: bytes) -> tuple[dict[str, Field], bool]:
    reader = PdfReader(io.BytesIO(data))
    if reader.is_encrypted and not reader.decrypt(""):
        why = tr("It is locked with a password.")
        raise Refused(tr("file"), why, tr("Save it without a password, or print it and take a photo."))
    fields: dict[str, Field] = {}
    is_drawn = False
    for number, note in _notes(reader):
        kind = note.get("/Subtype")
        is_drawn |= kind in _DRAWN
        if kind == "/Widget" and (named := _named(note, number)):
            if named[0] in fields or len(fields) >= _MOST_FIELDS:
                raise _broken()
            fields[named[0]] = named[1]
    return fields, is_drawn


def _notes(reader: PdfReader) -> Iterator[tuple[int, Any]]:
    """Whatever lies over the pages, by the page's number from 1."""
    for number, page in enumerate(reader.pages, 1):
        listed = page.get("/Annots")
        for one in listed.get_object() if listed is not None else ():
            if (note := one.get_object()) is not None:
                yield number, note


def _named(note: Any, page: int) -> tuple[str, Field] | None:
    """Name and content of a field; None of one without a name or a place."""
    name = _inherited(note, "/T")
    rect = note.get("/Rect")
    if not isinstance(name, str) or rect is None or len(rect) != 4:
        return None
    left, bottom, right, top = (float(edge) for edge in rect)
    kind, value = _inherited(note, "/FT"), _inherited(note, "/V")
    tooltip = note.get("/TU")
    field = Field(
        page=page,
        rect=(min(left, right), min(bottom, top), max(left, right), max(bottom, top)),
        tooltip=str(tooltip) if tooltip is not None else "",
        is_box=kind == "/Btn",
        value=str(value) if isinstance(value, str | NameObject) else "",
        shown=str(note.get("/AS", "")),
    )
    return str(name), field


def _inherited(note: Any, key: str) -> Any:
    """What a field or one of its parents says."""
    for _ in range(_DEEPEST):
        if (found := note.get(key)) is not None:
            return found.get_object()
        if (parent := note.get("/Parent")) is None:
            return None
        note = parent.get_object()
    return None


def _box(name: str, field: Field) -> BoxRead:
    """A viewer keeps a tick as the field's value, as what is shown, or as both."""
    said = {one not in {"", _OFF} for one in (field.value, field.shown) if one}
    state = {frozenset({True}): BoxState.MARKED, frozenset({True, False}): BoxState.UNSURE}.get(
        frozenset(said), BoxState.EMPTY
    )
    return BoxRead(name, state, 0.5 if state is BoxState.UNSURE else 1.0, Seen.NO, Seen.NO, b"")


def _is_the_same(one: Field, other: Field) -> bool:
    near = all(abs(a - b) <= _SLACK_PT for a, b in zip(one.rect, other.rect, strict=True))
    says = not one.tooltip or one.tooltip == other.tooltip  # some viewers leave it out as they save
    return near and says and one.page == other.page and one.is_box == other.is_box


def _broken() -> Refused:
    why = tr("The file is broken, or no PDF that can be read.")
    return Refused(tr("file"), why, tr("Save it again from the viewer it was filled in with, or take a photo of it."))
