"""Commands for what leaves the register for other programs and other eyes: lists, the full archive, the signing key."""

from pathlib import Path

import click

from inspector.cli import say
from inspector.cli.passphrase import key_passphrase
from inspector.cli.wiring import Desk, choice
from inspector.duties import archive_register as archives
from inspector.duties import keep_key
from inspector.duties.export_list import What, export_lines, export_list
from inspector.duties.gear_list import answers
from inspector.duties.office import Office
from inspector.gear.exported import PublicKey
from inspector.gear.lists import Wanted
from inspector.gear.outcome import Outcome
from inspector.language import tr, tr_n
from inspector.refused import Refused

_FAULTS_FOUND = 1
_LINES = ".jsonl"
_FILE = click.Path(path_type=Path, dir_okay=False)
_HEAD = click.option("--head", default="", help="A ledger head printed on a document, which it must hold.")
_KEY = click.option("--key", default="", help="Fingerprint of the key that must have signed it.")


@click.command()
@click.argument("file", type=_FILE)
@click.argument("words", nargs=-1)
@click.option(
    "--what", type=choice(What), default=What.GEAR.value, show_default=True, help="Which table, of a CSV file."
)
@click.option("--outcome", type=choice(Outcome), help="Only pieces with this verdict.")
@click.option("--kind", default="", help="Only this kind, for example bow_shackle.")
@click.pass_obj
def export(desk: Desk, file: Path, words: tuple[str, ...], what: str, outcome: str | None, kind: str) -> None:
    """Write the gear whose record holds all WORDS, and what happened to it, into a new FILE.

    Its ending says how: .xlsx for a workbook with every table, .csv for one table, .jsonl for every row there is.
    """
    office = desk.office()
    if file.suffix.lower() == _LINES:
        if words or outcome or kind:
            why = tr("Lines of JSON hold the whole register.")
            raise Refused(tr("file"), why, tr("Leave the words and options out, or name an .xlsx or .csv file."))
        made = export_lines(office, file)
        click.echo(tr_n("{count} line in {file}", "{count} lines in {file}", made.rows, file=made.file))
        click.echo(tr("What may stand in a line: {file}", file=made.beside))
        return
    wanted = Wanted(" ".join(words), Outcome(outcome) if outcome else None, kind, gone_too=True)
    made = export_list(office, answers(office, wanted).tags, file, What(what))
    click.echo(tr_n("{count} row in {file}", "{count} rows in {file}", made.rows, file=made.file))


@click.command()
@click.argument("file", type=_FILE)
@click.option("--with-contacts", is_flag=True, help="With contact details and passphrases, which are left out else.")
@click.option("--sign", "signed", is_flag=True, help="Sign it with this machine's key; its passphrase is asked.")
@click.pass_obj
def archive(desk: Desk, file: Path, with_contacts: bool, signed: bool) -> None:
    """Write all of the register into a new zip FILE: database, files, rulebooks, lines of JSON, checksums."""
    passphrase = key_passphrase() if signed else None
    made = archives.archive(desk.office(), file, with_contacts=with_contacts, passphrase=passphrase)
    click.echo(str(made.file))
    say.facts(archives.written_facts(made))
    say.paragraph(archives.contacts_words(with_contacts))
    if signed:
        say.paragraph(keep_key.what_it_proves())


@click.command()
@click.argument("file", type=_FILE)
@_HEAD
@_KEY
@click.pass_obj
def verify_archive(desk: Desk, file: Path, head: str, key: str) -> int:
    """Prove that the archive FILE is as it was written; nothing is opened or kept of it."""
    found = archives.verify_archive(file, head, key)
    _say(found, desk.office_if_any())
    return _FAULTS_FOUND if found.faults else 0


@click.command()
@click.argument("file", type=_FILE)
@_HEAD
@_KEY
@click.pass_obj
def open_archive(desk: Desk, file: Path, head: str, key: str) -> None:
    """Open the archive FILE in a folder that has no register: inspector --register FOLDER open-archive FILE."""
    found = archives.open_archive(file, desk.folder, head, key)
    archives.enter_opened(desk.office(), file, found)
    click.echo(tr("The register lies in {folder} as it was in the archive.", folder=desk.folder))
    _say(found, None)  # what it knows of keys, it knows from the archive itself


def _say(found: archives.LookedThrough, office: Office | None) -> None:
    said, lines = archives.looked_words(found, office)
    for line in lines:
        say.paragraph(line)
    click.echo(said)


@click.group(invoke_without_command=True)
@click.pass_context
def key(context: click.Context) -> None:
    """The signing key: the one of this machine, and those that the register knows."""
    if context.invoked_subcommand is None:
        _say_keys(context.obj)


def _say_keys(desk: Desk) -> None:
    found = keep_key.keys(desk.office())
    if not found.here:
        click.echo(tr("This machine has no signing key."))
    elif not found.is_known:
        click.echo(tr("This machine has the key {key}.", key=keep_key.grouped_key(found.here)))
        say.paragraph(tr("The register does not know it: `inspector key enter` enters it."))
    for one in found.known:
        click.echo(keep_key.grouped_key(one.fingerprint))
        say.paragraph(keep_key.key_words(one), "  ")
    if found.known:
        say.paragraph(keep_key.what_it_proves())


@key.command()
@click.option(
    "--instead", is_flag=True, help="In the place of one that is there, for example if its passphrase is lost."
)
@click.pass_obj
def new(desk: Desk, instead: bool) -> None:
    """Make the signing key of this machine, under a passphrase, and enter it in the register."""
    _say_key(keep_key.make_key(desk.office(), key_passphrase(new=True), instead=instead))


@key.command()
@click.pass_obj
def enter(desk: Desk) -> None:
    """Enter the key that this machine has into a register that does not know it yet."""
    _say_key(keep_key.enter_key(desk.office(), key_passphrase()))


@key.command()
@click.argument("file", type=_FILE)
@click.pass_obj
def paper(desk: Desk, file: Path) -> None:
    """Write the key of this machine into a new text FILE, to be printed and signed by hand."""
    click.echo(str(keep_key.write_key(desk.office(), file)))


def _say_key(made: PublicKey) -> None:
    click.echo(tr("The register knows this key from now on:"))
    click.echo(keep_key.grouped_key(made.fingerprint))
    click.echo(made.pem.rstrip())
    say.paragraph(keep_key.what_it_proves())
