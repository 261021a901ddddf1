"""The club's own limits as a text that is being written: where it begins, and a limit put into it."""

from inspector.duties.adopt_rulebook import check_rulebook
from inspector.duties.club_settings import club_settings
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.rulebook_in_force import fault_words
from inspector.gear.rulebooks import BookFound, Change
from inspector.language import tr
from inspector.refused import Refused
from inspector.rulebook.club_texts import decoded, read_text
from inspector.rulebook.load import packaged

FILE = "club rules"  # as faults name it
_LONE_HEAD = 'club = "–"\ntitle = "–"\nfrom = 2026-01-01\nwhy = "–"\n'  # for an entry that is looked at by itself


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
    """The text with one more limit. rule: the name of a rule or of a setting.

    Refused where it has one already, where what is typed is no line, and where no club may set it so.
    """
    for field, typed in ((tr("rule"), rule), (tr("limit"), limit)):
        if not typed.strip():
            raise Refused(field, tr("It is empty."), tr("Write it as the rulebook does, for example 6 %."))
    for field, typed in ((tr("rule"), rule), (tr("limit"), limit), (tr("why"), why)):
        check_line(field, typed.strip())
    weighed(rule, limit, why)
    if any(line.strip() == _entry(rule, limit, why)[1] for line in text.splitlines()):
        said = tr("The text has an entry for “{rule}” already.", rule=rule.strip())
        raise Refused(tr("rule"), said, tr("Change the figure there."))
    return text.rstrip() + "\n\n" + "\n".join(_entry(rule, limit, why)) + "\n"


def weighed(rule: str, limit: str, why: str) -> Change:
    """How one figure stands to the packaged one; refused, with how far it may go, where no club may set it so."""
    found = _alone(rule, limit, why)
    if found.faults and not why.strip() and not _alone(rule, limit, "–").faults:
        raise Refused(tr("why"), found.faults[0].says, tr("Say in one line why the club loosens it."))
    if found.faults:
        fault = found.faults[0]
        is_name = fault.line == len((_LONE_HEAD + "[[limit]]\n").splitlines()) + 1
        field, way = (tr("rule"), tr("Take its name from the list of rules.")) if is_name else (
            tr("limit"), tr("Type another figure; nothing was put into the text."))  # fmt: skip
        raise Refused(field, fault.says, way)
    return found.changes[0]


def _alone(rule: str, limit: str, why: str) -> BookFound:
    return check_rulebook((_LONE_HEAD + "\n".join(_entry(rule, limit, why))).encode(), FILE)


def _entry(rule: str, limit: str, why: str) -> list[str]:
    """The lines of one entry, its name in the second; what is no setting is taken for a rule."""
    part, name, figure = ("limit", "rule", "limit")
    if rule.strip() in packaged().setting_texts:
        part, name, figure = ("setting", "key", "value")
    lines = [f"[[{part}]]", f"{name} = {_quoted(rule.strip())}", f"{figure} = {_quoted(limit.strip())}"]
    return lines + ([f"why = {_quoted(why.strip())}"] if why.strip() else [])


def with_profile(text: str, name: str) -> str:
    """The text that takes a packaged set too; refused where it has it already, or where its line cannot be changed."""
    names = read_text(text, FILE).profiles
    if name in names:
        raise Refused(tr("Set"), tr("The text takes “{name}” already.", name=name), tr("Choose another one."))
    taken = f"profile = [{', '.join(_quoted(one) for one in (*names, name))}]"
    lines = text.splitlines()
    head = next((at for at, line in enumerate(lines) if line.lstrip().startswith("[")), len(lines))
    stands = next((at for at, line in enumerate(lines[:head]) if line.split("=")[0].strip() == "profile"), None)
    made = [*lines[:head], taken, "", *lines[head:]]
    if stands is not None:
        made = [*lines[:stands], taken, *lines[stands + 1 :]]
    new = "\n".join(made) + "\n"
    if read_text(new, FILE).profiles != (*names, name):
        why = tr("The line of its sets cannot be changed from here.")
        raise Refused(tr("Set"), why, tr("Check the text first, or write the name into that line yourself."))
    return new


def setting_names() -> tuple[str, ...]:
    """The settings that a club may set, by their names."""
    return tuple(key for key, one in packaged().setting_texts.items() if one.stricter)


def text_of(body: bytes, file: str) -> str:
    """The text of a file's bytes; refused where it cannot be read whole, so that no sign of it is silently lost."""
    text, faults = decoded(body, file)
    if faults:
        raise Refused(tr("file"), fault_words(faults[0]), tr("Save it as UTF-8 text and open it again."))
    return text


def _quoted(text: str) -> str:
    """A basic string of TOML."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
