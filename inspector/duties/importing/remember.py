"""What somebody said of the columns of a list: it stands with each import, for the next file with the same headings."""

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.importing.words import plain
from inspector.gear.import_list import Asks, Column, Matching
from inspector.register.page import Page
from inspector.register.rows import from_body

IMPORT = "import"  # the sort of document that an import is kept as


class _Read(Struct, frozen=True):
    """Of an import how its list was read."""

    matching: Matching


def recalled(page: Page, proposed: Matching) -> Matching | None:
    """The columns of a new file as the last list with these headings was read; None where such headings never came.

    What this file's own columns prove of signs and orders goes before what an older file was said to mean.
    """
    if not proposed.head:
        return None
    for _, body in page.every_document(IMPORT):
        known = from_body(body, _Read).matching
        if known.head and _headings(known) == _headings(proposed):
            columns = tuple(map(_again, known.columns, proposed.columns))
            return replace(proposed, columns=columns, stated_on=known.stated_on, shared_serials=known.shared_serials)
    return None


def _again(known: Column, new: Column) -> Column:
    decimal = new.decimal if Asks.DECIMAL in new.proven else known.decimal
    order = new.order if Asks.ORDER in new.proven else known.order
    return replace(known, at=new.at, heading=new.heading, decimal=decimal, order=order, proven=new.proven)


def _headings(matching: Matching) -> list[str]:
    return [plain(one.heading) for one in matching.columns]
