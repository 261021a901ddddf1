"""The parts of the first page, each set from data: what waits, worst first, and nothing where nothing does."""

from collections.abc import Callable
from datetime import date

from msgspec import Struct
from PySide6.QtWidgets import QWidget

from inspector.desk.columns import Columns
from inspector.desk.look import GRID, Look, Type
from inspector.desk.needs.lines import folded, in_line, piece_line
from inspector.desk.needs.words import (
    backup_words,
    concerns,
    due_words,
    held_words,
    incident_words,
    retired_words,
    trip_state,
    trip_when,
    work_title,
)
from inspector.desk.place import Go
from inspector.desk.places import BOOK, DUE, INCIDENTS, PEOPLE, RECALLS, REGISTER, RULES, STOCK, TRIP
from inspector.desk.plain import button, column, figures, hairline, said
from inspector.desk.record_parts import section
from inspector.desk.tag_lines import Line
from inspector.duties.what_needs_me import SOON_DAYS
from inspector.gear.needs import NeedLine, Needs, RetiredPiece, TripGlance, Work, WorkGroup
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr, tr_n


class Ways(Struct, frozen=True):
    """What the lines of the page do when they are pressed. notices: of several tags."""

    look: Look
    opens: Callable[[str], object]
    goes: Callable[[Go], object]
    notice: Callable[[str], object]
    notices: Callable[[tuple[str, ...]], object]

    def to(self, place: str) -> Callable[[str], object]:
        """What leads to a place of the window."""
        return lambda what: self.goes(Go(place, what))


def glance_part(needs: Needs) -> QWidget:
    """The figures that tell at a glance how much waits."""
    held, reports, retired = len(needs.held), len(needs.incidents), len(needs.retired)
    late, soon = needs.overdue_count, needs.due_count
    counted = (
        (held, tr_n("piece is on hold", "pieces are on hold", held)),
        (late, tr_n("thing is overdue or missing", "things are overdue or missing", late)),
        (soon, tr("due within {days} days", days=SOON_DAYS)),
        (reports, tr_n("report is still open", "reports are still open", reports)),
        (retired, tr_n("retired piece is not unusable yet", "retired pieces are not unusable yet", retired)),
    )
    return column([hairline(), figures(counted)])


def rulebook_part(needs: Needs, ways: Ways) -> list[QWidget]:
    """An adopted rulebook that waits, or that cannot be used in full."""
    if not needs.rulebook:
        return []
    opens = button(tr("Look at the rulebook"), lambda: ways.goes(Go(RULES)))
    return [section(tr("The rulebook waits"), *(said(one) for one in needs.rulebook), in_line(opens))]


def trip_part(needs: Needs, ways: Ways) -> list[QWidget]:
    """The next trip and its readiness at a glance."""
    trip = needs.trip
    if trip is None:
        return []
    opens = button(trip.name, lambda: ways.goes(Go(TRIP, trip.ref)), rank="tag", name=tr("Open {tag}", tag=trip.name))
    words = [
        in_line(opens),
        said(trip_state(trip), bold=True),
        said(trip_when(trip, needs.on), Type.SMALL, faint=True),
    ]
    told = [said(one, bold=True) for one in (*trip.warnings, trip.trouble) if one]
    shown = column([*told, *([] if trip.trouble else [_trip_figures(trip)])], 0)
    return [section(tr("Next trip"), Columns(column(words, 0), shown, ways.look, (2, 3)))]


def _trip_figures(trip: TripGlance) -> QWidget:
    lacks = len(trip.lacks)
    counted = [
        (trip.going, tr_n("piece goes", "pieces go", trip.going)),
        (trip.staying, tr_n("stays at home", "stay at home", trip.staying)),
        (lacks, tr_n("need is not met", "needs are not met", lacks)),
        (trip.due, tr_n("falls due by then", "fall due by then", trip.due)),
        (trip.bad_parts, tr("on vehicles, not fit to use")),
    ]
    if trip.gone:
        counted.append((trip.gone, tr("not at hand")))
    if trip.may_be_away:
        counted.append((trip.may_be_away, tr("may not be at hand")))
    return figures(counted, Type.HEAD)


def held_part(needs: Needs, ways: Ways) -> list[QWidget]:
    """Every piece on hold, and what would settle it."""
    if not needs.held:
        return []
    lines = [piece_line(Outcome.HOLD, one.tag, one.kind_name, *held_words(one)) for one in needs.held]
    return [section(tr("On hold ({count})", count=len(lines)), folded(lines, ways.look, ways.opens))]


def late_part(needs: Needs, ways: Ways) -> list[QWidget]:
    """What is missing, and what is overdue to come back."""
    if not needs.late:
        return []
    lines = [_need_line(one, needs.on) for one in needs.late]
    return [section(tr("Missing or late ({count})", count=len(lines)), folded(lines, ways.look, ways.opens))]


def _need_line(one: NeedLine, on: date) -> Line:
    due = one.due
    return piece_line(one.outcome, due.about, due.name, due_words(due, on), concerns(due.people, due.place))


