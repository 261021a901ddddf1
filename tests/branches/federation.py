"""Two clubs in one database: the same register carried into two branches, and logins of every role in each."""

from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path

from msgspec import Struct
from sqlalchemy import Engine, create_engine, insert, select

from inspector.duties.office import Office
from inspector.duties.server_logins import give_login
from inspector.gear.seats import Role, Seat
from inspector.register.columns import METADATA
from tests.server import Database

Sits = Callable[[str], AbstractContextManager[Office]]
KITE, WREN = "kite", "wren"
PASSWORD = "four words of a test"


class Federation(Struct, frozen=True):
    """The database and its logins, each called by its branch and role, after the database's own name."""

    database: Database

    def login(self, name: str) -> str:
        """A login is known on the whole server, where other tests have theirs."""
        return f"{self.database.name}_{name}"

    def url(self, name: str) -> str:
        """The address for a login."""
        return self.database.as_login(self.login(name), PASSWORD)

    def engine(self, name: str) -> Engine:
        """A bare connection, as somebody has it who goes round the program."""
        return create_engine(self.url(name))

    def seat(self, name: str, branch: str, role: Role) -> None:
        """Give a login its seat."""
        give_login(self.database.url, Seat(self.login(name), branch, role), PASSWORD)

    def club(self, branch: str, register: Path) -> None:
        """A login of each role, as `kite_officer`, and the register in the file carried into the branch."""
        for role in Role:
            self.seat(f"{branch}_{role.value}", branch, role)
        _carry(register, self.url(f"{branch}_officer"))


def federate(database: Database, register: Path) -> Federation:
    """Make the roles and two clubs."""
    made = Federation(database)
    for branch in (KITE, WREN):
        made.club(branch, register)
    return made


def _carry(register: Path, url: str) -> None:
    source, target = create_engine(f"sqlite:///{register}"), create_engine(url)
    with source.connect() as old, target.begin() as new:
        for table in METADATA.sorted_tables:
            if rows := [dict(row) for row in old.execute(select(table)).mappings()]:
                new.execute(insert(table), rows)
    source.dispose()
    target.dispose()
