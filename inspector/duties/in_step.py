"""Whether somebody else wrote into the register: another window, another program, another machine."""

from msgspec import Struct

from inspector.duties.club_settings import as_the_club_wants
from inspector.duties.office import Office
from inspector.duties.rulebook_in_force import in_force


class Stand(Struct, frozen=True):
    """How far the ledger is. line: the number of its last line; others: whether another program wrote since."""

    line: int
    others: bool = False


def as_it_is(office: Office) -> Office:
    """The office by the rulebook and the club's wants that are in force now, whoever changed them."""
    return as_the_club_wants(in_force(office))


def begun(office: Office) -> Stand:
    """How far the ledger is now."""
    with office.book.reading() as page:
        return Stand(page.line_number())


def gone_on(office: Office, before: Stand) -> Stand:
    """How far it is since. A line of this program counts as its own once its deed has ended."""
    with office.book.reading() as page:
        lines = page.lines_since(before.line)
    others = any(hash_ not in office.book.own_lines for _, hash_ in lines)
    return Stand(lines[-1][0] if lines else before.line, others)
