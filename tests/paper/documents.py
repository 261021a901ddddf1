"""Every document there is, made of invented facts: so many items, about somebody of any name. A new one joins by its
entry in DOCUMENTS.

python tests/paper/documents.py NAME …

writes anew what is expected of these documents (`all`: of every one). Look at the difference before it is kept.
"""

import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
from inspector.gear.evidence_list import EvidenceList
from inspector.gear.item_record import ItemRecord
from inspector.gear.lending_slip import LendingSlip
from inspector.gear.letters import HolderLetter, SlipSheet
from inspector.gear.outcome import Outcome
from inspector.gear.papers import (
    CountList,
    CountPlace,
    ElsewhereLine,
    Handout,
    HandoverProtocol,
    Imprint,
    RetirementNotice,
    RigSheet,
    TripSheet,
)
from inspector.gear.recall import RecallLetter, WithdrawnLetter
from inspector.gear.register_report import RegisterReport
from inspector.gear.rig_result import RigOutcome
from inspector.gear.tags import LabelSheet, TagSheet
from inspector.gear.verdict import Fact
from inspector.gear.voucher import Voucher
from inspector.paper.count_list import count_list
from inspector.paper.due_slips import due_slips
from inspector.paper.evidence_list import evidence_list
from inspector.paper.handout import handout
from inspector.paper.handover_protocol import handover_protocol
from inspector.paper.hold_tags import hold_tags
from inspector.paper.holder_letter import holder_letter
from inspector.paper.inspection_sheet import inspection_sheet
from inspector.paper.item_labels import item_labels
from inspector.paper.item_record import item_record
from inspector.paper.lending_slip import lending_slip
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from inspector.paper.recall_letter import recall_letter
from inspector.paper.register_report import register_report
from inspector.paper.retirement_notice import retirement_notice
from inspector.paper.rig_sheet import rig_sheet
from inspector.paper.voucher import voucher
from inspector.paper.withdrawn_letter import withdrawn_letter
from tests.drawings import rigs
from tests.paper import conftest
from tests.paper import test_count_list as count_lists
from tests.paper import test_evidence_list as evidence_lists
from tests.paper import test_handover_protocol as handovers
from tests.paper import test_hold_tags as tag_sheets
from tests.paper import test_item_labels as item_label_sheets
from tests.paper import test_item_record as records
from tests.paper import test_lending_slip as lending_slips
from tests.paper import test_letters_and_slips as letters
from tests.paper import test_recall_letter as recalls
from tests.paper import test_register_report as reports
from tests.paper import test_voucher as vouchers
from tests.paper import test_withdrawn_letter as withdrawals
from tests.paper.reading import Line, pages_of
from tests.rulebook.test_bench import worked

EXPECTED = Path(__file__).parent / "expected"
SOMEBODY = "Di Member"
_USUAL = 3


class Entry(Struct, frozen=True):
    """A document. make: of so many items, about somebody of this name, who stands on it.

    lay_out: prints it; called as the function of paper that does, with an underscore before where it hands that more.
    counts: the items it is tried with. to_the_edge: its text may stand outside the margins, as on labels.
    """

    make: Callable[[int, str], Any]
    lay_out: Callable[[Any, PageSize], Printed]
    counts: tuple[int, ...] = (0, 1, 60)
    to_the_edge: bool = False

    def printed(self, page: PageSize, count: int = _USUAL, name: str = SOMEBODY) -> Printed:
        """The document on paper."""
        return self.lay_out(self.make(count, name), page)


def imprint(title: str, number: str, name: str) -> Imprint:
    """An imprint that a person of this name prepared."""
    return replace(conftest.imprint(title, number), prepared_by=name)


def trip_sheet(count: int, name: str) -> TripSheet:
    """So many pieces that go, two that stay; led by this person."""
    made = imprint("Pre-trip inspection sheet", "A-ABCD-0113", name)
    pieces = conftest.going(count)
    parts = tuple(replace(one, part_of="V-01", where="On V-01, front left.") for one in pieces[:2])
    bag = tuple(replace(one, where=name) for one in pieces[2:4])
    planned = tuple(replace(conftest.RIG, name=name, outcome=one) for one in (RigOutcome.NEVER, RigOutcome.SOUND))
    sheet = replace(conftest.a_trip_sheet(), imprint=made, leader=name, rigs=planned)
    return replace(sheet, going=(*parts, *bag, *pieces[4:]))


