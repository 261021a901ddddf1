"""Settle a piece under a recall: read on it that it is not meant, or write down what was done as the notice asks.

Only somebody competent who does not own it says so, and silence keeps the hold. What was done is inspected afterwards.
"""

from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.call_in import hold_late
from inspector.duties.change_item import standing_retirement
from inspector.duties.incident_checks import need
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.read_marks import keep_marks
from inspector.duties.recall_checks import recall_called
from inspector.duties.recall_marks import is_readable
from inspector.duties.recall_search import answers_of
from inspector.duties.who import check_at_hand, check_judge, check_name_counts, check_not_evidence, person_of
from inspector.gear.item import Item, NewItem
from inspector.gear.judged import Judged
from inspector.gear.recall_notice import NewPieceCall, PieceCall, Recall, Step, Sure
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page


class ReadOnIt(Struct, frozen=True):
    """What somebody read on a piece. made_on: the day stamped into it; None where none was read."""

    serial: str
    mark: str = ""
    made_on: date | None = None


def not_of_it(office: Office, ref: str, tag: str, read: ReadOnIt, *, by: str = "") -> Judged:
    """Let a piece go from a recall, by what somebody competent read on it. What was read is kept as its marks.

    read: an empty mark stands for the one that is written down. Refused where by what was read it is meant all the
    same, or may be: what is named by its tag is let go by a remedy alone. By what was read it may come under another
    recall. by: the officer where nobody is named.
    """
    check_line(tr("serial"), read.serial)
    check_line(tr("maker's mark"), read.mark)
    with office.book.page() as page:
        recall, item, before = _stands(page, ref, tag)
        reader = _judge(office, page, item, by)
        facts = _as_read(item, read)
        _check_read(
            office, page, recall, replace(item, facts=replace(facts, made_on=read.made_on or facts.made_on)), read
        )
        if (facts.serial, facts.maker_mark) != (item.facts.serial, item.facts.maker_mark):
            why = tr("read for the recall {ref}", ref=recall.ref)
            item = keep_marks(office, page, item, facts, reader, why)
        said = (_read_words(read), reader, facts.maker_mark, facts.serial)
        step = NewPieceCall(office.today, recall.ref, Step.NOT_OF_IT, before.facts.sure, *said)
        page.add_piece_call(item, step)
        hold_late(office, page, [item])
        outcome = judge_and_keep(office, page, item)
        page.enter("not of a recall", by=office.officer.id, at=office.now, facts={"tag": item.tag, "as": step})
    return outcome


def remedied(office: Office, ref: str, tag: str, done: str, *, by: str = "") -> Judged:
    """Write down what was done as the notice asks. The piece is held until somebody competent has inspected it."""
    what = tr("Write what was replaced or looked at as the notice asks, and by whom.")
    text = need(tr("what was done"), done, what)
    with office.book.page() as page:
        recall, item, before = _stands(page, ref, tag)
        doer = _judge(office, page, item, by)
        step = NewPieceCall(office.today, recall.ref, Step.REMEDIED, before.facts.sure, text, doer)
        page.add_piece_call(item, step)
        outcome = judge_and_keep(office, page, item)
        page.enter("remedy", by=office.officer.id, at=office.now, facts={"tag": item.tag, "as": step})
    return outcome


def _stands(page: Page, ref: str, tag: str) -> tuple[Recall, Item, PieceCall]:
    """The recall, the piece, and how it came under it; it must be at hand to be read or mended."""
    recall, item = recall_called(page, ref), page.item(tag)
    before = page.standing_calls(recall.ref).get(item.id)
    if before is None or before.facts.step is not Step.CALLED:
        why = tr("{tag} is not held for {ref}.", tag=item.tag, ref=recall.ref)
        raise Refused(tr("tag"), why, tr("Look at the recall's list of pieces."))
    check_at_hand(page, item)
    check_not_evidence(page, item)
    return recall, item, before


def _judge(office: Office, page: Page, item: Item, by: str) -> str:
    """The id of whoever says so: competent for it today, not its owner, and known by name."""
    field = tr("said by")
    person = person_of(page, by or office.officer.id, field)
    check_name_counts(office, page, person, field)
    check_judge(person, item, office.kind(item.facts.kind), office.today, field)
    if standing_retirement(office, page, item):
        why = tr("{tag} is retired, and nothing brings it back.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Make it unusable; that settles it."))
    return person.id


def _as_read(item: Item, read: ReadOnIt) -> NewItem:
    facts = item.facts
    return replace(facts, serial=read.serial.strip() or facts.serial, maker_mark=read.mark.strip() or facts.maker_mark)


def _check_read(office: Office, page: Page, recall: Recall, item: Item, read: ReadOnIt) -> None:
    """Refuse what leaves it open whether the piece is meant."""
    if recall.facts.meant.names_serials and not is_readable(read.serial):
        why = tr("No serial was read.")
        raise Refused(tr("serial"), why, tr("Clean the piece and read it. What cannot be read stays held."))
    (said,) = answers_of(office, page, recall.facts.meant, [item])
    if said.sure is Sure.NOT_MEANT:
        return
    if said.sure is Sure.CERTAIN:
        raise Refused(tr("serial"), tr("By what was read the piece is meant: {why}.", why=said.why), _what_now())
    raise Refused(tr("serial"), tr("What was read leaves it open: {why}.", why=said.why), _what_now())


def _what_now() -> str:
    return tr("Do what the notice asks for and write that down, or retire the piece.")


def _read_words(read: ReadOnIt) -> str:
    parts = []
    if read.serial.strip():
        parts.append(tr("serial read as {serial}", serial=read.serial.strip()))
    if read.mark.strip():
        parts.append(tr("mark read as {mark}", mark=read.mark.strip()))
    if read.made_on:
        parts.append(tr("made on {day}, as stamped", day=show_day(read.made_on)))
    return ", ".join(parts)
