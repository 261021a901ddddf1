"""Withdraw a recall that was entered wrongly: nothing is erased, and what it alone held stands as it did without it.

Two competent persons say so, since it lets pieces go that nobody has looked at. What was done under it stays true: what
was cleared stays cleared, what was remedied waits for its inspection, and what is retired stays retired. Where more is
known of a piece than that the notice meant it, a doubt holds it until somebody competent has inspected it.
"""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from inspector.duties.call_in import HOLD_MORE
from inspector.duties.incident_checks import need
from inspector.duties.judging import judge_and_keep_all
from inspector.duties.office import Office, told_of
from inspector.duties.recall_checks import check_not_withdrawn, recall_called
from inspector.duties.recall_untold import untold
from inspector.duties.recall_words import answer_word
from inspector.duties.tags_left_on import tag_left
from inspector.duties.who import (
    check_competent,
    check_competent_for_any,
    check_could_before,
    owns,
    proved,
    two_names,
)
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.opinion import NewOpinion, Stance
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.recall_notice import (
    Answer,
    NewPieceCall,
    NewRecallEntry,
    PieceCall,
    Recall,
    RecallEntry,
    RecallEntryKind,
    Step,
)
from inspector.language import tr
from inspector.register.page import Page

_NOT_THERE = {Answer.MADE_UNUSABLE, Answer.PASSED_ON, Answer.HAS_IT_NO_MORE}  # the register tells it otherwise


class WithdrawnRecall(Struct, frozen=True):
    """What withdrawing came to. pieces: those it had held, as they are judged now; doubted: those of them that stay on
    hold until somebody has inspected them, with why; written: who got a letter of it; tags_left: by the tag of a piece
    that is free again, that its printed hold tag may still hang on it.
    """

    ref: str
    pieces: tuple[Judged, ...]
    doubted: tuple[tuple[str, str], ...]
    written: tuple[str, ...]
    tags_left: Mapping[str, str]


class _Freed(Struct, frozen=True):
    """The pieces of which anything was written, those it had held until now, and those in doubt, with why."""

    items: tuple[Item, ...]
    held: tuple[Item, ...]
    doubted: tuple[tuple[str, str], ...]


def withdraw_recall(office: Office, ref: str, why: str, *, second: str, by: str = "") -> WithdrawnRecall:
    """Withdraw a recall, open or closed, and judge anew what it held. by: the officer where nobody is named.

    Refused for whoever is not competent for the kinds that it holds. A piece that one of the two owns stays on hold.
    """
    reason = need(tr("why"), why, tr("Write what was wrong with the entry, and how you know."))
    with office.book.page() as page:
        recall = recall_called(page, ref)
        check_not_withdrawn(page, recall)
        first, other = two_names(office, page, (by, tr("said by")), second)
        _check_competent(office, page, recall, (first, other))
        written = tuple(one.reader[1] for one in untold(page, recall))
        freed = _let_go(office, page, recall, (first, other), reason)
        tags = tuple(one.tag for one in freed.held)
        said = NewRecallEntry(
            office.today, RecallEntryKind.WITHDRAWN, first.id, other.id, other.name, tags=tags, text=reason
        )
        page.add_recall_entry(recall, said)
        pieces = tuple(judge_and_keep_all(office, page, freed.items))
        left = {one.dossier.item.tag: hangs for one in pieces if (hangs := tag_left(page, one))}
        facts = {"recall": recall.ref, "as": said, "doubted": [tag for tag, _ in freed.doubted]}
        facts |= proved(office, first.id, other.id)
        page.enter("withdraw recall", by=office.officer.id, at=office.now, facts=facts)
    return WithdrawnRecall(recall.ref, pieces, freed.doubted, written, left)


def let_go_late(office: Office, page: Page) -> tuple[Item, ...]:
    """What a withdrawn recall holds still, or what was answered of its pieces, once two copies were brought together.

    One of them had not known of the withdrawal. Those of which anything was written; they are to be judged anew.
    """
    people = {one.id: one for one in page.people()}
    found: dict[str, Item] = {}
    for recall in page.withdrawn_recalls():
        said = page.withdrawal_of(recall)
        if said is not None:
            two = tuple(people[key] for key in (said.by, said.person))
            found |= {one.id: one for one in _let_go(office, page, recall, two, said.text).items}
    return tuple(found.values())


