"""What cannot be entered of a recall, and how one is called."""

from inspector.duties.incident_checks import need
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line, check_text
from inspector.duties.recall_marks import is_readable, parts_of
from inspector.duties.recall_match import says_which
from inspector.gear.recall_notice import Meant, NewRecall, Recall
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page


def check_recall(office: Office, facts: NewRecall) -> None:
    """Refuse what cannot be, by its field."""
    check_meant(office, facts.meant)
    what = tr("Write what is known of these pieces, and from whom.")
    if not facts.reason.strip():
        raise Refused(tr("reason"), tr("Nobody stops using a piece without knowing why."), what)
    check_text(tr("reason"), facts.reason)
    check_text(tr("remedy"), facts.remedy)
    check_line(tr("source"), facts.source)
    if facts.issued and facts.issued > office.today:
        raise Refused(
            tr("day of the notice"), tr("The day lies in the future."), tr("Write the day that stands on it.")
        )


def check_meant(office: Office, meant: Meant) -> None:
    """Refuse what would mean nothing, or everything."""
    for field, text in (
        (tr("maker's mark"), meant.mark),
        (tr("first serial"), meant.first),
        (tr("last serial"), meant.last),
        *((tr("batch"), one) for one in meant.batches),
    ):
        check_line(field, text)
        if text.strip() and not is_readable(text):
            why = tr("“{text}” tells no piece from another.", text=text)
            raise Refused(field, why, tr("Write it as it stands in the notice, or leave it empty."))
    for key in meant.kinds:
        office.kind(key)
    if not meant.tags and not (meant.mark.strip() or meant.kinds):
        why = tr("Neither a maker's mark nor a kind of gear nor a piece is named.")
        raise Refused(tr("maker's mark"), why, tr("Write what the notice says of its pieces."))
    if says_which(meant):
        _check_range(meant)
    if meant.made_from and meant.made_until and meant.made_from > meant.made_until:
        why = tr("The first day of making lies after the last.")
        raise Refused(tr("made until"), why, tr("Write the days as they stand in the notice."))


def _check_range(meant: Meant) -> None:
    ends = {tr("first serial"): meant.first, tr("last serial"): meant.last}
    for field, text in ends.items():
        if text and parts_of(text) is None:
            why = tr("No figure stands in “{text}”, so nothing can be said to lie beyond it.", text=text)
            raise Refused(field, why, tr("Write it as a batch, or write the serials as they stand in the notice."))
    first, last = parts_of(meant.first), parts_of(meant.last)
    if first is None or last is None:
        return
    if (first.before, first.after) != (last.before, last.after):
        why = tr("“{first}” and “{last}” are not counted in one row.", first=meant.first, last=meant.last)
        raise Refused(tr("last serial"), why, tr("Enter a recall for each row of serials."))
    if first.number > last.number:
        why = tr("“{last}” comes before “{first}”.", first=meant.first, last=meant.last)
        raise Refused(tr("last serial"), why, tr("Write the lower one first."))


def recall_called(page: Page, ref: str, *, is_open: bool = False) -> Recall:
    """The recall with this reference, in any case. is_open: refused where it is closed or was withdrawn."""
    known = page.recalls()
    wanted = need(tr("recall"), ref, tr("Write its reference.")).casefold()
    found = next((one for one in known if one.ref.casefold() == wanted), None)
    if found is None:
        why = tr("No recall has the reference “{ref}”.", ref=ref.strip())
        refs = ", ".join(one.ref for one in known) or tr("none yet")
        raise Refused(tr("recall"), why, tr("Use one of: {refs}.", refs=refs))
    if is_open:
        _check_open(page, found)
    return found


def check_not_withdrawn(page: Page, recall: Recall) -> None:
    """Refuse what is only said of a recall that stands."""
    if said := page.withdrawal_of(recall):
        why = tr("{ref} was withdrawn on {day}.", ref=recall.ref, day=show_day(said.on))
        raise Refused(tr("recall"), why, tr("If the notice counts after all, enter it as a recall of its own."))


def _check_open(page: Page, found: Recall) -> None:
    check_not_withdrawn(page, found)
    if page.is_recall_closed(found):
        why = tr("{ref} is closed.", ref=found.ref)
        raise Refused(tr("recall"), why, tr("Enter what is new as a recall of its own."))
