"""Lines of the officer's year as sentences, from the shapes that the deeds write."""

from datetime import date

import pytest

from inspector.duties.tell_ledger import tell
from inspector.gear.attachment import NewAttachment, PaperKind
from inspector.gear.evidence import NewRelease
from inspector.gear.incident import EntryKind, Gravity, NewIncident, NewIncidentEntry
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.ledger_line import WrittenLine
from inspector.gear.repair import NewRepair, Work
from inspector.gear.stock_take import Counted, NewStockEntry, StockStep
from inspector.register.rows import as_facts
from tests.duties.gear import shackle

DAY = date(2026, 11, 25)
NAMES = {"a": "Ada Officer", "b": "Bo Rigger"}
TWO = NewIncidentEntry(DAY, EntryKind.VEHICLE_RELEASED, "V-1", "no part of it", "a", "b")
HOLDER = NewIncidentEntry(DAY, EntryKind.CUSTODY, "SH-1", "sealed", "a", holder="Constable Rill")
LINES: tuple[tuple[str, dict[str, object], str], ...] = (
    (
        "repair",
        {"tag": "SH-1", "as": NewRepair(DAY, Work.PIN_AND_BOW, "Cy Smith", "a")},
        "Ada Officer wrote down work on SH-1, done by Cy Smith on 25 Nov 2026: pin and bow put in as a pair.",
    ),
    (
        "retag",
        {"tag": "SH-1", "as": NewItemChange(DAY, Altered.TAG, shackle("SH-9"), "a", "it fell off")},
        "Ada Officer gave SH-1 the tag SH-9: “it fell off”.",
    ),
    (
        "label lost",
        {"tag": "SH-1", "as": NewItemChange(DAY, Altered.LABEL_LOST, shackle(), "a", "worn", "b")},
        "Ada Officer wrote down that the label of SH-1 is lost, with Bo Rigger as second name: “worn”.",
    ),
    (
        "attach",
        {"about": "SH-1", "as": NewAttachment(DAY, PaperKind.PHOTO, "bow.jpg", "image/jpeg", 9, "x", "y", "a")},
        "Ada Officer put the file “bow.jpg” to SH-1.",
    ),
    (
        "report incident",
        {"ref": "I-1", "as": NewIncident(DAY, Gravity.ACCIDENT, "Long Sand", "it broke", ("SH-1",)), "kept": ["SH-1"]},
        "Ada Officer reported an accident at Long Sand on 25 Nov 2026, I-1; SH-1 held for it.",
    ),
    (
        "release vehicle",
        {"incident": "I-1", "as": TWO},
        "Ada Officer and Bo Rigger released the vehicle V-1 from I-1: “no part of it”.",
    ),
    (
        "hand evidence over",
        {"incident": "I-1", "as": HOLDER},
        "Ada Officer wrote down for I-1 that Constable Rill has SH-1 now: “sealed”.",
    ),
    (
        "release evidence",
        {"tag": "SH-1", "as": NewRelease(DAY, "I-1", "a", "b", "looked at")},
        "Ada Officer and Bo Rigger released SH-1 from the evidence of I-1: “looked at”.",
    ),
    (
        "count",
        {
            "ref": "C-1",
            "as": NewStockEntry(DAY, StockStep.MARKED, "a", counted=Counted.ABSENT),
            "tags": ["SH-1"],
            "labels": [],
        },
        "Ada Officer marked SH-1 as not there in the count C-1.",
    ),
    (
        "hand over",
        {"from": "a", "to": "b", "number": "H-1", "count": "C-1"},
        "Ada Officer handed the office over to Bo Rigger, by the protocol H-1 and the count C-1.",
    ),
    (
        "give competence",
        {"id": "b", "scope": "all", "until": "2027-11-25"},
        "Ada Officer wrote down that Bo Rigger may judge all gear until 25 Nov 2027.",
    ),
    ("remove contact", {"id": "b"}, "Ada Officer took out for good how to reach Bo Rigger."),
)


@pytest.mark.parametrize(("deed", "facts", "wanted"), LINES, ids=[one[0] for one in LINES])
def test_a_line_of_the_year_is_told(deed: str, facts: dict[str, object], wanted: str) -> None:
    told = tell(WrittenLine(1, "f", None, "a", deed, as_facts(facts), ()), NAMES, {})
    assert (told.sentence, told.in_full) == (wanted, True)