def _check_competent(office: Office, page: Page, recall: Recall, two: tuple[Person, Person]) -> None:
    """Each must be competent for every kind that it holds or means; where it names none, for any kind."""
    calls = page.standing_calls(recall.ref)
    held = page.items_with([key for key, one in calls.items() if one.facts.step is Step.CALLED])
    kinds = {key: office.kind(key) for key in (*recall.facts.meant.kinds, *(one.facts.kind for one in held))}
    for person, field in zip(two, (tr("said by"), tr("second name")), strict=True):
        for kind in kinds.values():
            check_competent(person, kind, office.today, field)
            check_could_before(page, person, [kind], office.today, field)
        if not kinds:
            check_competent_for_any(person, office.rules.kinds.values(), office.today, field)
            check_could_before(page, person, office.rules.kinds.values(), office.today, field)


def _let_go(office: Office, page: Page, recall: Recall, two: Sequence[Person], reason: str) -> _Freed:
    """End every hold by this recall, and doubt the pieces of which more was said than that the notice meant them."""
    calls = page.standing_calls(recall.ref)
    items = page.items_with(key for key, one in calls.items() if one.facts.step in {Step.CALLED, Step.WITHDRAWN})
    open_whys = dict(_open_whys(office, page, recall, two, [(one, calls[one.id]) for one in items]))
    held, doubted = [], []
    for item in told_of(office, items):
        call = calls[item.id].facts
        if call.step is Step.CALLED:
            on = max(office.today, call.on)  # a call of a copy whose clock was ahead is taken back as well
            page.add_piece_call(item, NewPieceCall(on, recall.ref, Step.WITHDRAWN, call.sure, reason, two[0].id))
            held.append(item)
        if why := open_whys.get(item.id):
            page.add_opinion(item, NewOpinion(office.today, two[0].id, Stance.DOUBTS, why))
            doubted.append((item, why))
    touched = {one.id: one for one in (*held, *(one for one, _ in doubted))}
    return _Freed(tuple(touched.values()), tuple(held), tuple((one.tag, why) for one, why in doubted))


def _open_whys(
    office: Office, page: Page, recall: Recall, two: Sequence[Person], pieces: Sequence[tuple[Item, PieceCall]]
) -> Iterator[tuple[str, str]]:
    """By the id of each piece that is not let go by a withdrawal alone, why. Nothing is doubted of what left for good
    or is retired."""
    items = [one for one, _ in pieces]
    places, stands = page.whereabouts(items), page.standing_verdicts(items)
    by_hand, answers = _held_by_hand(page, recall), _answers(page, recall)
    for item, call in pieces:
        is_retired = item.id in stands and stands[item.id][0].outcome is Outcome.RETIRE
        if is_retired or places[item.id].where.is_closed:
            continue
        parts = []
        if call.facts.step is Step.CALLED:
            parts += [tr("it was held by hand: {why}", why=call.facts.why)] if call.id in by_hand else []
            parts += [tr("{name} owns it and withdrew the recall", name=one.name) for one in two if owns(one, item)]
        parts += _answered(office, page, item, answers.get(item.id, ()))
        if parts:
            yield item.id, tr("{ref} was withdrawn, but {why}", ref=recall.ref, why="; ".join(parts))


def _held_by_hand(page: Page, recall: Recall) -> set[str]:
    """The ids of the steps by which a piece was held for a reason of its own."""
    lines = (line for line in page.lines_of([HOLD_MORE]) if line.facts.get("recall") == recall.ref)
    return {key for line in lines for _, key in line.rows}


def _answers(page: Page, recall: Recall) -> Mapping[str, list[RecallEntry]]:
    """By piece, the answers by which it is not what or where the register says."""
    found: dict[str, list[RecallEntry]] = {}
    for one in page.recall_entries(recall):
        if one.facts.answer in _NOT_THERE:
            for tag in one.facts.tags:
                found.setdefault(page.item(tag).id, []).append(one)
    return found


def _answered(office: Office, page: Page, item: Item, answers: Sequence[RecallEntry]) -> Iterator[str]:
    """Those of the answers after which nobody has doubted the piece yet; a doubt asks for an inspection already."""
    if not answers:
        return
    dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
    doubts = [one.id for one in dossier.opinions if one.facts.stance is Stance.DOUBTS]
    for one in answers:
        if one.facts.answer and not any(key > one.id for key in doubts):
            said = answer_word(one.facts.answer)
            said = tr("{answer} – {text}", answer=said, text=one.facts.text) if one.facts.text else said
            yield tr("{name} answered: {answer}", name=one.facts.name, answer=said)
