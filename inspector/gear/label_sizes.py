"""The sheets of labels that shops have, in millimetres. Every grid stands in the middle of its sheet."""

from msgspec import Struct

from inspector.language import tr
from inspector.units import Dimension, show

_INCH = 25.4  # the sheets of one half of the world are cut in inches


class LabelSize(Struct, frozen=True):
    """A sheet of labels. key: how it is asked for; paper: "a4" or "letter", empty for whatever the club prints on.

    gap_mm: between labels beside one another; below one another they touch. inches: its measures are told in inches.
    """

    key: str
    paper: str
    columns: int
    rows: int
    width_mm: float
    height_mm: float
    gap_mm: float = 0.0
    inches: str = ""

    @property
    def count(self) -> int:
        """Labels on a sheet."""
        return self.columns * self.rows

    @property
    def is_cut_apart(self) -> bool:
        """Whether it is printed on plain paper or card and cut apart, with a hole to tie it by."""
        return not self.paper


CUT_TAG = LabelSize("tag", "", 2, 3, 89.0, 70.0)
LABEL_SIZES = (
    CUT_TAG,
    LabelSize("63x34", "a4", 3, 8, 63.5, 33.9, 2.5),
    LabelSize("64x38", "a4", 3, 7, 63.5, 38.1, 2.5),
    LabelSize("70x37", "a4", 3, 8, 70.0, 37.0),
    LabelSize("99x38", "a4", 2, 7, 99.1, 38.1, 2.5),
    LabelSize("105x57", "a4", 2, 5, 105.0, 57.0),
    LabelSize("99x68", "a4", 2, 4, 99.1, 67.7, 2.5),
    LabelSize("2.6x1in", "letter", 3, 10, 2.625 * _INCH, 1.0 * _INCH, 0.125 * _INCH, "2 5/8 × 1 in"),
    LabelSize("4x1.3in", "letter", 2, 7, 4.0 * _INCH, 4.0 / 3.0 * _INCH, 0.1875 * _INCH, "4 × 1 1/3 in"),
    LabelSize("4x2in", "letter", 2, 5, 4.0 * _INCH, 2.0 * _INCH, 0.1875 * _INCH, "4 × 2 in"),
    LabelSize("4x3.3in", "letter", 2, 3, 4.0 * _INCH, 10.0 / 3.0 * _INCH, 0.1875 * _INCH, "4 × 3 1/3 in"),
)


def size_words(size: LabelSize) -> str:
    """What a sheet of this size is, to choose it by."""
    if size.is_cut_apart:
        return tr("large tags to cut apart, {count} to a page of plain paper or card", count=size.count)
    paper = {"a4": tr("A4"), "letter": tr("US Letter")}[size.paper]
    grid = {"columns": size.columns, "rows": size.rows, "count": size.count}
    return tr("{measures}, {columns} × {rows} = {count} on {paper}", measures=measure_words(size), paper=paper, **grid)


def measure_words(size: LabelSize) -> str:
    """Width and height of a label."""
    wide, high = (show(one / 1000, Dimension.LENGTH) for one in (size.width_mm, size.height_mm))
    return size.inches or tr("{width} × {height}", width=wide, height=high)
