"""A register as a program of an earlier revision left it, built by that revision's own migrations."""

import sqlite3
from contextlib import closing
from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy import inspect, text

from inspector.register.guards import _sqlite_triggers, guarded_engine
from inspector.register.upgrade import script_folder

REVISION = "0006"


def old_register(file: Path, of: Path) -> None:
    """Make the tables of the earlier revision and fill them with what a register of today holds."""
    engine = guarded_engine(f"sqlite:///{file}")
    with engine.begin() as connection:
        config = Config()
        config.set_main_option("script_location", str(script_folder()).replace("%", "%%"))
        config.attributes["connection"] = connection
        command.upgrade(config, REVISION)
    engine.dispose()
    with closing(sqlite3.connect(file)) as old, old:
        old.execute("ATTACH ? AS today", (str(of),))
        for (table,) in old.execute("SELECT name FROM main.sqlite_master WHERE type = 'table'").fetchall():
            if table != "alembic_version":
                columns = ", ".join(f'"{row[1]}"' for row in old.execute(f"PRAGMA main.table_info({table})"))
                old.execute(f"INSERT INTO main.{table} ({columns}) SELECT {columns} FROM today.{table}")
    engine = guarded_engine(f"sqlite:///{file}", "DELETE")
    with engine.begin() as connection:
        there = set(inspect(connection).get_table_names())
        for statement in _sqlite_triggers():
            if statement.split(" ON ", 1)[1].split(" ", 1)[0] in there:
                connection.execute(text(statement))
    engine.dispose()
