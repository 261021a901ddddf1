"""The registers that the benchmarks begin from, their clocks stopped on one evening."""

from datetime import UTC, datetime
from pathlib import Path

from inspector.duties.office import Office
from inspector.gear.person import Person
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook

EVENING = datetime(2026, 11, 25, 19, 0, tzinfo=UTC)


def office_on(place: Path, rules: Rulebook) -> Office:
    """An office on the register of a folder."""
    book = open_book(place / "register.db")
    return Office(book, rules, place / "documents", Person("nobody", "nobody", ""), lambda: EVENING, "bench")


def sample_in(place: Path, rules: Rulebook) -> None:
    """The sample register in an empty folder."""
    from inspector.duties.build_sample import (
        build_sample,
    )  # here: it prints too, and who measures a start prints nothing

    office = office_on(place, rules)
    build_sample(office)
    office.book.close()
