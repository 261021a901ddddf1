"""Write down a repair or a part put in place of another: the piece is held until a competent person has seen all of it.

A repair makes nothing milder by itself. A strange pin or weaker bolts lower what the piece is marked with; no part
raises it. Readings of the part before stand until the new one was read in full.
"""

from datetime import date

from msgspec.structs import replace

from inspector.duties.change_item import check_last, standing_retirement
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line, check_text
from inspector.duties.repair_rules import BOLTS_SOUND, PIN, check_work
from inspector.duties.who import check_not_closed, check_not_evidence, id_of
from inspector.gear.item import BOLT_COUNT, Item, NewItem, SizeAsNew
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.judged import Judged
from inspector.gear.ratings import is_written, lower_of
from inspector.gear.repair import NewRepair, Work
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page

_SAME_RATIO = 0.02  # a pin's diameter as listed in inches and in millimetres
_LENGTH, _BOLT_CLASS, _BOLT_DIAMETER = "length", "bolt_class", "bolt_diameter"
_REPLACES = {Work.PIN_AND_BOW: (PIN,), Work.BOLTS: (BOLTS_SOUND,)}


def repair_item(office: Office, tag: str, facts: NewRepair) -> Judged:
    """Keep the repair, and what it leaves of the piece's length, bolts or rating. facts.by: who writes it down.

    Refused: work that nobody may do on gear that carries a pull, work this kind cannot have, a piece that is retired,
    evidence, gone or destroyed. What the new part replaces is worked out here, never taken from the caller.
    """
    with office.book.page() as page:
        item = page.item(tag)
        check_not_closed(page, item)
        check_not_evidence(page, item)
        _check_here(page, item)
        _check_told(facts)
        _check_day(office, item, facts.on)
        check_work(item, office.kind(item.facts.kind), facts)
        if standing_retirement(office, page, item):
            why = tr("{tag} is retired, and no repair brings it back.", tag=item.tag)
            raise Refused(tr("piece"), why, tr("Make it unusable, and book another piece in."))
        left = after_work(item.facts, facts)
        by = id_of(office, page, facts.by, tr("written down by"))
        kept = replace(facts, by=by, replaces=_REPLACES.get(facts.work, ()))
        page.add_repair(item, kept)
        if left != item.facts:
            check_last(office, page, item)
            page.add_item_change(item, NewItemChange(office.today, Altered.REPAIRED, left, by, _why(kept)))
        outcome = judge_and_keep(office, page, item)
        page.enter("repair", by=office.officer.id, at=office.now, facts={"tag": item.tag, "as": kept})
    return outcome


def after_work(before: NewItem, done: NewRepair) -> NewItem:
    """What stands of the piece after the work: shorter, with weaker bolts or a lower rating, never more than before."""
    if done.work is Work.PIN_AND_BOW:
        return _with_pin(before, done)
    if done.work is Work.RESPLICED:
        return _respliced(before, done)
    return _with_bolts(before, done) if done.work is Work.BOLTS else before


def _with_pin(before: NewItem, done: NewRepair) -> NewItem:
    """The bow's marking stands for the pair only with the maker's own pin for it; else the lower one, or none."""
    pin, was = _size(done.sizes, PIN), _size(before.sizes, PIN)
    if pin is None or was is None:
        why = tr("The new pin's diameter is missing.")
        raise Refused(tr("pin diameter"), why, tr("Measure the new pin, for example “22 mm”."))
    if abs(pin.figure.si / was.figure.si - 1) > _SAME_RATIO:
        why = tr("The new pin is {new} and the pin before was {old}.", new=pin.figure.as_typed, old=was.figure.as_typed)
        what = tr("Put in a pin of the same size; a pin of another size belongs to another shackle.")
        raise Refused(tr("pin diameter"), why, what)
    if done.own and _is_same_maker(before, done):
        return before
    return replace(before, rating=lower_of(before.rating, done.rating))


def _is_same_maker(before: NewItem, done: NewRepair) -> bool:
    mark = before.maker_mark.strip().casefold()
    if not mark or mark != done.maker.strip().casefold():
        bears = before.maker_mark or tr("no maker's mark written down")
        why = tr("The pin bears “{pin}” and the bow “{bow}”.", pin=done.maker.strip() or tr("nothing"), bow=bears)
        what = tr("Write the maker's mark on the pin as it is on the bow, or say that it is not the maker's own pin.")
        raise Refused(tr("maker of the pin"), why, what)
    return True


