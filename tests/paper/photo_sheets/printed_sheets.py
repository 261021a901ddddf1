"""Sheets as they are printed, on both papers, with few and many pieces; the pages of them that have boxes."""

from msgspec.structs import replace

from inspector.gear.papers import GoingPiece, TickLine, TripSheet
from inspector.paper.inspection_sheet import inspection_sheet
from inspector.paper.page_style import PageSize
from tests.paper.conftest import STAYING, VEHICLES, imprint, shackle, strap
from tests.paper.photo_sheets.clean_sheet import CleanSheet, drawn_sheet, pictures_of

_LONG = TickLine(
    "Rope from end to end between the fingers: hard places, flattened places, melted yarn, a core that can be felt "
    "through the cover, stitches of the eye that have drawn tight, and any place where two of these come together?"
)


def printed_sheets() -> list[CleanSheet]:
    """A usual sheet, one in Letter, and one of few pieces with long questions."""
    short = _sheet("A-2026-0151", ("S-041", "K-042"))
    long = replace(short, going=tuple(replace(one, ticks=(*one.ticks, _LONG)) for one in short.going))
    return [
        _clean(_sheet("A-2026-0149", ("S-021", "S-022", "K-031", "K-032", "S-023", "K-033")), PageSize.A4),
        _clean(_sheet("A-2026-0150", ("K-031", "S-021", "K-032", "S-024")), PageSize.LETTER),
        _clean(long, PageSize.A4),
    ]


def all_sheets() -> list[CleanSheet]:
    """Those photos are made of: printed ones, and as many drawn with the most boxes that a page holds."""
    return [*printed_sheets(), drawn_sheet(1, 1), drawn_sheet(2, 2), drawn_sheet(4, 2)]


def _sheet(number: str, tags: tuple[str, ...]) -> TripSheet:
    going = tuple(_measured(tag) if tag.startswith("K") else strap(tag) for tag in tags)
    said = imprint("Pre-trip inspection sheet", number)
    return TripSheet(said, "Winter beach run", "Long Spit", "20 June 2026", "Trip leader", VEHICLES, going, STAYING)


def _measured(tag: str) -> GoingPiece:
    piece = shackle(tag)
    return replace(piece, ticks=tuple(replace(one, units=("mm", "in") if one.limit else ()) for one in piece.ticks))


def _clean(sheet: TripSheet, page: PageSize) -> CleanSheet:
    printed = inspection_sheet(sheet, page)
    assert printed.layout is not None
    pairs = tuple(
        tuple((good.spot, fault.spot) for good, fault in zip(one.boxes[::2], one.boxes[1::2], strict=True))
        for one in printed.layout.pages
    )
    return CleanSheet(printed.layout, pictures_of(printed.pdf), pairs)
