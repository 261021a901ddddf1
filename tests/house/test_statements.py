"""Statements are kept for all registers of a process: each finds its own rows by them, and a server's are its own."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine, bindparam, create_engine, select
from sqlalchemy.dialects.postgresql.psycopg import PGDialect_psycopg
from sqlalchemy.sql.compiler import SQLCompiler

from inspector.register.tables import person
from tests.fresh import fresh_book
from tests.statements import KEPT


@pytest.fixture
def engines(tmp_path: Path) -> Iterator[list[Engine]]:
    """Two registers, opened by engines of their own."""
    for name in ("one", "other"):
        fresh_book(tmp_path / f"{name}.db").close()
    made = [create_engine(f"sqlite:///{tmp_path / name}.db") for name in ("one", "other")]
    yield made
    for one in made:
        one.dispose()


def named(connection: Connection, name: str) -> list[str]:
    """The names of the people of this name."""
    return list(connection.execute(select(person.c.name).where(person.c.name == name)).scalars())


def test_what_one_register_put_into_sql_the_other_does_not_and_both_read_their_own(
    engines: list[Engine], monkeypatch: pytest.MonkeyPatch
) -> None:
    compiled: list[object] = []
    begins = SQLCompiler.__init__

    def counted(self: SQLCompiler, *given: object, **named: object) -> None:
        compiled.append(given)
        begins(self, *given, **named)  # type: ignore[arg-type]

    for number, engine in enumerate(engines):
        with engine.begin() as connection:
            connection.execute(
                person.insert(), {"id": f"p{number}", "name": f"P{number}", "role": "member", "body": "{}"}
            )
    monkeypatch.setattr(SQLCompiler, "__init__", counted)
    with engines[0].connect() as one, engines[1].connect() as other:
        assert (named(one, "P0"), named(one, "P1")) == (["P0"], [])
        assert len(compiled) == 1
        assert (named(other, "P0"), named(other, "P1")) == ([], ["P1"])
        assert len(compiled) == 1
        assert list(other.execute(select(person.c.id).where(person.c.name == bindparam("x")), {"x": "P1"}).scalars())
        assert len(compiled) == 2


def test_a_statement_of_a_server_is_found_by_its_own_engine_alone() -> None:
    one, other = PGDialect_psycopg(), PGDialect_psycopg()  # type: ignore[no-untyped-call]
    KEPT[one, "key"] = "of one"
    assert KEPT[one, "key"] == "of one" and (other, "key") not in KEPT
    del KEPT[one, "key"]
