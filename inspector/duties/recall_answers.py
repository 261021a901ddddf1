"""Track a recall: what whoever was written to answered, what is still open, and that all of it is settled."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta

from msgspec import Struct

from inspector.duties.incident_checks import need
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line, check_text
from inspector.duties.recall_checks import recall_called
from inspector.duties.who import plain_name
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import (
    Answer,
    NewRecallEntry,
    PieceCall,
    Recall,
    RecallEntry,
    RecallEntryKind,
    Step,
)
from inspector.gear.whereabouts import Where
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page

_NEEDS_TEXT = {Answer.PASSED_ON, Answer.READ}
_WRITTEN = {RecallEntryKind.WRITTEN, RecallEntryKind.REMINDED}


class Waiting(Struct, frozen=True):
    """A letter that nobody answered for some of its pieces. since: of the last letter; due: the day of a reminder."""

    person: str
    name: str
    number: str
    tags: tuple[str, ...]
    since: date
    due: date


class UnderRecall(Struct, frozen=True):
    """A piece under a recall. open_why: what would settle it; empty where it is settled."""

    item: Item
    call: PieceCall
    open_why: str


def note_answer(
    office: Office, ref: str, tags: Sequence[str], name: str, answer: Answer, text: str = "", *, on: date | None = None
) -> RecallEntry:
    """Keep what somebody answered. It holds and lets go nothing: only what is read on the piece or done to it does.

    name: of whoever answered, as written to; text: to whom it was passed on, what was read, or a remark.
    """
    who = need(tr("answered by"), name, tr("Write who answered."))
    check_line(tr("answered by"), who)
    check_text(tr("text"), text)
    day = on or office.today
    if answer in _NEEDS_TEXT and not text.strip():
        what = tr("Write to whom it was passed on, or what was read on it.")
        raise Refused(tr("text"), tr("It is empty."), what)
    if answer is Answer.PASSED_ON:
        check_line(tr("text"), text.strip())
    with office.book.page() as page:
        recall = recall_called(page, ref, is_open=True)
        if not recall.facts.on <= day <= office.today:
            why = tr("The day lies in the future or before the recall was entered.")
            raise Refused(tr("day"), why, tr("Write the day on which the answer came."))
        said = _tags(page, recall, tags)
        person = next((one.id for one in page.people() if plain_name(one.name) == plain_name(who)), "")
        facts = NewRecallEntry(
            day, RecallEntryKind.ANSWERED, office.officer.id, person, who, "", said, answer, text.strip()
        )
        kept = page.add_recall_entry(recall, facts)
        page.enter("answer recall", by=office.officer.id, at=office.now, facts={"recall": recall.ref, "as": facts})
    return kept


def close_recall(office: Office, ref: str, text: str) -> RecallEntry:
    """Close a recall of which every match is settled; refused otherwise, with what is open."""
    said = need(tr("outcome"), text, tr("Write what came of it."))
    with office.book.page() as page:
        recall = recall_called(page, ref, is_open=True)
        left = [f"{one.item.tag}: {one.open_why}" for one in under_recall(page, recall) if one.open_why]
        if left:
            raise Refused(tr("recall"), tr("Not settled yet: {pieces}", pieces="; ".join(left)),
                          tr("Settle each piece first."))  # fmt: skip
        facts = NewRecallEntry(office.today, RecallEntryKind.CLOSED, office.officer.id, text=said)
        kept = page.add_recall_entry(recall, facts)
        page.enter("close recall", by=office.officer.id, at=office.now, facts={"recall": recall.ref, "as": facts})
    return kept


def under_recall(page: Page, recall: Recall) -> tuple[UnderRecall, ...]:
    """Every piece under a recall, by tag, with what would settle it."""
    calls = page.standing_calls(recall.ref)
    items = tuple(sorted(page.items_with(calls), key=lambda one: one.tag))
    where = page.whereabouts(items)
    said = page.standing_verdicts(items)
    answers = [one.facts for one in page.recall_entries(recall) if one.facts.kind is RecallEntryKind.ANSWERED]
    return tuple(
        UnderRecall(one, calls[one.id], _open_why(calls[one.id], where[one.id].where, said[one.id][0].outcome,
                                                  [x for x in answers if one.tag in _now(page, x.tags)]))
        for one in items
    )  # fmt: skip


def _open_why(call: PieceCall, where: Where, outcome: Outcome, answers: Iterable[NewRecallEntry]) -> str:
    """What would settle it. What has left the club is settled by an answer, since nobody here can read or mend it."""
    if call.facts.step is not Step.CALLED or where is Where.DESTROYED or outcome is Outcome.RETIRE:
        return ""
    if where.is_gone:
        if any(one.answer is not Answer.SENT for one in answers):
            return ""
        return tr("nobody has answered for it")
    return tr("read on it that it is not meant, do what the notice asks for, or retire it")


def waiting(office: Office, page: Page, recall: Recall, pieces: Iterable[UnderRecall]) -> Iterator[Waiting]:
    """Everybody who was written to and has not answered for all of it, with the day on which to remind.

    pieces: those under the recall.
    """
    entries = [one.facts for one in page.recall_entries(recall)]
    days = timedelta(days=int(office.rules.setting("recall_answer_days")))
    settled = {one.item.id for one in pieces if not one.open_why}
    last: dict[tuple[str, str], list[NewRecallEntry]] = {}
    for one in entries:
        if one.kind in _WRITTEN:
            last.setdefault((one.person, one.name), []).append(one)
    for (person, name), letters in last.items():
        answered = {tag for one in entries if answers_for(one, person, name) for tag in one.tags}
        tags = tuple(dict.fromkeys(
            tag for one in letters for tag in one.tags if tag not in answered and page.item(tag).id not in settled
        ))  # fmt: skip
        if tags:
            newest = letters[-1]
            yield Waiting(person, name, newest.number, tags, newest.on, newest.on + days)


def answers_for(one: NewRecallEntry, person: str, name: str) -> bool:
    """Whether an entry is an answer of this reader."""
    if one.kind is not RecallEntryKind.ANSWERED:
        return False
    return one.person == person if person and one.person else plain_name(one.name) == plain_name(name)


def _now(page: Page, tags: Iterable[str]) -> set[str]:
    """The tags that the pieces with these tags have now."""
    return {page.item(tag).tag for tag in tags}


def _tags(page: Page, recall: Recall, tags: Sequence[str]) -> tuple[str, ...]:
    calls = page.standing_calls(recall.ref)
    found = {item.id: item.tag for item in (page.item(tag) for tag in tags)}
    if not found:
        raise Refused(tr("pieces"), tr("No piece is named."), tr("Name the pieces that the answer is about."))
    if strange := [tag for key, tag in found.items() if key not in calls]:
        why = tr("{tags}: not called in by {ref}.", tags=", ".join(strange), ref=recall.ref)
        raise Refused(tr("pieces"), why, tr("Look at the recall's list of pieces."))
    return tuple(found.values())
