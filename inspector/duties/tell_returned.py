"""What must be minded of a sheet that came back, in words; the same for window and command."""

from inspector.duties.read_returned import SheetBack
from inspector.language import tr, tr_n


def to_mind(back: SheetBack) -> list[str]:
    """What is not as it should be: pages that did not come, pieces that were read in before."""
    lines = []
    if back.missing:
        said_so = tr_n(
            "Page {pages} did not come: what it asks stands open.",
            "Pages {pages} did not come: what they ask stands open.",
            len(back.missing),
            pages=", ".join(str(number) for number in back.missing),
        )
        lines.append(said_so)
    if back.already:
        lines.append(tr("Read in before, and left as it is: {tags}.", tags=", ".join(back.already)))
    return lines
