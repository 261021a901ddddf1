"""Take in what came back on a sheet, once a person has looked at it and said who checked.

It takes the road of any member's check, so it may only tighten; the files it was read from are kept with the trip.
"""

import hashlib
from collections.abc import Mapping, Sequence
from datetime import date

from inspector.duties.attach import attach, attachments
from inspector.duties.check_piece import check_sheet, trip_of_sheet
from inspector.duties.office import Office
from inspector.gear.attachment import PaperKind
from inspector.gear.inspection import Answer as Graded
from inspector.gear.inspection import Reading
from inspector.gear.judged import Judged
from inspector.gear.kind import Grade, Kind
from inspector.gear.kit_check import Seen
from inspector.gear.photo_read import Answer
from inspector.gear.sheet_back import Incoming, PieceBack, RowBack
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import read

_GRADES = {Answer.GOOD: Grade.GOOD, Answer.FAULT: Grade.BAD}


def take_returned(
    office: Office,
    number: str,
    member: str,
    pieces: Mapping[str, Seen],
    on: date | None = None,
    files: Sequence[Incoming] = (),
) -> tuple[Judged, ...]:
    """Keep a sheet that came back, with the files it was read from; all of it or nothing."""
    planned, own = trip_of_sheet(office, number)
    with office.book.together():
        kept = check_sheet(office, number, member, pieces, on)
        there = {one.facts.original_sha256 for one in attachments(office, planned.ref)}
        note = tr("The sheet {number} as it came back.", number=own)
        for one in files:
            if hashlib.sha256(one.data).hexdigest() not in there:  # it may hold pages of several sheets
                attach(office, planned.ref, one.name, one.data, PaperKind.OTHER, note=note, by=member)
    return kept


def seen_of(office: Office, kind: Kind, back: PieceBack) -> Seen:
    """What a piece of the sheet says, as it is kept. A fault is kept as bad; what is unsure is refused.

    A fault at a measured line without a figure, or at a question that its kind does not ask any more, is a doubt, which
    holds the piece. Good at a measured line without a figure says nothing that could be kept.
    """
    answers, readings, doubts = [], [], []
    for row in back.rows:
        if row.is_doubtful:
            why = tr("It is not clear what was ticked at “{question}”.", question=row.tick.text)
            raise Refused(tr("sheet"), why, tr("Look at the paper, and say it."))
        if kind.check(row.tick.key) and (grade := _GRADES.get(row.answer)):
            answers.append(Graded(row.tick.key, grade))
            continue
        figure = _reading(office, kind, row)
        readings += [figure] if figure else []
        if row.answer is Answer.FAULT:
            doubts.append(fault_words(row.tick.text))
    note = back.remarks.text.strip() if back.remarks else ""
    return Seen(tuple(answers), tuple(readings), note, tuple(doubts))


def fault_words(question: str) -> str:
    """A fault that is kept as a doubt."""
    return tr("Ticked as a fault on the sheet: {question}", question=question)


def typed_figure(row: RowBack) -> str:
    """What was typed at a measured line, with the unit chosen beside it unless one was typed."""
    text = row.reading.text.strip() if row.reading else ""
    return f"{text} {row.unit}".strip() if text and text[-1].isdigit() else text


def _reading(office: Office, kind: Kind, row: RowBack) -> Reading | None:
    key, _, point = row.tick.key.partition("/")
    measure, text = kind.measure(key), typed_figure(row)
    if measure is None or not text:
        return None
    return Reading(key, read(text, measure.dimension, field=row.tick.text, decimal=office.decimal), point)
