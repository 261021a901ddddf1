"""A new day: judge again the pieces whose verdict time alone may have changed."""

from inspector.duties.office import Office
from inspector.gear.seats import Role
from inspector.language import tr, tr_n
from inspector.refused import Refused


def judge_anew(office: Office) -> tuple[str, ...]:
    """Judge every piece whose `holds_until` has come; one ledger line for all of them. Returns their tags.

    Refused for a login that may only read: what it would read of these pieces holds no longer.
    """
    with office.book.reading() as page:
        if not page.is_judging_due(office.today):
            return ()
        if office.book.role is Role.READER:
            raise _waits(len(page.due_for_judging(office.today)))
    from inspector.duties.judging import judge_and_keep_all  # here: on most days, and at most starts, nothing is due

    with office.book.page() as page:
        due = page.due_for_judging(office.today)
        tags = tuple(one.dossier.item.tag for one in judge_and_keep_all(office, page, due))
        page.enter("judge anew", by=office.officer.id, at=office.now, facts={"tags": tags})
    return tags


def _waits(count: int) -> Refused:
    why = tr_n(
        "The verdict of one piece no longer holds, and this login may not judge it anew.",
        "The verdicts of {count} pieces no longer hold, and this login may not judge them anew.",
        count,
    )
    way = tr("Let an officer or a member of the club open the register today; then it can be read.")
    return Refused(tr("register"), why, way)
