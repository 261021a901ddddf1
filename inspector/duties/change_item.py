"""Change what a piece was booked with: its tag, its marking, its owner, its value, its note.

A piece keeps its identity, and every tag it ever had finds it. No change makes a verdict milder by itself: a marking
read anew is held until a competent person has inspected the piece, and what was remembered is never a rating.
"""

from collections.abc import Iterator

from msgspec.structs import replace

from inspector.duties.book_in import check_free, check_rating, check_tag
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.overtaken import check_overtaken
from inspector.duties.plain_lines import check_line, check_text
from inspector.duties.who import (
    check_judge,
    check_name_counts,
    check_not_closed,
    check_not_evidence,
    check_second,
    id_of,
    owns,
    person_of,
    proved,
)
from inspector.gear.item import Item, NewItem, Rating, Worth
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.ratings import is_within, is_written
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page

_DEEDS = {
    Altered.TAG: "retag",
    Altered.LABEL_LOST: "label lost",
    Altered.LABEL_NEW: "label anew",
    Altered.OWNER: "change owner",
    Altered.VALUE: "value",
    Altered.NOTE: "change note",
}
_CHANGES = {
    Altered.TAG: "tag",
    Altered.LABEL_LOST: "rating",
    Altered.LABEL_NEW: "rating",
    Altered.OWNER: "owner",
    Altered.VALUE: "worth",
    Altered.NOTE: "note",
}
_SPEAKS_FOR_ITSELF = {Altered.VALUE, Altered.NOTE}


def retag(office: Office, tag: str, new_tag: str, why: str, by: str = "", seen: NewItem | None = None) -> Judged:
    """Give a piece another tag. The one before still finds it and is never free again; printed papers keep it.

    seen, here and below: the piece as whoever changes it has seen it; refused where the same was changed since.
    """
    check_tag(new_tag)
    with office.book.page() as page:
        item = _open(office, page, tag, alive=True)
        check_not_evidence(page, item)
        check_free(page, new_tag)
        return _keep(office, page, item, Altered.TAG, replace(item.facts, tag=new_tag), by, why, seen=seen)


def label_lost(office: Office, tag: str, why: str, by: str = "") -> Judged:
    """Write down that the rating cannot be read on the piece any more: what is remembered of it is no rating."""
    with office.book.page() as page:
        item = _open(office, page, tag)
        if not is_written(item.rating):
            said = tr("No rating was read on {tag} that could be lost.", tag=item.tag)
            raise Refused(tr("rating"), said, tr("Look at the label again; is it this piece?"))
        rating = replace(item.rating, stated_on="memory")
        return _keep(office, page, item, Altered.LABEL_LOST, replace(item.facts, rating=rating), by, why)


def label_anew(
    office: Office, tag: str, rating: Rating, why: str, by: str = "", second: str = "", seen: NewItem | None = None
) -> Judged:
    """Write down a rating that a competent person read on the piece or on its certificate.

    More than was ever written down of it takes two competent persons, neither the owner. It is held until inspected.
    """
    with office.book.page() as page:
        item = _open(office, page, tag, alive=True)
        check_not_evidence(page, item)
        kind = office.kind(item.facts.kind)
        check_rating(replace(item.facts, rating=rating), kind)
        if not is_written(rating):
            said = tr("A rating that nobody reads anywhere is none.")
            raise Refused(tr("rating"), said, tr("Read it on the piece or its certificate, and say on which."))
        reader = person_of(page, by or office.officer.id, tr("read by"))
        check_judge(reader, item, kind, office.today, tr("read by"))
        check_name_counts(office, page, reader, tr("read by"))
        other = person_of(page, second, tr("second name")) if second else None
        if other:
            check_second(office, page, reader, other, tr("Name another person."))
            check_judge(other, item, kind, office.today, tr("second name"))
        elif not any(is_within(rating, known) for known in _written_before(page, item)):
            said = tr("No rating as high was ever written down for {tag}.", tag=item.tag)
            raise Refused(tr("second name"), said, tr("Let a second competent person read it as well, and name both."))
        facts = replace(item.facts, rating=rating)
        return _keep(office, page, item, Altered.LABEL_NEW, facts, reader.id, why, other.id if other else "", seen)


def change_owner(
    office: Office, tag: str, owner: str, why: str, by: str = "", second: str = "", seen: NewItem | None = None
) -> Judged:
    """Write down whose the piece is from today on. Nobody hands his own gear over, or takes it, on his word alone."""
    check_line(tr("owner"), owner)
    with office.book.page() as page:
        item = _open(office, page, tag, alive=True)
        check_not_evidence(page, item)
        named = _as_named(page, owner.strip())
        if not named or named == item.facts.owner:
            said = tr("It is empty.") if not named else tr("{tag} is {owner}'s already.", tag=item.tag, owner=named)
            raise Refused(tr("owner"), said, tr("Write whose it is now, a person or a club."))
        writer = person_of(page, by or office.officer.id, tr("written down by"))
        check_name_counts(office, page, writer, tr("written down by"))
        after = replace(item, facts=replace(item.facts, owner=named))
        other = person_of(page, second, tr("second name")) if second else None
        if other:
            check_second(office, page, writer, other, tr("Name another person."))
        if any(owns(writer, one) and (other is None or owns(other, one)) for one in (item, after)):
            said = tr("{name} owns it before or after.", name=writer.name)
            raise Refused(tr("second name"), said, tr("Name another person who knows of it and does not own it."))
        return _keep(office, page, item, Altered.OWNER, after.facts, writer.id, why, other.id if other else "", seen)


