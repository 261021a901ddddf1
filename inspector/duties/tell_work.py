"""Tell what was done to a piece or changed of its booking, and which files were put in, as rows of its history."""

from collections.abc import Callable, Mapping

from inspector.gear.attachment import NewAttachment, PaperKind
from inspector.gear.item import Item, NewItem
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.lists import HistoryRow
from inspector.gear.repair import NewRepair, Work
from inspector.language import show_day, tr
from inspector.register.history import HistoryLine
from inspector.register.rows import from_body
from inspector.rulebook.words import marked_words


def work_word(work: Work) -> str:
    """What was done, in words."""
    words = {
        Work.PIN_AND_BOW: tr("another pin put in"),
        Work.HOOK_LATCH: tr("another hook latch put in"),
        Work.RESPLICED: tr("spliced anew"),
        Work.BOLTS: tr("bolts renewed"),
        Work.GALVANISED: tr("galvanised anew"),
        Work.CLEANED: tr("cleaned"),
        Work.OTHER: tr("other work"),
    }
    return words.get(work, work.value)


def paper_word(kind: PaperKind) -> str:
    """What a file is, in words."""
    return {
        PaperKind.CERTIFICATE: tr("certificate"),
        PaperKind.RECEIPT: tr("receipt"),
        PaperKind.INSTRUCTIONS: tr("instructions"),
        PaperKind.PHOTO: tr("photo"),
        PaperKind.STATEMENT: tr("statement"),
        PaperKind.REPORT: tr("report"),
        PaperKind.OTHER: tr("other paper"),
    }[kind]


def file_words(facts: NewAttachment) -> str:
    """What a kept file is, since when it is there, and what was noted of it."""
    said = tr("{what}, {day}", what=paper_word(facts.kind), day=show_day(facts.on))
    return f"{said}. {facts.note}" if facts.note else said


def repaired(line: HistoryLine, names: Mapping[str, str]) -> HistoryRow:
    """A repair: what, with which part, done by whom; who wrote it down."""
    done = from_body(line.body, NewRepair)
    rating = tr("marked {marked}", marked=done.rating.figure.as_typed) if done.rating and done.rating.figure else ""
    parts = [work_word(done.work), done.part, rating, *(one.figure.as_typed for one in done.sizes), done.note]
    text = tr("{what} (done by {who})", what="; ".join(one for one in parts if one), who=done.done_by)
    return HistoryRow(line.on, tr("Repair"), text, names.get(done.by, done.by))


def altered(line: HistoryLine, names: Mapping[str, str]) -> HistoryRow:
    """A change of the booking: what stands since, and why."""
    facts = from_body(line.body, NewItemChange)
    who = ", ".join(names.get(one, one) for one in (facts.by, facts.second) if one)
    stands, why = _stands(facts.what, facts.item, line), facts.why
    return HistoryRow(line.on, tr("Written down anew"), f"{stands}: {why}" if why else stands, who)


def attached(line: HistoryLine, names: Mapping[str, str]) -> HistoryRow:
    """A file that was put in."""
    facts = from_body(line.body, NewAttachment)
    text = f"{paper_word(facts.kind)} “{facts.name}”" + (f". {facts.note}" if facts.note else "")
    return HistoryRow(line.on, tr("File"), text, names.get(facts.by, facts.by))


def _stands(what: Altered, item: NewItem, line: HistoryLine) -> str:
    marked = marked_words(Item(line.key, line.on, item))
    worth = item.worth.as_typed if item.worth else tr("not known")
    return {
        Altered.TAG: tr("its tag is {tag} since", tag=item.tag),
        Altered.LABEL_LOST: tr("its rating cannot be read any more"),
        Altered.LABEL_NEW: tr("its rating was read anew: {marked}", marked=marked),
        Altered.OWNER: tr("it belongs to {owner} since", owner=item.owner),
        Altered.VALUE: tr("its value is {worth}", worth=worth),
        Altered.VISIT: tr("it comes along on {trip} alone", trip=item.visiting_for),
        Altered.NOTE: tr("its note is “{note}”", note=item.note),
        Altered.MARKS: tr("its marks were read as “{marks}”", marks=f"{item.maker_mark} {item.serial}".strip()),
        Altered.REPAIRED: tr("after the repair it counts as {marked}", marked=marked),
    }[what]


TOLD: Mapping[str, Callable[[HistoryLine, Mapping[str, str]], HistoryRow]] = {
    "repair": repaired,
    "item_change": altered,
    "attachment": attached,
}
