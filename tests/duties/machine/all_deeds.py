"""The machine: every group of deeds over one register. A new group is a class beside the others and one name here."""

from hypothesis.stateful import rule

from tests.duties.machine.days import Days
from tests.duties.machine.evidence import Evidence
from tests.duties.machine.hands_and_trips import REFS, Fleet, Hands, Papers, Trips
from tests.duties.machine.lists import Lists
from tests.duties.machine.people import People
from tests.duties.machine.pieces import PEOPLE, Pieces
from tests.duties.machine.places import Counts, Places
from tests.duties.machine.recalls import Recalls
from tests.duties.machine.rides import Rides
from tests.duties.machine.visitors import Visitors
from tests.duties.machine.work import Labels, Repairs


class AllDeeds(
    Pieces,
    Days,
    Trips,
    Rides,
    Hands,
    Fleet,
    Papers,
    Places,
    Counts,
    Evidence,
    Repairs,
    Labels,
    People,
    Visitors,
    Recalls,
    Lists,
):
    """Any deed after any other."""

    @rule(ref=REFS, to=PEOPLE)
    def kit_out_and_back(self, ref: str, to: str) -> None:
        """A kit that was packed anew goes out, and all that is out for the trip comes back."""
        self.pack(ref)
        self.lend_kit(ref, to)
        self.give_back_kit(ref, to)
