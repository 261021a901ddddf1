"""A debrief as a file: the trip, the day, and each rig used, by its reference in the register or written out in full.

Whether it jerked, and whether there was a near miss, is asked of every rig, and a trip without a pull says so by
"used = []": silence would read as "no".
"""

from inspector.duties.keep_rigs import rig
from inspector.duties.office import Office
from inspector.duties.rig_files import RIG_KEYS, rig_in
from inspector.duties.typed_tables import Typed
from inspector.gear.debrief import NewDebrief, RigUsed
from inspector.gear.rig import Rig
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension


def read_debrief(office: Office, text: str) -> NewDebrief:
    """The debrief of a file's text, its rigs found in the register. Raises Refused with the field."""
    typed = Typed.of_file(text, tr("debrief file"), office.decimal)
    typed.check_keys(("trip", "on", "by", "note", "decimal", "used"))
    typed.need("trip", "on", "used")
    return NewDebrief(
        trip=typed.text("trip"),
        on=typed.day("on") or office.today,
        rigs=tuple(_used(office, one) for one in typed.tables("used")),
        by=typed.text("by"),
        note=typed.text("note"),
    )


def _used(office: Office, typed: Typed) -> RigUsed:
    typed.check_keys(("rig", "pulls", "on", "hardest", "jerked", "near_miss"))
    typed.need("rig", "pulls", "on", "jerked", "near_miss")
    hardest = typed.figure("hardest", Dimension.FORCE)
    if hardest is not None and hardest.si <= 0:
        why = tr("{figure} is no pull.", figure=hardest.as_typed)
        raise Refused(typed.field("hardest"), why, tr("Write the hardest pull, or leave the line out."))
    return RigUsed(
        rig=_rig(office, typed),
        pull_count=typed.whole("pulls") or 0,
        on=typed.day("on") or office.today,
        hardest=hardest,
        jerked=typed.yes("jerked") is not False,
        near_miss=typed.text("near_miss"),
    )


def _rig(office: Office, typed: Typed) -> Rig:
    """A rig named by its reference, or written out in a table of its own."""
    if not typed.is_table("rig"):
        return rig(office, typed.text("rig")).rig
    own = typed.table("rig")
    own.check_keys(RIG_KEYS)
    return rig_in(own)
