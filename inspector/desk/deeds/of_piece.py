"""All that can be done with one piece, in the order of a menu."""

from collections.abc import Callable
from typing import Any

from inspector.desk.deeds import fitting, gear_papers, hands, judgement, labels, log, marks, papers, where, work
from inspector.desk.form.deed import Deed
from inspector.desk.opened import Opened
from inspector.language import tr

Make = Callable[[Opened], Deed[Any]]


def _lend(piece: Opened) -> Deed[Any]:
    return hands.hand_out((piece.tag,))


def _take_back(piece: Opened) -> Deed[Any]:
    return hands.take_back((piece.tag,))


def _call_in(piece: Opened) -> Deed[Any]:
    return papers.recall((piece.tag,))


_PAPERS: tuple[Make, ...] = (gear_papers.of_labels, gear_papers.of_tag, _call_in)
_OF_TAGS: tuple[Make, ...] = (_lend, _take_back, *_PAPERS)


def groups() -> tuple[tuple[str, tuple[Make, ...]], ...]:
    """The deeds under their headings."""
    return (
        (tr("What it went through"), (log.use, log.expose)),
        (tr("Where it is"), (where.place_it, _lend, _take_back, fitting.fit, fitting.take_off, where.missing,
                             where.stolen, where.found, where.sell, where.hand_back, where.voucher)),
        (tr("Work and labels"), (work.repair, work.add_file, labels.retag, labels.label_lost, labels.label_anew,
                                 marks.marks, labels.owner, labels.worth, labels.note)),
        (tr("Judgement"), (judgement.doubt_it, judgement.answer, judgement.strike, judgement.destroy)),
        (tr("Papers"), (papers.record, *_PAPERS)),
    )  # fmt: skip


def about_of(make: Make, piece: Opened) -> object:
    """What the deed is about: the piece, or its tag among others."""
    return (piece.tag,) if make in _OF_TAGS else piece
