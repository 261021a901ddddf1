"""Withdraw a recall that was entered wrongly, and tell whoever was written to by it."""

from inspector.desk.deeds.common import person, second, why, with_second
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.drawings.marks import outcome_word
from inspector.duties.office import Office
from inspector.duties.print_withdrawal import print_withdrawal
from inspector.duties.tell_recall import RecallTold
from inspector.duties.withdraw_recall import WithdrawnRecall, withdraw_recall
from inspector.language import tr, tr_n


def withdraw(recall: RecallTold) -> Deed[RecallTold]:
    """Two competent persons take the notice back."""

    def do(office: Office, about: RecallTold, given: Values) -> Done:
        names = {"second": given.one("second", str), "by": given.one("by", str)}
        done = withdraw_recall(with_second(office, given), about.ref, given.text("why"), **names)
        return Done(tr("{ref} is withdrawn.", ref=done.ref), "\n".join(_told(done)))

    return Deed(
        "withdraw recall", tr("Withdraw the recall"), tr("Withdraw the recall {ref}", ref=recall.ref),
        tr("Only where it was entered wrongly: another maker, another row of serials, the same notice twice. Two "
           "different competent persons say so. What it alone held is let go; nothing is erased, and what was done "
           "under it stays. What was held by hand, what somebody answered to have no more, and what belongs to one of "
           "the two waits for an inspection. If the notice itself is at an end, settle its pieces and close it."),
        lambda facts, about: (
            why(needed=True, label=tr("What was wrong with the entry"), hint=tr("And how you know.")),
            *second(facts, needed=True),
            person(facts, "by", tr("First name"), names=(tr("said by"), tr("by")),
                   nobody=tr("whoever is at the desk")),
        ),
        do, tr("Withdraw it"), fits=lambda about: tr("The recall was withdrawn.") if about.withdrawn else "",
    )  # fmt: skip


def tell_withdrawn(recall: RecallTold) -> Deed[RecallTold]:
    """A letter to everybody who was written to by a recall that is withdrawn."""

    def do(office: Office, about: RecallTold, given: Values) -> Done:
        papers = print_withdrawal(office, about.ref)
        return Done(tr_n("One letter is printed.", "{count} letters are printed.", len(papers)), "", papers)

    return Deed(
        "print withdrawal letters", tr("Write that it is withdrawn"),
        tr("Write that {ref} is withdrawn", ref=recall.ref),
        tr("Everybody who got a letter of it is told that it counts no more, why, and how each piece stands now. To be "
           "told still: {names}", names=", ".join(recall.untold) or tr("nobody")),
        lambda facts, about: (),
        do, tr("Print the letters"),
        fits=lambda about: "" if about.untold else tr("Nobody who was written to has still to be told."),
    )  # fmt: skip


def _told(done: WithdrawnRecall) -> list[str]:
    """How each of its pieces stands now, what stays on hold and why, and who must be told."""
    lines = [tr("{tag}: {outcome}. {plain}", tag=one.dossier.item.tag, plain=one.explanation.plain,
                outcome=outcome_word(one.verdict.outcome)) for one in done.pieces]  # fmt: skip
    lines += [tr("{tag}: {why}", tag=tag, why=why) for tag, why in (*done.doubted, *done.tags_left.items())]
    if done.written:
        lines.append(tr("Write to them that it was withdrawn: {names}.", names=", ".join(done.written)))
    return lines
