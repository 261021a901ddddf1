"""What the officer's evening says of the next trip's rigs, and the command that spends it."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pypdf
import pytest

from inspector.app import main
from inspector.cli import demo
from inspector.cli.demo_rigs import look_at_rigs
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from tests.cli.story import Clock
from tests.conftest import EVENING


def test_the_evening_tells_the_pairs_a_rig_with_its_weakest_link_and_one_refused_at_the_ball(
    sample: Office, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "100")
    (paper,) = look_at_rigs(sample)
    printed = capsys.readouterr().out
    said = " ".join(printed.split())
    assert "V-01 is stuck. Unsound: V-02 by strap, V-04 by strap, V-04 by winch, V-09 by strap." in said
    assert "V-02 is stuck. Sound: V-04 by strap up to 7 km/h" in said and "V-04 by strap, V-04 by winch." in said
    assert "Weakest link KR-02, kinetic rope: stands 1.39 times what it bears, must keep 1.25" in said
    assert "NEVER Never pull like this. On a tow ball, KR-02 and TB-01" in said and "on a lever of" in said
    assert len(printed.splitlines()) < 30, "an evening is short"
    text = " ".join(page.extract_text() for page in pypdf.PdfReader(paper.path).pages)
    assert paper.path.stem == f"G-{sample.book.origin}-0001" and paper.missing == ()
    assert "Rig sheet" in text and "KR-02" in text and "Where to stand" in text
    assert verify_book(sample).faults == ()


def test_the_command_spends_the_evening_and_opens_no_window_where_none_is_wanted(
    sample_once: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The sample register is laid in ready-made; test_wheel.py lets the installed command build it."""

    def laid_in(office: Office) -> None:
        assert office.book.file
        with closing(sqlite3.connect(sample_once)) as made, closing(sqlite3.connect(office.book.file)) as empty:
            made.backup(empty)

    monkeypatch.setattr(demo, "build_sample", laid_in)
    monkeypatch.setattr("inspector.app.datetime", Clock(EVENING))
    monkeypatch.setattr("inspector.app.open_window", lambda *_: pytest.fail("a window was opened"))
    monkeypatch.setattr("inspector.app.has_display", lambda: True)
    assert main(["demo", "--to", str(tmp_path / "evening"), "--no-window"]) == 0
    assert "What was judged tonight" in capsys.readouterr().out
    assert len(list((tmp_path / "evening" / "documents").glob("*.pdf"))) == 3
