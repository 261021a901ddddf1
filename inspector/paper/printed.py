"""What comes out of the press."""

from msgspec import Struct

from inspector.gear.sheet_layout import SheetLayout


class Printed(Struct, frozen=True):
    """A finished PDF. missing_glyphs: the signs the packaged type lacks, each once, printed as an empty square.

    layout: where the boxes of a sheet that is read back lie; None for other documents.
    """

    pdf: bytes
    page_count: int
    missing_glyphs: tuple[str, ...]
    layout: SheetLayout | None = None
