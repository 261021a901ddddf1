"""Deeds about what keeps the register safe: the plan of its copies, and a clock that was set back."""

from inspector.desk.form.asked import Count, Prose
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.copy_by_plan import CopyPlan, change_copy_plan
from inspector.duties.office import Office
from inspector.duties.set_clock_right import clock_is_right
from inspector.duties.tell_copies import plan_words
from inspector.language import tr


def plan() -> Deed[CopyPlan]:
    """How often a copy is made by itself, and how many are kept."""

    def do(office: Office, about: CopyPlan, given: Values) -> Done:
        wanted = CopyPlan(*(given.number(key) or 0 for key in ("days", "last", "months")))
        return Done(tr("It holds from now on."), plan_words(change_copy_plan(office, wanted)))

    return Deed(
        "copy plan", tr("Change the plan"), tr("Copies that are made by themselves"),
        tr("Only copies that the plan made are ever let go, never the newest, and none that was changed since."),
        lambda facts, about: (
            Count(key="days", label=tr("A copy every so many days"), needed=True, stands=str(about.days),
                  names=(tr("days"),), hint=tr("0: none is made by itself.")),
            Count(key="last", label=tr("How many of the last are kept"), needed=True, least=1, stands=str(about.last),
                  names=(tr("last"),)),
            Count(key="months", label=tr("For how many months one of each is kept"), needed=True,
                  stands=str(about.months), names=(tr("months"),)),
        ),
        do, tr("Let it hold"),
    )  # fmt: skip


def clock() -> Deed[None]:
    """Say that this machine's clock is right."""

    def do(office: Office, about: None, given: Values) -> Done:
        held = clock_is_right(office, given.text("why"))
        told = tr("Held until inspected, since that clock entered something of them: {tags}.", tags=", ".join(held))
        return Done(tr("It is entered. Entries are taken again."), told if held else "")

    return Deed(
        "clock", tr("The clock is right"), tr("The clock of this machine is right"),
        tr("The last entry was made by a clock that ran ahead. Look at the date and the time of this machine first: if "
           "they are wrong, set them right and leave this page."),
        lambda facts, about: (
            Prose(key="why", label=tr("How you know it"), needed=True, names=(tr("why"), tr("clock"))),
        ),
        do, tr("Enter it"),
    )  # fmt: skip
