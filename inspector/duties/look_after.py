"""Once a day as the window opens: make the copy that is due, else prove that nothing was changed or damaged."""

from msgspec import Struct

from inspector.duties.copy_by_plan import Planned, copy_if_due
from inspector.duties.office import Office
from inspector.duties.tell_opening import clock_trouble
from inspector.duties.verify_book import verify_book
from inspector.gear.lists import Verified
from inspector.language import tr
from inspector.refused import Refused

_LOOKED = "looked after"


class LookedAfter(Struct, frozen=True):
    """What was done. found: the proof, where it was made; None where a copy was, which is proved as it is made."""

    planned: Planned
    found: Verified | None = None


def look_after(office: Office) -> LookedAfter:
    """Do what the day asks for. Refused where the register was changed or damaged, or no copy can be made."""
    planned = Planned(None) if clock_trouble(office) else copy_if_due(office)  # it could not be entered
    if planned.made:
        return LookedAfter(planned)
    today = f"{office.book.origin} {office.today.isoformat()}"
    if office.machine.get(_LOOKED) == today:
        return LookedAfter(planned)
    found = verify_book(office)
    if found.faults:
        raise _damaged(found)
    office.machine.put(_LOOKED, today)
    return LookedAfter(planned, found)


def _damaged(found: Verified) -> Refused:
    first = found.faults[0]
    why = tr(
        "The register was damaged, or changed by another program ({where}: {why}).", where=first.where, why=first.why
    )
    what = tr("Do not rest on what it shows. Look at Register, “Check that nothing was changed”, and put the last copy "
              "back into another folder.")  # fmt: skip
    return Refused(tr("register"), why, what)
