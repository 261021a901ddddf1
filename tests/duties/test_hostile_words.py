"""Stories: what is told in sentences neither steers the screen of whoever reads it nor floods the register."""

import sys
from collections.abc import Callable

import pytest
from msgspec.structs import replace

from inspector.duties.change_item import change_note, label_lost, retag
from inspector.duties.change_person import change_person
from inspector.duties.keep_incident import add_statement
from inspector.duties.office import Office
from inspector.duties.plain_lines import _STEERS
from inspector.duties.release_evidence import release_evidence
from inspector.duties.repair_item import repair_item
from inspector.duties.report_incident import report_incident
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import put_in_store, report_missing
from inspector.gear.repair import NewRepair, Work
from inspector.refused import Refused
from tests.duties.incidents import SECOND, accident, beach, reported

SPOOFS = ("let go\x1b[2J\x1b[31m", "\u202etif si ti", "a\u0000b", "x" * 30_000)


def test_whatever_prints_steers_nothing() -> None:
    """So a text that prints need not be searched for such signs."""
    assert not [sign for sign in map(chr, range(sys.maxunicode + 1)) if sign.isprintable() and _STEERS.search(sign)]


@pytest.mark.parametrize("spoof", SPOOFS)
def test_no_sentence_carries_signs_that_steer_or_floods_the_register(office: Office, spoof: str) -> None:
    beach(office)
    ref = reported(office, rig=None, pieces=("SH-1",), broken=()).incident.ref
    work = NewRepair(office.today, Work.CLEANED, "Ada Officer", "", note="brushed")
    deeds: dict[str, Callable[[], object]] = {
        "what happened": lambda: report_incident(office, accident(office, what=spoof)),
        "statement": lambda: add_statement(office, ref, "Ned", spoof),
        "release": lambda: release_evidence(office, ref, "SH-1", second=SECOND, why=spoof),
        "label": lambda: label_lost(office, "SH-2", spoof),
        "tag": lambda: retag(office, "SH-2", "SH-9", spoof),
        "note": lambda: change_note(office, "SH-2", spoof),
        "role": lambda: change_person(office, SECOND, role=spoof, why="moved"),
        "why he changed": lambda: change_person(office, SECOND, role="trainer", why=spoof),
        "place": lambda: put_in_store(office, "SH-2", "shelf", why=spoof),
        "missing": lambda: report_missing(office, "SH-2", "shelf", spoof),
        "repair": lambda: repair_item(office, "SH-2", replace(work, note=spoof)),
        "workshop": lambda: repair_item(office, "SH-2", replace(work, done_by=spoof)),
        "part": lambda: repair_item(office, "SH-2", replace(work, part=spoof)),
    }
    before = verify_book(office).head
    for what, deed in deeds.items():
        with pytest.raises(Refused, match="signs") as refusal:
            deed()
        assert refusal.value.field and refusal.value.what_to_do, what
    assert verify_book(office).head == before


def test_what_is_told_in_several_lines_is_kept_so(office: Office) -> None:
    beach(office)
    told = "The pull began.\n\n\tThen it let go."
    assert report_incident(office, accident(office, what=told)).incident.facts.what == told
