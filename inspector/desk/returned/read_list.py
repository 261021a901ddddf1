"""What a heap of files came to: the sheets that were read, and what was not taken with the reason."""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from inspector.desk.look import Look, Type
from inspector.desk.plain import button, column, hairline, row, said, scroll
from inspector.duties.read_returned import ReadBack, SheetBack
from inspector.duties.tell_returned import to_mind
from inspector.gear.sheet_back import Unread
from inspector.language import tr, tr_n

_WIDEST_PX = 760


def read_list(found: ReadBack, look: Look, go: Callable[[SheetBack], object], leave: Callable[[], object]) -> QWidget:
    """The sheets, each with a button that opens it, then the files that were not taken."""
    parts: list[QWidget] = [said(tr("What was read"), Type.DISPLAY)]
    if not found.sheets:
        parts.append(said(tr("No sheet could be read from these files.")))
    for one in found.sheets:
        parts += _sheet(one, go)
    if found.unread:
        parts += [
            hairline(),
            said(tr("Not taken"), Type.HEAD),
            *(part for one in found.unread for part in _unread(one)),
        ]
    parts += [hairline(), row([button(tr("Back to the number"), leave)])]
    page = column(parts)
    look.fit(page, QWidget.setMaximumWidth, _WIDEST_PX)
    return scroll(page, tr("What was read"))


def _sheet(back: SheetBack, go: Callable[[SheetBack], object]) -> list[QWidget]:
    doubtful = len(back.doubtful)
    pieces = tr_n("One piece was read.", "{count} pieces were read.", len(back.pieces))
    doubts = tr_n("One answer is not clear.", "{count} answers are not clear.", doubtful) if doubtful else ""
    head = tr("Sheet {number}: {trip}", number=back.number, trip=back.sheet.trip.name)
    lines = [said(one, bold=True) for one in to_mind(back)]
    look_at = button(tr("Look through it"), lambda: go(back), rank="first",
                     name=tr("Look through the sheet {number}", number=back.number))  # fmt: skip
    return [hairline(), said(head, Type.HEAD), said(" ".join(filter(None, (pieces, doubts)))), *lines, row([look_at])]


def _unread(one: Unread) -> list[QWidget]:
    why = tr("{why} {what}", why=one.refusal.why, what=one.refusal.what_to_do)
    return [said(one.name, bold=True), said(why)]
