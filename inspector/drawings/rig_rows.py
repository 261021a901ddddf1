"""A rig cut into rows that fit a page: where columns and lanes stand in millimetres, and what runs on between rows."""

from collections.abc import Sequence

from msgspec import Struct

from inspector.drawings.rig_grid import Cell, Grid, Tie

_MOST_COLUMNS = 7
_LEAST_COLUMNS = 5
PAD_MM = 3.0  # at both ends of a row, for lines that go on in another row


class Rows(Struct, frozen=True):
    """How the columns of a grid are dealt out. column_mm: width of a column."""

    per_row: int
    count: int
    column_mm: float

    def row_of(self, column: int) -> int:
        """The row that a column stands in."""
        return column // self.per_row

    def left_mm(self, column: int) -> float:
        """The left edge of a column in its row."""
        return PAD_MM + (column % self.per_row) * self.column_mm

    def middle_mm(self, column: int) -> float:
        """The middle of a column in its row."""
        return self.left_mm(column) + self.column_mm / 2


class Level(Struct, frozen=True):
    """A level piece of a tie in one row: its lane, from one place to another, and whether it goes on beyond them."""

    row: int
    lane: int
    start_mm: float
    end_mm: float
    comes_in: bool = False
    goes_on: bool = False


class Upright(Struct, frozen=True):
    """The piece of a tie that leads from one lane to another, at a place in a row, fork_mm short of the upper line."""

    row: int
    at_mm: float
    from_lane: int
    to_lane: int
    fork_mm: float


class Course(Struct, frozen=True):
    """How a tie runs, and where its joint is marked: row, lane and place."""

    levels: tuple[Level, ...]
    upright: Upright | None
    mark: tuple[int, int, float]


def rows_of(grid: Grid, width_mm: float) -> Rows:
    """As few rows as hold the columns, all of about the same length."""
    count = -(-grid.column_count // _MOST_COLUMNS)
    per_row = -(-grid.column_count // count)
    return Rows(per_row, count, (width_mm - 2 * PAD_MM) / max(per_row, _LEAST_COLUMNS))


def course_of(tie: Tie, rows: Rows, fork_mm: float = 0.0) -> Course:
    """Level along the lower of the two lanes, upright beside the cell in the upper one; fork_mm: short of its line."""
    left, right = tie.left, tie.right
    lane = max(left.lane, right.lane)
    levels = _levels(lane, left.column + 1, right.column, rows)
    if left.lane == right.lane:
        return Course(levels, None, _mark(lane, left, right, rows))
    beside = left if left.lane < right.lane else right
    at_mm = rows.left_mm(beside.column) + (rows.column_mm if beside is left else 0.0)
    row = rows.row_of(beside.column)
    upright = Upright(row, at_mm, left.lane, right.lane, fork_mm)
    other = right if beside is left else left
    edge_mm = rows.left_mm(other.column) + (0.0 if other is right else rows.column_mm)
    return Course(levels, upright, (rows.row_of(other.column), other.lane, edge_mm))


def _mark(lane: int, left: Cell, right: Cell, rows: Rows) -> tuple[int, int, float]:
    """Between neighbours; at the right one where the line between them is stretched."""
    if right.column - left.column <= 1:
        return rows.row_of(left.column), lane, rows.left_mm(left.column) + rows.column_mm
    return rows.row_of(right.column), lane, rows.left_mm(right.column)


def _levels(lane: int, start: int, end: int, rows: Rows) -> tuple[Level, ...]:
    """Through the columns start to end - 1, row by row; a row's end between two neighbours is crossed too."""
    first_row, last_row = rows.row_of(start - 1), rows.row_of(end)
    found = []
    for row in range(first_row, last_row + 1):
        from_column, to_column = max(start, row * rows.per_row), min(end, (row + 1) * rows.per_row)
        start_mm = PAD_MM + (from_column - row * rows.per_row) * rows.column_mm
        end_mm = PAD_MM + (to_column - row * rows.per_row) * rows.column_mm
        found.append(Level(row, lane, start_mm, end_mm, row > first_row, row < last_row))
    return tuple(one for one in found if one.end_mm > one.start_mm or one.comes_in or one.goes_on)


def lanes_in(row: int, grid: Grid, courses: Sequence[Course], rows: Rows) -> int:
    """How many lanes a row needs."""
    cells = [cell.lane for cell in grid.cells if rows.row_of(cell.column) == row]
    levels = [level.lane for course in courses for level in course.levels if level.row == row]
    uprights = [
        max(one.upright.from_lane, one.upright.to_lane) for one in courses if one.upright and one.upright.row == row
    ]
    return max([*cells, *levels, *uprights, 0]) + 1
