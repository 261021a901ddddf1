"""What people say of a piece beside inspections, and how a retired one ends."""

from inspector.desk.deeds.common import by, freed, on_day, person, second, told, why, with_second
from inspector.desk.form.asked import Line, OneOf, Part, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties.destroy_item import destroy_item
from inspector.duties.give_opinion import answer_findings, doubt
from inspector.duties.office import Office
from inspector.duties.print_voucher import print_voucher
from inspector.duties.strike_entry import strike_entry
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr
from inspector.refused import Refused


def doubt_it(piece: Opened) -> Deed[Opened]:
    """Somebody does not trust it."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = doubt(office, about.tag, given.text("why"), given.one("by", str))
        return told(tr("{tag} is held.", tag=about.tag), judged)

    return Deed(
        "doubt", tr("Somebody does not trust it"), tr("Somebody does not trust {tag}", tag=piece.tag),
        tr("Anybody may doubt a piece, and nobody needs to prove it. It is held until a competent person has inspected "
           "it."),
        lambda facts, about: (why(needed=True, label=tr("Why"), hint=tr("What was seen or is known.")), by(facts)),
        do, tr("Hold it"),
    )  # fmt: skip


def answer(piece: Opened) -> Deed[Opened]:
    """A second competent person answers slight faults."""
    holds = [one for one in piece.judged.verdict.findings if one.outcome is Outcome.HOLD]
    says = {one.rule: one.sentence for one in piece.judged.explanation.reasons}

    def do(office: Office, about: Opened, given: Values) -> Done:
        rules = [one.rule for one in holds if given.tick(one.rule)]
        judged = answer_findings(office, about.tag, rules, given.text("why"), given.one("by", str))
        return freed(office, tr("The opinion on {tag} is kept.", tag=about.tag), judged)

    ticks = tuple(Tick(key=one.rule, label=says.get(one.rule, one.rule), names=(tr("finding"),)) for one in holds)
    return Deed(
        "answer", tr("Answer a slight fault"), tr("Answer what holds {tag}", tag=piece.tag),
        tr("A competent person who did not see the fault himself may answer a slight one. It stands until anything new "
           "is known of the piece."),
        lambda facts, about: (
            Part(tr("What is answered"), ticks),
            Part("", (
                why(needed=True, hint=tr("What you looked at, and why it may be used.")),
                person(facts, "by", tr("Said by"), needed=True, names=(tr("said by"),)),
            )),
        ),
        do, tr("Keep the opinion"),
        fits=lambda about: "" if ticks else tr("Nothing holds it."),
    )  # fmt: skip


def strike(piece: Opened) -> Deed[Opened]:
    """A wrong entry is struck by two."""
    entries = [(tr("{day}: {what}, {text}", day=show_day(row.on), what=row.what, text=row.text or row.ref), row.ref)
               for row in piece.history if row.ref]  # fmt: skip

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = strike_entry(
            with_second(office, given), about.tag, given.one("entry", str), given.one("second", str), given.text("why"),
            given.one("by", str),
        )  # fmt: skip
        return told(tr("The entry is struck; {tag} is held until it is inspected anew.", tag=about.tag), judged)

    return Deed(
        "strike", tr("Strike a wrong entry"), tr("Strike a wrong entry of {tag}", tag=piece.tag),
        tr("Two competent persons take an entry out of what the piece is judged by: a wrong tag, a misread gauge. It "
           "stays in the history, marked. A retirement that rested on it alone falls, unless it was made unusable."),
        lambda facts, about: (
            OneOf(key="entry", label=tr("Entry"), choices=entries),
            why(needed=True, hint=tr("What was wrong with it, and how you know.")),
            *second(facts, needed=True),
            by(facts, tr("struck by")),
        ),
        do, tr("Strike it"),
        fits=lambda about: "" if entries else tr("It has no entry that can be struck."),
    )  # fmt: skip


def destroy(piece: Opened) -> Deed[Opened]:
    """A retired piece was made unusable."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        if not given.tick("sure"):
            why_not = tr("It is not said that it was done.")
            raise Refused(tr("sure"), why_not, tr("Make it unusable first, then say so here: it cannot be taken back."))
        destroy_item(office, about.tag, given.text("how"), given.day("on"), given.one("witness", str))
        paper = print_voucher(office, about.tag)
        head = tr("{tag} is recorded as made unusable.", tag=about.tag)
        return Done(head, tr("Its history stays in the register."), (paper,), about.tag)

    return Deed(
        "destroy", tr("It was made unusable"), tr("{tag} was made unusable", tag=piece.tag),
        tr("Only a retired piece is made unusable, and never one that is kept as evidence. From then on its retirement "
           "cannot be struck. A voucher is printed."),
        lambda facts, about: (
            Line(key="how", label=tr("How"), needed=True, example=tr("for example cut in two")),
            on_day(facts.today),
            person(facts, "witness", tr("Seen by"), names=(tr("witness"),)),
            Tick(key="sure", label=tr("It was done; this cannot be taken back"), names=(tr("sure"),)),
        ),
        do, tr("Record it"),
        fits=lambda about: "" if about.judged.verdict.outcome is Outcome.RETIRE else tr("It is not retired."),
    )  # fmt: skip
