"""Print one topic of the trainer's bench as a handout: numbered, kept, and told in the ledger."""

from msgspec.structs import replace

from inspector.duties.bench import HandoutAsked, begin_bench, work_bench
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.gear.bench import Worked
from inspector.gear.papers import Handout
from inspector.language import tr
from inspector.paper.handout import handout
from inspector.paper.page_style import PageSize
from inspector.register.page import Page

_KIND = "handout"


def print_handout(office: Office, asked: HandoutAsked) -> Paper:
    """Number, keep and print the handout. The sums are worked first: refused figures keep nothing."""
    worked = work_bench(office, asked.topic, asked.given)
    lent = _lent(office, asked)
    with office.book.page() as page:
        number = next_number(page, "T", _KIND)
        sheet = _sheet(office, page, worked, lent, number)
        page.add_document(number, _KIND, office.today, worked.title, sheet)
        facts = {"number": number, "title": worked.title, "topic": worked.topic, "tag": asked.tag}
        page.enter("print handout", by=office.officer.id, at=office.now, facts=facts)
    return put_out(office, number, handout(sheet, PageSize(office.page), office.system))


def _sheet(office: Office, page: Page, worked: Worked, lent: tuple[str, ...], number: str) -> Handout:
    made = imprint(office, page, tr("Why"), number)
    return Handout(replace(made, cautions=worked.cautions), worked, lent)


def _lent(office: Office, asked: HandoutAsked) -> tuple[str, ...]:
    """Which piece or vehicle the figures were begun from, and what stayed assumed."""
    if not asked.tag:
        return ()
    begun = begin_bench(office, asked.tag)
    preset = next((one for one in begun.presets if one.topic == asked.topic), None)
    return (tr("Begun from {tag}.", tag=begun.tag), *preset.said) if preset else ()
