"""The part of the first page that looks years ahead: which pieces time alone would retire."""

from collections.abc import Sequence

from PySide6.QtWidgets import QWidget

from inspector.desk.look import Type
from inspector.desk.needs.lines import in_folds
from inspector.desk.needs.parts import Ways
from inspector.desk.needs.retire_chart import RetireChart
from inspector.desk.plain import column, said
from inspector.desk.record_parts import section
from inspector.duties.forecast_ends import ENDS_WITHIN_YEARS, horizon_after
from inspector.gear.needs import Ending, EndsBy, Needs
from inspector.language import tr

_ROWS_AT_ONCE = 10


def ends_part(needs: Needs, ways: Ways) -> QWidget:
    """The time line, its key, and what it rests on."""
    title = tr("What time will retire, in the next {years} years", years=ENDS_WITHIN_YEARS)
    if not needs.endings:
        text = tr("No stored verdict tells of a piece that time alone would retire by then.")
        return section(title, said(text), said(_rests_on(), Type.SMALL, faint=True))
    charts = in_folds(needs.endings, lambda some: _chart(some, needs, ways), _ROWS_AT_ONCE)
    return section(title, charts, said(_key(needs.endings), Type.SMALL, faint=True))


def _chart(some: Sequence[Ending], needs: Needs, ways: Ways) -> QWidget:
    chart = RetireChart(some, needs.on, horizon_after(needs.on), ways.look)
    chart.opened.connect(ways.opens)
    return column([chart, chart.told])


def _key(ends: Sequence[Ending]) -> str:
    """What the signs mean, those that are drawn."""
    walls = [one for one in ends if one.by is EndsBy.WALL]
    signs = [
        (any(not one.estimated for one in walls), tr("Full dot: a wall that was read, thinning as before.")),
        (any(one.estimated for one in walls), tr("Hollow dot: an estimate, no reading stands behind it.")),
        (any(one.by is EndsBy.AGE for one in ends), tr("Square: its age.")),
        (
            any(one.earliest for one in ends),
            tr("Bar: the days that the readings allow, dashed without a last."),
        ),
    ]
    return " ".join([*(text for drawn, text in signs if drawn), _rests_on()])


def _rests_on() -> str:
    return tr("From the stored verdicts; a forecast holds nothing back, and no piece is safe until its day.")
