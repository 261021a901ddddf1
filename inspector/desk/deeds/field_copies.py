"""Deeds about field copies: take one along, bring one back."""

from pathlib import Path

from inspector.desk.deeds.common import person
from inspector.desk.form.asked import Files, Line, OneOf, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.bring_back import bring_back, what_would_come
from inspector.duties.clash_words import clash_heads, merged_words
from inspector.duties.field_copies import take_field_copy
from inspector.duties.office import Office
from inspector.language import tr
from inspector.refused import Refused

_LOOK, _TAKE = "look", "take"


def _file(given: Values, key: str, field: str) -> Path:
    for file in given.files(key):
        return file
    raise Refused(field, tr("Nothing is chosen."), tr("Choose it with the button, or write its path."))


def take_along() -> Deed[None]:
    """Copy the register under a name of its own, to work on elsewhere."""

    def do(office: Office, about: None, given: Values) -> Done:
        taken = take_field_copy(
            office,
            _file(given, "folder", tr("folder")),
            given.one("holder", str),
            given.text("what_for"),
            with_contacts=given.tick("contacts"),
        )
        lines = (
            tr("It lies in {file}", file=taken.file),
            tr("Its papers carry its own name, {origin}, in their numbers.", origin=taken.copy.origin),
            tr("Go on working here as well; when it is back, bring it back on this page."),
        )
        return Done(tr("The field copy {origin} is made.", origin=taken.copy.origin), "\n".join(lines))

    return Deed(
        "take field copy", tr("Take a field copy along"), tr("Take a field copy along"),
        tr("A copy of the register to check and log on where there is no way to this one. Both go on by themselves; "
           "when it is brought back, both histories are kept. What holds for the whole club is settled here alone."),
        lambda facts, about: (
            Files(key="folder", label=tr("Folder for the field copy"), folder=True, one=True, new=True, needed=True,
                  names=(tr("folder"), tr("backup"), tr("copy")),
                  hint=tr("An empty folder, on a stick or on the other machine.")),
            person(facts, "holder", tr("Who takes it"), needed=True, names=(tr("taken by"),)),
            Line(key="what_for", label=tr("What for"), names=(tr("what for"),), example=tr("the trip to the dunes")),
            Tick(key="contacts", label=tr("With telephone numbers and addresses"), more=True),
        ),
        do, tr("Make the copy"),
    )  # fmt: skip


def come_home() -> Deed[None]:
    """Take over what was done on another copy, or look first what would come; then the file still stands there."""
    looked: list[str] = []

    def do(office: Office, about: None, given: Values) -> Done:
        file = _file(given, "file", tr("copy"))
        looks = given.one("how", str) == _LOOK
        merged = what_would_come(office, file) if looks else bring_back(office, file)
        looked[:] = [str(file)] if looks else []
        head = tr("Nothing is taken over yet; this would come.") if looks else tr("The copy is brought back.")
        lines = [*merged_words(merged), *clash_heads(merged)]
        if merged.clashes and not looks:
            lines.append(tr("Who did what here and there stands on the register's page, under Field copies."))
        return Done(head, "\n".join(lines))

    return Deed(
        "merge", tr("Bring a copy back"), tr("Bring a copy back"),
        tr("What was done on the copy is taken over with all its lines; nothing here is lost. What does not "
           "go together is told, both stay, and every piece it touches is judged anew. The copy stays as it is."),
        lambda facts, about: (
            Files(key="file", label=tr("File of the copy"), one=True, needed=True, stands=tuple(looked),
                  names=(tr("copy"), tr("backup"), tr("register")),
                  hint=tr("The file register.db in the copy's folder.")),
            OneOf(key="how", label=tr("What to do"), stands=_TAKE if looked else _LOOK, choices=(
                (tr("Look first what would come"), _LOOK), (tr("Take it over"), _TAKE),
            )),
        ),
        do, tr("Go on"), stays=True,
    )  # fmt: skip
