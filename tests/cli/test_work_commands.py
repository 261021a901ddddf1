"""Repairs, tags, labels, owners, values and files, as the officer types them."""

from pathlib import Path

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk
from tests.paper.test_photo import PDF

__all__ = ["desk"]

PIN = ["--work", "pin_and_bow", "--done-by", "Ada Officer", "--part", "pin 22 mm", "--size", "pin_diameter=22 mm"]
WHY = ["--why", "the label was torn"]


def booked(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES, "--maker-mark", "QVO")
    assert "SH-1  Fit" in desk.type("inspect", "SH-1", *GOOD)


def test_a_pin_is_replaced_and_the_shackle_comes_back_by_an_inspection(desk: Desk) -> None:
    booked(desk)
    refused = desk.type("repair", "SH-1", "--work", "welded", "--done-by", "a smith", code=2)
    assert "30 %" in refused and "Never do it" in refused
    assert "maker of the pin" in desk.type("repair", "SH-1", *PIN, "--own", "--maker", "RTK", code=2)
    assert "SH-1  Hold" in desk.type("repair", "SH-1", *PIN, "--own", "--maker", "qvo")
    assert "another pin put in; pin 22 mm" in " ".join(desk.type("show", "SH-1").split())
    assert "SH-1  Fit" in desk.type("inspect", "SH-1", *GOOD)


def test_a_strange_pin_takes_the_rating(desk: Desk) -> None:
    booked(desk)
    said = " ".join(desk.type("repair", "SH-1", *PIN, "--rating", "3.25 t", "--factor", "5").split())
    assert "SH-1 Hold" in said
    assert "3.25 t" in desk.type("list")


def test_a_tag_a_label_and_an_owner_are_written_down_anew(desk: Desk) -> None:
    booked(desk)
    assert "QX-9  Fit" in desk.type("retag", "SH-1", "QX-9", *WHY)
    assert "QX-9 · Bow shackle" in desk.type("show", "SH-1")
    assert "QX-9  Hold" in desk.type("label-lost", "SH-1", *WHY)
    anew = ["label", "QX-9", "--basis", "wll", "--factor", "5", "--stated-on", "piece", *WHY]
    assert "second name" in desk.type(*anew, "--rating", "6.5 t", code=2)
    assert "QX-9  Hold" in desk.type(*anew, "--rating", "4.75 t")
    assert "QX-9  Fit" in desk.type("inspect", "QX-9", *GOOD)
    desk.type("owner", "QX-9", "Harbour Club", "--why", "given away")
    assert "Harbour Club" in desk.type("list")
    assert "Nothing was changed" in desk.type("verify")


def test_values_are_listed_and_what_nobody_knows_is_told(desk: Desk) -> None:
    booked(desk)
    desk.type("book", "SH-2", *SHACKLE, *SIZES)
    assert "no amount" in desk.type("value", "SH-1", "40", code=2)
    assert "SH-1: 40 EUR" in desk.type("value", "SH-1", "40 EUR")
    listed = desk.type("value")
    assert "2 pieces, 40.00 EUR" in listed and "Too low: nobody wrote down the value of SH-2." in listed
    assert "value not known" in desk.type("value", "SH-1", "unknown")
    assert "2 pieces, no value known" in desk.type("value")


def test_files_are_put_in_listed_and_taken_out(desk: Desk, tmp_path: Path) -> None:
    booked(desk)
    (tmp_path / "cert.pdf").write_bytes(PDF)
    said = desk.type("attach", "SH-1", str(tmp_path / "cert.pdf"), "--kind", "certificate", "--note", "from the box")
    assert "cert.pdf is kept" in said
    assert "cannot be read" in desk.type("attach", "SH-1", str(tmp_path / "gone.pdf"), code=2)
    assert "from the box" in desk.type("attachments", "SH-1")
    assert "certificate “cert.pdf”" in desk.type("show", "SH-1")
    desk.type("attachments", "SH-1", "--to", str(tmp_path / "out"))
    assert (tmp_path / "out" / "cert.pdf").read_bytes() == PDF
