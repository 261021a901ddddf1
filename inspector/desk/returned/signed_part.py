"""What was read of a sheet as a whole: what must be minded, and who signed."""

from PySide6.QtWidgets import QWidget

from inspector.desk.look import Look
from inspector.desk.plain import row, said
from inspector.desk.returned.cut_out import written_part
from inspector.duties.read_returned import SheetBack
from inspector.duties.tell_returned import to_mind
from inspector.language import tr


def signed_part(back: SheetBack, look: Look) -> list[QWidget]:
    """Said above the fields that it helps to fill in: what was typed, or the photo of each line that was signed."""
    made: list[QWidget] = [said(line, bold=True) for line in to_mind(back)]
    labels = {"name": tr("Name"), "signature": tr("Signature"), "when": tr("Date and time")}
    typed = [tr("{label}: {text}", label=labels[what], text=room.text) for what, room in back.signed if room.text]
    made += [said(tr("Typed at its end: {words}", words=" · ".join(typed)))] if typed else []
    drawn = [written_part(room, labels[what], look) for what, room in back.signed if room.picture]
    made += [row(drawn[start : start + len(labels)]) for start in range(0, len(drawn), len(labels))]
    return made
