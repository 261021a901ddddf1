"""Fields that many deeds ask, and what many of them tell."""

from datetime import date

from msgspec.structs import replace

from inspector.desk.form.asked import Asked, Day, Line, OneOf, Prose, Secret
from inspector.desk.form.deed import Done
from inspector.desk.form.values import Values
from inspector.drawings.marks import outcome_word
from inspector.duties.form_facts import FormFacts
from inspector.duties.keep_passphrases import vouch_second
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.tags_left_on import tag_left_on
from inspector.gear.judged import Judged
from inspector.language import tr

_PROOF = "second_passphrase"


def on_day(today: date, label: str = "") -> Day:
    """The day of it, today beforehand."""
    return Day(key="on", label=label or tr("Day"), names=(tr("day"),), stands=today)


def why(*, needed: bool = False, label: str = "", hint: str = "") -> Prose:
    """The reason."""
    return Prose(key="why", label=label or tr("Why"), hint=hint, needed=needed, names=(tr("why"), tr("reason")))


def note() -> Prose:
    """What is to be remembered."""
    return Prose(key="note", label=tr("Note"))


def person(facts: FormFacts, key: str, label: str, *, needed: bool = False, hint: str = "", names: tuple[str, ...] = (),
           more: bool = False, nobody: str = "") -> OneOf:  # fmt: skip
    """One of the people; values are their ids. nobody: what stands first, for none of them."""
    choices: list[tuple[str, object]] = [(nobody or tr("nobody named"), "")]
    choices += [(one.name, one.id) for one in facts.people]
    return OneOf(key=key, label=label, choices=choices, needed=needed, hint=hint, names=names, more=more)


def by(facts: FormFacts, *names: str) -> Asked:
    """Who says so, where it is not whoever is at the desk."""
    label, nobody = tr("Said by"), tr("whoever is at the desk")
    return person(facts, "by", label, names=(tr("by"), tr("said by"), *names), more=True, nobody=nobody)


def second(facts: FormFacts, *, needed: bool = False, hint: str = "") -> tuple[Asked, ...]:
    """The second name, and below it its passphrase where the club requires them; `with_second` reads both."""
    named = person(facts, "second", tr("Second name"), needed=needed, hint=hint, names=(tr("second name"),))
    if not facts.seconds_prove:
        return (named,)
    says = tr("The person named types it, unseen by others: the club requires it. Who has none sets one first.")
    proof = Secret(key=_PROOF, label=tr("Passphrase of the second name"), needed=needed, hint=says,
                   names=(tr("passphrase of the second name"),))  # fmt: skip
    return named, proof


def with_second(office: Office, given: Values) -> Office:
    """The office for this one deed, with the second name proved where the form asked for its passphrase."""
    return vouch_second(office, given.one("second", str), given.one(_PROOF, str)) if given.has(_PROOF) else office


def people_line(facts: FormFacts, key: str, label: str, *, needed: bool = False, hint: str = "",
                names: tuple[str, ...] = ()) -> Line:  # fmt: skip
    """A name, of the register or not."""
    offers = tuple(one.name for one in facts.people)
    return Line(key=key, label=label, needed=needed, hint=hint, names=names, offers=offers)


def freed(office: Office, head: str, judged: Judged) -> Done:
    """The same of a deed that may have ended a hold: also that its printed tag may still hang on it."""
    done = told(head, judged)
    return replace(done, text="\n".join(filter(None, (done.text, tag_left_on(office, judged)))))


def told(head: str, judged: Judged, *papers: Paper) -> Done:
    """What came of a deed about one piece: its verdict as it stands now."""
    words = judged.explanation
    text = tr("{outcome}. {plain}", outcome=outcome_word(judged.verdict.outcome), plain=words.plain)
    return Done(head, text, papers, judged.dossier.item.tag)
