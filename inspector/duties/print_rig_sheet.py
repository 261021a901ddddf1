"""Print the account of one rig as it was checked."""

from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.gear.papers import RigSheet
from inspector.gear.rig_result import RigResult
from inspector.language import tr
from inspector.paper.page_style import PageSize
from inspector.paper.rig_sheet import rig_sheet
from inspector.register.page import Page

_KIND = "rig_sheet"


def print_rig_sheet(office: Office, result: RigResult) -> Paper:
    """Number, keep and print the account. What was said is kept as it stands; nothing is reckoned anew."""
    with office.book.page() as page:
        number = next_number(page, "G", _KIND)
        sheet = _sheet(office, page, result, number)
        page.add_document(number, _KIND, office.today, result.rig.name, sheet)
        facts = {"number": number, "rig": result.rig.name, "trip": result.rig.trip, "outcome": result.outcome.value}
        page.enter("print rig sheet", by=office.officer.id, at=office.now, facts=facts)
    return put_out(office, number, rig_sheet(sheet, PageSize(office.page), office.system))


def _sheet(office: Office, page: Page, result: RigResult, number: str) -> RigSheet:
    rig = result.rig
    wanted = {rig.bogged, rig.pulling, *(link.side for link in result.links)} - {""}
    vehicles = tuple(one for one in page.vehicles() if one.tag in wanted)
    trip = next((one.name for one in page.trips() if rig.trip and one.ref == rig.trip), rig.trip)
    return RigSheet(imprint(office, page, tr("Rig sheet"), number), result, vehicles, trip)
