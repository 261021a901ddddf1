"""Saves what can be proved of a damaged register into a new one: lines and rows as they were, under a new origin."""

import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from msgspec import Struct
from sqlalchemy import Connection, Date, Table, insert

from inspector.gear.lists import Fault
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import ledger
from inspector.register.accounts import Key, rows_named
from inspector.register.backup import check_free, sha256_of, single_file, take_name
from inspector.register.columns import METADATA
from inspector.register.gaps import as_told
from inspector.register.guards import guarded_engine
from inspector.register.naming import name_all
from inspector.register.salvage import Row, Salvage, facts_of, salvage
from inspector.register.upgrade import bring_up

_WORK = ".rescue"
_OFFICER = {"name officer": "id", "hand over": "to"}


class LostRow(Struct, frozen=True):
    """A row that is not in the new register. line: that named it; deed and facts: what the line tells.

    read: what was read of it, which nothing proves; parent: what it belongs to, where that is lost and not it.
    """

    table: str
    id: str
    line: int
    deed: str
    facts: Mapping[str, Any]
    read: Mapping[str, Any] | None = None
    parent: str = ""


class Rescued(Struct, frozen=True):
    """What was saved and what was not. gaps: runs of lost lines; ends_well: whether none is lost after the last.

    unnamed: rows of lines that are lost. faults: what `verify` finds in the new register, to be told in its ledger.
    """

    file: Path
    sha256: str
    line_count: int
    row_count: int
    gaps: tuple[tuple[int, int], ...]
    ends_well: bool
    unnamed: int
    rows: tuple[LostRow, ...]
    faults: tuple[Fault, ...]

    @property
    def lost_lines(self) -> bool:
        """Whether any line is missing, or may be: then nobody knows of which pieces it told."""
        return bool(self.gaps or self.unnamed or not self.ends_well)

    def told(self) -> dict[str, object]:
        """The facts of the ledger's line that tells it."""
        lost = [[one.table, one.id] for one in self.rows]
        about = {"file": self.file.name, "sha256": self.sha256, "lines": self.line_count, "rows": self.row_count}
        missing = {"lost_lines": [list(one) for one in self.gaps], "ends_well": self.ends_well, "lost_rows": lost}
        return about | missing | as_told(self.faults)


def work_folder(target: Path) -> Path:
    """Where the new register is made until it is whole."""
    return target / _WORK


def begin_rescue(file: Path, target: Path, name: str, rulebooks: Mapping[str, str]) -> Rescued:
    """Write what can be proved of a file into a register in the work folder of the target.

    name: of the register's file there. rulebooks: texts that the program knows, by their name.
    """
    check_free(target / name)
    found = _read(file, rulebooks)
    work = work_folder(target)
    try:
        shutil.rmtree(work, ignore_errors=True)
        work.mkdir(parents=True)
    except OSError as error:
        why = tr("{folder} cannot be written ({why}).", folder=target, why=error.strerror)
        raise Refused(tr("folder"), why, tr("Choose a folder you may write to.")) from error
    engine = guarded_engine(f"sqlite:///{work / name}")
    try:
        bring_up(engine)
        with engine.connect().execution_options(write=True) as connection:
            orphans = _write(connection, found)
            left = ledger.verify(connection).faults
            faults = tuple(one for one in left if one.where != "standing")  # what stands is judged anew
            connection.commit()
    finally:
        engine.dispose()
    rows = tuple(_lost_rows(found, orphans))
    saved = len(found.rows) - len(orphans)
    gaps, ends_well = found.gaps, found.ends_well
    return Rescued(file, sha256_of(file), len(found.lines), saved, gaps, ends_well, len(found.unnamed), rows, faults)


def end_rescue(target: Path, name: str) -> None:
    """Give the finished register its place."""
    work = work_folder(target)
    single_file(work / name)
    take_name(work / name, target / name)
    shutil.rmtree(work, ignore_errors=True)


def give_up(target: Path) -> None:
    """Leave nothing behind."""
    shutil.rmtree(work_folder(target), ignore_errors=True)


def _read(file: Path, rulebooks: Mapping[str, str]) -> Salvage:
    if not file.is_file():
        raise Refused(tr("file"), tr("There is no file {file}.", file=file), tr("Check its name and where it lies."))
    try:
        found = salvage(file, rulebooks)
    except OSError as error:
        why = tr("{file} cannot be read ({why}).", file=file, why=error.strerror)
        raise Refused(tr("file"), why, tr("Check its name and where it lies.")) from error
    if not any(key[0] == "person" for key in found.rows):
        why = tr("Nothing of a register can be read in {file}.", file=file)
        if found.lines:
            why = tr("In {file} none of the people can be proved any more, so nobody could sit at its desk.", file=file)
        raise Refused(tr("file"), why, tr("Try another copy; the file stays as it is."))
    return found


def _write(connection: Connection, found: Salvage) -> dict[Key, str]:
    """Write lines and rows, parents first. Returns the rows whose parent is lost, with its table."""
    orphans: dict[Key, str] = {}
    for table in METADATA.sorted_tables:
        for key, row in found.rows.items():
            if key[0] != table.name:
                continue
            if parent := _lost_parent(table, row, found, orphans):
                orphans[key] = parent
            else:
                connection.execute(insert(table), _typed(table, row))
    name_all(connection, [key for name, key in found.rows if name == "document"])
    for place in sorted(found.lines):
        connection.execute(insert(METADATA.tables["ledger"]), found.lines[place])
    _keep_officer(connection, found)
    return orphans


def _lost_parent(table: Table, row: Row, found: Salvage, orphans: Mapping[Key, str]) -> str:
    for column in table.columns:
        for foreign in column.foreign_keys:
            parent = (foreign.column.table.name, str(row[column.name]))
            if parent not in found.rows or parent in orphans:
                return parent[0]
    return ""


def _typed(table: Table, row: Row) -> Row:
    """A row's texts as its columns take them."""
    dates = {one.name for one in table.columns if isinstance(one.type, Date)}
    kind = Date().python_type
    return {name: kind.fromisoformat(value) if name in dates else value for name, value in row.items()}


def _keep_officer(connection: Connection, found: Salvage) -> None:
    """Somebody must be able to sit down: the officer that the ledger named last, where the setting itself is lost."""
    setting = METADATA.tables["club_setting"]
    if ("club_setting", "officer") in found.rows:
        return
    named = [str(facts_of(line).get(key)) for _, line in sorted(found.lines.items())
             if (key := _OFFICER.get(line["deed"]))]  # fmt: skip
    people = [key[1] for key in found.rows if key[0] == "person"]
    officer = next((one for one in reversed(named) if one in people), max(people))
    connection.execute(insert(setting), {"key": "officer", "value": officer})


def _lost_rows(found: Salvage, orphans: Mapping[Key, str]) -> Iterator[LostRow]:
    of_line = {key: place for place, line in found.lines.items() for key in _keys(line)}
    for key, place in sorted({**found.lost, **{one: of_line.get(one, 0) for one in orphans}}.items(),
                             key=lambda one: (one[1], one[0])):  # fmt: skip
        line = found.lines.get(place)
        read = found.rows.get(key) if key in orphans else found.doubtful.get(key)
        deed, facts = (str(line["deed"]), facts_of(line)) if line else ("", {})
        yield LostRow(*key, place, deed, facts, read, orphans.get(key, ""))


def _keys(line: Row) -> Iterator[Key]:
    for name, key, _ in rows_named(line):
        yield name, key