def notice(count: int, name: str) -> RetirementNotice:
    """So many reasons; addressed to this person."""
    made = imprint("Retirement notice", "R-ABCD-0114", name)
    reasons = tuple(conftest.reason(f"Fault {n} was seen.", "bad", "none", "club setting") for n in range(count))
    return replace(conftest.a_notice(), imprint=made, owner=name, addressed_to=name, reasons=reasons)


def rig(_: int, name: str) -> RigSheet:
    """A snatch for a trip of this name."""
    return RigSheet(imprint("Rig sheet", "G-ABCD-0007", name), rigs.plain(), rigs.VEHICLES, name)


def why(count: int, name: str) -> Handout:
    """Why a pin holds, with so many lines on where the figures come from."""
    return Handout(imprint("Why", "T-ABCD-0007", name), worked("pin"), (f"Begun from HR-02 of {name}.",) * count)


def letter(count: int, name: str) -> HolderLetter:
    """So many pieces in this person's hands."""
    pieces = (letters.piece(f"SH-{n:03}", tuple(Outcome)[n % len(Outcome)]) for n in range(count))
    return replace(letters.a_letter(*pieces), imprint=imprint("Gear in your hands", "L-ABCD-0001", name), name=name)


def slips(count: int, name: str) -> SlipSheet:
    """So many slips, each of concern to this person."""
    made = (replace(letters.slip(n), concerns=name) for n in range(count))
    return SlipSheet(imprint("Slips", "L-ABCD-0002", name), tuple(made))


def closing(count: int, name: str) -> Voucher:
    """A rope goes back to this person after a life of so many entries."""
    made = imprint("Voucher", "V-ABCD-0001", name)
    return replace(vouchers.a_voucher(), imprint=made, to=name, life=vouchers.life(count))


def count(number: int, name: str) -> CountList:
    """So many pieces in store, one with this person."""
    places = (CountPlace("Shed, hook 1", count_lists.lines(number)),) if number else ()
    away = (ElsewhereLine("KS-01", "Kinetic strap", name),)
    made = imprint("Count list", "K-ABCD-0001", name)
    return CountList(made, "2026-11", "everything in store", "13 Jun 2026", places, away)


def evidence(count: int, name: str) -> EvidenceList:
    """An accident with so many pieces, which this person saw."""
    made = evidence_lists.listed(rigs.plain(), count)
    return replace(made, imprint=imprint("Evidence list", "E-ABCD-0001", name), facts=(Fact("Witnesses", name),))


def handover(count: int, name: str) -> HandoverProtocol:
    """A list of so many lines passes to this person."""
    tables = (handovers.table("Holds", count), handovers.table("Missing", 0))
    handed = (Fact("Checksum", handovers.SHA),)
    made = imprint("Handover protocol", "H-ABCD-0001", name)
    return HandoverProtocol(made, "Ada Officer", name, handed, ("Keep the copy on another disk.",), tables)


def labels(count: int, name: str) -> LabelSheet:
    """So many labels of a club of this name, on a common size."""
    made = replace(imprint("Item labels", "M-ABCD-0001", name), club=name)
    return LabelSheet(made, item_label_sheets.SHEETS[0], 1, item_label_sheets.labels(count))


def tags(count: int, name: str) -> TagSheet:
    """So many tags of pieces that this person held."""
    made = (replace(one, since=f"14 Aug 2026, by {name}.") for one in tag_sheets.numbered(count))
    return TagSheet(imprint("Hold and derating tags", "D-ABCD-0001", name), tuple(made))


def lent(count: int, name: str) -> LendingSlip:
    """So many pieces lent to this person."""
    pieces = (replace(lending_slips.FIT, tag=f"SH-{n:03}") for n in range(count))
    return replace(lending_slips.slip(*pieces), imprint=imprint("Lending slip", "B-ABCD-0001", name), name=name)


