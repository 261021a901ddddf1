"""The maker's mark and serial of a piece, read anew."""

from inspector.desk.deeds.common import by, told, why
from inspector.desk.form.asked import Line
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties.office import Office
from inspector.duties.read_marks import read_marks
from inspector.language import tr


def marks(piece: Opened) -> Deed[Opened]:
    """What a competent person read on it."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        said = (given.text("mark"), given.text("serial"), given.text("why"))
        judged = read_marks(office, about.tag, *said, by=given.one("by", str))
        return told(tr("The marks of {tag} are written down anew.", tag=about.tag), judged)

    return Deed(
        "read marks", tr("Marks read anew"), tr("The marks of {tag}, read anew", tag=piece.tag),
        tr("The maker's mark and the serial as a competent person read them who does not own the piece. Where a "
           "recall may mean it now, it is held at once."),
        lambda facts, about: (
            Line(key="mark", label=tr("Maker's mark"), names=(tr("maker's mark"),),
                 stands=about.judged.dossier.item.facts.maker_mark),
            Line(key="serial", label=tr("Serial"), names=(tr("serial"),),
                 stands=about.judged.dossier.item.facts.serial),
            why(needed=True),
            by(facts, tr("read by")),
        ),
        do, tr("Keep them"),
    )  # fmt: skip
