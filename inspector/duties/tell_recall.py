"""Tell of recalls: the list of all, and one with its matches, letters and answers."""

from collections.abc import Iterator, Sequence
from datetime import date

from msgspec import Struct

from inspector.duties.office import Office
from inspector.duties.recall_answers import UnderRecall, answers_for, under_recall, waiting
from inspector.duties.recall_checks import recall_called
from inspector.duties.recall_untold import untold
from inspector.duties.recall_words import answer_word, issuer_word, meant_facts, notice_words, step_word, sure_word
from inspector.duties.tell_whereabouts import where_words
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import NewRecallEntry, PieceCall, Recall, RecallEntryKind, Step, Sure
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr, tr_n
from inspector.register.page import Page
from inspector.rulebook.wording import cautions


class RecallRow(Struct, frozen=True):
    """A line of the list, in words. left: how many pieces are not settled. A withdrawn one is closed as well."""

    ref: str
    day: str
    notice: str
    state: str
    left: str
    is_closed: bool
    is_withdrawn: bool


class CalledTold(Struct, frozen=True):
    """A piece under a recall, in words. open_why: what would settle it; empty where it is settled."""

    tag: str
    kind_name: str
    marks: str
    sure: Sure
    sure_name: str
    why: str
    place: str
    outcome: Outcome
    state: str
    open_why: str
    is_called: bool


class LetterTold(Struct, frozen=True):
    """Somebody who was written to. answers: what came back; due: the day of a reminder, None where all is answered."""

    name: str
    letters: str
    tags: str
    answers: str
    due: date | None
    is_late: bool


class RecallTold(Struct, frozen=True):
    """A recall in words. added: day, what, text. numbers: of the letters that can be printed again.

    withdrawn: when, by whom and why it was withdrawn; empty where it stands. A withdrawn one is closed as well. untold:
    who was written to and does not know of the withdrawal.
    """

    ref: str
    reason: str
    remedy: str
    facts: tuple[Fact, ...]
    pieces: tuple[CalledTold, ...]
    letters: tuple[LetterTold, ...]
    added: tuple[tuple[str, str, str], ...]
    numbers: tuple[str, ...]
    is_closed: bool
    cautions: tuple[str, ...]
    withdrawn: str = ""
    untold: tuple[str, ...] = ()

    @property
    def left(self) -> tuple[CalledTold, ...]:
        """The pieces that are not settled."""
        return tuple(one for one in self.pieces if one.open_why)


def recalls(office: Office) -> tuple[RecallRow, ...]:
    """Every recall, the youngest first."""
    with office.book.reading() as page:
        return tuple(_row(page, one) for one in reversed(page.recalls()))


def _row(page: Page, recall: Recall) -> RecallRow:
    is_withdrawn = page.withdrawal_of(recall) is not None
    is_closed = is_withdrawn or page.is_recall_closed(recall)
    pieces = under_recall(page, recall)
    left = sum(1 for one in pieces if one.open_why)
    said = tr("none") if not left else tr_n("{count} of {all}", "{count} of {all}", left, all=len(pieces))
    state = tr("withdrawn") if is_withdrawn else tr("closed") if is_closed else tr("open")
    return RecallRow(
        recall.ref, show_day(recall.facts.on), notice_words(recall.facts), state, said, is_closed, is_withdrawn
    )


def recall_told(office: Office, ref: str) -> RecallTold:
    """One recall with all that is known of it."""
    with office.book.reading() as page:
        recall = recall_called(page, ref)
        names = {one.id: one.name for one in page.people()}
        entries = tuple(one.facts for one in page.recall_entries(recall))
        pieces = under_recall(page, recall)
        withdrawal = page.withdrawal_of(recall)
        return RecallTold(
            ref=recall.ref,
            reason=recall.facts.reason,
            remedy=recall.facts.remedy,
            facts=_facts(office, recall, names),
            pieces=tuple(_pieces(office, page, recall, pieces, names)),
            letters=tuple(_letters(office, page, recall, pieces, entries)),
            added=tuple(_added(one, names) for one in entries),
            numbers=tuple(one.number for one in entries if one.number),
            is_closed=withdrawal is not None or page.is_recall_closed(recall),
            cautions=cautions(office.rules),
            withdrawn=_withdrawn(withdrawal, names) if withdrawal else "",
            untold=tuple(one.reader[1] for one in untold(page, recall)) if withdrawal else (),
        )


def _facts(office: Office, recall: Recall, names: dict[str, str]) -> tuple[Fact, ...]:
    told = recall.facts
    return (
        Fact(tr("Whose notice"), issuer_word(told.issuer)),
        Fact(tr("Day of the notice"), show_day(told.issued) if told.issued else ""),
        Fact(tr("Where it can be read"), told.source),
        *meant_facts(told.meant, office.rules.kinds),
        Fact(tr("Entered"), tr("{day}, by {name}", day=show_day(told.on), name=names.get(told.by, told.by))),
    )


