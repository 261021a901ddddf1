"""Write down anew the maker's mark and serial that somebody competent read on a piece."""

from msgspec.structs import replace

from inspector.duties.call_in import hold_late
from inspector.duties.change_item import check_last
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line, check_text
from inspector.duties.who import check_judge, check_name_counts, check_not_closed, check_not_evidence, person_of
from inspector.gear.item import Item, NewItem
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.judged import Judged
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


def read_marks(office: Office, tag: str, mark: str, serial: str, why: str, *, by: str = "") -> Judged:
    """Keep the marks as read; what is empty stays as it is. Held at once where a recall may mean the piece now.

    A recall that it stands under already is answered by `not_of_it` alone. by: the officer where nobody is named.
    """
    check_line(tr("maker's mark"), mark)
    check_line(tr("serial"), serial)
    with office.book.page() as page:
        item = page.item(tag)
        check_not_closed(page, item)
        check_not_evidence(page, item)
        field = tr("read by")
        reader = person_of(page, by or office.officer.id, field)
        check_name_counts(office, page, reader, field)
        check_judge(reader, item, office.kind(item.facts.kind), office.today, field)
        facts = replace(
            item.facts, maker_mark=mark.strip() or item.facts.maker_mark, serial=serial.strip() or item.facts.serial
        )
        if facts == item.facts:
            raise Refused(tr("serial"), tr("Nothing would change."), tr("Write what is different now."))
        item = keep_marks(office, page, item, facts, reader.id, why.strip())
        hold_late(office, page, [item])
        outcome = judge_and_keep(office, page, item)
        said = {"tag": item.tag, "mark": facts.maker_mark, "serial": facts.serial, "by": reader.id, "why": why.strip()}
        page.enter("read marks", by=office.officer.id, at=office.now, facts=said)
    return outcome


def keep_marks(office: Office, page: Page, item: Item, facts: NewItem, reader: str, why: str) -> Item:
    """Keep the change on an open page; the piece as it is written down from today on."""
    if not why:
        raise Refused(tr("reason"), tr("It is empty."), tr("Write in a sentence why it is changed."))
    check_text(tr("reason"), why)
    check_last(office, page, item)
    page.add_item_change(item, NewItemChange(office.today, Altered.MARKS, facts, reader, why))
    return replace(item, facts=facts)
