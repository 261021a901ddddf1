"""Compare two rulebooks on the whole register: which pieces come out otherwise, and which rule makes it."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from inspector.drawings.marks import outcome_word
from inspector.duties.adopt_rulebook import sound_book
from inspector.duties.judging import judged
from inspector.duties.office import Office, told_of
from inspector.gear.dossier import Dossier
from inspector.gear.item import Item
from inspector.gear.judged import Judged
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
        pieces = tuple(_differing(office, page, told_of(office, items), (first, second)))
    return Compared(
        first=book_name(first),
        second=book_name(second),
        piece_count=len(items),
        pieces=pieces,
        retires=tuple(one.tag for one in pieces if one.after.outcome is Outcome.RETIRE is not one.before.outcome),
    )


def _differing(
    office: Office, page: Page, items: Iterable[Item], books: tuple[Rulebook, Rulebook]
) -> Iterator[PieceDiffers]:
    """Piece by piece, since thousands of dossiers at once stop the window while they are looked over and let go."""
    for item in items:
        dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
        one, other = (_by(office, dossier, book) for book in books)
        if _standing(one) != _standing(other):
            yield _differs(one, other, office.system)


def book_name(book: Rulebook) -> str:
    """The book as its club calls it, with the short name that documents print."""
    title = book.club.title if book.club else tr("packaged rulebook")
    return tr("{title} ({name})", title=title, name=book.hash[:12])


def _by(office: Office, dossier: Dossier, book: Rulebook) -> Judged:
    own = replace(dossier, kind=book.kind(dossier.kind.key))
    return judged(replace(office, rules=book), own)


def _standing(one: Judged) -> tuple[object, ...]:
    verdict = one.verdict
    return verdict.outcome, verdict.by_purpose, verdict.capacity.now_n, verdict.next_due


def _differs(one: Judged, other: Judged, system: System) -> PieceDiffers:
    return PieceDiffers(
        tag=one.dossier.item.tag,
        kind_name=one.dossier.kind.name,
        before=_told(one.verdict),
        after=_told(other.verdict),
        purposes=tuple(_purposes(one.verdict, other.verdict)),
        because=tuple(dict.fromkeys(_because(one, other, system))),
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


def _because(one: Judged, other: Judged, system: System) -> Iterator[str]:
    """The rules that make the difference, worst first: those that answer otherwise, then what moves strength or day."""
    before = {finding.rule: finding for finding in one.verdict.findings}
    after = {finding.rule: finding for finding in other.verdict.findings}
    pairs = [(before.get(rule), after.get(rule)) for rule in dict.fromkeys([*before, *after])]
    answers = [pair for pair in pairs if _outcome(pair[0]) is not _outcome(pair[1])]
    answers.sort(key=lambda pair: -max(_outcome(each).severity for each in pair))
    moved = [pair for pair in pairs if _quantity(pair) in _moved(one.verdict, other.verdict) and pair not in answers]
    for pair in [*answers, *moved]:
        yield _told_pair(pair, one, system)


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


def _told_pair(pair: Pair, one: Judged, system: System) -> str:
    """Rule and quantity, then what each book says: value, limit and answer."""
    finding = next(each for each in pair if each)
    name = quantity_word(finding.quantity, one.dossier.kind)
    was, now = (_seen(each, one, system) for each in pair)
    return tr("{rule}: {name}: {was} → {now}", rule=finding.rule, name=name, was=was, now=now)


def _seen(finding: Finding | None, one: Judged, system: System) -> str:
    if finding is None:
        return tr("not asked")
    kind = one.dossier.kind
    value = value_word(finding.value, kind, finding.observation, system)
    if finding.value is None or finding.value.word or finding.limit is None:
        return f"{value}, {outcome_word(finding.outcome)}"
    limit = must_word(finding.must, value_word(finding.limit, kind, "", system))
    return tr("{value}, {limit}, {outcome}", value=value, limit=limit, outcome=outcome_word(finding.outcome))


def _outcome(finding: Finding | None) -> Outcome:
    return finding.outcome if finding else Outcome.FIT
