"""The desk of the machine: every deed passes over it, and it looks at the whole register after each.

What must hold is written down here from the issue's words alone: the desk keeps its own account of what was retired,
made unusable, kept as evidence, lent or gone, and holds the register against it.
"""

import shutil
import sqlite3
from collections import Counter
from collections.abc import Callable, Iterable
from typing import ClassVar, TypeVar

from hypothesis.stateful import RuleBasedStateMachine, invariant
from msgspec import Struct, field

from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.rulebook_in_force import in_force
from inspector.duties.tell_ledger import SENTENCES, told_ledger
from inspector.duties.verify_book import verify_book
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.whereabouts import Where
from inspector.refused import Refused
from tests.duties.machine.club import TAGS, Clock, new_club

Result = TypeVar("Result")
# a part that was destroyed may still be taken off its vehicle, so fittings are held by the rule that fits
_EVENTS = ("inspection", "piece_use", "exposure", "opinion", "strike", "custody", "whereabouts", "repair")
_CHANGES = ("custody", "fitting", "repair", "destruction")
_PROVED_EVERY = 8


class Tally(Struct):
    """How often each deed was done and refused, over all runs of this program."""

    done: Counter[str] = field(default_factory=Counter)
    refused: Counter[str] = field(default_factory=Counter)
    runs: int = 0
    lines: set[str] = field(default_factory=set)  # deeds as the ledger names them

    @property
    def steps(self) -> int:
        """All deeds that were tried."""
        return self.done.total() + self.refused.total()


