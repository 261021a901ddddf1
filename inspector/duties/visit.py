"""Take somebody else's piece along on one trip: a member's own, or another club's.

It is written down and judged as any piece, stands in the kit of that trip from the same deed on, and goes on no other.
One that came along before keeps its tag and its history: it was outside in between, so it is held until inspected.
"""

from msgspec.structs import replace

from inspector.duties.book_in import add_piece, check_booking
from inspector.duties.change_item import check_last
from inspector.duties.judging import judge_and_keep
from inspector.duties.look_up import trip as trip_called
from inspector.duties.office import Office
from inspector.duties.who import check_at_hand, check_not_closed, check_not_evidence, names_club, plain_name
from inspector.gear.changes import NewTripChange
from inspector.gear.custody import Hands, NewCustody, Untold
from inspector.gear.item import Item, NewItem
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Trip
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page

_PROPOSED = "VG-{number}"


def visit(office: Office, ref: str, facts: NewItem) -> Judged:
    """Keep the piece for the trip and put it into its kit; an empty tag is proposed. Whose it is must be said."""
    planned = _open_trip(office, ref)
    if facts.fitted_to:
        why = tr("A part on a vehicle does not come along in a kit.")
        raise Refused(tr("fitted to"), why, tr("Book it in; it goes wherever its vehicle goes."))
    tagged = facts if facts.tag else replace(facts, tag=proposed_tag(office))
    guest = replace(tagged, visiting_for=planned.ref, visiting_until=planned.last_on)
    check_booking(office, guest)
    with office.book.page() as page:
        _check_owner(page, guest)
        _check_not_known(page, guest)
        item, outcome = add_piece(office, page, guest)
        _pack(office, page, planned, item)
        page.enter("visit", by=office.officer.id, at=office.now, facts={"trip": planned.ref, "as": item.facts})
    return outcome


def visit_again(office: Office, ref: str, tag: str) -> Judged:
    """Take a piece along on another trip that came along before; what it went through since, nobody here knows."""
    planned = _open_trip(office, ref)
    with office.book.page() as page:
        item = page.item(tag)
        _check_may_come_again(office, page, item, planned)
        facts = replace(item.facts, visiting_for=planned.ref, visiting_until=planned.last_on)
        me, before = office.officer.id, item.facts.visiting_until
        page.add_item_change(item, NewItemChange(office.today, Altered.VISIT, facts, me, planned.ref))
        untold = (Untold.USES, Untold.EXPOSURES)
        page.add_custody(item, NewCustody(office.today, Hands.RETURNED, me, by=me, untold=untold, since=before))
        page.add_whereabouts(item, NewWhereabouts(office.today, Where.IN_STORE, by=me, found=True))
        item = replace(item, facts=facts)
        outcome = judge_and_keep(office, page, item)
        _pack(office, page, planned, item)
        page.enter("visit", by=me, at=office.now, facts={"trip": planned.ref, "as": facts})
    return outcome


def proposed_tag(office: Office) -> str:
    """The first tag of the visiting gear that no piece has or had and no vehicle has."""
    with office.book.reading() as page:
        taken = {one.tag for one in page.vehicles()}
        number = 1
        while page.has_tag(tag := _PROPOSED.format(number=number)) or tag in taken:
            number += 1
    return tag


def _open_trip(office: Office, ref: str) -> Trip:
    planned = trip_called(office, ref)
    if planned.last_on < office.today:
        why = tr("The trip {ref} ended on {day}.", ref=planned.ref, day=show_day(planned.last_on))
        raise Refused(tr("trip"), why, tr("Name the trip on which the piece is to go."))
    return planned


def _check_owner(page: Page, facts: NewItem) -> None:
    if names_club(page, facts.owner):
        why = tr("Whose it is was not said, or it is the club's own.")
        raise Refused(tr("owner"), why, tr("Write the member or the club it belongs to; book the club's own gear in."))


def _check_not_known(page: Page, facts: NewItem) -> None:
    """A piece that was retired must not come back under another tag; its serial tells, where it has one."""
    wanted = _marks(facts)
    known = next((one for one in page.every_item() if facts.serial.strip() and _marks(one.facts) == wanted), None)
    if known:
        why = tr("{tag} is a piece of that kind, maker's mark and serial already.", tag=known.tag)
        raise Refused(tr("serial"), why, tr("If it is that piece, take it along under its own tag, with its history."))


def _marks(facts: NewItem) -> tuple[str, str, str]:
    return facts.kind, plain_name(facts.maker_mark), plain_name(facts.serial)


def _check_may_come_again(office: Office, page: Page, item: Item, planned: Trip) -> None:
    check_not_closed(page, item)
    check_not_evidence(page, item)
    check_last(office, page, item)
    if page.whereabouts_of(item).where is not Where.GIVEN_BACK:
        check_at_hand(page, item)
    if page.out_entry(item):
        why = tr("{tag} is out on loan.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Take it back first, and tell what it went through."))
    if not item.facts.visiting_for:
        why = tr("{tag} is no visiting piece.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Put it into the kit of the trip as any piece of the register."))
    if item.facts.visiting_for == planned.ref and item.facts.visiting_until == planned.last_on:
        why = tr("{tag} came along for {ref} already.", tag=item.tag, ref=planned.ref)
        raise Refused(tr("trip"), why, tr("Name another trip."))
    dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
    if dossier.retired_on or page.latest_verdict(item.id)[0].outcome is Outcome.RETIRE:
        why = tr("{tag} is retired and goes on no trip of the club.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Take another piece along."))


def _pack(office: Office, page: Page, planned: Trip, item: Item) -> None:
    """Put it into the kit as the trip stands now that nobody else can write."""
    stands = next(one for one in page.trips() if one.id == planned.id)
    if item.tag not in stands.kit:
        packed = replace(stands, kit=(*stands.kit, item.tag))
        why = tr("{owner}'s {tag} comes along.", owner=item.facts.owner, tag=item.tag)
        page.add_trip_change(NewTripChange(office.today, packed, office.officer.id, why))
