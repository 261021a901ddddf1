"""Compare two rulebooks on the whole register: which pieces come out otherwise, and which rule makes it."""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from inspector.drawings.marks import outcome_word
from inspector.duties.adopt_rulebook import sound_book
from inspector.duties.judging import dossiers_of, verdict_by
from inspector.duties.office import Office
from inspector.gear.dossier import Dossier
from inspector.gear.item import Item
from inspector.gear.kind import Kind
from inspector.gear.outcome import Outcome
from inspector.gear.rulebooks import Compared, PieceDiffers, Standing
from inspector.gear.verdict import Finding, Verdict
from inspector.language import tr
from inspector.register.page import Page
from inspector.rulebook.load import Rulebook, packaged
from inspector.rulebook.words import must_word, purpose_word, quantity_word, value_word
from inspector.units import System

PACKAGED, CURRENT = "packaged", "current"


def named_book(office: Office, name: str, body: bytes) -> Rulebook:
    """The book meant by "packaged", "current" or a file's name. body: the file's bytes."""
    if name == PACKAGED:
        return packaged()
    return office.rules if name == CURRENT else sound_book(body, name)[0]


def compare_rulebooks(office: Office, first: Rulebook, second: Rulebook) -> Compared:
    """Both books on every piece as it stands today; nothing is kept."""
    with office.book.reading() as page:
        items = page.not_retired()
        pieces = tuple(_differing(office, page, items, (first, second)))
    return Compared(
        first=book_name(first),
        second=book_name(second),
        piece_count=len(items),
        pieces=pieces,
        retires=tuple(one.tag for one in pieces if one.after.outcome is Outcome.RETIRE is not one.before.outcome),
    )


def _differing(
    office: Office, page: Page, items: Sequence[Item], books: tuple[Rulebook, Rulebook]
) -> Iterator[PieceDiffers]:
    offices = [replace(office, rules=book) for book in books]
    for dossier in dossiers_of(office, page, items):
        own = [replace(dossier, kind=book.kind(dossier.kind.key)) for book in books]
        one, other = map(verdict_by, offices, own)
        if _standing(one) != _standing(other):
            yield _differs(own[0], one, other, office.system)


def book_name(book: Rulebook) -> str:
    """The book as its club calls it, with the short name that documents print."""
    title = book.club.title if book.club else tr("packaged rulebook")
    return tr("{title} ({name})", title=title, name=book.hash[:12])


def _standing(verdict: Verdict) -> tuple[object, ...]:
    return verdict.outcome, verdict.by_purpose, verdict.capacity.now_n, verdict.next_due


def _differs(dossier: Dossier, one: Verdict, other: Verdict, system: System) -> PieceDiffers:
    return PieceDiffers(
        tag=dossier.item.tag,
        kind_name=dossier.kind.name,
        before=_told(one),
        after=_told(other),
        purposes=tuple(_purposes(one, other)),
        because=tuple(dict.fromkeys(_because(dossier.kind, one, other, system))),
    )


def _told(verdict: Verdict) -> Standing:
    return Standing(verdict.outcome, verdict.capacity.now_n, verdict.next_due)


def _purposes(one: Verdict, other: Verdict) -> Iterator[str]:
    """Each use that comes out otherwise."""
    for was, now in zip(one.by_purpose, other.by_purpose, strict=True):
        if was.outcome is not now.outcome:
            words = [outcome_word(each.outcome) for each in (was, now)]
            yield f"{purpose_word(was.purpose)}: {words[0]} → {words[1]}"


Pair = tuple[Finding | None, Finding | None]


def _because(kind: Kind, one: Verdict, other: Verdict, system: System) -> Iterator[str]:
    """The rules that make the difference, worst first: those that answer otherwise, then what moves strength or day."""
    before = {finding.rule: finding for finding in one.findings}
    after = {finding.rule: finding for finding in other.findings}
    pairs = [(before.get(rule), after.get(rule)) for rule in dict.fromkeys([*before, *after])]
    answers = [pair for pair in pairs if _outcome(pair[0]) is not _outcome(pair[1])]
    answers.sort(key=lambda pair: -max(_outcome(each).severity for each in pair))
    moved = [pair for pair in pairs if _quantity(pair) in _moved(one, other) and pair not in answers]
    for pair in [*answers, *moved]:
        yield _told_pair(pair, kind, system)


def _moved(one: Verdict, other: Verdict) -> set[str]:
    """The quantities behind another strength or another day."""
    steps = [{step.cause: step.loss_ratio for step in each.capacity.steps} for each in (one, other)]
    causes = {cause for cause in {*steps[0], *steps[1]} if steps[0].get(cause) != steps[1].get(cause)}
    if one.next_inspection_due != other.next_inspection_due:
        causes.add("inspection_age")
    readings = [each.wall.next_reading_due if each.wall else None for each in (one, other)]
    return causes | ({"wall_reading_age"} if readings[0] != readings[1] else set())


def _quantity(pair: Pair) -> str:
    return next(one.quantity for one in pair if one)


def _told_pair(pair: Pair, kind: Kind, system: System) -> str:
    """Rule and quantity, then what each book says: value, limit and answer."""
    finding = next(each for each in pair if each)
    name = quantity_word(finding.quantity, kind)
    was, now = (_seen(each, kind, system) for each in pair)
    return tr("{rule}: {name}: {was} → {now}", rule=finding.rule, name=name, was=was, now=now)


def _seen(finding: Finding | None, kind: Kind, system: System) -> str:
    if finding is None:
        return tr("not asked")
    value = value_word(finding.value, kind, finding.observation, system)
    if finding.value is None or finding.value.word or finding.limit is None:
        return f"{value}, {outcome_word(finding.outcome)}"
    limit = must_word(finding.must, value_word(finding.limit, kind, "", system))
    return tr("{value}, {limit}, {outcome}", value=value, limit=limit, outcome=outcome_word(finding.outcome))


def _outcome(finding: Finding | None) -> Outcome:
    return finding.outcome if finding else Outcome.FIT
