"""How old the gear is: a bar for each span of years."""

from collections.abc import Sequence

from inspector.drawings.bar_rows import Bar, Row, rows
from inspector.drawings.shapes import Drawing, Ink
from inspector.gear.register_report import AgeCount
from inspector.language import tr

_TOP_MM = 0.5


def age_bars(ages: Sequence[AgeCount], width_mm: float) -> Drawing:
    """The picture, width_mm wide. The last span is what nobody knows the age of, and its bar is hollow."""
    most = max((one.count for one in ages), default=0) or 1
    given = [Row(one.age, str(one.count), _bars(one.count / most, known=one is not ages[-1])) for one in ages]
    shapes, foot = rows(given, _TOP_MM, width_mm)
    described = "; ".join(tr("{age}: {count}", age=one.age, count=one.count) for one in ages)
    return Drawing(width_mm, foot, tuple(shapes), tr("How old it is"), described)


def _bars(share: float, *, known: bool) -> tuple[Bar, ...]:
    fill = Ink.STEEL if known else None
    return (Bar(0.0, share, fill, Ink.INK, dashed=not known),) if share else ()
