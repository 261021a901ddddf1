"""Fills a printed form in as members do: with a library of its own make, or by clicks and keys in a viewer's engine."""

import ctypes
from collections.abc import Mapping
from importlib import import_module
from io import BytesIO
from typing import Any

from pypdf import PdfReader, PdfWriter

_PDFIUM: Any = import_module("pypdfium2")
_RAW: Any = import_module("pypdfium2.raw")


def by_library(pdf: bytes, ticked: set[str], written: Mapping[str, str]) -> bytes:
    """Filled in by pypdf. ticked: names of boxes; written: text or choice by the field's name."""
    writer = PdfWriter(clone_from=BytesIO(pdf))
    values = dict.fromkeys(ticked, "/Yes") | dict(written)
    for page in writer.pages:
        names = {str(one.get_object().get("/T")) for one in page.get("/Annots", [])}
        if own := {name: value for name, value in values.items() if name in names}:
            writer.update_page_form_field_values(page, own, auto_regenerate=False)
    return _written(writer)


def by_viewer(pdf: bytes, ticked: set[str], written: Mapping[str, str]) -> bytes:
    """Filled in through the form engine of a browser's viewer: each box is clicked, each text typed at its place."""
    places = _places(pdf)
    document = _PDFIUM.PdfDocument(pdf)
    document.init_forms()
    forms = document.formenv
    for number in range(len(document)):
        page = document[number]
        for name, (where, x, y) in places.items():
            if where == number and (name in ticked or name in written):
                _click(forms, page, x, y)
                if name in written:
                    _type(forms, page, written[name])
        _RAW.FORM_ForceToKillFocus(forms)
        page.close()
    saved = BytesIO()
    document.save(saved)
    document.close()
    return saved.getvalue()


def flattened(pdf: bytes) -> bytes:
    """As a printer driver that writes into a file leaves it: no fields, all of it picture."""
    document = _PDFIUM.PdfDocument(pdf)
    document.init_forms()
    for page in document:
        page.flatten()
    saved = BytesIO()
    document.save(saved)
    document.close()
    return saved.getvalue()


def drawn_on(pdf: bytes, page: int, x: float, y: float) -> bytes:
    """With a stroke of a finger over it, from x, y to the right, in points."""
    writer = PdfWriter(clone_from=BytesIO(pdf))
    ink = import_module("pypdf.generic")
    note = ink.DictionaryObject(
        {
            ink.NameObject("/Type"): ink.NameObject("/Annot"),
            ink.NameObject("/Subtype"): ink.NameObject("/Ink"),
            ink.NameObject("/Rect"): ink.ArrayObject([ink.FloatObject(v) for v in (x, y, x + 20, y + 20)]),
        }
    )
    writer.add_annotation(page, note)
    return _written(writer)


def _written(writer: PdfWriter) -> bytes:
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def _places(pdf: bytes) -> dict[str, tuple[int, float, float]]:
    found = {}
    for number, page in enumerate(PdfReader(BytesIO(pdf)).pages):
        for one in page.get("/Annots", []):
            note = one.get_object()
            left, bottom, right, top = (float(edge) for edge in note["/Rect"])
            found[str(note["/T"])] = (number, (left + right) / 2, (bottom + top) / 2)
    return found


def _click(forms: Any, page: Any, x: float, y: float) -> None:
    _RAW.FORM_OnMouseMove(forms, page, 0, x, y)
    _RAW.FORM_OnLButtonDown(forms, page, 0, x, y)
    _RAW.FORM_OnLButtonUp(forms, page, 0, x, y)


def _type(forms: Any, page: Any, text: str) -> None:
    units = text.encode("utf-16-le") + b"\0\0"
    buffer = (ctypes.c_ushort * (len(units) // 2)).from_buffer_copy(units)
    _RAW.FORM_ReplaceSelection(forms, page, buffer)
