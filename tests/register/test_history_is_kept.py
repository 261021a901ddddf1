"""History is append-only, on every table and by every way in."""

import hashlib
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from msgspec.structs import replace
from sqlalchemy import insert
from sqlalchemy.exc import DBAPIError

from inspector.duties.adopt_rulebook import adopt_rulebook
from inspector.duties.debrief import debrief
from inspector.duties.destroy_item import destroy_item
from inspector.duties.give_opinion import doubt
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.lend import lend
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.sample_texts import sample_folder
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.attachment import NewAttachment, PaperKind
from inspector.gear.debrief import NewDebrief
from inspector.gear.evidence import NewQuarantine, NewRelease
from inspector.gear.incident import EntryKind, Gravity, NewIncident, NewIncidentEntry
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.person import NewPersonChange, Person
from inspector.gear.repair import NewRepair, Work
from inspector.gear.rig import Method, Rig
from inspector.gear.stock_take import NewStockEntry, NewStockTake, StockStep
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.register import guards, upgrade
from inspector.register.book import open_book
from inspector.register.columns import METADATA
from inspector.register.guards import guarded_engine, missing_triggers
from inspector.register.tables import APPEND_ONLY, person
from inspector.rulebook.load import Rulebook
from tests import hurry
from tests.conftest import seated_copy


def rows_in(sample: Office) -> Path:
    return sample.out_tray.parent / "register.db"


