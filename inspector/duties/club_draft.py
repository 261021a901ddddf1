"""The club's own limits as a text that is being written: where it begins, and a limit put into it."""

from inspector.duties.club_settings import club_settings
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.language import tr
from inspector.refused import Refused

FILE = "club rules"  # as faults name it


def club_text(office: Office) -> str:
    """The text that the club adopted last; a head to begin with where it never adopted any."""
    with office.book.reading() as page:
        last = page.last_adoption()
    if last and last.text:
        return last.text
    club = club_settings(office).club
    return "\n".join(
        (f"club = {_quoted(club)}", 'title = "Our own limits"', f"from = {office.today.isoformat()}", 'why = ""', "")
    )


def with_limit(text: str, rule: str, limit: str, why: str) -> str:
    """The text with one more limit; refused where it has one for this rule already, or what is typed is no line."""
    for field, typed in ((tr("rule"), rule), (tr("limit"), limit)):
        if not typed.strip():
            raise Refused(field, tr("It is empty."), tr("Write it as the rulebook does, for example 6 %."))
    for field, typed in ((tr("rule"), rule), (tr("limit"), limit), (tr("why"), why)):
        check_line(field, typed.strip())
    name = f"rule = {_quoted(rule.strip())}"
    if any(line.strip() == name for line in text.splitlines()):
        said = tr("The text has an entry for “{rule}” already.", rule=rule.strip())
        raise Refused(tr("rule"), said, tr("Change the figure there."))
    lines = ["[[limit]]", name, f"limit = {_quoted(limit.strip())}"]
    lines += [f"why = {_quoted(why.strip())}"] if why.strip() else []
    return text.rstrip() + "\n\n" + "\n".join(lines) + "\n"


def _quoted(text: str) -> str:
    """A basic string of TOML."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
