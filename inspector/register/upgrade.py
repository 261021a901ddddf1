"""Brings a register's tables to this program's revision. Alembic is imported only when they differ: it is slow."""

from collections.abc import Sequence
from importlib.resources import files
from pathlib import Path

from sqlalchemy import Connection, Engine, inspect

from inspector.language import tr
from inspector.refused import Refused
from inspector.register.branches import ensure_policies, policies_gone
from inspector.register.guards import ensure_triggers, missing_triggers
from inspector.register.member_laws import ensure_member_laws, laws_gone
from inspector.register.opening import not_ours
from inspector.register.seats import renew_grants

HEAD = "0011"
KNOWN = ("0001", "0002", "0003", "0004", "0005", "0006", "0007", "0008", "0009", "0010", "0011")


def bring_up(engine: Engine) -> bool:
    """Upgrade where needed; True if anything was changed. Refuses a register made by a newer program."""
    revision = current_revision(engine)
    if revision is None and _has_tables(engine):
        raise not_ours(engine.url.database)
    if revision is not None and revision not in KNOWN:
        raise Refused(
            tr("register"),
            tr("It was written by a newer version of this program."),
            tr("Install the newer version; this one leaves the register as it is."),
        )
    if revision == HEAD and not _guards_gone(engine):
        return False
    _upgrade(engine)
    return True


def current_revision(engine: Engine) -> str | None:
    """The revision the tables have; None for an empty database."""
    with engine.connect() as connection:
        if not inspect(connection).has_table("alembic_version"):
            return None
        row = connection.exec_driver_sql("SELECT version_num FROM alembic_version").first()
        return str(row[0]) if row else None


def _has_tables(engine: Engine) -> bool:
    with engine.connect() as connection:
        return bool(inspect(connection).get_table_names())


def _guards_gone(engine: Engine) -> bool:
    with engine.connect() as connection:
        gone = missing_triggers(connection)
        if connection.dialect.name == "postgresql":
            gone += [*policies_gone(connection), *laws_gone(connection)]
        return bool(gone)


def _ensure_guards(connection: Connection) -> None:
    """What the scripts may have left behind; in their transaction."""
    ensure_triggers(connection)
    if connection.dialect.name == "postgresql":
        ensure_policies(connection)
        ensure_member_laws(connection)
        renew_grants(connection)


def script_folder() -> Path:
    """The migrations: inside the wheel, or beside the package in a checkout."""
    packaged = Path(str(files("inspector") / "_migrations"))
    return packaged if packaged.is_dir() else Path(__file__).resolve().parents[2] / "migrations"


def _upgrade(engine: Engine) -> None:
    """One transaction with foreign keys off before it begins (inside it the pragma does nothing) and checked after."""
    sqlite = engine.dialect.name == "sqlite"
    with engine.connect() as connection:
        if sqlite:
            _driver_pragma(connection, "foreign_keys=OFF")
        try:
            with connection.execution_options(write=True).begin():
                _run_scripts(connection)
                _ensure_guards(connection)
                if sqlite and (broken := connection.exec_driver_sql("PRAGMA foreign_key_check").all()):
                    raise _broken(broken)
        finally:
            if sqlite:
                _driver_pragma(connection, "foreign_keys=ON")


def _broken(rows: Sequence[object]) -> Refused:
    why = tr("It could not be brought up to date: rows refer to others that are gone ({rows}).", rows=rows[:3])
    return Refused(tr("register"), why, tr("It stays as it was. Put a copy back, or let `inspector rescue` save it."))


def _driver_pragma(connection: Connection, pragma: str) -> None:
    driver = connection.connection.driver_connection
    if driver is not None:
        driver.execute(f"PRAGMA {pragma}")


def _run_scripts(connection: Connection) -> None:
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(script_folder()).replace("%", "%%"))
    config.attributes["connection"] = connection
    command.upgrade(config, "head")
