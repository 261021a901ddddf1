"""The count: begin it, mark what a scanner wrote into a file, type a ticked list in."""

from inspector.desk.deeds.common import note
from inspector.desk.deeds.words import Choices
from inspector.desk.form.asked import Files, Line, OneOf, Prose
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.attach import read_file
from inspector.duties.form_facts import FormFacts
from inspector.duties.office import Office
from inspector.duties.print_count import type_list
from inspector.duties.take_stock import Scanned, begin_count, mark, tags_in
from inspector.duties.tell_count import CountTold, labels_words, not_counted_words
from inspector.gear.stock_take import Counted
from inspector.language import tr, tr_n
from inspector.refused import Refused

Places = tuple[str, ...]
_PLACE = "a place"  # no vehicle has such a tag: it holds a blank


def begin_counting(places: Places) -> Deed[Places]:
    """Begin a count. places: where the register has pieces."""

    def do(office: Office, about: Places, given: Values) -> Done:
        made = begin_count(office, given.text("ref"), _scope(given)).facts
        expected, away = len(made.expected), len(made.elsewhere)
        lines = [tr_n("{count} piece is to be looked for.", "{count} pieces are to be looked for.", expected)]
        if away:
            said = tr_n(
                "{count} piece is out or on a vehicle and not looked for here; it is listed under Elsewhere.",
                "{count} pieces are out or on a vehicle and not looked for here; they are listed under Elsewhere.",
                away,
            )
            lines.append(said)
        return Done(tr("The count {ref} is begun.", ref=given.text("ref")), "\n".join(lines))

    return Deed(
        "begin count", tr("Begin a count"), tr("Begin a count"),
        tr("The register notes what ought to be there. Then each piece is looked for and marked; only the close of the "
           "count changes where a piece is."),
        lambda facts, about: (
            Line(key="ref", label=tr("Called"), needed=True, example=tr("for example 2026-11"),
                 names=(tr("count"),)),
            OneOf(key="scope", label=tr("Counted is"), choices=_scopes(facts)),
            Line(key="place", label=tr("Place"), offers=about, names=(tr("place"),),
                 hint=tr("Where a place is counted: “Shed” holds “Shed, hook 1” and all else that begins so.")),
        ),
        do, tr("Begin it"),
    )  # fmt: skip


def _scopes(facts: FormFacts) -> Choices:
    cars: Choices = [(tr("the vehicle {tag} {name}", tag=one.tag, name=one.name), one.tag) for one in facts.vehicles]
    return [(tr("everything in store"), ""), (tr("one place"), _PLACE), *cars]


def _scope(given: Values) -> str:
    """What is counted; refused where a place is written and something else chosen, or the other way round."""
    chosen, place = given.one("scope", str), given.text("place")
    if chosen == _PLACE and not place:
        raise Refused(tr("place"), tr("No place is written."), tr("Write the place, or count everything."))
    if place and chosen != _PLACE:
        why = tr("A place is written, but it is not chosen that one place is counted.")
        raise Refused(tr("place"), why, tr("Choose “one place” above, or empty this line."))
    return place or chosen


def mark_file(told: CountTold) -> Deed[CountTold]:
    """Mark what a scanner wrote into a file."""

    def do(office: Office, about: CountTold, given: Values) -> Done:
        tags = [tag for file in given.files("file") for tag in tags_in(read_file(file), file.name)]
        found = mark(office, about.ref, tags, given.one("counted", Counted), given.text("place"), given.text("note"))
        return _marked(about.ref, (found,))

    return Deed(
        "mark file", tr("Mark the tags of a file"), tr("Mark the tags of a file in the count {ref}", ref=told.ref),
        tr("For a scanner that writes tags into a text file, with blanks or line ends between them. A label that no "
           "piece has is kept with the count."),
        lambda facts, about: (
            Files(key="file", label=tr("File"), needed=True, one=True, names=(tr("file"), tr("tag"))),
            OneOf(key="counted", label=tr("Mark them"), choices=counted_choices()),
            Line(key="place", label=tr("They lie at"), names=(tr("place"),),
                 hint=tr("Where they lie, if it is another place, or the tag of their vehicle.")),
            note(),
        ),
        do, tr("Mark them"),
    )  # fmt: skip


def type_ticked(told: CountTold) -> Deed[CountTold]:
    """Type a ticked list in."""

    def do(office: Office, about: CountTold, given: Values) -> Done:
        labels = [line.strip() for line in given.text("labels").splitlines() if line.strip()]
        found = type_list(office, given.text("number"), given.text("present"), given.text("absent"), labels)
        return _marked(about.ref, found)

    return Deed(
        "type list", tr("Type a ticked list in"), tr("Type a ticked list in"),
        tr("The number stands at the head of the list. A line without a tick stays not looked for."),
        lambda facts, about: (
            Line(key="number", label=tr("Number of the list"), needed=True, stands=about.list_number,
                 names=(tr("list"),)),
            Line(key="present", label=tr("Ticked as there"), example=tr("for example 1-14, 16"),
                 names=(tr("present"), tr("lines"))),
            Line(key="absent", label=tr("Ticked as not there"), example=tr("for example 15"), names=(tr("absent"),)),
            Prose(key="labels", label=tr("Labels written in by hand"), hint=tr("One to a line."),
                  names=(tr("tag"),)),
        ),
        do, tr("Keep the ticks"),
    )  # fmt: skip


def counted_choices() -> Choices:
    """How a piece may be marked."""
    return [
        (tr("seen"), Counted.PRESENT),
        (tr("not there"), Counted.ABSENT),
        (tr("take the mark back"), Counted.UNKNOWN),
    ]


def scanned_words(found: Scanned) -> tuple[str, ...]:
    """What is to be known of a scan beside its marks: labels without a piece, what is not counted, what is apart."""
    lines = [labels_words(found.labels)] if found.labels else []
    lines += [not_counted_words(one) for one in found.not_counted]
    return (*lines, *(f"{one.tag}: {one.why} {one.what_to_do}" for one in found.told))


def _marked(ref: str, found: tuple[Scanned, ...]) -> Done:
    count = sum(len(one.kept) for one in found)
    head = tr_n("One piece is marked in the count {ref}.", "{count} pieces are marked in the count {ref}.", count,
                ref=ref)  # fmt: skip
    return Done(head, "\n".join(line for one in found for line in scanned_words(one)))
