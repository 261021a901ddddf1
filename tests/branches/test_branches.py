"""Two clubs in one database with the same tags, rulebook and photos: neither sees, reaches or disturbs the other."""

from collections.abc import Iterator
from datetime import date

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, create_engine, func, inspect, select, text
from sqlalchemy.exc import DBAPIError

from inspector.duties.server_logins import make_roles
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.register.branches import policies_gone
from inspector.register.columns import METADATA
from inspector.register.guards import missing_triggers
from inspector.register.member_laws import laws_gone
from inspector.register.tables import inspection, item, ledger
from tests.branches.federation import KITE, WREN, Federation


@pytest.fixture
def kite(federation: Federation) -> Iterator[Connection]:
    """The officer of one club, round the program."""
    engine = federation.engine("kite_officer")
    with engine.connect() as made:
        yield made
    engine.dispose()


@pytest.fixture
def wren(federation: Federation) -> Iterator[Connection]:
    """The officer of the other."""
    engine = federation.engine("wren_officer")
    with engine.connect() as made:
        yield made
    engine.dispose()


@pytest.fixture
def whole(federation: Federation) -> Iterator[Connection]:
    """The server's superuser, who sees everything."""
    engine = create_engine(federation.database.superuser_url)
    with engine.connect() as made:
        yield made
    engine.dispose()


def test_each_sees_its_own_rows_and_all_of_them(kite: Connection, wren: Connection, whole: Connection) -> None:
    for table in METADATA.sorted_tables:
        count = select(func.count()).select_from(table)
        one, other, all_ = (connection.execute(count).scalar_one() for connection in (kite, wren, whole))
        assert one + other == all_, table.name


def test_the_same_keys_stand_in_both(whole: Connection) -> None:
    """Ids, lines of the ledger, settings, rulebooks, documents and bytes alike."""
    twice = "SELECT count(*) - count(DISTINCT {key}) FROM {table}"
    for table, key in (
        ("item", "id"),
        ("ledger", "id"),
        ("club_setting", "key"),
        ("rulebook", "id"),
        ("document", "id"),
    ):
        assert whole.exec_driver_sql(twice.format(key=key, table=table)).scalar_one() > 0, table


def test_a_row_of_the_other_is_not_there_by_any_name(kite: Connection, wren: Connection, wrens_own: str) -> None:
    for wanted in (item.c.id == wrens_own, item.c.tag == "WREN-1"):
        assert wren.execute(select(item.c.id).where(wanted)).scalar_one() == wrens_own
        assert kite.execute(select(item.c.id).where(wanted)).first() is None
    for other in (text("branch = 'wren'"), text("branch <> 'kite'")):
        assert kite.execute(select(item.c.id).where(other)).first() is None


@pytest.mark.parametrize(
    "statement",
    [
        "INSERT INTO club_setting (branch, key, value) VALUES ('wren', 'x', 'y')",
        "INSERT INTO club_setting (branch, key, value) VALUES ('', 'x', 'y')",
        "UPDATE standing SET branch = 'wren'",
        "UPDATE club_setting SET branch = 'wren' WHERE key = 'club'",
    ],
)
def test_no_row_is_written_into_another_branch(kite: Connection, statement: str) -> None:
    with pytest.raises(DBAPIError, match="row-level security"):
        kite.exec_driver_sql(statement)


def test_what_is_deleted_is_deleted_in_the_own_branch_alone(kite: Connection, whole: Connection) -> None:
    own = whole.exec_driver_sql("SELECT count(*) FROM standing WHERE branch = 'kite'").scalar_one()
    assert kite.exec_driver_sql("DELETE FROM standing WHERE branch = 'wren'").rowcount == 0
    assert kite.exec_driver_sql("DELETE FROM standing").rowcount == own > 0
    kite.rollback()


def test_nothing_refers_to_a_row_of_another_branch(kite: Connection, wrens_own: str) -> None:
    row = {"id": "x", "item_id": wrens_own, "day": date(2026, 1, 1), "body": "{}"}
    with pytest.raises(DBAPIError, match="foreign key"):
        kite.execute(inspection.insert(), row)


def test_a_copied_file_holds_the_own_branch_alone(kite: Connection) -> None:
    driver = kite.connection.driver_connection
    assert driver is not None
    with driver.cursor().copy("COPY ledger TO STDOUT") as copy:
        lines = sum(bytes(block).count(b"\n") for block in copy)
    assert lines == kite.execute(select(func.count()).select_from(ledger)).scalar_one()


def test_policies_switched_off_by_a_login_let_nothing_through(kite: Connection) -> None:
    kite.exec_driver_sql("SET row_security = off")
    with pytest.raises(DBAPIError, match="row-level security"):
        kite.exec_driver_sql("SELECT * FROM item")


