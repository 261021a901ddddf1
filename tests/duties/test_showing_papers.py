"""Every sort of document is printed from a copy, with its pages as pictures; the register itself is left as it is."""

import ast
import importlib
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader

from inspector.duties import sorts_of_papers
from inspector.duties.office import Office
from inspector.duties.show_papers import show_papers
from inspector.duties.sorts_of_papers import SORTS
from inspector.refused import Refused
from tests.house.deeds import HERE


def _state(office: Office) -> tuple[str, bytes]:
    with office.book.reading() as page:
        return page.head(), b"".join(file.read_bytes() for file in sorted(office.out_tray.rglob("*")) if file.is_file())


def test_every_sort_is_printed_from_the_sample_and_nothing_is_entered(sample: Office, tmp_path: Path) -> None:
    before, folder = _state(sample), tmp_path / "shown"
    shown = show_papers(sample, folder, dpi=20)
    assert [(one.title, one.why_none) for one in shown if one.why_none] == []
    assert len(shown) == len(SORTS) and _state(sample) == before
    files = [paper.path for one in shown for paper in one.papers]
    assert {file.stem for file in files} >= {sort.key for sort in SORTS}
    for file in files:
        _check_shown(file, sample.book.origin)
    assert {file for one in shown for file in one.pictures} | set(files) == set(folder.iterdir())
    wide, high = Image.open(BytesIO(next(folder.glob("*.png")).read_bytes())).size
    assert 1.3 < high / wide < 1.5


def _check_shown(file: Path, origin: str) -> None:
    """A picture of each page; a number that the register may yet issue stands on none but a specimen."""
    read = PdfReader(file)
    assert len(list(file.parent.glob(f"{file.stem}.page-*.png"))) == len(read.pages) > 0
    assert read.metadata is not None
    issued = f"-{origin}-" in str(read.metadata.title)
    assert issued is ("(specimen, not issued)" not in str(read.metadata.author)), file.name
    assert not issued or file.stem.startswith("voucher"), "only what was printed once for all comes out as it was"


def test_what_there_is_nothing_for_is_told(office: Office, tmp_path: Path) -> None:
    told = {one.title: one.why_none for one in show_papers(office, tmp_path / "shown", dpi=20)}
    assert told["Retirement notice"] == "No piece is retired." and told["Rig sheet"] == "No rig is kept."
    assert told["Handout"] == ""


def test_a_folder_with_anything_in_it_is_left_alone(office: Office, tmp_path: Path) -> None:
    (tmp_path / "mine.txt").write_text("mine")
    with pytest.raises(Refused, match="not empty"):
        show_papers(office, tmp_path)


def layouts_in(path: Path) -> set[str]:
    """The names that a duty imports from the rooms where documents are laid out."""
    module = ast.parse(path.read_text("utf-8"))
    imports = [one for one in ast.walk(module) if isinstance(one, ast.ImportFrom)]
    wanted = [one for one in imports if (one.module or "").startswith("inspector.paper.")]
    names = {(str(one.module), alias.name) for one in wanted for alias in one.names}
    return {name for room, name in names if _lays_out(getattr(importlib.import_module(room), name))}


def _lays_out(one: object) -> bool:
    kind = getattr(one, "__annotations__", {}).get("return")
    return getattr(kind, "__name__", "") == "Printed"


def test_no_document_that_a_duty_prints_is_left_out() -> None:
    duties = HERE / "inspector" / "duties"
    every = {name for path in duties.glob("*.py") for name in layouts_in(path)}
    module = ast.parse(Path(sorts_of_papers.__file__).read_text("utf-8"))
    imported = {(one.module or "").rpartition(".")[2] for one in ast.walk(module) if isinstance(one, ast.ImportFrom)}
    files = [duties / f"{name}.py" for name in imported if (duties / f"{name}.py").exists()]
    assert len(every) >= 10
    assert {name for path in files for name in layouts_in(path)} == every
