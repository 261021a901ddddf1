"""What comes between a deed and its keeping: another writer, a server that goes away, an answer that is lost."""

import threading
from collections.abc import Iterator
from typing import Any

import pytest
from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import create_engine, text
from sqlalchemy.exc import DBAPIError

from inspector.duties.book_in import book_in
from inspector.duties.disturbed import may_repeat, undisturbed
from inspector.duties.found_club import found_club
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.record_use import record_use
from inspector.duties.verify_book import verify_book
from inspector.gear.person import Person
from inspector.gear.use import NewUse
from inspector.refused import Refused
from inspector.register import guards, turns
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook
from tests.benchmarks import bench_writers
from tests.conftest import EVENING
from tests.duties.gear import strap
from tests.server import Database


@pytest.fixture(scope="module")
def on_server(database: Database, rules: Rulebook, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Office]:
    """A club on the server with one piece."""
    tray = tmp_path_factory.mktemp("tray")
    made = Office(open_book(database.url), rules, tray, Person("x", "x", ""), lambda: EVENING, "test")
    office = replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
    book_in(office, strap("KS-1"))
    yield office
    office.book.close()


def end_all(database: Database) -> None:
    """End every connection to the database as a server that goes down does."""
    engine = create_engine(database.superuser_url)
    with engine.connect() as connection:
        others = (
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = :name AND pid <> pg_backend_pid()"
        )
        connection.execute(text(others), {"name": database.name})
    engine.dispose()


def uses(office: Office) -> list[str]:
    return [one.facts.note for one in open_item(office, "KS-1").dossier.uses]


def test_eight_officers_at_once_lose_and_double_nothing(sample: Office) -> None:
    place = str(sample.out_tray.parent)
    sample.book.close()
    one = bench_writers.write(place, writers=8, deeds=5)
    assert (one.lost, one.doubled, one.taken, one.faults, one.disturbed) == (0, 0, 0, 0, 0), one
    assert one.done == one.lines and one.done + one.refused == 40 and one.refused >= 7


def test_eight_officers_at_once_on_a_server(on_server: Office, database: Database) -> None:
    book_in(on_server, strap("SH-01"))
    one = bench_writers.write(database.url, writers=8, deeds=5)
    assert (one.lost, one.doubled, one.taken, one.faults, one.disturbed) == (0, 0, 0, 0, 0), one
    assert one.done == one.lines and one.done + one.refused == 40 and one.refused == 7


def test_a_deed_waits_until_another_is_done_and_sees_what_it_wrote(on_server: Office) -> None:
    entered, seen = threading.Event(), list[bool]()

    def second() -> None:
        entered.wait()
        with on_server.book.page() as page:
            seen.append(page.has_tag("KS-2"))

    other = threading.Thread(target=second)
    other.start()
    with on_server.book.together():
        entered.set()
        other.join(0.3)
        assert not seen and other.is_alive()
        book_in(on_server, strap("KS-2"))
    other.join()
    assert seen == [True]


def test_a_page_to_read_is_of_one_moment(on_server: Office) -> None:
    with on_server.book.reading() as page:
        before = page.line_number()
        record_use(on_server, "KS-1", NewUse(on_server.today, 1))
        assert page.line_number() == before and page.verify().faults == ()
    assert verify_book(on_server).line_count == before + 1


def test_connections_that_went_while_nobody_used_them_are_made_anew(on_server: Office, database: Database) -> None:
    list_gear(on_server)
    end_all(database)
    assert list_gear(on_server).rows
    record_use(on_server, "KS-1", NewUse(on_server.today, 1, note="after"))
    assert uses(on_server).count("after") == 1


def test_a_deed_whose_connection_breaks_is_done_again_from_its_start(on_server: Office, database: Database) -> None:
    tries: list[int] = []

    def deed(office: Office, note: str) -> None:
        with office.book.together():
            record_use(office, "KS-1", NewUse(office.today, 1, note=note))
            tries.append(len(tries))
            if len(tries) == 1:
                end_all(database)
                open_item(office, "KS-1")  # finds the connection gone

    undisturbed(deed, on_server, "broken once")
    assert len(tries) == 2 and uses(on_server).count("broken once") == 1
    assert verify_book(on_server).faults == ()


def test_a_deed_that_kept_something_already_is_told_and_not_done_again(on_server: Office, database: Database) -> None:
    def deed(office: Office) -> None:
        record_use(office, "KS-1", NewUse(office.today, 1, note="kept first"))
        with office.book.page() as page:
            end_all(database)
            page.item("KS-1")

    with pytest.raises(turns.Disturbed, match="does not answer") as broken:
        undisturbed(deed, on_server)
    assert not may_repeat(broken.value) and uses(on_server).count("kept first") == 1


class LostAnswer(Struct):
    """A commit that goes through, or not, and breaks the connection in either case; those after it are as any."""

    database: Database
    kept: bool
    times: int = 0

    def commit(self, driver: Any) -> None:
        """In the driver's place."""
        self.times += 1
        if self.times > 1:
            driver.commit()
            return
        if self.kept:
            driver.commit()
        end_all(self.database)
        driver.execute("SELECT 1")  # finds the connection gone


@pytest.mark.parametrize("kept", [True, False])
def test_of_a_commit_whose_answer_was_lost_the_ledger_is_asked(
    on_server: Office, database: Database, monkeypatch: pytest.MonkeyPatch, kept: bool
) -> None:
    lost, note = LostAnswer(database, kept), f"lost {kept}"
    dialect = on_server.book._engine.dialect
    monkeypatch.setattr(dialect, "do_commit", lost.commit)
    undisturbed(record_use, on_server, "KS-1", NewUse(on_server.today, 1, note=note))
    monkeypatch.undo()
    assert uses(on_server).count(note) == 1 and verify_book(on_server).faults == ()


def test_where_nobody_can_be_asked_it_is_told_how_to_find_out(
    on_server: Office, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    lost = LostAnswer(database, True)
    dialect = on_server.book._engine.dialect
    monkeypatch.setattr(dialect, "do_commit", lost.commit)

    def gone(*_: object) -> bool:
        raise _broken(on_server, database)

    monkeypatch.setattr(turns, "_is_kept", gone)
    with pytest.raises(turns.Unknown, match="nobody can tell yet") as unknown:
        undisturbed(record_use, on_server, "KS-1", NewUse(on_server.today, 1, note="unknown"))
    monkeypatch.undo()
    assert verify_book(on_server, unknown.value.head).faults == ()
    assert uses(on_server).count("unknown") == 1


def _broken(office: Office, database: Database) -> Exception:
    with office.book._engine.connect() as connection:
        connection.execute(text("SELECT 1"))
        end_all(database)
        try:
            connection.execute(text("SELECT 1"))
        except DBAPIError as error:
            return error
    raise AssertionError("the connection lives")


def test_a_turn_that_does_not_come_is_told(
    on_server: Office, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(turns, "_TRIES", 1)
    monkeypatch.setattr(guards, "PATIENCE_S", 0.05)
    on_server.book.close()  # its next connection is a new one
    engine = create_engine(database.url)
    with engine.connect() as other:
        turns.take_turn(other)
        with pytest.raises(turns.Disturbed, match="writing to it"):
            record_use(on_server, "KS-1", NewUse(on_server.today, 1))
    engine.dispose()
    on_server.book.close()


def test_what_the_database_cannot_hold_is_refused_in_words(on_server: Office) -> None:
    with pytest.raises(Refused, match="cannot hold what was written"), on_server.book.page() as page:
        page.set("k" * 100, "too long a key")
