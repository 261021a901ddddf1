"""The registers that are measured: each made once a run, or once for all where they are kept in a folder."""

import shutil
from collections.abc import Callable
from contextlib import suppress
from datetime import timedelta
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.sit_down import seat
from inspector.gear.dossier import Dossier
from inspector.gear.outcome import Outcome
from inspector.rulebook.load import Rulebook
from tests.benchmarks import bench_gear_list, big_register
from tests.benchmarks.registers import office_on, sample_in

_LONGEST_DAYS = 2000  # that a piece has been in service


class Stores(Struct, frozen=True):
    """A folder with a register in each of its folders. A register that is there is used as it is."""

    folder: Path
    rules: Rulebook

    def sample(self) -> Path:
        """The sample register."""
        return self._made("sample", lambda place: sample_in(place, self.rules))

    def listed(self, count: int) -> Path:
        """So many pieces with what stands of each, written straight into the tables: for what reads lists."""

        def make(place: Path) -> None:
            shutil.copy(self.sample() / "register.db", place)
            bench_gear_list.prepare(place, count)

        return self._made(f"list-{count}", make)

    def lived(self, count: int, looks: int) -> Path:
        """At least so many pieces, each inspected so often and judged once: whole by its ledger, as any register."""

        def make(place: Path) -> None:
            shutil.copy(self._patterns(looks) / "register.db", place)
            office = office_on(place, self.rules)
            pattern = big_register.pattern_of(office)
            big_register.check(pattern)
            with office.book.reading() as page:
                missing = count - page.piece_count()
            copies = max(-(-missing // len(pattern.standing)), 0)
            with office.book.own_connection(write=True) as connection:
                big_register.write_into(connection, pattern, copies, lambda _: None)
            office.book.close()

        return self._made(f"lives-{count}-{looks}", make)

    def _patterns(self, looks: int) -> Path:
        """The sample, and each inspected piece of it once more, inspected so often."""

        def make(place: Path) -> None:
            shutil.copy(self.sample() / "register.db", place)
            office = seat(office_on(place, self.rules))
            for dossier in _inspected(office):
                _lived_again(office, dossier, looks)
            office.book.close()

        return self._made(f"patterns-{looks}", make)

    def _made(self, name: str, make: Callable[[Path], None]) -> Path:
        place = self.folder / name
        if not place.exists():
            begun = self.folder / f"{name}.begun"
            shutil.rmtree(begun, ignore_errors=True)
            begun.mkdir(parents=True)
            make(begun)
            begun.rename(place)
        return place


class _RetiredError(Exception):
    """A piece that is judged no more is of no use here; what was written of it is undone."""


def _inspected(office: Office) -> list[Dossier]:
    """The lives of the sample that an inspection is part of and that did not end in a retirement."""
    with office.book.reading() as page:
        wanted = [(one, office.kind(one.facts.kind)) for one in page.not_retired()]
        return [one for one in page.dossiers(wanted, office.today) if one.inspections]


def _lived_again(office: Office, dossier: Dossier, looks: int) -> None:
    """The piece under another tag, inspected so often between its booking and today, as it was inspected before.

    One deed, and nothing kept of it where the piece ends retired: that is judged no more.
    """
    booked = max(dossier.item.booked_on, office.today - timedelta(days=_LONGEST_DAYS))
    days = (office.today - booked).days
    facts = replace(dossier.item.facts, tag=f"{dossier.item.facts.tag}-x", visiting_for="", visiting_until=None)
    with suppress(_RetiredError), office.book.page() as page:
        twin = page.add_item(facts, booked)
        for number in range(looks):
            seen = dossier.inspections[number * len(dossier.inspections) // looks].facts
            on = booked + timedelta(days=days * (number + 1) // (looks + 1))
            page.add_inspection(twin, replace(seen, on=on, note="", trip="", sheet="", first_values=()))
        if judge_and_keep(office, page, twin).verdict.outcome is Outcome.RETIRE:
            raise _RetiredError
        page.enter("copy", by=office.officer.id, at=office.now, facts={"tags": [twin.tag]})
