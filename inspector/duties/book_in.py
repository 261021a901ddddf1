"""Book a piece in."""

from collections.abc import Container, Iterator, Sequence
from datetime import date

from msgspec.structs import replace

from inspector.duties.book_in_forms import in_form
from inspector.duties.bounds import check_not_ancient, check_rating_bounds, check_size_bounds
from inspector.duties.call_in import hold_late
from inspector.duties.judging import judged, keep_all
from inspector.duties.office import Office
from inspector.gear.item import BOLT_COUNT, Fixing, Item, NewItem, Rating
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis, Kind
from inspector.language import tr, within
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.words import purpose_word

_LONGEST_TAG = 24
_AT_ONCE = 50  # pieces of which the facts are read together
_STATED_ON = ("piece", "certificate", "memory")


def book_in(office: Office, facts: NewItem) -> Judged:
    """Keep the piece under its tag and judge it for the first time. Refuses a booking that does not hold together."""
    check_booking(office, facts)
    if facts.visiting_for or facts.visiting_until:
        why = tr("It would be here for one trip alone.")
        raise Refused(tr("visiting"), why, tr("Take it along with `visit`, which puts it into the trip's kit as well."))
    with office.book.page() as page:
        item, outcome = add_piece(office, page, facts)
        page.enter("book in", by=office.officer.id, at=office.now, facts=item.facts)
    return outcome


def check_booking(office: Office, facts: NewItem) -> None:
    """Refuse facts that do not hold together by themselves."""
    kind = office.kind(facts.kind)
    check_tag(facts.tag)
    check_marks(facts, kind)
    check_days(facts, office.today)


def check_marks(facts: NewItem, kind: Kind) -> None:
    """Refuse a rating, sizes or a way of fixing that the kind cannot have."""
    check_rating(facts, kind)
    _check_sizes(facts, kind)


def add_piece(office: Office, page: Page, facts: NewItem) -> tuple[Item, Judged]:
    """Keep a checked booking on an open page and judge the piece; the deed that does so enters it.

    Where a recall may mean it, it is held from the start.
    """
    check_free(page, facts.tag)
    (booked,) = add_pieces(office, page, [facts])
    return booked


def add_pieces(office: Office, page: Page, every: Sequence[NewItem]) -> Iterator[tuple[Item, Judged]]:
    """Keep checked bookings whose tags are free on an open page and judge the pieces, some at a time, as they are asked
    for; the deed that does so enters them. What a recall may mean is held from the start."""
    for at in range(0, len(every), _AT_ONCE):
        some = [in_form(page, _placed(page, facts), office.today) for facts in every[at : at + _AT_ONCE]]
        items = page.add_items(some, office.today)
        hold_late(office, page, items)
        dossiers = page.dossiers([(one, office.kind(one.facts.kind)) for one in items], office.today)
        outcomes = []
        for item, dossier in zip(items, dossiers, strict=True):
            outcomes.append(judged(office, dossier))
            yield item, outcomes[-1]
        keep_all(office, page, [(one, one.dossier) for one in outcomes])


def check_free(page: Page, tag: str) -> None:
    """Refuse a tag that a piece has or had, or a vehicle has."""
    if page.is_taken(tag):
        why = tr("Another piece already has the tag “{tag}”.", tag=tag)
        raise Refused(tr("tag"), why, tr("Choose a free tag; a tag is never used twice, even after a retirement."))
    if any(one.tag.casefold() == tag.casefold() for one in page.vehicles()):
        raise Refused(tr("tag"), tr("A vehicle has the tag “{tag}”.", tag=tag), tr("Choose a free tag."))


def _placed(page: Page, facts: NewItem) -> NewItem:
    """The facts with the vehicle's tag as it stands in the register."""
    if facts.fitted_to:
        return replace(facts, fitted_to=page.vehicle(facts.fitted_to).tag)
    if facts.fitted_end or facts.fitted_side:
        why = tr("A place on a vehicle was named, but no vehicle.")
        raise Refused(tr("fitted to"), why, tr("Write the vehicle's tag, or leave the place empty."))
    return facts


def check_tag(tag: str) -> None:
    """Refuse what cannot be written on a label."""
    if not tag or tag != tag.strip() or len(tag) > _LONGEST_TAG or not tag.isprintable():
        raise Refused(
            tr("tag"),
            tr("A tag has 1 to {most} signs and no space at its ends.", most=_LONGEST_TAG),
            tr("Write what stands on the label, for example SH-014."),
        )


