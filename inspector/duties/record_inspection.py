"""Log an inspection with its grades and gauge readings, and judge the piece by it."""

from datetime import date

from msgspec.structs import replace

from inspector.duties.judging import judge_and_keep, judged, keep
from inspector.duties.office import Office
from inspector.duties.plausible import reading_name
from inspector.duties.who import check_not_closed, names_count, owns, person_of, proved
from inspector.gear.inspection import NewInspection, Reading
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.kind import Grade, Kind, Measure, kind_word
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.seats import Role
from inspector.language import tr, within
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.units import Dimension

_MOST_DAYS = 3660
_LEAST_OF_NEW, _MOST_OF_NEW = 0.05, 1.5  # what a reading may be of the size as new before it must be a slip


def record_inspection(office: Office, tag: str, facts: NewInspection) -> Judged:
    """Keep the inspection, judge, keep the verdict. One transaction.

    facts.by: a person's id or name. Whether that person was competent is worked out here, never taken from the caller.
    Where the club requires passphrases, an inspection under a name that is only stated passes nothing.
    """
    with office.book.page() as page:
        return record(office, page, page.item(tag), facts)


def record(office: Office, page: Page, item: Item, facts: NewInspection) -> Judged:
    """The same of a piece that was looked up on the page already; it closes the page."""
    check_not_closed(page, item)
    kind = office.kind(item.facts.kind)
    inspector = person_of(page, facts.by, tr("inspected by"))
    second = person_of(page, facts.second, tr("second name")) if facts.second else None
    competent = may_pass(inspector, item, kind, facts.on, second) and stand_for(office, page, inspector, item, second)
    checked = replace(facts, by=inspector.id, second=second.id if second else "", competent=competent)
    checked = replace(checked, vouched=office.vouches_for(inspector))
    check_inspection(office, item, kind, checked)
    page.add_inspection(item, checked)
    if checked.on < office.today:
        _keep_retirement_of(office, page, item, checked.on)
    outcome = judge_and_keep(office, page, item)
    line = {"tag": item.tag, "as": checked, **proved(office, checked.by, checked.second)}
    page.enter("inspect", by=office.officer.id, at=office.now, facts=line)
    return outcome


def _keep_retirement_of(office: Office, page: Page, item: Item, on: date) -> None:
    """What would have retired the piece on the day it was seen retires it, whenever it is entered."""
    kind = office.kind(item.facts.kind)
    then = judged(office, page.dossier(item, kind, on))
    if then.verdict.outcome is Outcome.RETIRE:
        keep(office, page, then, page.dossier(item, kind, office.today))


def may_pass(person: Person, item: Item, kind: Kind, on: date, second: Person | None = None) -> bool:
    """Whether this person may pass this piece: competent for its kind that day, and not the sole judge of his own gear.

    second: another competent person who looked as well; nobody is both names.
    """
    if second and second.id == person.id:
        why = tr("{name} cannot be both names.", name=person.name)
        raise Refused(tr("second name"), why, tr("Name another competent person, or leave it empty."))
    if not owns(person, item):
        return person.is_competent(kind.family, on)
    return second is not None and all(one.is_competent(kind.family, on) for one in (person, second))


def stand_for(office: Office, page: Page, person: Person, item: Item, second: Person | None) -> bool:
    """Whether the names that the inspection needs may stand for it; of one's own gear both are needed.

    Under a login that may only check, no name passes anything.
    """
    needed = (person, second) if second and owns(person, item) else (person,)
    return office.book.role is Role.OFFICER and names_count(office, page, *needed)


def check_inspection(office: Office, item: Item, kind: Kind, facts: NewInspection) -> None:
    """Refuse what cannot be: a day to come or before the piece came, a check or reading this kind does not have."""
    if facts.on > office.today:
        why = tr("The day lies in the future.")
        raise Refused(tr("inspected on"), why, tr("Write the day of the inspection."))
    if facts.on < item.booked_on:
        why = tr("The piece was booked in only later.")
        raise Refused(tr("inspected on"), why, tr("Correct the day; what was found before belongs in the note."))
    if not facts.answers and not facts.readings:
        why = tr("Nothing was looked at.")
        raise Refused(tr("inspection"), why, tr("Grade at least one check or write one reading."))
    if facts.next_within_days is not None and not 1 <= facts.next_within_days <= _MOST_DAYS:
        why = tr("The next inspection is asked for within 1 to {most} days.", most=_MOST_DAYS)
        raise Refused(tr("next within"), why, tr("Write a number of days, or leave it to the kind's own time."))
    _check_doubled(kind, facts)
    for answer in facts.answers:
        _check_answer(kind, answer.check, answer.grade)
    for reading in facts.readings:
        _check_reading(kind, reading)
        _check_plausible(kind, item, reading)


def _check_doubled(kind: Kind, facts: NewInspection) -> None:
    keys = [answer.check for answer in facts.answers]
    for key in keys:
        if keys.count(key) > 1:
            check = kind.check(key)
            why = tr("It is graded twice.")
            raise Refused(check.name if check else key, why, tr("Grade it once; of two looks the worse one counts."))


def _check_plausible(kind: Kind, item: Item, reading: Reading) -> None:
    """Refuse a figure that this measure of this piece cannot have: a slip of the key, or another piece."""
    measure = kind.measure(reading.measure)
    new = item.size(measure.compare_with) if measure else None
    figure = reading.figure
    if measure is None:
        return
    if measure.dimension is Dimension.COUNT and figure.si != round(figure.si):
        raise Refused(measure.name, tr("“{typed}” is no whole number.", typed=figure.as_typed), tr("Count again."))
    if measure.dimension is Dimension.LENGTH and new and not _LEAST_OF_NEW <= figure.si / new.si <= _MOST_OF_NEW:
        why = tr("“{typed}” cannot be, it was {new} as new.", typed=figure.as_typed, new=new.as_typed)
        raise Refused(
            reading_name(measure, reading.point),
            why,
            tr("Look at the gauge, the unit and the label again; is it this piece?"),
        )


def _check_answer(kind: Kind, key: str, grade: Grade) -> None:
    check = kind.check(key)
    if check is None:
        names = ", ".join(one.key for one in kind.checks)
        raise Refused(key, tr("A {kind} has no such check.", kind=within(kind.name)), tr("Use one of: {n}.", n=names))
    if grade is Grade.SLIGHT and not check.slight:
        raise Refused(check.name, tr("It is good or bad, there is no grade between."), tr("Grade it good or bad."))


def _check_reading(kind: Kind, reading: Reading) -> None:
    measure = kind.measure(reading.measure)
    if measure is None:
        names = ", ".join(one.key for one in kind.measures) or tr("none")
        why = tr("A {kind} has no such measure.", kind=within(kind.name))
        raise Refused(reading.measure, why, tr("Use one of: {names}.", names=names))
    if reading.point and reading.point not in measure.points:
        why = tr("“{point}” is not one of its named places.", point=reading.point)
        raise Refused(
            measure.name, why, tr("Use one of: {names}.", names=", ".join(map(kind_word, measure.points)) or tr("none"))
        )
    if measure.points and not reading.point:
        why = tr("The place of the reading is missing.")
        raise Refused(measure.name, why, tr("Use one of: {names}.", names=_points(measure)))
    if reading.figure.dimension is not measure.dimension or reading.figure.si < 0:
        why = tr("“{typed}” cannot be a reading of it.", typed=reading.figure.as_typed)
        raise Refused(
            reading_name(measure, reading.point), why, tr("Read the gauge again and write the figure with its unit.")
        )


def _points(measure: Measure) -> str:
    return ", ".join(kind_word(one) for one in measure.points)
