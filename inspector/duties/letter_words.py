"""What a letter or slip says of one piece: whether it may be used, why it is named, what is asked of its reader."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date

from msgspec import Struct

from inspector.duties.before_use import may_go
from inspector.duties.due_days import is_lost
from inspector.duties.keep_vehicles import kept_words
from inspector.duties.tell_due import day_words, late_words
from inspector.duties.tell_whereabouts import evidence_words
from inspector.duties.what_falls_due import Held, of_piece
from inspector.duties.who import owns
from inspector.gear.falls_due import Due, DueLine
from inspector.gear.letters import LetterLine, LetterPiece
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.whereabouts import Where
from inspector.language import show_day, tr
from inspector.register.page import Page
from inspector.rulebook.words import marked_words

LOOKS = {Due.FIRST_INSPECTION, Due.INSPECTION, Due.READING}


class Asking(Struct, frozen=True):
    """What is looked at for every piece. due: by the piece's id, its lines of the calendar; kept: vehicles that are
    evidence; back_by: up to which day a loan is asked back."""

    due: Mapping[str, tuple[DueLine, ...]]
    kept: Mapping[str, tuple[str, ...]]
    today: date
    back_by: date

    def of(self, one: Held) -> tuple[DueLine, ...]:
        """What falls due of a piece."""
        return self.due[one.item.id]


def asking(page: Page, pieces: Iterable[Held], today: date, last: date, back_by: date | None) -> Asking:
    """What falls due of the pieces up to the day, what waits first.

    A notice to print is the officer's own matter, and what holds a piece is said of it anyway.
    """
    due = {}
    for one in pieces:
        lines = (line for line in of_piece(one) if line.what not in {Due.NOTICE, Due.HOLD})
        by_day = sorted(
            (line for line in lines if line.on is None or line.on <= last), key=lambda it: it.on or date.min
        )
        due[one.item.id] = tuple(by_day)
    return Asking(due, page.kept_vehicles(), today, back_by or today)


def letter_piece(one: Held, reader: Person, ask: Asking) -> LetterPiece:
    """A piece as a letter tells it."""
    return LetterPiece(
        tag=one.item.tag,
        kind_name=one.kind_name,
        marked=marked_words(one.item),
        outcome=one.verdict.outcome,
        may_use=may_use(one),
        says=says(one),
        why=why_words(one, reader),
        do=_asked(one, reader, ask),
        due=letter_lines(ask.of(one), ask.today),
    )


def letter_lines(due: tuple[DueLine, ...], today: date) -> tuple[LetterLine, ...]:
    """The days and what they are for."""
    return tuple(LetterLine(day_words(one), ", ".join(_line(one, today))) for one in due)


def _line(one: DueLine, today: date) -> Iterator[str]:
    """Who has the piece is told what to do on the day on which time alone may change what is said of it."""
    yield tr("from that day on ask before you use it") if one.what is Due.VERDICT else one.says
    if late := late_words(one, today):
        yield late


def may_use(one: Held) -> bool:
    """Whether anything is open to the piece; one that is lost serves nobody."""
    return may_go(one.verdict) and not is_lost(one.where)


def says(one: Held) -> str:
    """The stored verdict in plain words: what it may be used for, or what keeps it from use."""
    if is_lost(one.where):
        return tr("The register has it as {where}.", where=one.place)
    return one.words.use_line if may_go(one.verdict) else f"{one.words.headline.rstrip('.')}. {one.words.plain}"


def why_words(one: Held, reader: Person) -> str:
    """Why it stands in the letter of this reader."""
    return ". ".join(_why(one, reader))


def _why(one: Held, reader: Person) -> Iterator[str]:
    if owns(reader, one.item):
        yield tr("Your own")
    if one.loan and one.loan.holder == reader.id:
        yield tr("With you on loan since {day}", day=show_day(one.loan.on))
    else:
        yield tr("By the register: {place}", place=one.place)


def is_asked_for(one: Held, ask: Asking) -> bool:
    """Whether it is to be brought: something of it is due, or it may not be used. Never what is evidence or lost."""
    return not must_stay(one, ask) and (bool(_reasons(one, ask)) or not may_go(one.verdict))


def must_stay(one: Held, ask: Asking) -> str:
    """Why a piece cannot be brought: it is lost or evidence; empty where it can."""
    if is_lost(one.where):
        return tr("If you find it, do not use it, and tell the equipment officer.")
    if one.kept_by:
        leave = tr("Do not use, clean, repair, mark or move it.")
        return f"{evidence_words(one.kept_by)} {leave}"
    return kept_words(ask.kept, one.where.at) if one.where.where is Where.ON_VEHICLE else ""


def _reasons(one: Held, ask: Asking) -> set[Due]:
    """What of all that falls due is a reason to bring it; a loan that runs on is none."""
    wanted = {*LOOKS, Due.DESTRUCTION}
    return {
        line.what
        for line in ask.of(one)
        if line.what in wanted or (line.what is Due.LOAN and (line.on is None or line.on <= ask.back_by))
    }


def has_it(one: Held, reader: Person) -> bool:
    """Whether the piece is with the reader, as far as the register knows: what is lent to another is not."""
    return one.where.where is not Where.ON_LOAN or one.where.at == reader.id


def _asked(one: Held, reader: Person, ask: Asking) -> str:
    if stays := must_stay(one, ask):
        return stays
    if not is_asked_for(one, ask):
        return ""
    said = [_use_words(one)] if not may_go(one.verdict) else []
    return " ".join((*said, _bring_words(one, reader, _reasons(one, ask))))


def _use_words(one: Held) -> str:
    if one.verdict.outcome is Outcome.RETIRE:
        return tr("Never use it again, and never give it to anybody to use.")
    return tr("Do not use it until you are told that it may be used again.")


def _bring_words(one: Held, reader: Person, due: set[Due]) -> str:
    if not has_it(one, reader):
        return tr("It is with somebody else, who is asked for it.")
    if one.where.where is Where.ON_VEHICLE:
        return tr("Bring the vehicle {tag}; leave the part on it.", tag=one.where.at)
    if one.verdict.outcome is Outcome.RETIRE and owns(reader, one.item):
        return tr("Make it unusable, or bring it so that it is done; its retirement notice says how.")
    if one.verdict.outcome is Outcome.RETIRE:
        return tr("Bring it, so that it is made unusable.")
    if Due.LOAN in due and one.loan and one.loan.due:
        inspected = tr("Bring it back by {day}, the end of its loan; it is then inspected.")
        back = inspected if due & LOOKS else tr("Bring it back by {day}, the end of its loan.")
        return back.format(day=show_day(one.loan.due))
    return tr("Bring it to be inspected.")
