"""The office: what every deed needs at hand."""

from collections.abc import Callable, Iterator, Sequence
from datetime import date, datetime
from pathlib import Path
from typing import TypeVar

from msgspec import Struct, field
from msgspec.structs import replace

from inspector.duties.machine_settings import MachineSettings
from inspector.gear.kind import Kind
from inspector.gear.person import Person
from inspector.register.book import Book
from inspector.rulebook.load import Rulebook
from inspector.units import System

Told = Callable[[int, int], None]
One = TypeVar("One")


def told_nobody(_done: int, _total: int) -> None:
    """Nobody asks how far long work has come."""


class Office(Struct, frozen=True):
    """Book, rules, out tray, clock and the person at the desk.

    out_tray: the folder that documents are written to. program: the version that verdicts name. decimal: the sign the
    club writes between whole and part. page: "a4" or "letter". waits_for: tags that an adopted rulebook would retire
    though nobody was asked about them; it waits, and `rules` are those before it. vouched: whether the person at the
    desk gave the passphrase; else the name is as stated. vouched_second: the id of another person who gave his for the
    one deed that this office is handed to; nobody keeps such an office. machine: what this machine remembers of the
    window. told: called by long work after each step with how many of how many are done; what it raises ends the work,
    and nothing of it is kept.
    """

    book: Book
    rules: Rulebook
    out_tray: Path
    officer: Person
    clock: Callable[[], datetime]
    program: str
    system: System = System.METRIC
    page: str = "a4"
    decimal: str = "."
    waits_for: tuple[str, ...] = ()
    vouched: bool = False
    vouched_second: str = ""
    machine: MachineSettings = field(default_factory=MachineSettings)
    told: Told = told_nobody

    @property
    def now(self) -> datetime:
        """The moment a deed is entered."""
        return self.clock()

    @property
    def today(self) -> date:
        """The judging day."""
        return self.clock().date()

    def vouches_for(self, person: Person) -> bool:
        """Whether this person gave the passphrase: at the desk, or as the second one of this deed."""
        at_desk = self.vouched and person.id == self.officer.id
        return at_desk or (self.vouched_second != "" and person.id == self.vouched_second)

    def at(self, moment: datetime) -> "Office":
        """The same office at another moment."""
        return replace(self, clock=lambda: moment)

    def kind(self, key: str) -> Kind:
        """A kind of gear; refused with the list of kinds where there is none."""
        return self.rules.kind(key)


def told_of(office: Office, every: Sequence[One], *, before: int = 0, after: int = 0, each: int = 1) -> Iterator[One]:
    """Each of them in turn; how many are done is told after each, or after so many of them.

    before, after: the steps of the same work that were told already, and that are still to come.
    """
    total = before + len(every) + after
    for number, one in enumerate(every, before + 1):
        yield one
        if number % each == 0 or number == total:
            office.told(number, total)
