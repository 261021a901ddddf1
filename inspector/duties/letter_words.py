"""What a letter or slip says of one piece: whether it may be used, why it is named, what is asked of its reader."""

from collections.abc import Iterator, Mapping
from datetime import date

from inspector.duties.before_use import may_go
from inspector.duties.due_days import is_lost
from inspector.duties.keep_vehicles import kept_words
from inspector.duties.office import Office
from inspector.duties.tell_due import day_words, late_words
from inspector.duties.tell_whereabouts import evidence_words
from inspector.duties.what_falls_due import Held
from inspector.duties.who import owns
from inspector.gear.falls_due import Due, DueLine
from inspector.gear.letters import LetterLine, LetterPiece
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.whereabouts import Where
from inspector.language import show_day, tr
from inspector.rulebook.words import marked_words

LOOKS = {Due.FIRST_INSPECTION, Due.INSPECTION, Due.READING}
Kept = Mapping[str, tuple[str, ...]]  # vehicles that are evidence, by tag, with the incidents


def letter_piece(one: Held, reader: Person, due: tuple[DueLine, ...], kept: Kept, today: date) -> LetterPiece:
    """A piece as a letter tells it. due: its lines of the calendar."""
    return LetterPiece(
        tag=one.item.tag,
        kind_name=one.kind_name,
        marked=marked_words(one.item),
        outcome=one.verdict.outcome,
        may_use=may_use(one),
        says=says(one),
        why=". ".join(_why(one, reader)),
        do=_asked(one, reader, due, kept),
        due=letter_lines(due, today),
    )


def letter_lines(due: tuple[DueLine, ...], today: date) -> tuple[LetterLine, ...]:
    """The days and what they are for."""
    return tuple(LetterLine(day_words(one), ", ".join(_line(one, today))) for one in due)


def _line(one: DueLine, today: date) -> Iterator[str]:
    yield one.says
    if late := late_words(one, today):
        yield late


def may_use(one: Held) -> bool:
    """Whether anything is open to the piece; one that is lost serves nobody."""
    return may_go(one.verdict) and not is_lost(one.where)


def says(one: Held) -> str:
    """The stored verdict in plain words: what it may be used for, or what keeps it from use."""
    if is_lost(one.where):
        return tr("The register has it as {where}.", where=one.place)
    return one.words.use_line if may_go(one.verdict) else f"{one.words.headline}. {one.words.plain}"


def _why(one: Held, reader: Person) -> Iterator[str]:
    """Why it stands in the letter of this reader."""
    if owns(reader, one.item):
        yield tr("Your own")
    if one.loan and one.loan.holder == reader.id:
        yield tr("With you on loan since {day}", day=show_day(one.loan.on))
    else:
        yield tr("By the register: {place}", place=one.place)


def is_asked_for(one: Held, due: tuple[DueLine, ...], kept: Kept) -> bool:
    """Whether it is to be brought: something of it is due, or it may not be used. Never what is evidence or lost."""
    if is_lost(one.where) or one.kept_by or _sits_on_evidence(one, kept):
        return False
    asked = any(line.what in {*LOOKS, Due.LOAN, Due.DESTRUCTION} for line in due)
    return asked or not may_go(one.verdict)


def _sits_on_evidence(one: Held, kept: Kept) -> bool:
    return one.where.where is Where.ON_VEHICLE and one.where.at in kept


def has_it(one: Held, reader: Person) -> bool:
    """Whether the piece is with the reader, as far as the register knows: what is lent to another is not."""
    return one.where.where is not Where.ON_LOAN or one.where.at == reader.id


def _asked(one: Held, reader: Person, due: tuple[DueLine, ...], kept: Kept) -> str:
    if is_lost(one.where):
        return tr("If you find it, do not use it, and tell the equipment officer.")
    if one.kept_by:
        leave = tr("Do not use, clean, repair, mark or move it.")
        return f"{evidence_words(one.kept_by)} {leave}"
    if _sits_on_evidence(one, kept):
        return kept_words(kept, one.where.at)
    if not is_asked_for(one, due, kept):
        return ""
    said = [_use_words(one)] if not may_go(one.verdict) else []
    return " ".join((*said, _bring_words(one, reader, {line.what for line in due})))


def _use_words(one: Held) -> str:
    if one.verdict.outcome is Outcome.RETIRE:
        return tr("Never use it again, and never give it to anybody to use.")
    return tr("Do not use it until it is inspected and you are told that it may be used again.")


def _bring_words(one: Held, reader: Person, due: set[Due]) -> str:
    if not has_it(one, reader):
        return tr("It is with somebody else, who is asked for it.")
    if one.where.where is Where.ON_VEHICLE:
        return tr("Bring the vehicle {tag}; leave the part on it.", tag=one.where.at)
    if one.verdict.outcome is Outcome.RETIRE:
        return tr("Bring it, so that it is made unusable before witnesses.")
    if Due.LOAN in due and not due & LOOKS:
        return tr("Bring it back.")
    return tr("Bring it to be inspected.")


def bring_words(office: Office, to: str, by: date | None) -> str:
    """To where and by when; who to ask where nobody said."""
    if to and by:
        return tr("Bring it to {place} by {day}.", place=to, day=show_day(by))
    if to:
        return tr("Bring it to {place}.", place=to)
    ask = tr("Ask {name}, the club's equipment officer, where to bring it", name=office.officer.name)
    return tr("{ask}, by {day} at the latest.", ask=ask, day=show_day(by)) if by else f"{ask}."
