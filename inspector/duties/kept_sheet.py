"""The kept sheet that a code or a form's hidden word belongs to; what is not ours or asks otherwise is refused."""

from msgspec import Struct

from inspector.duties.check_piece import trip_of_sheet
from inspector.duties.office import Office
from inspector.gear.papers import TripSheet
from inspector.gear.sheet_code import SheetCode, read_code
from inspector.gear.sheet_layout import SheetLayout, SheetPage
from inspector.gear.trip import Trip
from inspector.language import tr
from inspector.paper.filled_form import FilledForm, read_form
from inspector.paper.inspection_sheet import fingerprint
from inspector.refused import Refused
from inspector.register.rows import from_body


class KeptSheet(Struct, frozen=True):
    """number: as printed. pdf: the file that was printed."""

    number: str
    trip: Trip
    sheet: TripSheet
    layout: SheetLayout
    pdf: bytes

    def page(self, code: SheetCode) -> SheetPage:
        """The page that a code stands on; refused where the sheet has no such page."""
        if not 1 <= code.page <= len(self.layout.pages) or self.layout.pages[code.page - 1].code != code.text:
            why = tr("The sheet {number} has no page with this code.", number=self.number)
            raise Refused(tr("sheet"), why, tr("Type it in by hand, and look whether it is a sheet of this club."))
        return self.layout.pages[code.page - 1]


def kept_sheet(office: Office, text: str) -> tuple[KeptSheet, SheetCode]:
    """The sheet with this code. Refused where it is of another register, unknown, or asks what none of ours asks."""
    code = read_code(text)
    if code is None:
        why = tr("“{text}” is no code of a sheet.", text=text[:40])
        raise Refused(tr("sheet"), why, tr("Take a sheet that this register printed."))
    planned, number = _of_trip(office, code)
    with office.book.reading() as page:
        said = from_body(page.document_body(number), TripSheet)
        pdf = page.attachment_bytes(said.pdf) if said.pdf else b""
    if said.layout is None:
        why = tr("The sheet {number} was printed before sheets could be read back.", number=number)
        raise Refused(tr("sheet"), why, tr("Type it in by hand."))
    if fingerprint(said) != code.mark:
        why = tr("It does not ask what the sheet {number} of this register asked.", number=number)
        raise Refused(tr("sheet"), why, tr("Type it in by hand, and look where it came from."))
    return KeptSheet(number, planned, said, said.layout, pdf), code


def check_unaltered(kept: KeptSheet, form: FilledForm) -> None:
    """Refused where the form's text, its fields or their places are not those of the sheet as it was printed."""
    printed = read_form(kept.pdf)
    if printed is None or not form.asks_the_same(printed):
        why = tr("Its questions are not those of the sheet {number} as it was printed.", number=kept.number)
        raise Refused(tr("sheet"), why, tr("Type it in by hand, question by question, and ask who filled it in."))


def _of_trip(office: Office, code: SheetCode) -> tuple[Trip, str]:
    """A number carries the name of the copy of the register that gave it."""
    try:
        return trip_of_sheet(office, code.number)
    except Refused:
        with office.book.reading() as page:
            own = page.origin
        if code.number.split("-")[1:2] == [own]:
            raise
    why = tr("The sheet {number} was printed from another register.", number=code.number)
    raise Refused(tr("sheet"), why, tr("Open the register that it was printed from, and read it in there."))
