"""Keep a member's check of a piece before a trip, given in the window or read from a sheet that came back.

It takes the road of any inspection. What a member says can hold, derate or retire a piece; it never releases one.
"""

from collections.abc import Mapping
from datetime import date

from inspector.duties.before_use import asked_checks
from inspector.duties.check_kit import sheets_of
from inspector.duties.give_opinion import doubt
from inspector.duties.look_up import trip, trips
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.who import check_at_hand, person_of
from inspector.gear.inspection import Answer, InspectionKind, NewInspection
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.kind import Grade, Kind
from inspector.gear.kit_check import Seen
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Trip
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused
from inspector.register.page import Page


def check_piece(
    office: Office, ref: str, tag: str, member: str, seen: Seen, sheet: str = "", on: date | None = None
) -> Judged:
    """Keep what a member saw of one piece of the trip's kit or part on its vehicles, and judge the piece by it.

    member: a name or id. sheet: the number of the paper that it stood on. on: the day it was looked at, today where
    none is given. A question without an answer is kept as not seen.
    """
    planned = trip(office, ref)
    with office.book.reading() as page:
        person = person_of(page, member, tr("checked by"))
        day = on or office.today
        number = _sheet_number(page, planned, sheet, day)
        item = _piece_of(page, planned, tag)
        kind = office.kind(item.facts.kind)
        _check_may(page, item)
    check_seen(kind, seen)
    facts = NewInspection(
        on=day,
        kind=InspectionKind.BEFORE_USE,
        by=person.id,
        competent=False,
        answers=_with_unseen(kind, seen),
        readings=seen.readings,
        note=seen.note.strip(),
        trip=planned.ref,
        sheet=number,
    )
    with office.book.together():
        kept = record_inspection(office, item.tag, facts)
        for why in seen.doubts:
            kept = doubt(office, item.tag, why, person.id)
    return kept


def check_pieces(
    office: Office, ref: str, member: str, pieces: Mapping[str, Seen], sheet: str = "", on: date | None = None
) -> tuple[Judged, ...]:
    """Keep what a member saw of several pieces, all or none; what is wrong is told for each piece."""
    if not pieces:
        raise Refused(tr("pieces"), tr("No piece is named."), tr("Say which pieces were looked at."))
    kept, faults = [], []
    with office.book.together():
        for tag, seen in pieces.items():
            try:
                kept.append(check_piece(office, ref, tag, member, seen, sheet, on))
            except Refused as fault:
                faults.append((tag, fault))
        if faults:  # leaving by a refusal keeps nothing of what stood before it
            raise _refused_by_piece(faults)
    return tuple(kept)


def check_sheet(
    office: Office, number: str, member: str, pieces: Mapping[str, Seen], on: date | None = None
) -> tuple[Judged, ...]:
    """Type in a sheet that came back on paper; its number says for which trip it was. All of it or nothing."""
    planned, own = trip_of_sheet(office, number)
    return check_pieces(office, planned.ref, member, pieces, own, on)


def trip_of_sheet(office: Office, number: str) -> tuple[Trip, str]:
    """The trip that a sheet was printed for, and the sheet's number as printed; refused where no trip has it."""
    with office.book.reading() as page:
        for planned in trips(office):
            if own := _named(page, planned, number):
                return planned, own
    why = tr("No trip has a sheet with the number “{number}”.", number=number.strip())
    raise Refused(tr("sheet"), why, tr("Read the number at the head of the sheet again."))


def _named(page: Page, planned: Trip, number: str) -> str:
    """The number as it was printed, where it is one of the trip's sheets."""
    wanted = number.strip().casefold()
    return next((own for own, _ in sheets_of(page, planned) if own.casefold() == wanted), "")


def _sheet_number(page: Page, planned: Trip, sheet: str, on: date) -> str:
    """The number of the sheet as printed; refused where it is another trip's or was not printed yet on that day."""
    if not sheet.strip():
        return ""
    printed = dict(sheets_of(page, planned))
    number = _named(page, planned, sheet)
    if not number:
        why = tr("“{number}” is no sheet of the trip {ref}.", number=sheet.strip(), ref=planned.ref)
        listed = ", ".join(printed) or tr("none was printed")
        raise Refused(tr("sheet"), why, tr("Read its number again; the trip's sheets: {numbers}.", numbers=listed))
    if on < printed[number]:
        why = tr("The sheet was printed only on {day}.", day=show_day(printed[number]))
        raise Refused(tr("checked on"), why, tr("Write the day on which the pieces were looked at."))
    return number


def _piece_of(page: Page, planned: Trip, tag: str) -> Item:
    """A piece of the kit, or a part that sits on one of the trip's vehicles."""
    item = page.item(tag)
    fitted = page.fitted(item)
    if item.tag in planned.kit or (fitted and fitted.vehicle in planned.vehicles):
        return item
    why = tr(
        "{tag} is not in the kit of the trip {ref} and sits on none of its vehicles.", tag=item.tag, ref=planned.ref
    )
    raise Refused(tr("tag"), why, tr("Look at the label again, or leave the piece in the shed."))


def _check_may(page: Page, item: Item) -> None:
    check_at_hand(page, item)
    if page.latest_verdict(item.id)[0].outcome is Outcome.RETIRE:
        why = tr("{tag} is retired and is never used again.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Put it aside, and tell the equipment officer that it lay in the kit."))


def check_seen(kind: Kind, seen: Seen) -> None:
    """Refuse what no member's check can say."""
    if seen.is_empty:
        why = tr("Nothing was looked at.")
        raise Refused(tr("check"), why, tr("Answer at least one question, or write one reading."))
    for answer in seen.answers:
        if (measure := kind.measure(answer.check)) and kind.check(answer.check) is None:
            why = tr("It is measured, not graded.")
            raise Refused(measure.name, why, tr("Write the reading. Without one, doubt the piece: that holds it."))
    for reading in seen.readings:
        measure = kind.measure(reading.measure)
        if measure and measure.key == "wall":  # what a gauge reads through paint or rust takes more than a figure
            why = tr("A wall is not read at a check before use.")
            raise Refused(measure.name, why, tr("Log it as an inspection, with how it was read."))


def _with_unseen(kind: Kind, seen: Seen) -> tuple[Answer, ...]:
    """The answers, and for each question without one that it was not looked at."""
    given = {one.check for one in seen.answers}
    unseen = [Answer(one.key, Grade.NOT_SEEN) for one in asked_checks(kind) if one.key not in given]
    return (*seen.answers, *unseen)


def _refused_by_piece(faults: list[tuple[str, Refused]]) -> Refused:
    """One refusal for all: each piece, what was wrong, what to do."""
    lines = [f"{tag}: {fault.field}: {fault.why} {fault.what_to_do}" for tag, fault in faults]
    head = tr_n("One piece cannot be kept as it stands.", "{count} pieces cannot be kept as they stand.", len(faults))
    return Refused(tr("sheet"), "\n".join([head, *lines]), tr("Nothing was kept. Mend this, and type it in again."))
