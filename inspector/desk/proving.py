"""The check that nothing in the register was changed, and what of it is told."""

from PySide6.QtCore import QObject

from inspector.desk.background import Background
from inspector.desk.notice import Notice
from inspector.duties.office import Office
from inspector.gear.lists import Verified
from inspector.language import tr


class Proving(QObject):
    """Proves the register in the background and tells what was found."""

    def __init__(self, office: Office, background: Background, notice: Notice, parent: QObject) -> None:
        super().__init__(parent)
        self._office, self._background, self._notice = office, background, notice

    def begin(self) -> None:
        """Check the whole register."""
        says = tr("Checking the register…")
        self._background.run(_verified, self._office, done=self._tell, failed=self._notice.refuse, says=says)

    def _tell(self, found: Verified) -> None:
        if found.faults:
            head = tr("Something in the register was changed outside this program.")
            self._notice.tell(head, "\n".join(f"{fault.where}: {fault.why}" for fault in found.faults))
            return
        if found.gaps:
            from inspector.duties.verify_book import verified_words

            head, lines = verified_words(found)
            self._notice.tell(head, "\n".join(lines))
            return
        head = found.head[:12]
        text = tr("{count} lines of the ledger hold together; its head is {head}.", count=found.line_count, head=head)
        self._notice.tell(tr("Nothing in the register was changed."), text)


def _verified(office: Office) -> Verified:
    from inspector.duties.verify_book import verify_book

    return verify_book(office)
