"""What the window does for the register by itself as it opens, and what it says of it."""

from inspector.desk.window import DeskWindow
from inspector.duties.look_after import LookedAfter, look_after
from inspector.duties.office import Office
from inspector.duties.tell_opening import opening_lines
from inspector.language import tr


def begin_looking_after(window: DeskWindow, office: Office) -> None:
    """Say what must be minded; then copy or prove in the background. It can be stopped, and keeps nobody waiting."""
    lines = tuple(opening_lines(office))
    if lines:
        window.notice.tell(tr("Mind this about the register."), "\n".join(lines))

    def done(looked: LookedAfter) -> None:
        if made := looked.planned.made:
            head = tr("A copy of the register was made by the plan; it was opened and is whole.")
            where = tr("It lies in {file}. Carry it to another disk: one that burns takes both.", file=made.file)
            window.notice.tell(head, "\n".join((where, *lines)))

    says = tr("Looking after the register…")
    window.background.run_long(look_after, office, done=done, failed=window.notice.refuse, says=says)
