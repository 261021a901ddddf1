"""Short words for stories about lists that are brought in."""

from collections.abc import Sequence
from pathlib import Path

from inspector.duties.import_list import dry_run, matching_of, read_list, sheet_called
from inspector.duties.importing.corrections import column_called, with_answer, with_meaning
from inspector.duties.office import Office
from inspector.gear.import_list import Asks, Fate, Fates, Matching, RowFate, TableFile

HEADS = "Tag;Kind;WLL (t);Body (mm);Pin (mm)"


def listed(folder: Path, *lines: str, heads: str = HEADS, name: str = "list.csv") -> TableFile:
    """A list with these lines below its headings."""
    path = folder / name
    path.write_text("\n".join((heads, *lines)) + "\n", "utf-8")
    return read_list(path)


def shackle_line(tag: str = "A-1", wll: str = "4.75") -> str:
    """A row of a bow shackle under HEADS."""
    return f"{tag};Bow shackle;{wll};19;22"


def run(office: Office, file: TableFile, answers: Sequence[tuple[str, Asks, str]] = (), **meanings: str) -> Fates:
    """A dry run. answers: column, question and answer; meanings: other meanings of columns, by their letter."""
    matching: Matching = matching_of(office, file)
    sheet = sheet_called(file, matching.sheet)
    for letter, field in meanings.items():
        matching = with_meaning(office, sheet, matching, column_called(matching, letter).at, field)
    for name, about, answer in answers:
        matching = with_answer(matching, column_called(matching, name).at, about, answer)
    return dry_run(office, file, matching)


def fates(found: Fates) -> list[tuple[Fate, str]]:
    """Fate and tag of each row below the headings."""
    return [(one.fate, one.tag) for one in found.rows[found.matching.head :]]


def row(found: Fates, number: int) -> RowFate:
    """The row with this number."""
    return next(one for one in found.rows if one.number == number)
