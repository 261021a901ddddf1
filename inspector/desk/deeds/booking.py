"""Booking a piece in, in all its forms; and what the fields of a piece that comes in are."""

from msgspec.structs import replace

from inspector.desk.deeds.common import note
from inspector.desk.deeds.labels import rating_fields, rating_in
from inspector.desk.deeds.words import ends, fixings, pasts, purposes, sides
from inspector.desk.deeds.work import size_fields, sizes_in
from inspector.desk.form.asked import Asked, Day, Line, OneOf, Part, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.drawings.marks import outcome_word
from inspector.duties.book_in import book_in
from inspector.duties.book_in_forms import still_wanted
from inspector.duties.form_facts import FormFacts
from inspector.duties.office import Office
from inspector.gear.fitting import End, Side
from inspector.gear.item import BOLT_COUNT, Fixing, NewItem, Provenance
from inspector.gear.kind import Basis, Kind
from inspector.language import tr


def book(kind: Kind, like: NewItem | None = None) -> Deed[Kind]:
    """Book in a piece of a kind. like: a piece whose facts stand there beforehand, for a second one of the same."""

    def do(office: Office, about: Kind, given: Values) -> Done:
        facts = facts_in(office, about, given)
        judged = book_in(office, facts)
        text = [tr("{outcome}. {plain}", outcome=outcome_word(judged.verdict.outcome), plain=judged.explanation.plain)]
        return Done(tr("{tag} is booked in.", tag=facts.tag), "\n".join([*text, *still_wanted(facts)]),
                    tag=facts.tag, opens=True)  # fmt: skip

    return Deed(
        "book in", tr("Book in"), tr("Book in: {kind}", kind=kind.name),
        tr("{what} Write what stands on the piece and what is known of it; what nobody knows stays empty.",
           what=kind.what),
        lambda facts, about: fields(facts, about, like),
        do, tr("Book it in"),
    )  # fmt: skip


def fields(facts: FormFacts, kind: Kind, like: NewItem | None = None) -> tuple[Asked | Part, ...]:
    """All that is asked of a piece of a kind."""
    return (
        Line(key="tag", label=tr("Tag"), needed=True, example=tr("for example SH-014"),
             hint=tr("As it is written on the piece.")),
        Part(tr("What is marked on it"), (
            *_rating(kind, like), *maker_fields(like),
        )),
        Part(tr("Its sizes as new"), (*sizes(kind, like), *_fixing(kind))),
        Part(tr("Where it comes from"), past_fields(facts)),
        Part(tr("Where it is and what it is for"), (*_place(facts), *_uses(kind), note())),
    )  # fmt: skip


def maker_fields(like: NewItem | None = None) -> tuple[Asked, ...]:
    """Maker's mark, serial and material."""
    return (
        Line(key="maker_mark", label=tr("Maker's mark"), stands=like.maker_mark if like else ""),
        Line(key="serial", label=tr("Serial or batch"), names=(tr("serial"),)),
        Line(key="material", label=tr("Material"), more=True, stands=like.material if like else ""),
    )


def sizes(kind: Kind, like: NewItem | None = None) -> tuple[Asked, ...]:
    """The sizes of the kind; those that wear is told by are needed."""
    known = {one.key: one.figure.as_typed for one in like.sizes} if like else {}
    needed = {one.key for one in kind.sizes if one.required and one.key != BOLT_COUNT}
    made = zip(kind.sizes, size_fields(kind), strict=True)
    return tuple(replace(asked, needed=size.key in needed, stands=known.get(size.key, "")) for size, asked in made)


