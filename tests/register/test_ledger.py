"""The ledger finds whatever was changed, wherever it was changed."""

import hashlib
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import date
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from inspector.duties.keep_contact import remove_contact, write_contact
from inspector.duties.look_up import people
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.gear.import_list import Field
from inspector.refused import Refused
from inspector.register.canonical import canonical, digest, digest_of
from inspector.rulebook.load import Rulebook
from tests.conftest import seated_copy
from tests.faults.small import small_register


@pytest.fixture(scope="module")
def small_once(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Path:
    """The file of a small register, made once; what is done to a register is found in it as in a large one."""
    return small_register(tmp_path_factory.mktemp("small"), rules)


@pytest.fixture
def small(small_once: Path, tmp_path: Path, rules: Rulebook) -> Iterator[Office]:
    """A copy of it to be tampered with: shackles fit and on hold, a retired one, a strap nobody inspected."""
    made = seated_copy(small_once, tmp_path, rules)
    yield made
    made.book.close()


@contextmanager
def tampering(office: Office, *triggers: str) -> Iterator[sqlite3.Connection]:
    """A connection for somebody who knows how to drop triggers."""
    with closing(sqlite3.connect(office.out_tray.parent / "register.db")) as connection:
        for trigger in triggers:
            connection.execute(f"DROP TRIGGER {trigger}")
        yield connection
        connection.commit()


def test_an_untouched_register_verifies(sample: Office) -> None:
    found = verify_book(sample)
    assert found.faults == ()
    assert found.line_count > 300
    assert found.row_count > found.line_count


def test_a_changed_inspection_is_found_with_its_line(small: Office) -> None:
    with tampering(small, "inspection_no_update") as connection:
        (key,) = connection.execute("SELECT id FROM inspection ORDER BY id LIMIT 1").fetchone()
        connection.execute("UPDATE inspection SET body = replace(body, 'good', 'bad') WHERE id = ?", (key,))
    guard, fault = verify_book(small).faults
    assert (fault.where, key in fault.why, fault.line is not None) == ("inspection", True, True)
    assert (guard.where, guard.why) == ("guards", "inspection_no_update is gone")


def test_a_deleted_verdict_is_found(small: Office) -> None:
    with tampering(small, "verdict_no_delete") as connection:
        connection.execute("PRAGMA foreign_keys = OFF")
        connection.execute("DELETE FROM verdict WHERE id = (SELECT min(id) FROM verdict)")
    assert [fault.where for fault in verify_book(small).faults] == ["guards", "verdict"]


def test_a_row_that_no_deed_wrote_is_found(small: Office) -> None:
    with tampering(small) as connection:
        connection.execute("INSERT INTO person VALUES ('x', 'Slipped In', 'Member', '{}')")
    assert ["no line" in fault.why for fault in verify_book(small).faults] == [True]


@pytest.mark.parametrize("column", ["at", "by", "deed", "body", "origin", "before"])
def test_a_changed_line_is_found(small: Office, column: str) -> None:
    with tampering(small, "ledger_no_update") as connection:
        connection.execute(f'UPDATE ledger SET "{column}" = "{column}" || \'x\' WHERE id = 5')
    assert 5 in {fault.line for fault in verify_book(small).faults}


def test_a_line_cut_out_of_the_middle_is_found(small: Office) -> None:
    with tampering(small, "ledger_no_delete") as connection:
        connection.execute("DELETE FROM ledger WHERE id = 9")
    assert any("line 9 is missing" in fault.why for fault in verify_book(small).faults)


def test_lines_cut_off_the_end_are_found_against_a_head_printed_before(small: Office) -> None:
    head = verify_book(small).head
    with tampering(small, "ledger_no_delete") as connection:
        connection.execute("DELETE FROM ledger WHERE id = (SELECT max(id) FROM ledger)")
    assert any(fault.where == "ledger" for fault in verify_book(small, head[:12]).faults)
    assert not any("has the head" in fault.why for fault in verify_book(small).faults)


@pytest.mark.parametrize(
    "change",
    [
        "UPDATE standing SET outcome = 'fit' WHERE outcome = 'retire'",
        "UPDATE standing SET next_due = '2099-01-01' WHERE next_due IS NOT NULL",
        "UPDATE standing SET verdict_id = (SELECT min(id) FROM verdict WHERE item_id = standing.item_id)",
        "DELETE FROM standing WHERE outcome = 'hold'",
        "UPDATE standing SET headline = headline || '.'",
        "UPDATE standing SET search = '' WHERE outcome = 'retire'",
        "UPDATE standing SET rated = rated * 2, owner = 'somebody' WHERE rated IS NOT NULL",
    ],
)
def test_what_the_lists_show_is_held_against_the_last_verdicts(small: Office, change: str) -> None:
    with closing(sqlite3.connect(small.out_tray.parent / "register.db")) as connection, connection:
        connection.execute(change)
    assert {fault.where for fault in verify_book(small).faults} == {"standing"}


@pytest.mark.parametrize(
    "change",
    [
        "UPDATE club_setting SET value = 'Another Club' WHERE key = 'club'",
        "DELETE FROM club_setting WHERE key = 'officer'",
    ],
)
def test_a_setting_that_no_deed_changed_is_found(small: Office, change: str) -> None:
    with closing(sqlite3.connect(small.out_tray.parent / "register.db")) as connection, connection:
        connection.execute(change)
    assert {fault.where for fault in verify_book(small).faults} == {"club_setting"}


def test_changed_contact_details_are_found_and_those_taken_out_leave_no_fault(small: Office) -> None:
    person = people(small)[0]
    write_contact(small, person.id, phone="0555 010 204")
    assert verify_book(small).faults == ()
    with closing(sqlite3.connect(small.out_tray.parent / "register.db")) as connection, connection:
        connection.execute("UPDATE contact SET body = replace(body, '204', '205')")
    assert {fault.where for fault in verify_book(small).faults} == {"contact"}
    remove_contact(small, person.id)
    assert verify_book(small).faults == ()


def test_a_guard_that_does_something_else_is_found(small: Office) -> None:
    with tampering(small, "item_no_delete") as connection:
        connection.execute("CREATE TRIGGER item_no_delete BEFORE DELETE ON item BEGIN SELECT 1; END")
    assert [(fault.where, fault.why) for fault in verify_book(small).faults] == [
        ("guards", "item_no_delete was changed")
    ]


def test_a_damaged_index_is_found(small: Office) -> None:
    """It would hide a piece from a list though every row is as it was."""
    with closing(sqlite3.connect(small.out_tray.parent / "register.db")) as connection, connection:
        connection.execute("PRAGMA writable_schema = ON")
        connection.execute("UPDATE sqlite_master SET sql = replace(sql, '(tag)', '(kind)') WHERE name = 'ix_item_tag'")
        (version,) = connection.execute("PRAGMA schema_version").fetchone()
        connection.execute(f"PRAGMA schema_version = {version + 1}")
    assert "file" in {fault.where for fault in verify_book(small).faults}


def test_an_older_head_is_still_found_in_the_chain(small: Office) -> None:
    with closing(sqlite3.connect(small.out_tray.parent / "register.db")) as connection:
        (older,) = connection.execute("SELECT hash FROM ledger WHERE id = 3").fetchone()
    assert verify_book(small, older[:16]).faults == ()


@pytest.mark.parametrize("head", ["abc", "not-a-head-at-all", "xyzxyzxyz"])
def test_a_head_that_cannot_be_one_is_refused(office: Office, head: str) -> None:
    with pytest.raises(Refused, match="0-9 and a-f"):
        verify_book(office, head)


def test_canonical_json_has_one_spelling() -> None:
    assert canonical({"b": 1, "a": [0.1, "é"]}) == '{"a":[0.1,"é"],"b":1}'


_COLUMNS = st.none() | st.text() | st.integers(-(2**63), 2**63 - 1) | st.dates() | st.datetimes() | st.floats()


@given(st.dictionaries(st.text(max_size=3), _COLUMNS | st.booleans() | st.binary() | st.sampled_from(Field)))
@example({"text": '\x00\x07\b\t\n\x0b\f\r\x1f "\\/\x7f\x85\u2028\ufeff\U0001f6df', "a": 1e16, "b": True})
@example({"text": '\x00\x07\b\t\n\x0b\f\r\x1f "\\/\x7f\x85\u2028\ufeff\U0001f6df', "on": date(1, 2, 3), "Z": None})
def test_every_digest_is_that_of_the_one_spelling(row: dict[str, object]) -> None:
    assert digest(row) == hashlib.sha256(canonical(row).encode()).hexdigest()
    assert digest_of(list(row.values())) == hashlib.sha256(canonical(list(row.values())).encode()).hexdigest()
