"""Enter a recall: every piece that it means, or that nobody can tell from those it means, is held in one deed."""

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office, told_of
from inspector.duties.recall_checks import check_recall, recall_called
from inspector.duties.recall_search import Match, Searched, answers_of, searched
from inspector.duties.who import id_of
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.recall_notice import Meant, NewPieceCall, NewRecall, Recall, Step, Sure
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page

HOLD_MORE = "call one more in"  # the deed in the ledger by which a piece is held by hand


class CalledIn(Struct, frozen=True):
    """A recall that was entered, what was found for it, and its pieces as they are judged by it."""

    recall: Recall
    found: Searched
    pieces: tuple[Judged, ...]


def call_in(office: Office, told: NewRecall) -> CalledIn:
    """Keep a notice and hold every match, certain or to be asked, wherever it is. One transaction.

    Retired pieces stay retired and stand in the list; destroyed ones are no more. told.by: the officer where
    nobody is named.
    """
    check_recall(office, told)
    with office.book.page() as page:
        by = id_of(office, page, told.by, tr("entered by"))
        meant = replace(told.meant, tags=_as_written(page, told.meant))
        found = searched(office, page, meant)
        facts = replace(told, on=office.today, by=by, meant=meant, reason=told.reason.strip())
        recall = page.add_recall(_next_ref(page), facts)
        pieces = tuple(_hold(office, page, recall, one) for one in told_of(office, found.held))
        page.enter("call in", by=office.officer.id, at=office.now, facts=_entered(recall, found))
    return CalledIn(recall, found, pieces)


def hold_more(office: Office, ref: str, tag: str, why: str) -> Judged:
    """Hold a further piece under a recall, for a reason in words."""
    with office.book.page() as page:
        recall, item = recall_called(page, ref, is_open=True), page.item(tag)
        if not why.strip():
            raise Refused(tr("reason"), tr("It is empty."), tr("Write why it belongs to the recall."))
        before = page.standing_calls(recall.ref).get(item.id)
        if before and before.facts.step is Step.CALLED:
            said = tr("{tag} is held for {ref} already.", tag=item.tag, ref=recall.ref)
            raise Refused(tr("tag"), said, tr("Look at the recall's list of pieces."))
        if page.is_destroyed(item):
            said = tr("{tag} was recorded as made unusable.", tag=item.tag)
            raise Refused(tr("tag"), said, tr("Look at the label again; it must be another piece."))
        outcome = _call(office, page, recall, item, Sure.CERTAIN, why.strip())
        facts = {"recall": recall.ref, "tag": item.tag, "why": why.strip()}
        page.enter(HOLD_MORE, by=office.officer.id, at=office.now, facts=facts)
    return outcome


def hold_late(office: Office, page: Page, items: Sequence[Item]) -> tuple[Item, ...]:
    """Hold what was booked in or marked anew and may be meant by a recall; those that are held by it.

    A closed recall counts as well: what its notice says of a batch stays true. One that was withdrawn says nothing.

    What a competent person has read on it before stands, as long as its marks stay what they were read as.
    """
    recalls = page.standing_recalls()
    answers = [answers_of(office, page, one.facts.meant, items) for one in recalls]
    held: dict[str, Item] = {}
    for at, item in enumerate(items):
        for recall, said in zip(recalls, answers, strict=True):
            if said[at].sure is Sure.NOT_MEANT or _is_settled(page, recall, item):
                continue
            page.add_piece_call(item, _step(office, recall, said[at].sure, said[at].why))
            held[item.id] = item
    return tuple(held.values())


def hold_all_late(office: Office, page: Page) -> tuple[Item, ...]:
    """The same for every piece, once two copies of the register were brought together; those that are held by it."""
    return hold_late(office, page, page.every_item()) if page.standing_recalls() else ()


def _is_settled(page: Page, recall: Recall, item: Item) -> bool:
    before = page.standing_calls(recall.ref).get(item.id)
    if before is None:
        return False
    facts = before.facts
    same = (facts.mark, facts.serial) == (item.facts.maker_mark, item.facts.serial)
    return facts.step is not Step.NOT_OF_IT or same


def _hold(office: Office, page: Page, recall: Recall, found: Match) -> Judged:
    return _call(office, page, recall, found.item, found.sure, found.why)


def _call(office: Office, page: Page, recall: Recall, item: Item, sure: Sure, why: str) -> Judged:
    page.add_piece_call(item, _step(office, recall, sure, why))
    return judge_and_keep(office, page, item)


def _step(office: Office, recall: Recall, sure: Sure, why: str) -> NewPieceCall:
    return NewPieceCall(office.today, recall.ref, Step.CALLED, sure, why, office.officer.id)


def _as_written(page: Page, meant: Meant) -> tuple[str, ...]:
    """The named pieces by the tags they have now, each once."""
    found = {item.id: item.tag for item in (page.item(tag) for tag in meant.tags)}
    return tuple(sorted(found.values()))


def _entered(recall: Recall, found: Searched) -> dict[str, object]:
    def tags(some: Sequence[Match]) -> list[str]:
        return [one.item.tag for one in some]

    return {"ref": recall.ref, "as": recall.facts, "certain": tags(found.certain), "to_ask": tags(found.to_ask)}


def _next_ref(page: Page) -> str:
    """It carries the name of this copy of the register, so two copies never give the same one."""
    return f"N-{page.origin}-{len(page.recalls()) + 1:04d}"