def past_fields(facts: FormFacts) -> tuple[Asked, ...]:
    """In which form it came in, from whom, with which paper."""
    people = tuple(one.name for one in facts.people)
    return (
        OneOf(key="provenance", label=tr("It came"), choices=pasts(),
              hint=tr("A piece whose history nobody knows is held until a competent person has inspected it.")),
        Line(key="from_whom", label=tr("From whom"), hint=tr("Seller, giver, maker of a home-made piece, or lender."),
             names=(tr("from whom"),)),
        Line(key="paper", label=tr("Paper"), hint=tr("Number and issuer of its certificate, or its receipt.")),
        Line(key="owner", label=tr("Owner"), offers=(facts.club, *people), stands=facts.club,
             hint=tr("The club, a member, another club.")),
        Day(key="made_on", label=tr("Made on"), hint=tr("From its label; empty where nobody knows."),
            names=(tr("made on"),)),
        Day(key="in_service_on", label=tr("In service since"), names=(tr("in service since"),),
            hint=tr("A strap or rope with neither day is held until somebody knows its age.")),
        Day(key="borrowed_until", label=tr("Borrowed until"), names=(tr("borrowed until"),), more=True),
    )  # fmt: skip


def facts_in(office: Office, kind: Kind, given: Values) -> NewItem:
    """The booking that was typed."""
    return NewItem(
        tag=given.text("tag"),
        kind=kind.key,
        rating=rating_in(office, given),
        maker_mark=given.text("maker_mark"),
        serial=given.text("serial"),
        material=given.text("material"),
        sizes=sizes_in(kind, given),
        owner=given.text("owner"),
        place=given.text("place"),
        provenance=given.one("provenance", Provenance),
        made_on=given.day("made_on"),
        in_service_on=given.day("in_service_on"),
        kept_for=tuple(
            purpose for _, purpose in purposes() if kind.may(purpose) and given.tick(f"for {purpose.value}")
        ),
        note=given.text("note"),
        fixed_by=given.one("fixed_by", Fixing) if _has_bolts(kind) else Fixing.UNKNOWN,
        fitted_to=given.one("fitted_to", str),
        fitted_end=given.one("fitted_end", End),
        fitted_side=given.one("fitted_side", Side),
        from_whom=given.text("from_whom"),
        paper=given.text("paper"),
        borrowed_until=given.day("borrowed_until"),
    )


def _rating(kind: Kind, like: NewItem | None) -> tuple[Asked, ...]:
    basis = like.rating.basis if like else (kind.rated_by[0] if kind.rated_by else Basis.UNRATED)
    asked = rating_fields(memory=True, basis=basis)
    if like is None or like.rating.figure is None:
        return asked
    figure, factor = like.rating.figure.as_typed, like.rating.design_factor
    stands = {"rating": figure, "factor": f"{factor:g}" if factor else ""}
    return tuple(replace(one, stands=stands[one.key]) if isinstance(one, Line) and one.key in stands else one
                 for one in asked)  # fmt: skip


def _has_bolts(kind: Kind) -> bool:
    return any(one.key == BOLT_COUNT for one in kind.sizes)


def _fixing(kind: Kind) -> tuple[Asked, ...]:
    if not _has_bolts(kind):
        return ()
    hint = tr("A part that welds alone hold has no bolts to count.")
    return (OneOf(key="fixed_by", label=tr("Held by"), choices=fixings(), hint=hint, names=(tr("fixed by"),)),)


def _place(facts: FormFacts) -> tuple[Asked, ...]:
    vehicles: list[tuple[str, object]] = [(tr("on no vehicle"), "")]
    vehicles += [(f"{one.tag} {one.name}", one.tag) for one in facts.vehicles]
    return (
        Line(key="place", label=tr("Place"), example=tr("for example shelf 2")),
        OneOf(key="fitted_to", label=tr("Fitted to"), choices=vehicles, names=(tr("fitted to"),)),
        OneOf(key="fitted_end", label=tr("End of the vehicle"), choices=ends(), more=True),
        OneOf(key="fitted_side", label=tr("Side, as the driver sees it"), choices=sides(), more=True),
    )


def _uses(kind: Kind) -> tuple[Asked, ...]:
    """What it is kept for; nothing ticked leaves it all that its kind may do."""
    return tuple(
        Tick(key=f"for {purpose.value}", label=tr("Kept for: {purpose}", purpose=words),
             names=(tr("kept for"),), more=True)
        for words, purpose in purposes() if kind.may(purpose)
    )  # fmt: skip
