"""Several clubs in one database of a server: each is a branch that sees its own rows and nothing else.

The program's tables know nothing of branches. On the server every table has a column `branch` that fills itself, every
key, reference and index begins with it, and a policy that binds the tables' owner as well shows each login the rows of
its own branch alone. Which branch that is stands in the table `seat`, which nobody but the owner reads; a login cannot
choose it. The owner, who has no seat, works in the branch that the setting `register.branch` names.
"""

from collections.abc import Iterable

from sqlalchemy import Connection, inspect, text

from inspector.register.columns import METADATA

SEAT = "seat"
_SAFE = "SECURITY DEFINER SET search_path = pg_catalog, pg_temp"  # nothing a login makes is found by such a function


def make_seats(connection: Connection) -> None:
    """The table of seats, and the two functions that tell a login its own branch and role."""
    connection.execute(
        text(
            f"CREATE TABLE {SEAT} (login text CONSTRAINT pk_{SEAT} PRIMARY KEY, branch text NOT NULL,"
            f" role text NOT NULL CONSTRAINT ck_{SEAT}_role CHECK (role IN ('officer', 'member', 'reader')))"
        )
    )
    of_owner = "coalesce(current_setting('register.branch', true), '')"
    _tell_own(connection, "branch", of_owner)
    _tell_own(connection, "role", "'owner'")


def _tell_own(connection: Connection, column: str, of_owner: str) -> None:
    """own_branch() and own_role() of whoever logged in, whatever role was set since; null without a seat."""
    seat = f"{schema_of(connection)}.{SEAT}"
    found = f"(SELECT {column} FROM {seat} WHERE login = session_user)"  # noqa: S608 - the names are our own
    owner = f"CASE WHEN session_user = current_user THEN {of_owner} END"
    body = f"BEGIN RETURN coalesce({found}, {owner}); END"
    how = f"RETURNS text LANGUAGE plpgsql STABLE PARALLEL SAFE {_SAFE}"
    connection.execute(text(f"CREATE FUNCTION own_{column}() {how} AS $${body}$$"))


def schema_of(connection: Connection) -> str:
    """The schema the register's tables lie in, quoted."""
    name = connection.execute(text("SELECT current_schema()")).scalar_one()
    return connection.dialect.identifier_preparer.quote_identifier(str(name))


def lead_by_branch(connection: Connection, tables: Iterable[str]) -> None:
    """Give tables that have none their column `branch`, and let every key, reference and index begin with it.

    A migration that makes a table calls it for that table. What it refers to is named too; where that is led already,
    the reference is made afterwards, branch first.
    """
    names = tuple(tables)
    found = inspect(connection)
    references = [(name, one) for name in names for one in found.get_foreign_keys(name)]
    statements = [f"ALTER TABLE {name} DROP CONSTRAINT {one['name']}" for name, one in references]
    for name in names:
        key = found.get_pk_constraint(name)
        columns = ", ".join(key["constrained_columns"])
        statements += [
            f"ALTER TABLE {name} ADD COLUMN branch text NOT NULL DEFAULT own_branch()",
            f"ALTER TABLE {name} DROP CONSTRAINT {key['name']}",
            f"ALTER TABLE {name} ADD CONSTRAINT {key['name']} PRIMARY KEY (branch, {columns})",
        ]
        for index in found.get_indexes(name):
            columns = ", ".join(str(column) for column in index["column_names"])
            statements += [f"DROP INDEX {index['name']}", f"CREATE INDEX {index['name']} ON {name} (branch, {columns})"]
    for name, one in references:
        here, there = (", ".join(one[side]) for side in ("constrained_columns", "referred_columns"))
        refers = f"FOREIGN KEY (branch, {here}) REFERENCES {one['referred_table']} (branch, {there})"
        statements.append(f"ALTER TABLE {name} ADD CONSTRAINT {one['name']} {refers} ON DELETE RESTRICT")
    for statement in statements:
        connection.execute(text(statement))


def ensure_policies(connection: Connection) -> None:
    """Set every policy anew; runs after each migration in the same transaction."""
    for name in METADATA.tables:
        for statement in (
            f"ALTER TABLE {name} ENABLE ROW LEVEL SECURITY",
            f"ALTER TABLE {name} FORCE ROW LEVEL SECURITY",  # for the owner too
            f"DROP POLICY IF EXISTS own_branch ON {name}",
            f"CREATE POLICY own_branch ON {name} USING (branch = (SELECT own_branch()))",
        ):
            connection.execute(text(statement))


def policies_gone(connection: Connection) -> list[str]:
    """The tables whose rows a login may see beyond its branch's."""
    stands = "c.relrowsecurity AND c.relforcerowsecurity"
    policy = "EXISTS (SELECT 1 FROM pg_policy p WHERE p.polrelid = c.oid AND p.polname = 'own_branch')"
    found = f"SELECT c.relname FROM pg_class c WHERE c.relkind = 'r' AND {stands} AND {policy}"  # noqa: S608 - no input
    held = set(connection.execute(text(found)).scalars())
    return [name for name in METADATA.tables if name not in held]