def record(count: int, name: str) -> ItemRecord:
    """A receiver of this person's with so many inspections and entries."""
    made = imprint("Record of a piece", "P-ABCD-0007", name)
    return records.record(count, imprint=made, piece=(Fact("Owner", name),))


def report(count: int, name: str) -> RegisterReport:
    """The report, with so many pieces, of which this person decides."""
    made = imprint("Report on the recovery gear", "Y-ABCD-0001", name)
    return replace(reports.report(count), imprint=made)


def recall(count: int, name: str) -> RecallLetter:
    """So many pieces of this person's are called in."""
    pieces = (recalls.piece(n) for n in range(count))
    made = replace(recalls.letter(*pieces), imprint=imprint("Called in", "C-ABCD-0002", name), name=name)
    notice = f"the maker's notice, 7 Nov 2026, sent on by {name}"
    return replace(made, recall="N-ABCD-0001", notice=notice, remedy=f"Send the pin back to {name}.", is_reminder=True)


def _recall_letter(made: RecallLetter, page: PageSize) -> Printed:
    return recall_letter(made, f"{made.name}\n{recalls.ADDRESS}", page)


def withdrawal(count: int, name: str) -> WithdrawnLetter:
    """A recall of so many of this person's pieces is withdrawn."""
    pieces = tuple(withdrawals.piece(n) for n in range(count))
    made = imprint("A recall is withdrawn", "W-ABCD-0002", name)
    reason = f"It was another maker's, as {name} saw."
    return replace(withdrawals.letter(*pieces), imprint=made, name=name, reason=reason)


def _withdrawn_letter(made: WithdrawnLetter, page: PageSize) -> Printed:
    return withdrawn_letter(made, f"{made.name}\n{recalls.ADDRESS}", page)


def _holder_letter(made: HolderLetter, page: PageSize) -> Printed:
    return holder_letter(made, f"{made.name}\n{letters.ADDRESS}", page)


DOCUMENTS = {
    "trip_sheet": Entry(trip_sheet, inspection_sheet),
    "retirement_notice": Entry(notice, retirement_notice),
    "rig_sheet": Entry(rig, rig_sheet, counts=(1,)),
    "handout": Entry(why, handout, counts=(0, 1)),
    "letter": Entry(letter, _holder_letter),
    "slips": Entry(slips, due_slips),
    "item_labels": Entry(labels, item_labels, to_the_edge=True),
    "hold_tags": Entry(tags, hold_tags),
    "lending_slip": Entry(lent, lending_slip),
    "item_record": Entry(record, item_record),
    "register_report": Entry(report, register_report),
    "recall_letter": Entry(recall, _recall_letter),
    "withdrawn_letter": Entry(withdrawal, _withdrawn_letter),
    "voucher": Entry(closing, voucher),
    "count_list": Entry(count, count_list),
    "evidence_list": Entry(evidence, evidence_list),
    "handover_protocol": Entry(handover, handover_protocol),
}


def place_of(name: str, page: PageSize) -> Path:
    """Where it is written down what is expected of a document."""
    return EXPECTED / f"{name}.{page}.txt"


def told(printed: Printed) -> list[str]:
    """What stands where: a line of text to a line, with left, top and right in points from the top left of its page."""
    found = []
    for number, page in enumerate(pages_of(printed), 1):
        found += [f"page {number}", *(_told(line) for line in page.lines)]
    return found


def _told(line: Line) -> str:
    return f"{line.left:6.1f} {line.top:6.1f} {line.right:6.1f}  {line.text}"


def main(names: list[str]) -> int:
    """Write down what is expected from now on."""
    for name in DOCUMENTS if names == ["all"] else names:
        for page in PageSize:
            place_of(name, page).write_text("\n".join(told(DOCUMENTS[name].printed(page))) + "\n", encoding="utf-8")
            print(f"written: {place_of(name, page).name}")
    return 0 if names else 2


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
