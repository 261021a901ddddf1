"""Papers that were printed: where each lies, and the ways to look at it."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from inspector.desk.notice import Notice
from inspector.language import tr

if TYPE_CHECKING:
    from inspector.duties.out_tray import Paper


def tell_papers(notice: Notice, head: str, text: str, papers: "Sequence[Paper]") -> None:
    """Tell what came of a deed, and of each paper where it lies, with a way to open it."""
    lines = [text] if text else []
    for paper in papers:
        lines.append(str(paper.path))
        if paper.missing:
            lines.append(tr("Not in the type, printed as empty squares: {signs}", signs=" ".join(paper.missing)))
    looks = [
        (tr("Look at {name}", name=paper.path.stem) if len(papers) > 1 else tr("Look at it"),
         partial(look_at, paper.path, notice))
        for paper in papers
    ]  # fmt: skip
    opens = [] if len(papers) > 1 else [(tr("Open"), partial(open_file, paper.path)) for paper in papers]
    notice.tell(head, "\n".join(lines), [*looks, *opens])


def look_at(place: Path, above: QWidget) -> None:
    """Show a paper page by page, to print it or to keep a copy; above: any part of the window it belongs to."""
    from inspector.desk.preview import Preview

    Preview(place, above.window()).show()


def open_file(place: Path) -> None:
    """Show a paper with the program that this machine uses for it."""
    from PySide6.QtCore import QUrl  # here: the list does not wait for them
    from PySide6.QtGui import QDesktopServices

    QDesktopServices.openUrl(QUrl.fromLocalFile(str(place)))
