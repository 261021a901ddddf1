"""Reading whole tables a few rows at a time: a server hands out no more than these, however many there are."""

from sqlalchemy import LargeBinary, Select, Table, select

AT_ONCE, _FILES = 200, 2  # rows in memory at a time; files may be large


def few_at_a_time(table: Table) -> Select[tuple[object, ...]]:
    """Every row of a table; to be read to its end, or the connection let go, before anything is written."""
    has_files = any(isinstance(column.type, LargeBinary) for column in table.c)
    return select(table).execution_options(yield_per=_FILES if has_files else AT_ONCE)
