"""No text of a document is missed, nor of what its pictures tell."""

from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from inspector.app import main
from inspector.duties.evidence_paper import print_evidence
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_count import print_count
from inspector.duties.print_recall import recall_pieces
from inspector.duties.print_record import print_record
from inspector.duties.print_report import print_report
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.report_incident import report_incident
from inspector.duties.retire_item import print_notice
from inspector.duties.take_stock import begin_count
from inspector.gear.incident import Gravity, NewIncident
from inspector.language import use_catalogue
from inspector.rulebook.bench.work import topics
from inspector.units import System
from tests.language.conftest import KNOWN
from tests.language.pseudo import Pseudo
from tests.language.shown import assert_none_missed


def _counted(office: Office) -> Paper:
    begin_count(office, "C1", "")
    return print_count(office, "C1")


def _incident(office: Office) -> str:
    report = NewIncident(office.today, Gravity.ACCIDENT, "the long beach", "leader", ("SH-001",), ("V1",))
    return report_incident(office, report).incident.ref


_PAPERS: dict[str, Callable[[Office], Paper]] = {
    "trip sheet": lambda office: print_trip_sheet(office, "T1"),
    "retirement notice": lambda office: print_notice(office, "HR-007"),
    "count list": lambda office: _counted(office),
    "record of a ball mount": lambda office: print_record(office, "HR-007"),
    "record of a shackle": lambda office: print_record(office, "SH-001"),
    "report on the gear": lambda office: print_report(office),
    "recall letter": lambda office: recall_pieces(office, ["SH-001", "SH-002"], "leader").papers[0],
    "evidence list": lambda office: print_evidence(office, _incident(office)),
}


def _pages(file: Path) -> list[tuple[str, str]]:
    """The text of each page, its lines run together."""
    reader = PdfReader(BytesIO(file.read_bytes()))
    return [(f"{file.name}, page {at}", " ".join(one.extract_text().split())) for at, one in enumerate(reader.pages, 1)]


@pytest.mark.parametrize("paper", _PAPERS)
def test_no_text_of_a_document_is_missed(club: Office, paper: str) -> None:
    printed = _PAPERS[paper](club)

    assert printed.missing == ()
    assert_none_missed(_pages(printed.path), (*KNOWN, "C1"))


def test_no_text_of_a_handout_is_missed(club: Office, pseudo: Pseudo, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("inspector.app.speak", lambda _folder: use_catalogue(pseudo))
    folder = str(club.out_tray.parent)
    keys = [one.key for one in topics(club.rules, System.METRIC)]
    club.book.close()
    for key in keys:
        assert main(["--register", folder, "handout", key]) == 0

    files = sorted(club.out_tray.glob("*.pdf"))
    assert len(files) == len(keys)
    assert_none_missed([page for file in files for page in _pages(file)], KNOWN)
