"""Deeds about what leaves the register: lists for other programs, the full archive, the signing key."""

from pathlib import Path

from msgspec import Struct

from inspector.desk.form.asked import Asked, Files, Line, OneOf, Secret, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.archive_register import archive, contacts_words, looked_words, verify_archive, written_facts
from inspector.duties.export_list import What, export_lines, export_list
from inspector.duties.keep_key import enter_key, grouped_key, make_key, what_it_proves, write_key
from inspector.duties.office import Office
from inspector.gear.exported import PublicKey
from inspector.language import tr, tr_n
from inspector.refused import Refused

_WORKBOOK = "xlsx"


class ToExport(Struct, frozen=True):
    """The pieces that may be meant, by tag: those that are listed, and those that were chosen among them."""

    shown: tuple[str, ...]
    chosen: tuple[str, ...]


def export(pieces: ToExport) -> Deed[ToExport]:
    """The gear list, or what happened to the gear, for a spreadsheet."""

    def do(office: Office, about: ToExport, given: Values) -> Done:
        form = given.one("form", str)
        is_workbook = form == _WORKBOOK
        file = _file(given, ".xlsx" if is_workbook else ".csv")
        tags = about.chosen if given.has("pieces") and given.one("pieces", bool) else about.shown
        if not tags:
            raise Refused(tr("pieces"), tr("Nothing is listed."), tr("Go to the gear, and show every piece again."))
        made = export_list(office, tags, file, What.GEAR if is_workbook else What(form))
        return Done(tr_n("{count} row is written.", "{count} rows are written.", made.rows), str(made.file))

    return Deed(
        "export list", tr("Export"), tr("Write the list for a spreadsheet"),
        tr("What is listed, with verdicts, reasons, ratings as written and in SI, and what happened to it. A cell that "
           "a spreadsheet would take for a formula is made harmless. A file that is there already stays as it is."),
        lambda facts, about: (*_which(about), _form(), *_place(tr("gear"))), do, tr("Write it"),
    )  # fmt: skip


def _which(about: ToExport) -> tuple[Asked, ...]:
    """Whether all or some are meant, where several were chosen."""
    if len(about.chosen) < 2:
        return ()
    listed = tr_n("the piece that is listed", "all {count} pieces that are listed", len(about.shown))
    chosen = tr_n("the piece that is chosen", "the {count} pieces that are chosen", len(about.chosen))
    choices = [(listed, False), (chosen, True)]
    return (OneOf(key="pieces", label=tr("Which pieces"), choices=choices, needed=True),)


def _form() -> OneOf:
    choices = [
        (tr("a workbook with every table (XLSX)"), _WORKBOOK),
        (tr("a plain table of the gear (CSV)"), What.GEAR.value),
        (tr("a plain table of the inspections (CSV)"), What.INSPECTIONS.value),
        (tr("a plain table of the readings (CSV)"), What.READINGS.value),
        (tr("a plain table of the uses (CSV)"), What.USES.value),
        (tr("a plain table of salt, mud and sun (CSV)"), What.EXPOSURES.value),
        (tr("a plain table of the documents (CSV)"), What.DOCUMENTS.value),
    ]
    return OneOf(key="form", label=tr("As"), choices=choices, needed=True)


def lines() -> Deed[None]:
    """Every row of the history."""

    def do(office: Office, about: None, given: Values) -> Done:
        made = export_lines(office, _file(given, ".jsonl"))
        told = (str(made.file), tr("What may stand in a line: {file}", file=made.beside))
        return Done(tr_n("{count} line is written.", "{count} lines are written.", made.rows), "\n".join(told))

    return Deed(
        "export lines", tr("Every row as JSON"), tr("Write every row of the register as a line of JSON"),
        tr("For another program or another age: the whole history and the ledger, a line each row, and beside it a "
           "schema that says what may stand in a line. Contact details and passphrases are never in it."),
        lambda facts, about: _place(tr("register")), do, tr("Write it"),
    )  # fmt: skip


def write_archive() -> Deed[None]:
    """All of the register in one file."""

    def do(office: Office, about: None, given: Values) -> Done:
        made = archive(
            office, _file(given, ".zip"), with_contacts=given.tick("contacts"), passphrase=passphrase_for(given)
        )
        told = [str(made.file), *(f"{one.label}: {one.text}" for one in written_facts(made))]
        told += [contacts_words(given.tick("contacts")), *([what_it_proves()] if made.manifest.key else [])]
        return Done(tr("The archive is written."), "\n".join(told))

    return Deed(
        "write archive", tr("Write an archive"), tr("Write the whole register into one file"),
        tr("Database, papers and photos, rulebooks, every row as JSON, and a list of it with checksums. Another copy "
           "of this program opens it, and anybody can look through it."),
        lambda facts, about: (
            *_place(tr("register-{day}", day=facts.today.isoformat())),
            Tick(key="contacts", label=tr("With contact details and passphrases"),
                 hint=tr("They are left out else. Give such an archive to nobody who may not have them.")),
            *signing_fields(),
        ),
        do, tr("Write the archive"),
    )  # fmt: skip


