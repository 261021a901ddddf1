"""Papers that go with the gear: labels, tags for what is not free for use, and the slip that a borrower signs."""

from inspector.desk.deeds.common import person
from inspector.desk.form.asked import Asked, Count, Line, OneOf, Tags
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties.form_facts import FormFacts
from inspector.duties.office import Office
from inspector.duties.print_labels import print_labels, print_labels_again
from inspector.duties.print_lending_slip import print_lending_slip, print_lending_slip_again
from inspector.duties.print_tags import print_tags, print_tags_again
from inspector.gear.label_sizes import LABEL_SIZES, size_words
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr
from inspector.refused import Refused

Pieces = tuple[str, ...]


def labels(tags: Pieces) -> Deed[Pieces]:
    """Print labels."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        if given.text("number"):
            paper = print_labels_again(office, given.text("number"))
        else:
            start = given.number("start")
            paper = print_labels(office, given.tags("tags"), given.one("size", str), 1 if start is None else start)
        return Done(tr("The labels are printed."), tr("Print them at full size, not fitted to the page."), (paper,))

    return Deed(
        "labels", tr("Labels"), tr("Print labels"),
        tr("A label says the tag, the kind and what is marked, and opens the record when it is scanned. It never says "
           "that a piece may be used."),
        lambda facts, about: (
            _tags(about),
            OneOf(key="size", label=tr("Size"), choices=[(size_words(one), one.key) for one in LABEL_SIZES]),
            Count(key="start", label=tr("First free place"), least=1, stands="1", names=(tr("start"),),
                  hint=tr("On a sheet that was begun: counted along the rows, from the top left.")),
            _number(),
        ),
        do, tr("Print"),
    )  # fmt: skip


def hold_tags(tags: Pieces, why_not: str = "") -> Deed[Pieces]:
    """Print tags for what is on hold, derated or retired. why_not: why this cannot be done, where that is known."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        number = given.text("number")
        paper = print_tags_again(office, number) if number else print_tags(office, given.tags("tags"))
        return Done(tr("The tags are printed."), tr("Cut them apart and tie each to its piece."), (paper,))

    return Deed(
        "hold tags", tr("Tag what is not free for use"), tr("Print hold and derating tags"),
        tr("For what is on hold, derated or retired: what it must not be used for, why, since when, and what ends it."),
        lambda facts, about: (_tags(about), _number()),
        do, tr("Print"), lambda _: why_not,
    )  # fmt: skip


def lending_slip(tags: Pieces, holder: str = "") -> Deed[Pieces]:
    """Print what a borrower signs. holder: the name of whoever has the pieces, where it is known."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        if given.text("number"):
            paper = print_lending_slip_again(office, given.text("number"))
        else:
            who, trip = given.one("holder", str), given.one("trip", str)
            if not who:
                why = tr("Nobody said whose slip it is.")
                raise Refused(tr("holder"), why, tr("Choose who has the pieces."))
            paper = print_lending_slip(office, who, given.tags("tags"), trip)
        return Done(tr("The lending slip is printed."), tr("Both sign it; the borrower gets a copy."), (paper,))

    return Deed(
        "lending slip", tr("Lending slip"), tr("Print a lending slip"),
        tr("All that one person has on loan, what each piece may be used for, and by when it is to be back, to be "
           "signed."),
        lambda facts, about: (
            _holder(facts, holder),
            Tags(key="tags", label=tr("Pieces"), stands=about, names=(tr("tag"), tr("tags"), tr("piece")),
                 hint=tr("All that the person has on loan, where none is written.")),
            OneOf(key="trip", label=tr("Trip"), choices=_trips(facts), more=True),
            _number(),
        ),
        do, tr("Print"),
    )  # fmt: skip


def of_labels(piece: Opened) -> Deed[Pieces]:
    """The label of one piece."""
    return labels((piece.tag,))


def of_tag(piece: Opened) -> Deed[Pieces]:
    """The tag of one piece, which is not free for use."""
    is_fit = piece.judged.verdict.outcome is Outcome.FIT
    return hold_tags((piece.tag,), tr("It is fit.") if is_fit else "")


def _holder(facts: FormFacts, name: str) -> OneOf:
    asked = person(facts, "holder", tr("Who has them"), names=(tr("holder"), tr("lending slip")))
    known = next((one.id for one in facts.people if one.name == name), "")
    return OneOf(key=asked.key, label=asked.label, choices=asked.choices, names=asked.names, stands=known)


def _trips(facts: FormFacts) -> list[tuple[str, object]]:
    named: list[tuple[str, object]] = [(tr("any trip, and none"), "")]
    return named + [(tr("{day}: {name}", day=show_day(one.first_on), name=one.name), one.ref) for one in facts.trips]


def _tags(stands: Pieces) -> Asked:
    return Tags(key="tags", label=tr("Pieces"), stands=stands, names=(tr("tag"), tr("tags"), tr("piece")),
                hint=tr("Scan or type their tags, with blanks between them."))  # fmt: skip


def _number() -> Asked:
    return Line(key="number", label=tr("Print again"), more=True, names=(tr("number"),),
                hint=tr("The number of one that was printed before; it is printed as it was then."))  # fmt: skip