def incidents_part(needs: Needs, ways: Ways) -> list[QWidget]:
    """Open reports, and what is kept as found for them."""
    if not needs.incidents:
        return []
    lines = [piece_line(None, one.ref, *incident_words(one)) for one in needs.incidents]
    return [section(tr("Bad days ({count})", count=len(lines)), folded(lines, ways.look, ways.to(INCIDENTS)))]


def recalls_part(needs: Needs, ways: Ways) -> list[QWidget]:
    """Recalls that are not closed."""
    if not needs.recalls:
        return []
    lines = [piece_line(None, one.about, one.name, due_words(one, needs.on)) for one in needs.recalls]
    return [section(tr("Recalls still open ({count})", count=len(lines)), folded(lines, ways.look, ways.to(RECALLS)))]


def counts_part(needs: Needs, ways: Ways) -> list[QWidget]:
    """Counts that are not closed."""
    if not needs.counts:
        return []
    lines = [piece_line(None, one.about, one.place, due_words(one, needs.on)) for one in needs.counts]
    return [section(tr("Counts still open ({count})", count=len(lines)), folded(lines, ways.look, ways.to(STOCK)))]


def retired_part(needs: Needs, ways: Ways) -> list[QWidget]:
    """Retired pieces with what is still to be done; their notices in one go."""
    if not needs.retired:
        return []
    parts: list[QWidget] = []
    if tags := needs.without_notice:
        text = tr_n("Print the notice not yet printed", "Print the {count} notices not yet printed", len(tags))
        parts.append(in_line(button(text, lambda: ways.notices(tags))))
    lines = [_retired_line(one, ways) for one in needs.retired]
    parts.append(folded(lines, ways.look, ways.opens))
    return [section(tr("Retired and not yet unusable ({count})", count=len(lines)), *parts)]


def _retired_line(one: RetiredPiece, ways: Ways) -> Line:
    name = tr("Print the notice of {tag}", tag=one.tag)
    prints = None if one.has_notice else button(tr("Print notice"), lambda: ways.notice(one.tag), name=name)
    return piece_line(Outcome.RETIRE, one.tag, one.kind_name, retired_words(one), one.place, aside=prints)


def work_steps(needs: Needs, ways: Ways) -> list[Callable[[], list[QWidget]]]:
    """What is overdue or due soon, a step for each sort of work, with a way to the whole calendar first."""
    calendar = in_line(button(tr("All that falls due"), lambda: ways.goes(Go(DUE))))
    title = section(tr("Overdue, or due within {days} days", days=SOON_DAYS), calendar)
    if not needs.work:
        none = said(tr("Nothing is overdue, and nothing falls due within {days} days.", days=SOON_DAYS))
        return [lambda: [title, none, said(_next_words(needs), faint=True)]]
    groups = [lambda one=one: [_work_group(one, needs.on, ways)] for one in needs.work]
    return [lambda: [title], *groups]


def _work_group(group: WorkGroup, on: date, ways: Ways) -> QWidget:
    overdue = sum(1 for one in group.lines if one.due.overdue_days(on))
    leads = {Work.PEOPLE: PEOPLE, Work.TRIPS: TRIP, Work.ANSWERS: RECALLS}
    opens = ways.to(leads[group.work]) if group.work in leads else ways.opens
    lines = [_need_line(one, on) for one in group.lines]
    title = said(work_title(group.work, len(lines), overdue), bold=True)
    return column([title, folded(lines, ways.look, opens)], GRID // 2)


def _next_words(needs: Needs) -> str:
    """When the next thing falls due."""
    one = needs.next_due
    if one is None or one.on is None:
        return tr("No later day is known either.")
    what = tr("{about}, {name}: {says}", about=one.about, name=one.name, says=one.says)
    return tr("Next, on {day}: {what}.", day=show_day(one.on), what=what)


def quiet_part(needs: Needs) -> list[QWidget]:
    """What stands where nothing waits for anybody."""
    if not needs.is_quiet:
        return []
    head = said(tr("Nothing needs you this evening."), Type.DISPLAY)
    return [column([head, said(_next_words(needs), Type.HEAD, faint=True)])]


def backup_part(needs: Needs, ways: Ways) -> QWidget:
    """The last copy, and the way to the next one."""
    head, means = backup_words(needs.backup)
    parts: list[QWidget] = [said(head, bold=True), said(means)]
    if needs.backup.is_file:
        parts.append(in_line(button(tr("Back up"), lambda: ways.goes(Go(REGISTER)), name=tr("Back up the register"))))
    return section(tr("Copy of the register"), *parts)


def first_steps(ways: Ways) -> list[QWidget]:
    """What to do first in a register without any gear."""
    steps = (
        tr("1. Write down who is in the club, and who may judge which gear."),
        tr("2. Book in the first piece: its tag, its kind, what is marked on it."),
        tr("3. Inspect it. Until then it is on hold, whatever it looks like."),
    )
    book = button(tr("Book in a piece"), lambda: ways.goes(Go(BOOK)), rank="first")
    people = button(tr("People"), lambda: ways.goes(Go(PEOPLE)))
    head = said(tr("There is no gear in the register yet."), Type.DISPLAY)
    return [head, column([said(one) for one in steps], GRID // 2), in_line(book, people)]
