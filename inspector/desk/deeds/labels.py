"""What is written down of a piece anew: its tag, its rating, its owner, what it is worth, a note."""

from msgspec.structs import replace

from inspector.desk.deeds.common import by, people_line, person, second, told, why, with_second
from inspector.desk.deeds.words import bases, stated_on
from inspector.desk.form.asked import Asked, Line, Number, OneOf, Prose
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties import change_item
from inspector.duties.book_in import check_stated
from inspector.duties.office import Office
from inspector.duties.value_gear import read_worth
from inspector.gear.item import NewItem, Rating
from inspector.gear.kind import Basis
from inspector.language import tr
from inspector.units import Dimension, read


def rating_fields(*, memory: bool = False, basis: Basis = Basis.UNRATED) -> tuple[Asked, ...]:
    """The four fields of a rating; `rating_in` reads them."""
    return (
        OneOf(key="basis", label=tr("Rated by"), choices=bases(), stands=basis),
        Line(key="rating", label=tr("Rating"), example=tr("for example 4.75 t"),
             hint=tr("As it is marked, with its unit.")),
        Number(key="factor", label=tr("Design factor"), dimension=Dimension.FACTOR, names=(tr("design factor"),),
               hint=tr("Between a working load limit and failure, where it is known.")),
        OneOf(key="stated_on", label=tr("Where it stands"), choices=stated_on(memory=memory), names=(tr("stated on"),)),
    )  # fmt: skip


def rating_in(office: Office, given: Values) -> Rating:
    """The rating that was typed."""
    basis, text = given.one("basis", Basis), given.text("rating")
    dimension = Dimension.MASS if basis is Basis.TOWED_MASS else Dimension.FORCE
    figure = read(text, dimension, field=tr("Rating"), decimal=office.decimal) if text else None
    factor = given.figure("factor")
    rating = Rating(basis, figure, factor.si if factor else None, given.one("stated_on", str))
    check_stated(rating)
    return rating


def _seen(about: Opened) -> NewItem:
    return about.judged.dossier.item.facts


def _goes_on(about: Opened, seen: NewItem) -> Opened:
    """The same piece, with what somebody else wrote of it meanwhile."""
    dossier = about.judged.dossier
    known = replace(dossier, item=replace(dossier.item, facts=seen))
    return replace(about, judged=replace(about.judged, dossier=known))


def retag(piece: Opened) -> Deed[Opened]:
    """Another tag."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = change_item.retag(
            office, about.tag, given.text("new_tag"), given.text("why"), given.one("by", str), _seen(about)
        )
        return told(tr("{old} is {new} from now on.", old=about.tag, new=judged.dossier.item.tag), judged)

    return Deed(
        "retag", tr("Another tag"), tr("Give {tag} another tag", tag=piece.tag),
        tr("It stays the same piece: the tag before still finds it, and is never given to another one."),
        lambda facts, about: (
            Line(key="new_tag", label=tr("New tag"), needed=True, names=(tr("tag"),)),
            why(needed=True), by(facts, tr("written down by")),
        ),
        do, tr("Give it this tag"), goes_on=_goes_on,
    )  # fmt: skip


def label_lost(piece: Opened) -> Deed[Opened]:
    """The rating cannot be read any more."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = change_item.label_lost(office, about.tag, given.text("why"), given.one("by", str))
        return told(tr("The rating of {tag} counts for nothing from now on.", tag=about.tag), judged)

    return Deed(
        "label lost", tr("Its rating cannot be read any more"), tr("The rating on {tag} is lost", tag=piece.tag),
        tr("What is remembered of a rating is no rating. The piece is held until somebody competent reads it anew, on "
           "the piece or on its certificate."),
        lambda facts, about: (why(needed=True), by(facts, tr("written down by"))), do, tr("Write it down"),
    )  # fmt: skip


def label_anew(piece: Opened) -> Deed[Opened]:
    """The rating was read anew."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = change_item.label_anew(
            with_second(office, given), about.tag, rating_in(office, given), given.text("why"), given.one("by", str),
            given.one("second", str), _seen(about),
        )  # fmt: skip
        return told(tr("The rating of {tag} is written down.", tag=about.tag), judged)

    return Deed(
        "label anew", tr("Its rating was read anew"), tr("The rating of {tag} was read anew", tag=piece.tag),
        tr("A competent person reads it on the piece or on its certificate. More than was ever written down takes two. "
           "The piece is held until it is inspected."),
        lambda facts, about: (
            *rating_fields(basis=about.judged.dossier.item.rating.basis),
            why(needed=True),
            person(facts, "by", tr("Read by"), names=(tr("read by"),), nobody=tr("whoever is at the desk")),
            *second(facts),
        ),
        do, tr("Write it down"), goes_on=_goes_on,
    )  # fmt: skip


def owner(piece: Opened) -> Deed[Opened]:
    """Another owner."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = change_item.change_owner(
            with_second(office, given),
            about.tag,
            given.text("owner"),
            given.text("why"),
            given.one("by", str),
            given.one("second", str),
            _seen(about),
        )
        return told(tr("{tag} has another owner.", tag=about.tag), judged)

    return Deed(
        "change owner", tr("Another owner"), tr("{tag} has another owner", tag=piece.tag),
        tr("Whose it is from today on. Nobody hands his own gear over, or takes it, on his word alone."),
        lambda facts, about: (
            people_line(facts, "owner", tr("New owner"), needed=True, names=(tr("owner"),),
                        hint=tr("A person, another club, or {club}.", club=facts.club or tr("the club"))),
            why(needed=True),
            *second(facts),
            by(facts, tr("written down by")),
        ),
        do, tr("Write it down"), goes_on=_goes_on,
    )  # fmt: skip


def worth(piece: Opened) -> Deed[Opened]:
    """What it is worth."""
    stands = piece.judged.dossier.item.facts.worth

    def do(office: Office, about: Opened, given: Values) -> Done:
        text = given.text("value")
        amount = read_worth(text, office.decimal) if text else None
        judged = change_item.change_value(office, about.tag, amount, by=given.one("by", str), seen=_seen(about))
        return told(tr("The value of {tag} is written down.", tag=about.tag), judged)

    return Deed(
        "value", tr("What it is worth"), tr("What {tag} is worth", tag=piece.tag),
        tr("For the insurer. Leave it empty where nobody knows."),
        lambda facts, about: (
            Line(key="value", label=tr("Value"), example=tr("for example 120 EUR"), names=(tr("value"),),
                 stands=stands.as_typed if stands else ""),
            by(facts, tr("written down by")),
        ),
        do, tr("Write it down"), goes_on=_goes_on,
    )  # fmt: skip


def note(piece: Opened) -> Deed[Opened]:
    """Another note."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = change_item.change_note(office, about.tag, given.text("note"), given.one("by", str), _seen(about))
        return told(tr("The note of {tag} is written down.", tag=about.tag), judged)

    return Deed(
        "change note", tr("Another note"), tr("A note on {tag}", tag=piece.tag),
        tr("What stood before stays in the history."),
        lambda facts, about: (
            Prose(key="note", label=tr("Note"), stands=about.judged.dossier.item.facts.note),
            by(facts, tr("written down by")),
        ),
        do, tr("Write it down"), goes_on=_goes_on,
    )  # fmt: skip