def _respliced(before: NewItem, done: NewRepair) -> NewItem:
    """Shorter, and rated with what a paper says of the splice, never above its marking; without a paper not rated."""
    new, was = _size(done.sizes, _LENGTH), _size(before.sizes, _LENGTH)
    if new is None:
        why = tr("A line gets shorter by a splice, and its new length is missing.")
        raise Refused(tr("length"), why, tr("Measure it from eye to eye or end to end, for example “24.5 m”."))
    if was and new.figure.si >= was.figure.si:
        why = tr("{new} is not shorter than {old}.", new=new.figure.as_typed, old=was.figure.as_typed)
        raise Refused(tr("length"), why, tr("Measure it again; a line that gets no shorter was not spliced."))
    rating = lower_of(before.rating, done.rating)
    return replace(before, sizes=_with_size(before.sizes, new), rating=rating)


def _with_bolts(before: NewItem, done: NewRepair) -> NewItem:
    """As many and as thick as before; of a lower class where they are, and of none that is known where nobody says."""
    count, was = _size(done.sizes, BOLT_COUNT), _size(before.sizes, BOLT_COUNT)
    if count is None or was is None or count.figure.si != was.figure.si:
        why = tr("{tag} is held by {count} bolts.", tag=before.tag, count=was.figure.as_typed if was else "?")
        what = tr(
            "Renew what must be renewed and write how many hold it now; each hole takes its bolt. With the command: "
            "--size bolt_count={count}.",
            count=was.figure.as_typed if was else "4",
        )
        raise Refused(tr("number of bolts"), why, what)
    thick, thick_was = _size(done.sizes, _BOLT_DIAMETER), _size(before.sizes, _BOLT_DIAMETER)
    if thick and thick_was and abs(thick.figure.si / thick_was.figure.si - 1) > _SAME_RATIO:
        why = tr("{new} is not the bolts' {old}.", new=thick.figure.as_typed, old=thick_was.figure.as_typed)
        raise Refused(tr("bolt diameter"), why, tr("Use bolts of the size that the holes were made for."))
    return replace(before, sizes=_classed(before.sizes, done.sizes))


def _classed(before: tuple[SizeAsNew, ...], now: tuple[SizeAsNew, ...]) -> tuple[SizeAsNew, ...]:
    new, was = _size(now, _BOLT_CLASS), _size(before, _BOLT_CLASS)
    if was is None or (new is not None and new.figure.si >= was.figure.si):
        return before
    others = tuple(one for one in before if one.key != _BOLT_CLASS)
    return (*others, new) if new else others


def _size(sizes: tuple[SizeAsNew, ...], key: str) -> SizeAsNew | None:
    return next((one for one in sizes if one.key == key), None)


def _with_size(sizes: tuple[SizeAsNew, ...], new: SizeAsNew) -> tuple[SizeAsNew, ...]:
    return (*(one for one in sizes if one.key != new.key), new)


def _check_here(page: Page, item: Item) -> None:
    if page.whereabouts_of(item).where.is_gone:
        why = tr("{tag} is written down as gone.", tag=item.tag)
        raise Refused(tr("piece"), why, tr("If it is here again, write that down first."))


def _check_told(facts: NewRepair) -> None:
    for field, line in ((tr("done by"), facts.done_by), (tr("part"), facts.part), (tr("maker"), facts.maker)):
        check_line(field, line.strip())
    check_text(tr("note"), facts.note)
    if not facts.done_by.strip():
        why = tr("Nobody is named.")
        raise Refused(tr("done by"), why, tr("Write who did the work, for example the maker or a workshop."))
    if facts.work in {Work.PIN_AND_BOW, Work.HOOK_LATCH, Work.BOLTS} and not facts.part.strip():
        why = tr("The new part is not described.")
        raise Refused(tr("part"), why, tr("Write what was put in, with its marking: “pin 22 mm, marked …”."))
    if facts.work is Work.OTHER and not facts.note.strip():
        raise Refused(tr("note"), tr("It is empty."), tr("Write in a sentence what was done."))
    if facts.rating and not is_written(facts.rating):
        why = tr("A rating that is remembered, or of which nobody says what it is, is none.")
        what = tr("Write what stands on the part or its paper and whether it is a WLL or an MBS, or leave it out.")
        raise Refused(tr("rating"), why, what)


def _check_day(office: Office, item: Item, on: date) -> None:
    if not item.booked_on <= on <= office.today:
        why = tr("The day lies in the future or before the piece was booked in.")
        raise Refused(tr("day"), why, tr("Write the day of the work; what was done before belongs in the note."))


def _why(kept: NewRepair) -> str:
    return " ".join(one for one in (kept.part.strip(), kept.note.strip()) if one) or kept.work.value
