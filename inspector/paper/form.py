"""What is filled in on a sheet: with a pen on paper, or on a screen in the field that lies over it.

A sheet that is read back tells where each of them lies: `Press.placed_here` keeps it, page by page.
"""

from collections.abc import Sequence

from reportlab.lib.colors import white

from inspector.drawings.shapes import Ink
from inspector.paper.page_style import Type, colour
from inspector.paper.press import Press

_INSET_PT = 0.6
_FIELD = {"borderWidth": 0, "borderColor": white, "fillColor": None, "textColor": None, "fieldFlags": ""}
_LONGEST = 120
_FACE = "Helvetica"  # what is typed is set by the viewer in a face that every viewer has


def tick_box(press: Press, left: float, top: float, side_pt: float, name: str, tooltip: str) -> None:
    """A box to tick with a pen, and over it a field to tick on a screen. The frame is printed, not the field's:
    a viewer that leaves fields out still prints the box."""
    press.frame(left, top, side_pt, side_pt, 0.8)
    press.placed_here.box(name, left, top, side_pt, side_pt)
    inside = side_pt - 2 * _INSET_PT
    press.canvas.acroForm.checkbox(
        name=name,
        tooltip=tooltip,
        x=left + _INSET_PT,
        y=press.up(top + side_pt) + _INSET_PT,
        size=inside,
        buttonStyle="check",
        **_field(white),
    )


def writing_room(
    press: Press, left: float, top: float, width_pt: float, height_pt: float, name: str, tooltip: str, type_: Type
) -> None:
    """Room over a line to write on, and a field to type into. The line is not drawn here."""
    press.placed_here.room(name, left, top, width_pt, height_pt)
    press.canvas.acroForm.textfield(
        name=name,
        tooltip=tooltip,
        x=left,
        y=press.up(top + height_pt),
        width=width_pt,
        height=height_pt,
        fontName=_FACE,
        fontSize=type_.size_pt,
        maxlen=_LONGEST,
        **_field(None),
    )


def choice(
    press: Press, left: float, top: float, width_pt: float, height_pt: float, name: str, tooltip: str,
    options: Sequence[str], type_: Type,
) -> None:  # fmt: skip
    """One of several words; the first stands there, and on paper, until another is chosen."""
    press.canvas.acroForm.choice(
        name=name,
        tooltip=tooltip,
        value=options[0],
        options=list(options),
        x=left,
        y=press.up(top + height_pt),
        width=width_pt,
        height=height_pt,
        fontName=_FACE,
        fontSize=type_.size_pt,
        **{**_field(None), "fieldFlags": "combo"},
    )


def kept_word(press: Press, name: str, value: str) -> None:
    """A field that nobody sees or changes: by it a filled form is known."""
    press.canvas.acroForm.textfield(
        name=name,
        value=value,
        x=0,
        y=0,
        width=1,
        height=1,
        fontName=_FACE,
        fontSize=1,
        annotationFlags="hidden",
        **{**_field(None), "fieldFlags": "readOnly"},
    )


def _field(fill: object) -> dict[str, object]:
    return {**_FIELD, "fillColor": fill, "textColor": colour(Ink.INK)}
