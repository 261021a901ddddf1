"""Print the record of a piece: its verdict with reasons, its pictures, and all that ever happened to it."""

from msgspec.structs import replace

from inspector.duties.judge_anew import judge_anew
from inspector.duties.look_up import open_item
from inspector.duties.named_pieces import kept_as
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.papers_named import papers_named
from inspector.duties.tell_damage import pin_wear, strap_damage
from inspector.duties.tell_life import life_of
from inspector.duties.tell_piece import piece_today
from inspector.duties.tell_seen import seen_in_full
from inspector.duties.tell_turns import turns_of
from inspector.gear.item_record import ItemRecord, Passed
from inspector.gear.judged import Judged
from inspector.gear.life import Life, LifeSort
from inspector.gear.papers import Imprint
from inspector.gear.verdict import Reason
from inspector.language import tr
from inspector.paper.item_record import item_record
from inspector.paper.page_style import PageSize
from inspector.rulebook.notice_words import with_names_as_stated

RECORD = "item_record"
_ELSEWHERE = {LifeSort.INSPECTION, LifeSort.PAPER}  # what these entries say stands in a list of its own


def print_record(office: Office, tag: str) -> Paper:
    """Number, keep and print the record of a piece as it stands now."""
    return _printed(office, enter_record(office, tag))


def print_record_again(office: Office, number: str) -> Paper:
    """Print a record again as it was kept, by its number."""
    unknown = tr("No record has the number {number}.", number=number)
    return _printed(office, kept_as(office, RECORD, number, ItemRecord, unknown))


def _printed(office: Office, record: ItemRecord) -> Paper:
    return put_out(office, record.imprint.number, item_record(record, PageSize(office.page)))


def enter_record(office: Office, tag: str) -> ItemRecord:
    """Number and keep the record; no file is written."""
    judge_anew(office)  # what time alone has changed belongs into it
    found = open_item(office, tag)
    told = _told(office, found)
    with office.book.page() as page:
        number = next_number(page, "P", RECORD)
        record = replace(told, imprint=imprint(office, page, tr("Record of a piece"), number), head=page.head())
        page.add_document(number, RECORD, office.today, found.dossier.item.id, record)
        facts = {"number": number, "tag": found.dossier.item.tag}
        page.enter("print record", by=office.officer.id, at=office.now, facts=facts)
    return record


def _told(office: Office, found: Judged) -> ItemRecord:
    """All of it but the number and the head, which only the deed itself knows."""
    dossier, verdict, words = found.dossier, found.verdict, found.explanation
    tag = dossier.item.tag
    return ItemRecord(
        imprint=Imprint("", "", "", office.today, "", (), ()),
        tag=tag,
        kind=dossier.kind.key,
        kind_name=dossier.kind.name,
        family=dossier.kind.family,
        outcome=verdict.outcome,
        judged_on=verdict.on,
        headline=words.headline,
        plain=words.plain,
        use_line=words.use_line,
        reasons=with_names_as_stated(words.reasons, verdict, dossier),
        turns=turns_of(office, found),
        piece=piece_today(office, found),
        sums=words.sums,
        passes=tuple(dict.fromkeys(map(_passed, with_names_as_stated(words.passes, verdict, dossier)))),
        terms=words.terms,
        wall=verdict.wall,
        capacity=verdict.capacity,
        life=_life(life_of(office, tag)),
        seen=seen_in_full(office, tag, dossier.kind),
        papers=papers_named(office, tag),
        head="",
        system=office.system,
        damage=strap_damage(dossier),
        pin=pin_wear(dossier),
    )


def _passed(one: Reason) -> Passed:
    return Passed(one.sentence, one.value, one.limit, one.source)


def _life(life: Life) -> Life:
    """Kept without the words that another list of the record has."""
    entries = (replace(one, says="") if one.sort in _ELSEWHERE else one for one in life.entries)
    return replace(life, entries=tuple(entries))
