"""The deed that takes back a list that was brought in."""

from inspector.desk.deeds.common import why
from inspector.desk.form.asked import Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.office import Office
from inspector.duties.withdraw_import import withdraw_import
from inspector.gear.import_list import Imported
from inspector.language import tr, tr_n


def withdraw() -> Deed[Imported]:
    """Withdraw the pieces of an import."""

    def do(office: Office, about: Imported, given: Values) -> Done:
        done = withdraw_import(office, about.number, given.text("why"), leave_later=given.tick("leave_later"))
        head = tr_n("{count} piece was withdrawn.", "{count} pieces were withdrawn.", len(done.free))
        stay = tr("These stay: {tags}.", tags=", ".join(tag for tag, _ in done.later)) if done.later else ""
        return Done(head, stay)

    return Deed(
        "withdraw import", tr("Withdraw this import…"), tr("Withdraw an import"),
        tr("The pieces that came with it leave the register as if they had never come; their tags and serials are free "
           "again. What was written stays in the history. A piece of which more was written down since is never "
           "withdrawn."),
        lambda facts, about: (
            why(needed=True, hint=tr("For example: the list was an old one.")),
            Tick(key="leave_later", label=tr("Pieces of which more was written down since stay as they are"),
                 names=(tr("import"),)),
        ),
        do, tr("Withdraw the pieces"),
    )  # fmt: skip
