"""A rig as a text file."""

from inspector.desk.form.asked import Files, Line
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.form_facts import FormFacts
from inspector.duties.named_files import write_new
from inspector.duties.office import Office
from inspector.duties.rig_files import rig_text
from inspector.gear.rig import KeptRig
from inspector.language import tr


def write_out(kept: KeptRig) -> Deed[KeptRig]:
    """A kept rig as a text file that a person reads, and another register."""

    def do(office: Office, about: KeptRig, given: Values) -> Done:
        (folder,) = given.files("folder")
        place = folder / given.text("name")
        write_new(place, rig_text(about.rig, office.decimal))
        return Done(tr("{name} is written out.", name=about.ref), str(place))

    def fields(facts: FormFacts, about: KeptRig) -> tuple[Files, Line]:
        name = Line(key="name", label=tr("Name of the file"), needed=True, stands=file_name(about.ref),
                    names=(tr("file"),))  # fmt: skip
        return Files(key="folder", label=tr("Folder"), needed=True, folder=True), name

    return Deed(
        "export rig", tr("Write it into a file"), tr("Write the rig {ref} into a file", ref=kept.ref),
        tr("A text file that a person can read and change. A file that is there already stays as it is."),
        fields, do, tr("Write it"),
    )  # fmt: skip


def file_name(ref: str) -> str:
    """A reference as the name of a file that every machine takes."""
    return "".join(sign if sign.isalnum() or sign in "-_" else "-" for sign in ref) + ".toml"
