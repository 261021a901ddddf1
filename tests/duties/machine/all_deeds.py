"""The machine: every group of deeds over one register. A new group is a class beside the others and one name here."""

from tests.duties.machine.days import Days
from tests.duties.machine.evidence import Evidence
from tests.duties.machine.hands_and_trips import Fleet, Hands, Papers, Trips
from tests.duties.machine.people import People
from tests.duties.machine.pieces import Pieces
from tests.duties.machine.places import Counts, Places
from tests.duties.machine.visitors import Visitors
from tests.duties.machine.work import Labels, Repairs


class AllDeeds(Pieces, Days, Trips, Hands, Fleet, Papers, Places, Counts, Evidence, Repairs, Labels, People, Visitors):
    """Any deed after any other."""