@pytest.fixture(scope="module")
def filled(sample_once: Path, tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Path:
    """The file of a sample register with a row in each table of history; whoever tries to change it takes that back."""
    office = seated_copy(sample_once, tmp_path_factory.mktemp("filled"), rules)
    _fill(office)
    office.book.close()
    return rows_in(office)


@pytest.mark.parametrize("deed", ["UPDATE {t} SET id = id", "DELETE FROM {t}", "REPLACE INTO {t} SELECT * FROM {t}"])
def test_no_row_of_history_can_be_changed(filled: Path, deed: str) -> None:
    answers = {table.name: _answer(filled, table.name, deed.format(t=table.name)) for table in APPEND_ONLY}
    faults = [f"{table}: {said}" for table, said in answers.items() if "append-only" not in said]
    assert faults == [], "\n".join(faults)


def _answer(file: Path, table: str, statement: str) -> str:
    """How a statement on a table that has a row is refused, or that it was done."""
    with closing(sqlite3.connect(file)) as connection:  # closed without a commit: nothing of it stays
        if not connection.execute(f"SELECT 1 FROM {table}").fetchone():
            return "no row to try it on"
        try:
            connection.execute(statement)
        except sqlite3.IntegrityError as refusal:
            return str(refusal)
        except sqlite3.Error as other:
            return f"another fault: {other!r}"
    return "it was done"


def _fill(sample: Office) -> None:
    """Do the deeds that write into the tables which the sample itself leaves empty."""
    print_trip_sheet(sample, "next")
    lend(sample, ["SH-04"], "Ilse Farrowby", sample.today)
    keep_rig(sample, "R-01", Rig("Snatch", Method.KINETIC, "V-02", "V-04", (("SH-01", "KS-03", "SH-04"),)))
    debrief(sample, NewDebrief("T-01", sample.today, ()))
    destroy_item(sample, "BM-01", "cut through the tube")
    change_trip(sample, "T-05", lambda one: replace(one, note="low water at noon"))
    doubt(sample, "SH-01", "it fell")
    entry = next(row.ref for row in history_of(sample, "SH-01") if row.ref)
    strike_entry(sample, "SH-01", entry, "Ilse Farrowby", "another shackle")
    adopt_rulebook(sample, (sample_folder() / "club_rules.toml").read_bytes(), "club_rules.toml")
    _fill_year(sample)


def _fill_year(sample: Office) -> None:
    """A row of each table of the officer's year, as a deed would write it."""
    day, by = sample.today, sample.officer.id
    with sample.book.page() as page:
        item = page.item("SH-01")
        page.add_whereabouts(item, NewWhereabouts(day, Where.MISSING))
        page.add_repair(item, NewRepair(day, Work.PIN_AND_BOW, "the maker", by))
        page.add_item_change(item, NewItemChange(day, Altered.NOTE, item.facts, by, "a note"))
        incident = page.add_incident("I-01", NewIncident(day, Gravity.NEAR_MISS, "a beach", "it slipped", ("SH-01",)))
        page.add_incident_entry(incident, NewIncidentEntry(day, EntryKind.STATEMENT, "a member", "I saw it", by))
        page.add_quarantine(item, NewQuarantine(day, "I-01", by))
        page.add_release(item, NewRelease(day, "I-01", by, "another", "it is measured"))
        count = page.add_stock_take("K-01", NewStockTake(day, "", ("SH-01",), (), by))
        page.add_stock_entry(count, NewStockEntry(day, StockStep.MARKED, by, "SH-01"))
        page.add_person_change(NewPersonChange(day, sample.officer, by))
        sha256 = hashlib.sha256(b"paper").hexdigest()
        paper = NewAttachment(day, PaperKind.OTHER, "paper.txt", "text/plain", 5, sha256, sha256, by)
        page.add_attachment(item.id, paper, b"paper")
        page.enter("fill the year", by=by, at=sample.now, facts={})


def test_what_was_put_in_is_followed_by_the_ledger(sample: Office) -> None:
    """Changed bytes of a paper are found as surely as a changed row."""
    _fill_year(sample)
    assert verify_book(sample).faults == ()
    with sqlite3.connect(rows_in(sample)) as connection:
        connection.execute("DROP TRIGGER attachment_data_no_update")
        connection.execute("UPDATE attachment_data SET data = x'00'")
    connection.close()
    assert verify_book(sample).faults


def test_a_trigger_that_was_dropped_stands_again_after_opening(tmp_path: Path) -> None:
    place = tmp_path / "register.db"
    open_book(place).close()
    with sqlite3.connect(place) as connection:
        connection.execute("DROP TRIGGER ledger_no_delete")
    connection.close()
    engine = guarded_engine(f"sqlite:///{place}")
    with engine.connect() as opened:
        assert missing_triggers(opened) == ["ledger_no_delete"]
    open_book(place).close()
    with engine.connect() as opened:
        assert missing_triggers(opened) == []
    engine.dispose()


def test_connections_keep_foreign_keys_and_full_synchronisation(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(guards, "_PRAGMAS", hurry.PACKAGED)  # other registers of the tests wait for no disk
    engine = guarded_engine(f"sqlite:///{tmp_path / 'register.db'}")
    wanted = {"foreign_keys": 1, "synchronous": 2, "journal_mode": "wal", "recursive_triggers": 1, "secure_delete": 1}
    with engine.connect() as connection:
        found = {name: connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in wanted}
    engine.dispose()
    assert found == wanted


def test_a_failed_migration_leaves_nothing_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_: object) -> None:
        raise RuntimeError("a fault half way")

    monkeypatch.setattr(upgrade, "ensure_triggers", fail)
    engine = guarded_engine(f"sqlite:///{tmp_path / 'register.db'}")
    with pytest.raises(RuntimeError, match="half way"):
        upgrade.bring_up(engine)
    with engine.connect() as connection:
        tables = connection.exec_driver_sql("SELECT count(*) FROM sqlite_master").scalar()
    engine.dispose()
    assert tables == 0


def test_the_scripts_lead_to_the_tables_that_the_program_knows(tmp_path: Path) -> None:
    from alembic.autogenerate import compare_metadata
    from alembic.config import Config
    from alembic.runtime.migration import MigrationContext
    from alembic.script import ScriptDirectory

    config = Config()
    config.set_main_option("script_location", str(upgrade.script_folder()))
    assert ScriptDirectory.from_config(config).get_heads() == [upgrade.HEAD]
    engine = guarded_engine(f"sqlite:///{tmp_path / 'register.db'}")
    upgrade.bring_up(engine)
    with engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        difference = compare_metadata(context, METADATA)
    engine.dispose()
    assert difference == []


def test_a_register_of_a_newer_program_is_refused_and_left_alone(tmp_path: Path) -> None:
    from inspector.refused import Refused

    place = tmp_path / "register.db"
    open_book(place).close()
    with sqlite3.connect(place) as connection:
        connection.execute("UPDATE alembic_version SET version_num = '9999'")
    connection.close()
    before = place.read_bytes()
    with pytest.raises(Refused, match="newer version"):
        open_book(place)
    assert place.read_bytes() == before


def test_a_file_that_is_no_register_is_refused(tmp_path: Path) -> None:
    from inspector.refused import Refused

    place = tmp_path / "register.db"
    place.write_bytes(b"not a database, and long enough to be looked at " * 40)
    with pytest.raises(Refused, match="is no register"):
        open_book(place)


def test_a_page_is_kept_only_when_its_deed_is_entered(office: Office) -> None:
    someone = Person("p-1", "Kim Nobody", "Member")
    with pytest.raises(RuntimeError, match="not entered"), office.book.page() as page:
        page.add_person(someone)
    with pytest.raises(ValueError, match="on purpose"), office.book.page() as page:
        page.add_person(someone)
        raise ValueError("on purpose")
    with office.book.reading() as page:
        assert "Kim Nobody" not in {person.name for person in page.people()}


def test_what_is_done_together_is_kept_together_or_not_at_all(office: Office) -> None:
    def add(name: str) -> None:
        with office.book.page() as page:
            page.add_person(Person(name, name, "Member"))
            page.enter("add person", by="x", at=office.now, facts={"name": name})

    with pytest.raises(ValueError, match="on purpose"), office.book.together():
        add("first")
        raise ValueError("on purpose")
    with office.book.together():
        add("second")
        add("third")
    with office.book.reading() as page:
        names = {person.name for person in page.people()}
        assert page.verify().faults == ()
    assert names == {"Ada Officer", "second", "third"}


def test_a_block_within_a_block_is_undone_by_itself_and_kept_only_with_the_outer_one(office: Office) -> None:
    def add(name: str) -> None:
        with office.book.page() as page:
            page.add_person(Person(name, name, "Member"))
            page.enter("add person", by="x", at=office.now, facts={"name": name})

    with pytest.raises(ValueError, match="on purpose"), office.book.together():
        with office.book.together():
            add("first")
        raise ValueError("on purpose")
    with office.book.together():
        with pytest.raises(ValueError, match="on purpose"), office.book.together():
            add("second")
            raise ValueError("on purpose")
        add("third")
    with office.book.reading() as page:
        names = {person.name for person in page.people()}
        assert page.verify().faults == ()
    assert names == {"Ada Officer", "third"}


def test_a_register_that_is_in_use_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from inspector.refused import Refused

    short = [pragma for pragma in guards._PRAGMAS if "busy" not in pragma] + ["busy_timeout=1"]
    monkeypatch.setattr(guards, "_PRAGMAS", tuple(short))
    book = open_book(tmp_path / "register.db")
    with sqlite3.connect(tmp_path / "register.db", isolation_level=None) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(Refused, match="writing to it"), book.page() as page:
            page.add_person(Person("p", "p", "p"))
        other.execute("ROLLBACK")
    other.close()
    book.close()


def test_append_only_holds_through_the_program_s_own_connection(office: Office) -> None:
    with pytest.raises(DBAPIError, match="append-only"), office.book._connection(write=True) as connection:
        row = connection.execute(person.select()).mappings().one()
        connection.execute(insert(person).prefix_with("OR REPLACE"), dict(row))
