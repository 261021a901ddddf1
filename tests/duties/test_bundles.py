"""The bundle of an incident: whoever inquires can prove that nothing in it was changed, and so can the register."""

import hashlib
import json
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from inspector.duties.bundle_incident import SUMS, Bundle, bundle_incident, check_bundle
from inspector.duties.evidence_paper import print_evidence
from inspector.duties.keep_incident import add_statement
from inspector.duties.office import Office
from inspector.duties.rig_files import read_rig
from inspector.duties.verify_book import verify_book
from inspector.gear.attachment import NewAttachment, PaperKind
from inspector.refused import Refused
from tests.duties.incidents import beach, reported

PHOTO = b"not a picture, but bytes"


def attached(office: Office, ref: str, name: str = "../opened pin.jpg") -> None:
    """A file that belongs to the incident."""
    sha256 = hashlib.sha256(PHOTO).hexdigest()
    facts = NewAttachment(
        office.today, PaperKind.PHOTO, name, "image/jpeg", len(PHOTO), sha256, sha256, office.officer.id
    )
    with office.book.page() as page:
        incident = next(one for one in page.incidents() if one.ref == ref)
        page.add_attachment(incident.id, facts, PHOTO)
        page.enter("attach", by=office.officer.id, at=office.now, facts={"ref": ref})


def bundled(office: Office, folder: Path) -> Bundle:
    """The beach accident with a photo, bundled."""
    beach(office)
    ref = reported(office).incident.ref
    attached(office, ref)
    add_statement(office, ref, "Ned Watcher", "I saw it.")
    return bundle_incident(office, ref, folder / "bundle")


def test_a_bundle_holds_list_report_rig_verdicts_and_files(office: Office, tmp_path: Path) -> None:
    made = bundled(office, tmp_path)
    assert set(made.files) == {
        "evidence-list.pdf", "evidence-list-number.txt", "report.json", "rig.toml", "attachments/01-_opened_pin.jpg",
        "verdicts/01-SH-1.txt", "verdicts/02-KS-1.txt", "verdicts/03-SH-2.txt", "verdicts/04-RP-1.txt",
    }  # fmt: skip
    report = json.loads((made.folder / "report.json").read_text(encoding="utf-8"))
    assert report["report"]["place"] == "Long Sand, north end"
    assert report["report"]["rig_result"]["weakest"]
    assert list(report["people"].values()) == ["Ada Officer"], "nobody who has no part in it"
    assert any("I saw it." in text for text in report["added_in_words"])
    assert read_rig((made.folder / "rig.toml").read_text(encoding="utf-8")).name == "Beach snatch"
    assert "Fit" in (made.folder / "verdicts" / "01-SH-1.txt").read_text(encoding="utf-8")
    assert (made.folder / "attachments" / "01-_opened_pin.jpg").read_bytes() == PHOTO
    assert (made.folder / "evidence-list.pdf").read_bytes().startswith(b"%PDF")
    assert check_bundle(office, made.folder) == ()
    assert verify_book(office).faults == ()


@pytest.mark.skipif(shutil.which("sha256sum") is None, reason="this machine has no sha256sum")
def test_the_checksum_file_is_one_that_sha256sum_reads(office: Office, tmp_path: Path) -> None:
    made = bundled(office, tmp_path)
    command = ["sha256sum", "-c", "--strict", SUMS]
    proved = subprocess.run(command, cwd=made.folder, capture_output=True, text=True, check=False)
    assert proved.returncode == 0 and proved.stdout.count(": OK") == len(made.files)
    (made.folder / "report.json").write_text("{}", encoding="utf-8")
    assert subprocess.run(command, cwd=made.folder, capture_output=True, check=False).returncode == 1


def _forged(folder: Path) -> None:
    """A verdict changed and the checksum file made to fit it."""
    target, sums = folder / "verdicts" / "03-SH-2.txt", folder / SUMS
    before = hashlib.sha256(target.read_bytes()).hexdigest()
    target.write_text("SH-2\nFit\n", encoding="utf-8")
    after = hashlib.sha256(target.read_bytes()).hexdigest()
    sums.write_text(sums.read_text(encoding="utf-8").replace(before, after), encoding="utf-8")


TAMPERS: dict[str, tuple[Callable[[Path], object], str]] = {
    "a byte changed": (lambda folder: (folder / "rig.toml").write_bytes(b"x"), "rig.toml"),
    "a file taken out": (lambda folder: (folder / "verdicts" / "01-SH-1.txt").unlink(), "verdicts/01-SH-1.txt"),
    "a file put in": (lambda folder: (folder / "verdicts" / "SH-3.txt").write_bytes(b"Fit"), "verdicts/SH-3.txt"),
    "checksums made to fit": (_forged, SUMS),
    "no checksums": (lambda folder: (folder / SUMS).unlink(), SUMS),
}


@pytest.mark.parametrize(("tamper", "where"), TAMPERS.values(), ids=TAMPERS.keys())
def test_what_was_changed_is_found(
    office: Office, tmp_path: Path, tamper: Callable[[Path], object], where: str
) -> None:
    made = bundled(office, tmp_path)
    tamper(made.folder)
    assert [one.where for one in check_bundle(office, made.folder)] == [where]


def test_a_checksum_file_that_points_out_of_the_bundle_is_not_followed(office: Office, tmp_path: Path) -> None:
    made = bundled(office, tmp_path)
    sums = made.folder / SUMS
    sums.write_text(sums.read_text(encoding="utf-8") + f"{'0' * 64}  ../register.db\n", encoding="utf-8")
    assert "outside" in next(one.why for one in check_bundle(office, made.folder) if one.where == "../register.db")


def test_a_bundle_is_never_mixed_with_other_files(office: Office, tmp_path: Path) -> None:
    made = bundled(office, tmp_path)
    before = verify_book(office)
    with pytest.raises(Refused, match="is not empty"):
        bundle_incident(office, reported(office, broken=()).incident.ref, made.folder)
    assert verify_book(office).line_count == before.line_count + 1


def test_a_list_printed_again_says_what_it_said(office: Office, tmp_path: Path) -> None:
    beach(office)
    ref = reported(office).incident.ref
    with pytest.raises(Refused, match="was printed yet"):
        print_evidence(office, ref, again=True)
    first = print_evidence(office, ref)
    said = first.path.read_bytes()
    add_statement(office, ref, "Ned Watcher", "I saw it.")
    again = print_evidence(office, ref, again=True)
    assert (again.path, again.path.read_bytes()) == (first.path, said)
    assert print_evidence(office, ref).path != first.path
