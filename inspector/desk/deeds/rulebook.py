"""The club's own limits: one put into the text, the text adopted, the packaged rulebook taken again."""

from collections.abc import Callable
from datetime import date

from msgspec import Struct

from inspector.desk.deeds.common import on_day, why
from inspector.desk.form.asked import Asked, Line, OneOf, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.rules.rule_words import change_words
from inspector.duties.adopt_rulebook import adopt_rulebook, drop_rulebook
from inspector.duties.club_draft import FILE, setting_names, weighed, with_limit, with_profile
from inspector.duties.office import Office
from inspector.duties.tell_rules import list_profiles
from inspector.language import show_day, tr
from inspector.refused import Refused


class Compared(Struct, frozen=True):
    """A text that was compared, empty for the packaged rulebook, and the pieces that it retires at once.

    from_on: the day that the text itself names.
    """

    text: str
    retires: tuple[str, ...]
    from_on: date | None = None


def limit(text: str, rule: str, kept: Callable[[str], object]) -> Deed[str]:
    """Put a limit into the text. kept: told the new text, in the worker."""

    def do(office: Office, about: str, given: Values) -> Done:
        typed = given.text("rule"), given.text("limit"), given.text("why")
        kept(with_limit(about, *typed))
        way = tr("Nothing is adopted yet: check it, then compare.")
        return Done(tr("The limit stands in the text."), f"{change_words(weighed(*typed))}\n{way}")

    return Deed(
        "club limit", tr("Another limit"), tr("A limit of the club's own"),
        tr("A looser limit needs its reason, and is marked as loosened on every document."),
        lambda facts, about: (
            Line(key="rule", label=tr("Rule or setting"), needed=True, stands=rule, names=(tr("rule"),),
                 offers=setting_names(), hint=tr("Its name; that of a rule as the list has it.")),
            Line(key="limit", label=tr("New limit"), needed=True, names=(tr("limit"),),
                 example=tr("for example 6 %"), hint=tr("With its unit, as the rule has it.")),
            why(hint=tr("One line.")),
        ),
        do, tr("Put it into the text"),
    )  # fmt: skip


def packaged_set(kept: Callable[[str], object]) -> Deed[str]:
    """Take a packaged set into the text. kept: told the new text, in the worker."""

    def do(office: Office, about: str, given: Values) -> Done:
        kept(with_profile(about, given.one("set", str)))
        return Done(tr("The set stands in the text."), tr("Nothing is adopted yet: check it, then compare."))

    sets = list_profiles()
    return Deed(
        "club set", tr("A packaged set"), tr("Take a packaged set"),
        "\n".join(tr("{name}: {says} [{source}]", name=name, says=says, source=source) for name, says, source in sets),
        lambda facts, about: (
            OneOf(key="set", label=tr("Set"), choices=[(name, name) for name, _, _ in sets], needed=True),
        ),
        do, tr("Put it into the text"),
    )  # fmt: skip


def adopt(compared: Compared) -> Deed[Compared]:
    """Adopt the text that was compared."""

    def do(office: Office, about: Compared, given: Values) -> Done:
        _check_known(about, given)
        day, count = given.day("on"), len(about.retires)
        if about.text:
            kept = adopt_rulebook(office, about.text.encode(), FILE, day, count)
        else:
            kept = drop_rulebook(office, day, count)
        return Done(tr("It holds from {day}.", day=show_day(kept.from_on)),
                    tr("Past verdicts keep the rulebook of their day."))  # fmt: skip

    title = tr("Adopt the club's own limits") if compared.text else tr("Go back to the packaged rulebook")
    return Deed(
        "adopt rulebook", title, title,
        tr("Every piece is judged by it from that day on."),
        lambda facts, about: (on_day(max(about.from_on or facts.today, facts.today), tr("From")), *_known(about)),
        do, tr("Adopt it"),
    )  # fmt: skip


def _known(about: Compared) -> tuple[Asked, ...]:
    if not about.retires:
        return ()
    said = tr("I know that it retires these for good: {tags}", tags=", ".join(about.retires))
    return (Tick(key="known", label=said, names=(tr("rulebook"),)),)


def _check_known(about: Compared, given: Values) -> None:
    if about.retires and not given.tick("known"):
        raise Refused(tr("rulebook"), tr("A retirement is final."), tr("Say that you know it, or change the text."))
