"""The deed about copies that nobody has to think of."""

from inspector.desk.form.asked import Count
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.copy_by_plan import CopyPlan, change_copy_plan
from inspector.duties.office import Office
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