class Desk(RuleBasedStateMachine):
    """What the groups of deeds share: the office, the account of what stands, and `do`."""

    tally: ClassVar[Tally] = Tally()

    def __init__(self) -> None:
        super().__init__()
        self.clock = Clock()
        self.bare, self.folder = new_club(self.clock)
        self.office = self.bare
        self.watch = sqlite3.connect(self.folder / "register.db")
        self.destroyed: set[str] = set()
        self.closed: dict[str, int] = {}  # destroyed or sold, with the entries it had then
        self.evidence: dict[str, set[str]] = {}  # by tag, the incidents that keep it
        self.gone: dict[str, Where] = {}
        self.lent: set[str] = set()
        self.as_found: dict[str, dict[str, int]] = {}  # of evidence, what had been written of it
        self.called: dict[str, str] = {}  # later tags of pieces, and the first
        self.waits: dict[str, tuple[str, int]] = {}  # held until inspected: since which day, and looks it had then
        self.stood = self.outcomes()
        self.deeds = 0
        self.tally.runs += 1

    def teardown(self) -> None:
        """Every line can be told, and nothing was changed behind the ledger."""
        told = told_ledger(self.office)
        assert [one.deed for one in told if one.deed in SENTENCES and not one.in_full] == []
        assert verify_book(self.office).faults == ()
        self.watch.close()
        self.office.book.close()
        shutil.rmtree(self.folder)

    # --- a deed ---

    def do(
        self, deed: str, call: Callable[[Office], Result], lines: Callable[[Result], int] | None = None
    ) -> Result | None:
        """Do a deed or be refused; None where it was. lines: how many ledger lines it writes, one where not told."""
        before, version = self.line(), self.version()
        try:
            result = call(self.office)
        except Refused as no:
            assert (self.line(), self.version()) == (before, version), f"a refused {deed} changed the book"
            assert no.field.strip() and no.why.strip() and no.what_to_do.strip(), f"{deed}: {no!r} leaves a part empty"
            self.tally.refused[deed] += 1
            return None
        self.tally.done[deed] += 1
        wanted = lines(result) if lines else 1
        assert self.line() == before + wanted, f"{deed} wrote {self.line() - before} lines, not {wanted}"
        if wanted:
            self.tally.lines |= {one.deed for one in told_ledger(self.office, last=wanted)}
            (told,) = told_ledger(self.office, last=1)
            assert told.sentence and (told.in_full or told.deed not in SENTENCES), told
        self._look(deed)
        return result

    def line(self) -> int:
        """The number of the ledger's last line."""
        return int(self.watch.execute("SELECT max(id) FROM ledger").fetchone()[0])

    def version(self) -> int:
        """Another number as soon as anything at all was written into the file."""
        return int(self.watch.execute("PRAGMA data_version").fetchone()[0])

    def count(self, tag: str, tables: tuple[str, ...]) -> int:
        """How many rows these tables hold of a piece."""
        of = "SELECT count(*) FROM {} WHERE item_id = (SELECT id FROM item WHERE tag = ?)"
        return sum(int(self.watch.execute(of.format(table), (tag,)).fetchone()[0]) for table in tables)

    def looks(self, tag: str, since: str) -> int:
        """How often somebody competent has inspected a piece on that day or later, checks before use left out."""
        found = (
            "SELECT count(*) FROM inspection WHERE item_id = (SELECT id FROM item WHERE tag = ?) AND day >= ?"
            " AND json_extract(body, '$.competent') AND json_extract(body, '$.kind') <> 'before_use'"
        )
        return int(self.watch.execute(found, (tag, since)).fetchone()[0])

    def items(self) -> dict[str, Item]:
        """Every piece that was booked, by its first tag."""
        with self.office.book.reading() as page:
            return page.items(list(TAGS))

    def outcomes(self) -> dict[str, Outcome]:
        """How every piece stands."""
        return {tag: open_item(self.office, tag).verdict.outcome for tag in self.items()}

    def rather(self, pool: Iterable[str], tag: str) -> str:
        """One of the pool in the tag's stead, where there is any: a deed that is always refused shows little."""
        wanted = sorted(pool)
        return tag if tag in wanted or not wanted else wanted[TAGS.index(tag) % len(wanted)]

    def retired(self) -> list[str]:
        """The tags of the pieces that stand as retired."""
        return [tag for tag, outcome in self.stood.items() if outcome is Outcome.RETIRE]

    def at_hand(self) -> list[str]:
        """The tags of the pieces that nothing keeps here or away."""
        away = self.lent | set(self.gone) | self.destroyed | {tag for tag, kept in self.evidence.items() if kept}
        bound = {tag for tag, outcome in self.stood.items() if outcome.severity >= Outcome.HOLD.severity}
        return [tag for tag in self.stood if tag not in away | bound]

    def open_anew(self) -> None:
        """The office under the rulebook that is in force now, as the program opens it."""
        self.office = in_force(self.bare)

    def first_tag(self, tag: str) -> str:
        """The tag a piece had first."""
        return self.called.get(tag, tag)

    def left(self, tag: str, where: Where) -> None:
        """A piece is not with the club any more, nor out on a loan; being evidence it may still be lost."""
        self.gone[tag] = where
        self.lent.discard(tag)
        if tag in self.as_found:
            self.as_found[tag] = self.held(tag)

    def unseen(self, tag: str) -> None:
        """The piece is held until somebody competent has inspected it after this."""
        today = self.office.today.isoformat()
        self.waits[tag] = today, self.looks(tag, today)
        assert self.stood[tag].severity >= Outcome.HOLD.severity, f"unseen, {tag} is {self.stood[tag]}"

    def close(self, tag: str) -> None:
        """From now on nothing is written of the piece any more: it was destroyed or sold."""
        self.closed[tag] = self.count(tag, _EVENTS)

    def held(self, tag: str) -> dict[str, int]:
        """What was lent, fitted, repaired or destroyed of a piece that is evidence."""
        return {table: self.count(tag, (table,)) for table in _CHANGES}

    # --- what must hold after a deed ---

    def _look(self, deed: str) -> None:
        self.deeds += 1
        stands = self.outcomes()
        for tag, was in self.stood.items():
            back = was is Outcome.RETIRE and stands[tag] is not Outcome.RETIRE
            assert not back or deed == "strike", f"{deed} brought the retired {tag} back"
        self.stood = stands
        if self.deeds % _PROVED_EVERY == 0:
            assert verify_book(self.office).faults == ()

    @invariant()
    def nothing_is_written_of_what_was_destroyed_or_sold(self) -> None:
        """A destroyed piece stays retired; neither it nor a sold one takes an entry."""
        for tag in self.destroyed:
            assert self.stood[tag] is Outcome.RETIRE, f"{tag} was destroyed and is {self.stood[tag]}"
        for tag, entries in self.closed.items():
            assert self.count(tag, _EVENTS) == entries, f"an entry was logged of {tag}, which was destroyed or sold"

    @invariant()
    def what_nobody_has_seen_since_is_held(self) -> None:
        """Found, repaired, marked anew or let go from evidence it waits for an inspection, whatever else is done."""
        for tag, (since, looks) in list(self.waits.items()):
            if self.looks(tag, since) > looks:
                del self.waits[tag]
            else:
                assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} waits to be seen: {self.stood[tag]}"

    @invariant()
    def every_piece_is_somewhere_and_where_it_should_be(self) -> None:
        """Each piece has whereabouts, and they are those of the account."""
        items = self.items()
        with self.office.book.reading() as page:
            found = page.whereabouts(items.values())
        assert {items[tag].id for tag in items} == set(found)
        for tag, item in items.items():
            where = found[item.id].where
            assert where is self.account(tag, where), f"{tag} is {where}, by the account {self.account(tag, where)}"

    def account(self, tag: str, where: Where) -> Where:
        """Where a piece ought to be. One that is neither gone nor lent is in store or on a vehicle."""
        if tag in self.destroyed:
            return Where.DESTROYED
        if tag in self.gone:
            return self.gone[tag]
        if tag in self.lent:
            return Where.ON_LOAN
        return where if where is Where.ON_VEHICLE else Where.IN_STORE
