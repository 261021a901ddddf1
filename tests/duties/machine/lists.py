"""Lists of gear that are brought in and withdrawn again, beside everything else that happens."""

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspector.duties.gear_list import answers
from inspector.duties.import_list import dry_run, imports, matching_of, take
from inspector.duties.office import Office
from inspector.duties.withdraw_import import withdraw_import
from inspector.gear.import_list import Fates
from inspector.gear.lists import Wanted
from inspector.register.exchange.read_tables import read_tables
from tests.duties.machine.desk import Desk

LISTED = st.sampled_from(("OL-1", "OL-2", "ol-1"))


def _run(office: Office, *tags: str) -> Fates:
    lines = "".join(f"{tag};Bow shackle;4.75;19;22\n" for tag in tags)
    file = read_tables(f"Tag;Kind;WLL (t);Body (mm);Pin (mm)\n{lines}".encode(), "list.csv")
    return dry_run(office, file, matching_of(office, file))


class Lists(Desk):
    """Imports and their withdrawal."""

    @rule(tag=LISTED)
    def bring_in(self, tag: str) -> None:
        """A list with a piece that may be there already, and one that is; what stands twice is never taken."""
        listed = {one.casefold() for one in answers(self.office, Wanted(gone_too=True)).tags}
        made = self.do("import list", lambda office: take(office, _run(office, tag, *sorted(self.stood)[:1])))
        assert made is None or (tag.casefold() not in listed and [one.tag for one in made.pieces] == [tag])

    @rule(at=st.integers(0, 5))
    def withdraw(self, at: int) -> None:
        """An import is withdrawn; its pieces stand in no list any more."""
        every = imports(self.office)
        number = every[at % len(every)].number if every else "I-NONE-0001"
        done = self.do("withdraw import", lambda office: withdraw_import(office, number, "the wrong list"))
        if done:
            assert not set(done.free) & set(answers(self.office, Wanted(gone_too=True)).tags)
