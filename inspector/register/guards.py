"""The guards of a database: how a connection is opened, and the triggers that keep history from change.

Each guards against a hole that was seen: the driver commits around table changes by itself; a rebuilt table loses its
triggers without a word; REPLACE rewrites a row that UPDATE and DELETE may not touch; TRUNCATE passes row triggers by.
"""

from functools import partial
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, text

from inspector.register.address import how_to_connect
from inspector.register.tables import APPEND_ONLY
from inspector.register.turns import PATIENCE_S, take_turn

_PRAGMAS = (
    "foreign_keys=ON",
    "recursive_triggers=ON",
    "synchronous=FULL",
    "busy_timeout=5000",
    "secure_delete=ON",  # what a person asks to be taken out must not stay readable in freed space
)


def guarded_engine(url: str, journal: str = "WAL") -> Engine:
    """An engine whose every connection keeps foreign keys, full synchronisation and honest transactions.

    journal: how SQLite keeps a change until it is whole; "DELETE", a rollback journal, where memory cannot be shared.
    """
    engine = create_engine(url, **how_to_connect(url))
    sqlite = engine.dialect.name == "sqlite"
    event.listen(engine, "connect", partial(_prepare, journal) if sqlite else _prepare_on_server)
    event.listen(engine, "begin", _begin if sqlite else _begin_on_server)
    return engine


def _prepare(journal: str, connection: Any, _record: Any) -> None:
    connection.isolation_level = None  # the driver must neither open nor commit transactions behind our back
    for pragma in (*_PRAGMAS, f"journal_mode={journal}"):
        connection.execute(f"PRAGMA {pragma}")


def _prepare_on_server(connection: Any, _record: Any) -> None:
    with connection.cursor() as cursor:
        cursor.execute(f"SET lock_timeout = '{PATIENCE_S}s'")
    connection.commit()


def _begin_on_server(connection: Connection) -> None:
    if connection.get_execution_options().get("write"):
        take_turn(connection)


def _begin(connection: Connection) -> None:
    writes = connection.get_execution_options().get("write")
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def wipe_traces(engine: Engine) -> bool:
    """Empty the write-ahead file, in which older states of rows are still readable; whether that could be done.

    It cannot while another program reads the register; a database server keeps old states by rules of its own.
    """
    if engine.dialect.name != "sqlite":
        return False
    with engine.connect() as connection:
        driver: Any = connection.connection.driver_connection
        busy, _, _ = driver.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    return not busy


def ensure_triggers(connection: Connection) -> None:
    """Set every missing trigger; runs after each migration in the same transaction."""
    statements = _sqlite_triggers() if connection.dialect.name == "sqlite" else _postgresql_triggers()
    for statement in statements:
        connection.execute(text(statement))  # text, since a driver may read a bare % as a placeholder


def missing_triggers(connection: Connection) -> list[str]:
    """The names of triggers that should stand and do not."""
    if connection.dialect.name == "sqlite":
        rows = connection.exec_driver_sql("SELECT name FROM sqlite_master WHERE type = 'trigger'")
    else:
        rows = connection.exec_driver_sql("SELECT tgname FROM pg_trigger WHERE NOT tgisinternal AND tgenabled <> 'D'")
    present = {str(row[0]) for row in rows}
    return [name for name in _names(connection.dialect.name) if name not in present]


def changed_triggers(connection: Connection) -> list[str]:
    """The names of triggers that stand and do something else than they were set for; SQLite keeps their text."""
    if connection.dialect.name != "sqlite":
        return []
    wanted = {_bare(one).split(" ")[2]: _bare(one) for one in _sqlite_triggers()}
    rows = connection.exec_driver_sql("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
    return [str(name) for name, text in rows if name in wanted and str(text) != wanted[name]]


def _bare(statement: str) -> str:
    return statement.replace("IF NOT EXISTS ", "")


def _names(dialect: str) -> list[str]:
    deeds = ("update", "delete", "replace") if dialect == "sqlite" else ("change", "truncate")
    return [f"{table.name}_no_{deed}" for table in APPEND_ONLY for deed in deeds]


def _sqlite_triggers() -> list[str]:
    made = []
    for name in (table.name for table in APPEND_ONLY):
        refuse = f"BEGIN SELECT RAISE(ABORT, '{name} is append-only'); END"
        for deed in ("UPDATE", "DELETE"):
            made.append(f"CREATE TRIGGER IF NOT EXISTS {name}_no_{deed.lower()} BEFORE {deed} ON {name} {refuse}")
        again = f"WHEN EXISTS (SELECT 1 FROM {name} WHERE id = NEW.id)"  # noqa: S608 - the names are our own
        made.append(f"CREATE TRIGGER IF NOT EXISTS {name}_no_replace BEFORE INSERT ON {name} {again} {refuse}")
    return made


def _postgresql_triggers() -> list[str]:
    made = [
        "CREATE OR REPLACE FUNCTION keep_history() RETURNS trigger LANGUAGE plpgsql AS "
        "$$ BEGIN RAISE EXCEPTION '% is append-only', TG_TABLE_NAME; END $$"
    ]
    for name in (table.name for table in APPEND_ONLY):
        call = "EXECUTE FUNCTION keep_history()"
        made.append(f"CREATE OR REPLACE TRIGGER {name}_no_change BEFORE UPDATE OR DELETE ON {name} FOR EACH ROW {call}")
        made.append(f"DROP TRIGGER IF EXISTS {name}_no_truncate ON {name}")
        made.append(f"CREATE TRIGGER {name}_no_truncate BEFORE TRUNCATE ON {name} FOR EACH STATEMENT {call}")
    return made
