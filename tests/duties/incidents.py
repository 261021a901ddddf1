"""Short words for the bad day: a second competent person, a club with a beach rig, an accident with it."""

from msgspec.structs import replace

from inspector.duties.fit_parts import fit_part
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.report_incident import Reported, report_incident
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.incident import Distance, Gravity, NewIncident
from inspector.gear.outcome import Outcome
from tests.duties.gear import POINT_READINGS, all_good, metres, point
from tests.duties.rigs import SAND, SNATCH, fit, ready
from tests.duties.test_opinions import add

SECOND = "Bo Second"
SKETCH = (
    Distance("hook of V-1", "tow point of V-2", metres("9.5 m")),
    Distance("line", "nearest person", metres("14 m")),
)


def beach(office: Office) -> None:
    """The kit, two vehicles, a recovery point on one of them, and a second competent person."""
    ready(office)
    add(office, SECOND)
    fit(office, point("RP-1"), POINT_READINGS)
    fit_part(office, "RP-1", Fitted("V-2", End.REAR, Side.LEFT))
    kind = open_item(office, "RP-1").dossier.kind
    seen = record_inspection(office, "RP-1", all_good(office, kind, POINT_READINGS))
    assert seen.verdict.outcome is Outcome.FIT


def accident(office: Office, **changes: object) -> NewIncident:
    """What is told of a shackle that let go on the beach."""
    told = NewIncident(
        on=office.today,
        gravity=Gravity.ACCIDENT,
        place="Long Sand, north end",
        what="The pull began, a shackle opened and the strap flew over the bonnet.",
        pieces=(),
        witnesses=("Ned Watcher",),
        rig=replace(SNATCH, conditions=SAND),
        distances=SKETCH,
        trip="T-1",
        broken=("SH-2",),
    )
    return replace(told, **changes)


def reported(office: Office, **changes: object) -> Reported:
    """The accident with the beach rig, reported."""
    return report_incident(office, accident(office, **changes))