def look_through() -> Deed[None]:
    """Prove an archive."""

    def do(office: Office, about: None, given: Values) -> Done:
        found = verify_archive(given.files("file")[0], given.text("head"), given.text("key"))
        head, told = looked_words(found, office)
        return Done(head, "\n".join(told))

    return Deed(
        "verify archive", tr("Look an archive through"), tr("Prove that an archive is as it was written"),
        tr("Every checksum, the signature if it has one, the ledger, and that all its parts say the same. Nothing of "
           "it is kept."),
        lambda facts, about: (
            Files(key="file", label=tr("Archive"), one=True, needed=True, names=(tr("archive"),)),
            Line(key="head", label=tr("Head from a document"), names=(tr("head"),), hint=tr("May stay empty.")),
            Line(key="key", label=tr("Fingerprint of the key"), names=(tr("key"),),
                 hint=tr("As the key's owner gave it on paper. May stay empty.")),
        ),
        do, tr("Look it through"),
    )  # fmt: skip


def new_key() -> Deed[None]:
    """The signing key of this machine."""

    def do(office: Office, about: None, given: Values) -> Done:
        new = given.one("passphrase", str)
        if new != given.one("again", str):
            raise Refused(tr("once more"), tr("The two are not the same."), tr("Type the passphrase in both lines."))
        made = make_key(office, new, instead=given.tick("instead"))
        return Done(tr("The signing key is made."), _key_told(made))

    return Deed(
        "make key", tr("Make a signing key"), tr("Make the signing key of this machine"),
        what_it_proves(),
        lambda facts, about: (
            Secret(key="passphrase", label=tr("Passphrase of the key"), needed=True, names=(tr("passphrase"),),
                   hint=tr("Several words that only you would put together. Nobody can find it out for you.")),
            Secret(key="again", label=tr("Once more"), needed=True, names=(tr("once more"),)),
            Tick(key="instead", label=tr("In the place of the key that is there"), more=True,
                 names=(tr("signing key"),), hint=tr("If its passphrase is lost. What it signed stays provable.")),
        ),
        do, tr("Make the key"),
    )  # fmt: skip


def known_key() -> Deed[None]:
    """A key of this machine that this register does not know."""

    def do(office: Office, about: None, given: Values) -> Done:
        return Done(tr("The register knows the key."), _key_told(enter_key(office, given.one("passphrase", str))))

    return Deed(
        "enter key", tr("Enter the key"), tr("Enter the signing key of this machine"),
        tr("The key was made for another register. Its passphrase shows that it is yours."),
        lambda facts, about: (
            Secret(key="passphrase", label=tr("Passphrase of the key"), needed=True, names=(tr("passphrase"),)),
        ),
        do, tr("Enter it"),
    )  # fmt: skip


def key_paper() -> Deed[None]:
    """The key of this machine, for paper."""

    def do(office: Office, about: None, given: Values) -> Done:
        return Done(tr("The key is written, to be printed."), str(write_key(office, _file(given, ".txt"))))

    return Deed(
        "write key", tr("Write it for paper"), tr("Write the fingerprint and the open part of the key for paper"),
        tr("Print it, sign it by hand, and give it to whoever is to check what you sign. The key itself stays here."),
        lambda facts, about: _place(tr("signing-key")), do, tr("Write it"),
    )  # fmt: skip


def signing_fields() -> tuple[Asked, ...]:
    """Whether something is signed, and by which passphrase."""
    return (
        Tick(key="signed", label=tr("Signed with the key of this machine"), names=(tr("signing key"),),
             hint=tr("So that it can be checked without this program.")),
        Secret(key="passphrase", label=tr("Passphrase of the key"), names=(tr("passphrase"),),
               hint=tr("Only where it is signed.")),
    )  # fmt: skip


def passphrase_for(given: Values) -> str | None:
    """The passphrase of the key where it is to be signed; None where it is not."""
    return given.one("passphrase", str) if given.tick("signed") else None


def _key_told(made: PublicKey) -> str:
    said = tr("Its fingerprint, for paper: {key}", key=grouped_key(made.fingerprint))
    return "\n".join((said, made.pem.strip(), what_it_proves()))


def _place(name: str) -> tuple[Asked, ...]:
    return (
        Files(key="folder", label=tr("Folder"), needed=True, folder=True),
        Line(key="name", label=tr("Name of the file"), needed=True, stands=name, names=(tr("file"),)),
    )


def _file(given: Values, ending: str) -> Path:
    """The file named, with its ending."""
    (folder,) = given.files("folder")
    name = given.text("name")
    return folder / (name if name.lower().endswith(ending) else name + ending)
