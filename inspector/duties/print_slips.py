"""Slips for pieces of which something is due: to tie to the piece, or to hand to whoever has it."""

from collections.abc import Iterator
from datetime import date

from inspector.duties.due_days import is_lost
from inspector.duties.due_views import at_place, of_person
from inspector.duties.judge_anew import judge_anew
from inspector.duties.letter_words import Asking, asking, is_asked_for, letter_lines, may_use, must_stay, says
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.papers_named import SLIPS_ABOUT
from inspector.duties.print_letters import LETTER, check_bring
from inspector.duties.what_falls_due import Held, held, last_day, what_falls_due
from inspector.gear.letters import DueSlip, SlipSheet
from inspector.gear.whereabouts import Where
from inspector.language import tr
from inspector.paper.due_slips import due_slips
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.register.rows import from_body
from inspector.rulebook.words import marked_words


def print_slips(
    office: Office,
    *,
    until: date | None = None,
    name: str = "",
    place: str = "",
    bring_to: str = "",
    bring_by: date | None = None,
) -> Paper:
    """Number, keep and print the slips of all pieces, or of those of a person or at a place."""
    made = enter_slips(office, until=until, name=name, place=place, bring_to=bring_to, bring_by=bring_by)
    return _printed(office, made)


def print_slips_again(office: Office) -> Paper:
    """Print the last sheet of slips as it was kept."""
    with office.book.reading() as page:
        kept = page.latest_document(LETTER, SLIPS_ABOUT)
    if kept is None:
        raise Refused(tr("slips"), tr("No slips were printed yet."), tr("Print them for the first time."))
    return _printed(office, from_body(kept[1], SlipSheet))


def _printed(office: Office, sheet: SlipSheet) -> Paper:
    return put_out(office, sheet.imprint.number, due_slips(sheet, PageSize(office.page)))


def enter_slips(
    office: Office,
    *,
    until: date | None = None,
    name: str = "",
    place: str = "",
    bring_to: str = "",
    bring_by: date | None = None,
) -> SlipSheet:
    """Number and keep the slips; no file is written."""
    last = last_day(office, until)
    bring = check_bring(office, bring_to, bring_by)
    judge_anew(office)  # no slip may say what time alone has ended
    wanted = _wanted(office, last, name, place)
    with office.book.page() as page:
        keys = [one.id for one in page.items(sorted(wanted)).values()]
        pieces = tuple(one for one in held(office, page, keys) if not is_lost(one.where))
        ask = asking(page, pieces, office.today, last, bring_by)
        slips = tuple(_slip(one, ask, bring) for one in pieces)
        if not slips:
            raise Refused(tr("slips"), tr("Nothing of these pieces is due."), tr("No slip is needed."))
        number = next_number(page, "L", LETTER)
        sheet = SlipSheet(imprint(office, page, tr("Slips"), number), slips)
        page.add_document(number, LETTER, office.today, SLIPS_ABOUT, sheet)
        facts = {"number": number, "tags": [one.tag for one in slips]}
        page.enter("print slips", by=office.officer.id, at=office.now, facts=facts)
    return sheet


def _wanted(office: Office, last: date, name: str, place: str) -> set[str]:
    """The tags of which anything is due, of a person or place where one is named."""
    lines = what_falls_due(office, last)
    if name:
        lines = of_person(office, lines, name)
    if place:
        lines = at_place(office, lines, place)
    return {one.about for one in lines if one.what.is_of_piece}


def _slip(one: Held, ask: Asking, bring: tuple[str, str]) -> DueSlip:
    return DueSlip(
        tag=one.item.tag,
        kind_name=one.kind_name,
        marked=marked_words(one.item),
        may_use=may_use(one),
        says=says(one) if may_use(one) else one.words.headline,
        due=letter_lines(ask.of(one), ask.today),
        concerns="; ".join((*(person.name for person in one.people), one.place)),
        do=" ".join(_asked(one, ask, bring)),
    )


def _asked(one: Held, ask: Asking, bring: tuple[str, str]) -> Iterator[str]:
    """What is asked: to leave it, to bring it or its vehicle, or to tell the officer who looks after the store."""
    place, day = bring
    if stays := must_stay(one, ask):
        yield stays
    elif is_asked_for(one, ask):
        if one.where.where is Where.ON_VEHICLE:
            yield tr("Bring the vehicle {tag}; leave the part on it.", tag=one.where.at)
        yield tr("To: {place}.", place=place or tr("the equipment officer"))
        if day:
            yield tr("By: {day}.", day=day)