def test_every_key_reference_and_index_begins_with_the_branch(whole: Connection) -> None:
    found = inspect(whole)
    for table in METADATA.sorted_tables:
        name = table.name
        keys = [column.name for column in table.primary_key]
        assert found.get_pk_constraint(name)["constrained_columns"] == ["branch", *keys], name
        there = {str(one["name"]): one["column_names"] for one in found.get_indexes(name)}
        here = {str(one.name): ["branch", *(column.name for column in one.columns)] for one in table.indexes}
        assert there == here, name
        for refers in found.get_foreign_keys(name):
            assert refers["constrained_columns"][0] == refers["referred_columns"][0] == "branch", name
            assert refers["options"] == {"ondelete": "RESTRICT"}, name
        assert len(found.get_foreign_keys(name)) == len(table.foreign_key_constraints), name


def test_beside_the_branch_the_tables_are_those_the_program_knows(whole: Connection) -> None:
    def known(_: object, name: str | None, kind: str, *__: object) -> bool:
        """Keys and indexes are looked at by another test; the branch is the server's own."""
        return kind in {"table", "column"} and name not in {"branch", "seat"}

    context = MigrationContext.configure(whole, opts={"compare_type": True, "include_object": known})
    assert compare_metadata(context, METADATA) == []


WAYS_TO_WEAKEN = {
    "DROP POLICY own_branch ON item": "item",
    "ALTER TABLE verdict NO FORCE ROW LEVEL SECURITY": "verdict",
    "DROP POLICY of_members ON inspection": "inspection_policy",
    "DROP TRIGGER verdict_of_members ON verdict": "verdict_of_members",
    "ALTER TABLE standing DISABLE TRIGGER standing_of_members": "standing_of_members",
    "ALTER TABLE ledger DISABLE TRIGGER ledger_no_change": "ledger_no_change",
    "DROP TRIGGER inspection_named ON inspection": "inspection_named",
}


def gone(connection: Connection) -> list[str]:
    """What of the guards does not stand."""
    found = [*policies_gone(connection), *laws_gone(connection), *missing_triggers(connection)]
    connection.rollback()
    return found


@pytest.mark.parametrize("way", WAYS_TO_WEAKEN)
def test_a_guard_that_was_taken_away_is_missed_and_set_again_by_the_owner(
    federation: Federation, whole: Connection, way: str
) -> None:
    whole.exec_driver_sql(way)
    whole.commit()
    assert gone(whole) == [WAYS_TO_WEAKEN[way]]
    with pytest.raises(Refused, match="does not own them"):
        open_book(federation.url("kite_officer"))
    make_roles(federation.database.url)
    assert gone(whole) == []
    open_book(federation.url("kite_officer")).close()


def test_an_upgrade_writes_down_in_each_branch_which_papers_name_what(
    federation: Federation, whole: Connection
) -> None:
    asked = "SELECT branch, document_id, tag FROM named_in ORDER BY 1, 2, 3"
    before = whole.exec_driver_sql(asked).all()
    assert {str(branch) for branch, _, _ in before} == {KITE, WREN}
    whole.exec_driver_sql("DROP TABLE named_in")
    whole.exec_driver_sql("UPDATE alembic_version SET version_num = '0010'")
    whole.commit()
    open_book(federation.database.url).close()
    assert whole.exec_driver_sql(asked).all() == before
    assert gone(whole) == []


def test_who_rules_the_whole_server_opens_no_register_of_several_branches(federation: Federation) -> None:
    with pytest.raises(Refused, match="no seat in any branch"):
        open_book(federation.database.superuser_url)


@pytest.mark.parametrize("right", ["BYPASSRLS", "SUPERUSER"])
def test_a_login_that_no_policy_binds_is_refused(federation: Federation, whole: Connection, right: str) -> None:
    login = federation.login("wren_officer")
    whole.exec_driver_sql(f'ALTER ROLE "{login}" {right}')
    whole.commit()
    try:
        with pytest.raises(Refused, match="sees every branch at once"):
            open_book(federation.url("wren_officer"))
    finally:
        whole.exec_driver_sql(f'ALTER ROLE "{login}" NO{right}')
        whole.commit()
    open_book(federation.url("wren_officer")).close()


def test_the_owner_works_in_the_branch_that_a_setting_names(federation: Federation) -> None:
    book = open_book(federation.database.url + "?options=-c%20register.branch%3Dwren")
    with book.reading() as page:
        assert page.piece_count() > 0
    book.close()
    empty = open_book(federation.database.url)
    with empty.reading() as page:
        assert page.piece_count() == 0
    empty.close()