def _withdrawn(said: NewRecallEntry, names: dict[str, str]) -> str:
    two = {"name": names.get(said.by, said.by), "second": names.get(said.person, said.name)}
    return tr("Withdrawn on {day} by {name} and {second}: {why}", day=show_day(said.on), why=said.text, **two)


def _pieces(
    office: Office, page: Page, recall: Recall, pieces: Sequence[UnderRecall], names: dict[str, str]
) -> Iterator[CalledTold]:
    """Certain ones first, then those to ask; each by tag."""
    items = [one.item for one in pieces]
    where, said, steps = page.whereabouts(items), page.standing_verdicts(items), page.steps_under(recall.ref)
    for one in sorted(pieces, key=lambda one: (one.call.facts.sure is not Sure.CERTAIN, one.item.tag)):
        item, step = one.item, one.call.facts
        kind = office.rules.kinds.get(item.facts.kind)
        marks = " ".join(text for text in (item.facts.maker_mark, item.facts.serial) if text)
        yield CalledTold(
            tag=item.tag,
            kind_name=kind.name if kind else item.facts.kind,
            marks=marks or tr("none written down"),
            sure=step.sure,
            sure_name=sure_word(step.sure),
            why=_match_why(steps[item.id]),
            place=where_words(where[item.id], names),
            outcome=said[item.id][0].outcome,
            state=_state(one, said[item.id][0].outcome),
            open_why=one.open_why,
            is_called=step.step is Step.CALLED,
        )


def _match_why(steps: Sequence[PieceCall]) -> str:
    """What the last step says of it; a withdrawal says nothing of the piece, so the one before it does."""
    said = [one.facts.why for one in steps if one.facts.step is not Step.WITHDRAWN]
    return said[-1] if said else ""


def _state(one: UnderRecall, outcome: Outcome) -> str:
    if one.call.facts.step in {Step.CALLED, Step.WITHDRAWN} and outcome is Outcome.RETIRE:
        return tr("retired")
    return step_word(one.call.facts.step)


def _letters(
    office: Office, page: Page, recall: Recall, pieces: Sequence[UnderRecall], entries: Sequence[NewRecallEntry]
) -> Iterator[LetterTold]:
    """A line for each reader, in the order in which they were written to."""
    is_ended = page.withdrawal_of(recall) is not None or page.is_recall_closed(recall)
    late = {(one.person, one.name): one for one in waiting(office, page, recall, pieces)}
    readers: dict[tuple[str, str], list[NewRecallEntry]] = {}
    for one in entries:
        if one.number:
            readers.setdefault((one.person, one.name), []).append(one)
    for (person, name), sent in readers.items():
        back = [one for one in entries if answers_for(one, person, name)]
        waits = late.get((person, name))
        numbers = ", ".join(tr("{number} of {day}", number=one.number, day=show_day(one.on)) for one in sent)
        tags = ", ".join(dict.fromkeys(tag for one in sent for tag in one.tags))
        answers = "; ".join(_answer(one) for one in back)
        due = waits.due if waits and not is_ended else None
        yield LetterTold(name, numbers, tags, answers, due, due is not None and due < office.today)


def _answer(one: NewRecallEntry) -> str:
    said = answer_word(one.answer) if one.answer else ""
    words = {"tags": ", ".join(one.tags), "answer": said, "day": show_day(one.on)}
    if one.text:
        return tr("{tags}: {answer} – {text} ({day})", text=one.text, **words)
    return tr("{tags}: {answer} ({day})", **words)


def _added(one: NewRecallEntry, names: dict[str, str]) -> tuple[str, str, str]:
    tags = ", ".join(one.tags)
    what, text = {
        RecallEntryKind.WRITTEN: (
            tr("Letter to {name}", name=one.name), tr("{number}: {tags}", number=one.number, tags=tags)
        ),
        RecallEntryKind.REMINDED: (
            tr("Reminder to {name}", name=one.name), tr("{number}: {tags}", number=one.number, tags=tags)
        ),
        RecallEntryKind.ANSWERED: (tr("Answer of {name}", name=one.name), _answer(one)),
        RecallEntryKind.CLOSED: (tr("Closed"), one.text),
        RecallEntryKind.WITHDRAWN: (tr("Withdrawn"), tr("second name {second}: {why}", why=one.text,
                                                        second=names.get(one.person, one.name))),
        RecallEntryKind.TOLD: (
            tr("Letter to {name}: withdrawn", name=one.name), tr("{number}: {tags}", number=one.number, tags=tags)
        ),
    }[one.kind]  # fmt: skip
    by = tr("{text} (written down by {name})", text=text, name=names.get(one.by, one.by))
    return show_day(one.on), what, by