def change_value(
    office: Office, tag: str, worth: Worth | None, why: str = "", by: str = "", seen: NewItem | None = None
) -> Judged:
    """Write down what the piece is worth to the insurer; None: nobody knows."""
    with office.book.page() as page:
        item = _open(office, page, tag)
        return _keep(office, page, item, Altered.VALUE, replace(item.facts, worth=worth), by, why, seen=seen)


def change_note(office: Office, tag: str, note: str, by: str = "", seen: NewItem | None = None) -> Judged:
    """Write another note beside the booking."""
    check_text(tr("note"), note)
    with office.book.page() as page:
        item = _open(office, page, tag)
        return _keep(office, page, item, Altered.NOTE, replace(item.facts, note=note.strip()), by, "", seen=seen)


def check_last(office: Office, page: Page, item: Item) -> None:
    """Refuse a change that would be written before one that stands: it would count for nothing."""
    last = max((one.facts.on for one in page.changes(item)), default=office.today)
    if last > office.today:
        why = tr("What stands was written down for {day}, after today.", day=show_day(last))
        raise Refused(tr("day"), why, tr("Check this computer's clock."))


def standing_retirement(office: Office, page: Page, item: Item) -> bool:
    """Whether the piece is retired and no strike has voided it."""
    if page.latest_verdict(item.id)[0].outcome is Outcome.RETIRE:
        return True
    return page.dossier(item, office.kind(item.facts.kind), office.today).retired_on is not None


def _open(office: Office, page: Page, tag: str, *, alive: bool = False) -> Item:
    """The piece, which is neither destroyed nor sold. alive: nor retired."""
    item = page.item(tag)
    check_not_closed(page, item)
    if alive and standing_retirement(office, page, item):
        why = tr("{tag} is retired, and nothing of it is written down anew.", tag=item.tag)
        raise Refused(tr("piece"), why, tr("Make it unusable, and book another piece in."))
    return item


def _field(what: Altered) -> str:
    words = {
        Altered.TAG: tr("tag"), Altered.LABEL_NEW: tr("rating"), Altered.LABEL_LOST: tr("rating"),
        Altered.OWNER: tr("owner"), Altered.VALUE: tr("value"), Altered.NOTE: tr("note"),
    }  # fmt: skip
    return words.get(what, tr("change"))


def _keep(
    office: Office,
    page: Page,
    item: Item,
    what: Altered,
    facts: NewItem,
    by: str,
    why: str,
    second: str = "",
    seen: NewItem | None = None,
) -> Judged:
    """Write the change for today; the piece is judged by it at once."""
    if not why.strip() and what not in _SPEAKS_FOR_ITSELF:
        raise Refused(tr("reason"), tr("It is empty."), tr("Write in a sentence why it is changed."))
    check_text(tr("reason"), why)
    if seen:
        check_overtaken(seen, item.facts, facts, {_CHANGES[what]: _field(what)})
    if facts == item.facts:
        raise Refused(_field(what), tr("Nothing would change."), tr("Write what is different now."))
    check_last(office, page, item)
    writer = id_of(office, page, by, tr("written down by"))
    kept = NewItemChange(office.today, what, facts, writer, why.strip(), second)
    page.add_item_change(item, kept)
    outcome = judge_and_keep(office, page, replace(item, facts=facts))
    line = {"tag": item.tag, "as": kept, **proved(office, writer, second)}
    page.enter(_DEEDS[what], by=office.officer.id, at=office.now, facts=line)
    return outcome


def _as_named(page: Page, owner: str) -> str:
    """A person by the name in the register, so that nobody judges his own gear under another spelling."""
    plain = " ".join(owner.casefold().split())
    return next((one.name for one in page.people() if plain in {one.name.casefold(), one.id}), owner)


def _written_before(page: Page, item: Item) -> Iterator[Rating]:
    """Every rating read on the piece or its certificate, since a repair last lowered it."""
    changes = page.changes(item)
    ratings = [page.booked(item).rating, *(one.facts.item.rating for one in changes)]
    cuts = [
        number
        for number, one in enumerate(changes, start=1)
        if one.facts.what is Altered.REPAIRED and ratings[number] != ratings[number - 1]
    ]
    return (one for one in ratings[cuts[-1] if cuts else 0 :] if is_written(one))
