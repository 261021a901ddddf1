"""Who logs in as an officer, a member or a reader, goes round the program, and tries what he may not."""

from collections.abc import Iterator

import pytest
from sqlalchemy import Connection, create_engine
from sqlalchemy.exc import DBAPIError

from inspector.register.columns import METADATA
from inspector.register.tables import APPEND_ONLY
from tests.branches.federation import Federation

FORBIDDEN, NO_RIGHT = "42501", "permission denied"
TABLES = tuple(METADATA.tables)
HISTORY = {table.name for table in APPEND_ONLY}
PRIVATE = {"contact", "passphrase"}
CHANGING = {"standing", "club_setting", "contact", "passphrase"}
MEMBERS_ADD = {"inspection", "opinion", "verdict", "attachment", "attachment_data", "ledger"}
MAY = {  # what each role may do to which tables: written down here again, by hand
    "kite_officer": {"SELECT": set(TABLES), "INSERT": set(TABLES), "UPDATE": CHANGING, "DELETE": CHANGING},
    "kite_member": {"SELECT": set(TABLES) - PRIVATE, "INSERT": MEMBERS_ADD, "UPDATE": {"standing"}, "DELETE": set()},
    "kite_reader": {"SELECT": set(TABLES) - PRIVATE, "INSERT": set(), "UPDATE": set(), "DELETE": set()},
}
DEEDS = {
    "SELECT": "SELECT * FROM {table} LIMIT 1",
    "INSERT": "INSERT INTO {table} DEFAULT VALUES",  # the right is asked for before the values
    "UPDATE": "UPDATE {table} SET branch = branch WHERE false",
    "DELETE": "DELETE FROM {table} WHERE false",
}


def tried(connection: Connection, statement: str) -> str:
    """What the server answers: empty where it does it, else the code and words of its refusal. Nothing of it stays."""
    try:
        with connection.begin():
            connection.exec_driver_sql(statement)
            connection.rollback()
    except DBAPIError as error:
        return f"{getattr(error.orig, 'sqlstate', None)} {error.orig}"
    return ""


@pytest.fixture(params=MAY)
def role(request: pytest.FixtureRequest) -> str:
    """Each role in turn."""
    return str(request.param)


@pytest.fixture
def connection(federation: Federation, role: str) -> Iterator[Connection]:
    """Logged in under that role."""
    engine = federation.engine(role)
    with engine.connect() as made:
        yield made
    engine.dispose()


@pytest.mark.parametrize("deed", DEEDS)
def test_every_deed_on_every_table_is_refused_unless_the_role_may(connection: Connection, role: str, deed: str) -> None:
    for table in TABLES:
        answer = tried(connection, DEEDS[deed].format(table=table))
        if table not in MAY[role][deed]:
            assert answer.startswith(f"{FORBIDDEN} {NO_RIGHT}"), table
        elif deed == "INSERT":  # an empty row is kept by nobody, but not for want of the right
            assert answer and NO_RIGHT not in answer, table
        else:
            assert answer == "", table


def test_nobody_empties_a_table(connection: Connection) -> None:
    for table in TABLES:
        assert tried(connection, f"TRUNCATE {table} CASCADE").startswith(f"{FORBIDDEN} {NO_RIGHT}"), table


def test_history_stays_even_for_the_owner(federation: Federation) -> None:
    owner = create_engine(federation.database.url, connect_args={"options": "-c register.branch=kite"})
    with owner.connect() as connection:
        for table in sorted(HISTORY):
            told = [f"TRUNCATE {table} CASCADE"]
            if connection.exec_driver_sql(f"SELECT 1 FROM {table}").first():
                told += [f"UPDATE {table} SET branch = branch", f"DELETE FROM {table}"]
            connection.rollback()
            for one in told:
                assert "append-only" in tried(connection, one), one
    owner.dispose()


WAYS_ROUND = {
    "the seats": "SELECT * FROM seat",
    "a seat of one's own": "INSERT INTO seat VALUES ('x', 'wren', 'officer')",
    "another seat": "UPDATE seat SET branch = 'wren'",
    "the seats as a file": "COPY seat TO STDOUT",
    "the role of an officer": 'SET ROLE "{database}_officer"',
    "the role of the owner": 'SET ROLE "{owner}"',
    "another login": 'SET SESSION AUTHORIZATION "{owner}"',
    "a table": "CREATE TABLE mine (x text)",
    "a table for a while": "CREATE TEMP TABLE standing (x text)",
    "a function": "CREATE FUNCTION mine() RETURNS int LANGUAGE sql AS 'SELECT 1'",
    "a schema": "CREATE SCHEMA mine",
    "another own_branch": "CREATE OR REPLACE FUNCTION own_branch() RETURNS text LANGUAGE sql AS $$SELECT 'wren'$$",
    "no policy": "DROP POLICY own_branch ON item",
    "no policies": "ALTER TABLE item DISABLE ROW LEVEL SECURITY",
    "no trigger": "DROP TRIGGER ledger_no_change ON ledger",
    "triggers asleep": "ALTER TABLE ledger DISABLE TRIGGER ALL",
    "triggers passed by": "SET session_replication_role = replica",
    "rights for all": "GRANT ALL ON seat TO PUBLIC",
    "a login": "CREATE ROLE mine LOGIN",
    "more rights": 'ALTER ROLE "{login}" BYPASSRLS',
    "a file of the server": "SELECT pg_read_file('/etc/hosts')",
    "a program of the server": "COPY item TO PROGRAM 'cat'",
    "rows from a file": "COPY item FROM '/etc/hosts'",
}


@pytest.mark.parametrize("way", WAYS_ROUND)
def test_no_way_leads_round_it(federation: Federation, connection: Connection, role: str, way: str) -> None:
    if way == "the role of an officer" and role == "kite_officer":
        return  # it is his own
    database = federation.database
    names = {"database": database.name, "owner": database.owner, "login": federation.login(role)}
    assert tried(connection, WAYS_ROUND[way].format(**names)).startswith(FORBIDDEN)


def test_a_function_of_the_register_may_be_called_and_tells_no_more(connection: Connection, role: str) -> None:
    connection.exec_driver_sql("SET register.branch = 'wren'")
    said = connection.exec_driver_sql("SELECT own_branch(), own_role()").one()
    assert tuple(said) == ("kite", role.removeprefix("kite_"))
    assert set(connection.exec_driver_sql("SELECT branch FROM item").scalars()) == {"kite"}
