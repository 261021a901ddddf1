"""The command that prints every sort of document there is, to look at them."""

from pathlib import Path

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties.show_papers import show_papers
from inspector.language import tr, tr_n


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.pass_obj
def documents(desk: Desk, folder: Path) -> None:
    """Print every sort of document into FOLDER, and its pages as pictures, to look at them.

    They are specimens: printed from a copy of the register, with numbers that are never issued; only what was printed
    once for all, as a voucher, comes out again as it was. The register itself keeps and numbers nothing.
    """
    shown = show_papers(desk.office(), folder)
    for one in shown:
        for paper in one.papers:
            say.paper(paper)
        if one.why_none:
            say.paragraph(tr("{title}: none. {why}", title=one.title, why=one.why_none))
    count = sum(len(one.pictures) for one in shown)
    say.paragraph(tr_n("{count} page as a picture beside them.", "{count} pages as pictures beside them.", count))
