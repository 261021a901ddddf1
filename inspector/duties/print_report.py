"""Print the report on all the gear, for the club's meeting or an insurer."""

from datetime import date

from inspector.duties.forecast_ends import endings, horizon_after
from inspector.duties.judge_anew import judge_anew
from inspector.duties.named_pieces import kept_as
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.report_facts import ages, all_counts, found_for, kind_counts
from inspector.duties.report_tables import tables
from inspector.duties.report_words import answer, buy, decide
from inspector.gear.register_report import RegisterReport
from inspector.language import show_day, tr
from inspector.paper.page_style import PageSize
from inspector.paper.register_report import register_report
from inspector.refused import Refused
from inspector.register.page import Page

REPORT = "register_report"
_ABOUT = "report"


def print_report(office: Office, since: date | None = None) -> Paper:
    """Number, keep and print the report. since: what changed is told from this day on, a year back where none is."""
    return _printed(office, enter_report(office, since))


def print_report_again(office: Office, number: str = "") -> Paper:
    """Print a report again as it was kept, by its number; the last one where none is given."""
    with office.book.reading() as page:
        last = page.latest_document(REPORT, _ABOUT)
    wanted = number or (last[0] if last else "")
    if not wanted:
        raise Refused(tr("number"), tr("No report was printed yet."), tr("Print it for the first time."))
    unknown = tr("No report has the number {number}.", number=wanted)
    return _printed(office, kept_as(office, REPORT, wanted, RegisterReport, unknown))


def _printed(office: Office, report: RegisterReport) -> Paper:
    return put_out(office, report.imprint.number, register_report(report, PageSize(office.page)))


def enter_report(office: Office, since: date | None = None) -> RegisterReport:
    """Number and keep the report; no file is written."""
    day = since or year_before(office.today)
    if day > office.today:
        raise Refused(tr("since"), tr("{day} is still to come.", day=show_day(day)), tr("Write a day up to today."))
    judge_anew(office)  # what time alone has changed belongs into it
    with office.book.page() as page:
        report = _report(office, page, day, next_number(page, "Y", REPORT))
        page.add_document(report.imprint.number, REPORT, office.today, _ABOUT, report)
        facts = {"number": report.imprint.number, "since": day.isoformat()}
        page.enter("print report", by=office.officer.id, at=office.now, facts=facts)
    return report


def year_before(today: date) -> date:
    """The same day a year ago."""
    return today.replace(year=today.year - 1, day=min(today.day, 28))


def _report(office: Office, page: Page, since: date, number: str) -> RegisterReport:
    found = found_for(office, page, since)
    ends, kinds = endings(office, found.pieces), kind_counts(found)
    lists, every = tables(found, ends), all_counts(kinds)
    return RegisterReport(
        imprint=imprint(office, page, tr("Report on the recovery gear"), number),
        since=since,
        all=every,
        answer=answer(found, every, lists[0]),
        decide=decide(found),
        buy=buy(found, ends),
        kinds=kinds,
        ages=ages(found),
        endings=ends,
        horizon=horizon_after(office.today),
        tables=lists,
    )
