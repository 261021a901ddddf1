"""A new day: judge again the pieces whose verdict time alone may have changed."""

from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office, told_of
from inspector.gear.judged import Judged


def judge_anew(office: Office) -> tuple[Judged, ...]:
    """Judge every piece whose `holds_until` has come; one ledger line for all of them. Returns what was judged."""
    with office.book.reading() as page:
        if not page.due_for_judging(office.today):
            return ()
    with office.book.page() as page:
        due = page.due_for_judging(office.today)
        outcomes = tuple(judge_and_keep(office, page, item) for item in told_of(office, due))
        tags = [one.dossier.item.tag for one in outcomes]
        page.enter("judge anew", by=office.officer.id, at=office.now, facts={"tags": tags})
    return outcomes
