"""Save what can be proved of a damaged register into a new one; whatever may be touched by the loss is held."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

from msgspec import Struct

from inspector.duties.give_opinion import doubt
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office, told_of
from inspector.duties.sit_down import seat
from inspector.duties.tell_rescue import lost_text
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rescue import LostRow, Rescued, begin_rescue, end_rescue, give_up, work_folder
from inspector.register.where_it_lies import REGISTER_FILE
from inspector.rulebook.load import packaged

_OF_NO_PIECE = frozenset({
    "person", "person_change", "vehicle", "vehicle_change", "trip", "trip_change", "rig", "debrief", "document",
    "stock_take", "stock_entry", "attachment", "attachment_data", "club_setting", "contact", "rulebook",
})  # fmt: skip
_CLUB_RULES = "adoption"
_VERDICT = "verdict"


class RescueDone(Struct, frozen=True):
    """What was saved. held: tags of pieces that the loss may touch; list_file: where all that was lost is listed."""

    rescued: Rescued
    piece_count: int
    held: tuple[str, ...]
    list_file: Path


def rescue_register(file: Path, folder: Path, open_office: Callable[[Path], Office]) -> RescueDone:
    """Rescue a file into a folder without a register. open_office: opens the one of a folder. All of it, or nothing."""
    rules = packaged()
    rescued = begin_rescue(file, folder, REGISTER_FILE, {rules.hash: rules.text})
    try:
        office = open_office(work_folder(folder))
        try:
            done = _settled(seat(office), rescued, folder)
        finally:
            office.book.close()
        end_rescue(folder, REGISTER_FILE)
    except BaseException:
        give_up(folder)
        raise
    return done


def _settled(office: Office, rescued: Rescued, folder: Path) -> RescueDone:
    """Judge every piece, hold what may be touched, tell it in the ledger and write the list."""
    with office.book.together():
        with office.book.page() as page:
            judged = [judge_and_keep(office, page, item) for item in told_of(office, page.every_item())]
            touched = _touched(page, rescued, judged)
            facts = rescued.told() | {"held": list(touched)}
            page.enter("rescue", by=office.officer.id, at=office.now, facts=facts)
        held = tuple(tag for tag in touched if _hold(office, tag))
    name = folder / f"lost-{office.today.isoformat()}.txt"
    name.write_text(lost_text(office, rescued, held), encoding="utf-8")
    return RescueDone(rescued, len(judged), held, name)


def _hold(office: Office, tag: str) -> bool:
    """Hold a piece until somebody competent has inspected it; what is sold, destroyed or given back stays so."""
    why = tr("A part of what was written of it is lost; the register was rescued from a damaged file.")
    try:
        doubt(office, tag, why)
    except Refused:
        return False
    return True


def _touched(page: Page, rescued: Rescued, judged: Iterable[Judged]) -> tuple[str, ...]:
    """Tags of the pieces, not retired, of which something may be lost; all of them where nobody can tell which."""
    may_be = {one.dossier.item.id: one.dossier.item.tag for one in judged if one.verdict.outcome is not Outcome.RETIRE}
    if rescued.lost_lines or any(one.table == _CLUB_RULES for one in rescued.rows):
        return tuple(sorted(may_be.values()))
    later = _last_verdicts(page)
    touched: set[str] = set()
    for row in rescued.rows:
        if row.table in _OF_NO_PIECE:
            continue
        pieces = _pieces_of(page, row)
        if pieces is None:
            return tuple(sorted(may_be.values()))
        touched |= {one for one in pieces if row.table != _VERDICT or later.get(one, 0) <= row.line}
    return tuple(sorted(tag for key, tag in may_be.items() if key in touched))


def _last_verdicts(page: Page) -> dict[str, int]:
    """The line of each piece's last verdict that was saved: one after a lost verdict shows that it did not retire."""
    found: dict[str, int] = {}
    of = page.pieces_of_verdicts()
    for line in page.ledger_lines():
        for table, key in line.rows:
            if table == _VERDICT and key in of:
                found.setdefault(of[key], line.number)
    return found


def _pieces_of(page: Page, row: LostRow) -> set[str] | None:
    """The ids of the pieces that the line of a lost row may speak of; None where it tells of none."""
    tags = set(_tags_in(row.facts)) & set(page.items(sorted(set(_tags_in(row.facts)))))
    found = {piece.id for piece in page.items(sorted(tags)).values()}
    found |= set(page.pieces_of_rows(tuple(key for _, key in page.rows_of_line(row.line))).values())
    return found or None


def _tags_in(facts: object) -> Iterator[str]:
    """Every text under a fact that names pieces."""
    if isinstance(facts, Mapping):
        for key, value in facts.items():
            if key in {"tag", "tags", "pieces", "kit", "item"}:
                yield from _texts(value)
            yield from _tags_in(value)
    elif isinstance(facts, list | tuple):
        for value in facts:
            yield from _tags_in(value)


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, list | tuple):
        for one in value:
            yield from _texts(one)
