"""Print every sort of document into a folder, with its pages as pictures, to look at them.

They are printed from a copy of the register that is thrown away: the officer's own is not written to, gives away no
number and keeps none of them. The copy has a name of its own, so no new number is ever one of his, and the club's name
on each new paper says that it is a specimen. A paper that is kept once for all, as a voucher, comes out as it was.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.club_settings import change_club_settings, club_settings
from inspector.duties.named_files import read_bytes, write_new_bytes
from inspector.duties.office import Office, told_of
from inspector.duties.out_tray import Paper
from inspector.duties.sorts_of_papers import SORTS, Sort
from inspector.language import tr
from inspector.paper.pages import page_png, page_sizes
from inspector.refused import Refused
from inspector.register import backup
from inspector.register.book import open_book
from inspector.register.where_it_lies import REGISTER_FILE

_DPI = 110.0  # enough to read the smallest type


class Shown(Struct, frozen=True):
    """A sort of document and its files; without papers, why there is none. pictures: of every page, in order."""

    title: str
    papers: tuple[Paper, ...] = ()
    pictures: tuple[Path, ...] = ()
    why_none: str = ""


def show_papers(office: Office, folder: Path, dpi: float = _DPI) -> tuple[Shown, ...]:
    """Print them all into a folder that is empty or not there yet. What the register has nothing for is told.

    dpi: how fine the pictures are, in dots to the inch.
    """
    _check_empty(folder)
    with _on_a_copy(office) as specimen:
        return tuple(_shown(specimen, one, folder, dpi) for one in told_of(office, SORTS))


def _check_empty(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
        full = any(folder.iterdir())
    except OSError as error:
        why = tr("{place} cannot be written ({why}).", place=folder, why=error.strerror)
        raise Refused(tr("folder"), why, tr("Choose a folder you may write to.")) from error
    if full:
        why = tr("{folder} is not empty.", folder=folder)
        raise Refused(tr("folder"), why, tr("Name a folder that is empty or not there yet."))


@contextmanager
def _on_a_copy(office: Office) -> Iterator[Office]:
    """The same office on a copy of its register, which is gone afterwards."""
    with TemporaryDirectory() as own:
        made = backup.back_up(office.book, Path(own) / "copy", office.today)
        file = Path(own) / REGISTER_FILE
        backup.restore(made.file, file)
        book = open_book(file)
        try:
            yield _marked(replace(office, book=book, out_tray=Path(own) / "documents"))
        finally:
            book.close()


def _marked(office: Office) -> Office:
    wanted = club_settings(office)
    return change_club_settings(office, replace(wanted, club=tr("{club} (specimen, not issued)", club=wanted.club)))


def _shown(office: Office, sort: Sort, folder: Path, dpi: float) -> Shown:
    try:
        printed = list(sort.printed(office))
    except Refused as refusal:
        return Shown(tr(sort.title), why_none=refusal.why)
    papers = [_laid_out(one, folder / _file_name(sort, number)) for number, one in enumerate(printed, 1)]
    return Shown(tr(sort.title), tuple(papers), tuple(picture for one in papers for picture in _pictures(one, dpi)))


def _file_name(sort: Sort, number: int) -> str:
    return f"{sort.key}.pdf" if number == 1 else f"{sort.key}-{number}.pdf"


def _laid_out(paper: Paper, file: Path) -> Paper:
    write_new_bytes(file, read_bytes(paper.path))
    return Paper(file, paper.missing)


def _pictures(paper: Paper, dpi: float) -> Iterator[Path]:
    pdf = read_bytes(paper.path)
    for number in range(len(page_sizes(pdf))):
        file = paper.path.with_name(f"{paper.path.stem}.page-{number + 1}.png")
        write_new_bytes(file, page_png(pdf, number, dpi))
        yield file