def check_rating(facts: NewItem, kind: Kind) -> None:
    """Refuse a rating that its kind cannot have."""
    rating = facts.rating
    if rating.basis not in {*kind.rated_by, Basis.UNRATED}:
        wanted = ", ".join(basis.value.replace("_", " ") for basis in kind.rated_by)
        why = tr("A {kind} is not rated that way.", kind=within(kind.name))
        raise Refused(tr("rating"), why, tr("Use one of: {wanted}.", wanted=wanted))
    if rating.figure and rating.basis is Basis.UNRATED:
        why = tr("“{typed}” was written down, but not what it is.", typed=rating.figure.as_typed)
        raise Refused(tr("rating"), why, tr("Say whether it is a WLL, an MBS, a trailer's mass or a line pull."))
    check_stated(rating)
    if barred := [one for one in facts.kept_for if not kind.may(one)]:
        why = tr("A {kind} is never kept for {use}.", kind=within(kind.name), use=purpose_word(barred[0]))
        raise Refused(tr("kept for"), why, tr("Leave it out; the kind's own uses stand."))
    if rating.figure and rating.figure.si <= 0:
        raise Refused(tr("rating"), tr("A rating is more than nothing."), tr("Write the figure on the piece."))
    check_rating_bounds(rating)


def check_stated(rating: Rating) -> None:
    """Refuse a rating of which nobody said where it was read."""
    if rating.figure and rating.stated_on not in _STATED_ON:
        why = tr("It is not said where the rating stands.")
        raise Refused(tr("stated on"), why, tr("Use one of: {names}.", names=", ".join(_STATED_ON)))


def _check_sizes(facts: NewItem, kind: Kind) -> None:
    known = {size.key: size for size in kind.sizes}
    given = {size.key: size.figure for size in facts.sizes}
    for key, figure in given.items():
        if key not in known:
            why = tr("A {kind} has no such size.", kind=within(kind.name))
            raise Refused(key, why, tr("Use one of: {names}.", names=", ".join(known)))
        if figure.si <= 0 or figure.dimension is not known[key].dimension:
            why = tr("“{typed}” cannot be its size.", typed=figure.as_typed)
            raise Refused(known[key].name, why, tr("Measure it, or take it from the maker's sheet."))
        check_size_bounds(key, known[key].name, figure)
    _check_fixing(facts, kind, given)
    spared = {BOLT_COUNT} if facts.fixed_by is Fixing.WELDS else set()
    missing = [size.name for size in kind.sizes if size.required and size.key not in {*given, *spared}]
    if missing:
        why = tr("Without it no wear can be told later.")
        raise Refused(", ".join(missing), why, tr("Measure the piece, or take the size from the maker's sheet."))


def _check_fixing(facts: NewItem, kind: Kind, given: Container[str]) -> None:
    """A part is either welded on or has bolts that are counted; how it is fixed must be said where nobody can tell."""
    has_bolts = any(size.key == BOLT_COUNT for size in kind.sizes)
    if facts.fixed_by is not Fixing.UNKNOWN and not has_bolts:
        why = tr("A {kind} is not asked for it.", kind=within(kind.name))
        raise Refused(tr("fixed by"), why, tr("Leave it empty."))
    if facts.fixed_by is Fixing.WELDS and BOLT_COUNT in given:
        why = tr("It cannot be held by welds alone and have bolts.")
        raise Refused(tr("fixed by"), why, tr("If any bolt holds it, say that bolts hold it and how many."))
    if has_bolts and facts.fixed_by is not Fixing.WELDS and BOLT_COUNT not in given:
        why = tr("Without their number a missing one is never noticed.")
        raise Refused(
            tr("number of bolts"), why, tr("Count them; if welds alone hold it, say that it is fixed by welds.")
        )


def check_days(facts: NewItem, today: date) -> None:
    """Refuse days that have not come, or that lie in no order a piece can have."""
    made_on, in_service_on = facts.made_on, facts.in_service_on
    check_not_ancient(tr("made on"), made_on)
    check_not_ancient(tr("in service since"), in_service_on)
    if made_on and made_on > today:
        raise _not_yet(tr("made on"))
    if in_service_on and in_service_on > today:
        raise _not_yet(tr("in service since"))
    if made_on and in_service_on and made_on > in_service_on:
        why = tr("It would have been in service before it was made.")
        raise Refused(tr("in service since"), why, tr("Correct one of the two days."))


def _not_yet(field: str) -> Refused:
    return Refused(field, tr("The day lies in the future."), tr("Write the day as it was, or leave it empty."))
