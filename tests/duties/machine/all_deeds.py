"""The machine: every group of deeds over one register. A new group is a class beside the others and one name here."""

from tests.duties.machine.days import Days
from tests.duties.machine.hands_and_trips import Fleet, Hands, Papers, Trips
from tests.duties.machine.pieces import Pieces
from tests.duties.machine.visitors import Visitors
from tests.duties.machine.year import Counts, Evidence, People, Repairs, Whereabouts


class AllDeeds(Pieces, Days, Trips, Hands, Fleet, Papers, Whereabouts, Evidence, Repairs, Counts, People, Visitors):
    """Any deed after any other."""
