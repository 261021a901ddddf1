"""What the window does for the register by itself as it opens, and what it says of it."""

from typing import TYPE_CHECKING

from inspector.desk.window import DeskWindow
from inspector.language import tr

if TYPE_CHECKING:
    from inspector.duties.look_after import LookedAfter
    from inspector.duties.office import Office


def begin_looking_after(window: DeskWindow, office: "Office") -> None:
    """Say what must be minded; then copy or prove in the background. It can be stopped, and keeps nobody waiting."""

    def minded(lines: tuple[str, ...]) -> None:
        if lines:
            window.notice.tell(tr("Mind this about the register."), "\n".join(lines))
        _look_after(window, office, lines)

    window.background.run(_to_mind, office, done=minded, failed=window.notice.refuse)


def _look_after(window: DeskWindow, office: "Office", lines: tuple[str, ...]) -> None:
    def done(looked: "LookedAfter") -> None:
        if made := looked.planned.made:
            head = tr("A copy of the register was made by the plan; it was opened and is whole.")
            where = tr("It lies in {file}. Carry it to another disk: one that burns takes both.", file=made.file)
            window.notice.tell(head, "\n".join((where, *lines)))

    says = tr("Looking after the register…")
    window.background.run_long(_looked_after, office, done=done, failed=window.notice.refuse, says=says)


def _to_mind(office: "Office") -> tuple[str, ...]:
    from inspector.duties.tell_opening import opening_lines

    return tuple(opening_lines(office))


def _looked_after(office: "Office") -> "LookedAfter":
    from inspector.duties.look_after import look_after

    return look_after(office)
