"""Files are put to a piece, an incident or a trip, kept once, told in the history, and taken out as they were kept."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspector.duties.attach import attach, attachments, safe_stem, take_out
from inspector.duties.book_in import book_in
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.attachment import PaperKind
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.trip import Ground, Trip
from inspector.refused import Refused
from tests.duties.gear import shackle, strap
from tests.paper.test_photo import PDF, picture

CERTIFICATE = PaperKind.CERTIFICATE


def test_a_certificate_is_put_to_a_piece_told_and_taken_out_byte_for_byte(office: Office, tmp_path: Path) -> None:
    book_in(office, shackle())
    kept = attach(office, "sh-1", "Cert 19mm.pdf", PDF, CERTIFICATE, note="from the box")
    assert (kept.facts.name, kept.facts.media_type) == ("Cert 19mm.pdf", "application/pdf")
    assert kept.facts.sha256 == kept.facts.original_sha256 and kept.facts.by == office.officer.id
    row = next(one for one in history_of(office, "SH-1") if one.what == "File")
    assert row.text == "certificate “Cert 19mm.pdf”. from the box" and row.by == "Ada Officer"
    (place,) = take_out(office, "SH-1", tmp_path / "out")
    assert place.name == "Cert 19mm.pdf" and place.read_bytes() == PDF
    with pytest.raises(Refused, match="there already"):
        take_out(office, "SH-1", tmp_path / "out")
    assert verify_book(office).faults == ()


def test_the_same_bytes_are_kept_once_for_two_pieces_and_refused_twice_for_one(office: Office) -> None:
    book_in(office, shackle())
    book_in(office, strap())
    attach(office, "SH-1", "a.pdf", PDF, CERTIFICATE)
    attach(office, "KS-1", "b.pdf", PDF, PaperKind.RECEIPT)
    with pytest.raises(Refused, match="there already, as"):
        attach(office, "SH-1", "c.pdf", PDF, CERTIFICATE)
    assert [one.facts.name for one in attachments(office, "KS-1")] == ["b.pdf"]
    with office.book.reading() as page:
        assert {one.facts.sha256 for tag in ("SH-1", "KS-1") for one in page.attachments(page.item(tag).id)} == {
            attachments(office, "SH-1")[0].facts.sha256
        }
    assert verify_book(office).faults == ()


def test_a_photo_is_kept_smaller_and_both_sums_are_told(office: Office) -> None:
    book_in(office, shackle())
    kept = attach(office, "SH-1", "IMG_1.JPEG", picture("JPEG", 3000, 100), PaperKind.PHOTO).facts
    assert kept.name == "IMG_1.jpg" and kept.sha256 != kept.original_sha256
    with office.book.reading() as page:
        assert len(page.attachment_bytes(kept.sha256)) == kept.size_bytes
    with pytest.raises(Refused, match="there already"):
        attach(office, "SH-1", "again.jpg", picture("JPEG", 3000, 100), PaperKind.PHOTO)


def test_files_are_put_to_incidents_and_trips_by_reference(office: Office) -> None:
    day = office.today
    plan_trip(office, Trip("", "T-1", "Dunes", "Spit", Ground.BEACH, day, day, "Ada Officer"))
    with office.book.page() as page:
        page.add_incident("I-1", NewIncident(day, next(iter(Gravity)), "beach", "a pin broke", ()))
        page.enter("report incident", by=office.officer.id, at=office.now, facts={"ref": "I-1"})
    for about in ("t-1", "I-1"):
        attach(office, about, "told.txt", b"as it was", PaperKind.STATEMENT)
        assert [one.facts.name for one in attachments(office, about)] == ["told.txt"]
    with pytest.raises(Refused, match="about"):
        attach(office, "X-1", "told.txt", b"as it was", PaperKind.STATEMENT)
    with pytest.raises(Refused, match="files"):
        book_in(office, shackle())
        take_out(office, "SH-1", Path())


def test_two_files_of_one_name_are_taken_out_beside_each_other(office: Office, tmp_path: Path) -> None:
    book_in(office, shackle())
    for text in (b"one", b"two", b"three"):
        attach(office, "SH-1", "Note.txt", text, PaperKind.OTHER)
    places = take_out(office, "SH-1", tmp_path)
    assert [one.name for one in places] == ["Note.txt", "Note (2).txt", "Note (3).txt"]
    assert [one.read_bytes() for one in places] == [b"one", b"two", b"three"]


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.text(max_size=120) | st.sampled_from(["../../x.pdf", "C:\\a\\con.txt", "/etc/p", ".bashrc", "nul", "a/..", "…"])
)
def test_whatever_a_file_is_called_it_lands_in_the_folder(tmp_path_factory: pytest.TempPathFactory, name: str) -> None:
    folder = tmp_path_factory.mktemp("out")
    stem = safe_stem(name)
    place = folder / f"{stem}.txt"
    place.write_bytes(b"x")
    assert place.resolve().parent == folder.resolve() and stem.isprintable()
    assert stem.lower() not in {"con", "nul"} and stem[0] not in " ." and stem[-1] not in " ."
