"""The signing key of this machine: made, entered in the register so that it is known whose it is, and used.

The private part stands in the machine's settings folder, under a passphrase, and leaves it in no copy, archive or
bundle. A key that is made in the place of another leaves the old one's file beside its own; what the old one signed
stays provable, since its public part is in the ledger.
"""

import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from itertools import count
from pathlib import Path

from msgspec import Struct

from inspector.duties.named_files import read_bytes, write_new
from inspector.duties.office import Office
from inspector.gear.exported import PublicKey
from inspector.gear.ledger_line import WrittenLine
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register import signing
from inspector.register.archive.write import Signer
from inspector.register.page import Page

KEY_FILE = "signing-key.pem"
_DEEDS = ("make signing key", "enter signing key")
_SHORTEST, _LONGEST = 12, 200  # signs of a passphrase
_ONLY_OWNER = 0o600


class Keys(Struct, frozen=True):
    """here: the fingerprint of this machine's key, or "". known: every key the register knows, the newest first."""

    here: str
    known: tuple[PublicKey, ...]

    @property
    def is_known(self) -> bool:
        """Whether the register knows the key of this machine."""
        return any(one.here for one in self.known)


def keys(office: Office) -> Keys:
    """The key of this machine, and those that the register knows."""
    file = _file(office)
    here = _own_or_broken(file) if file and file.exists() else ""
    with office.book.reading() as page:
        return Keys(here, tuple(known_keys(page, here).values()))


def known_keys(page: Page, here: str = "") -> Mapping[str, PublicKey]:
    """The keys entered in the register, by fingerprint, the newest first. here: the fingerprint of this machine's."""
    names = {one.id: one.name for one in page.people()}
    found: dict[str, PublicKey] = {}
    for line in page.lines_of(_DEEDS):
        if (one := _key(line, names, here)) and one.fingerprint not in found:
            found[one.fingerprint] = one
    return found


def _key(line: WrittenLine, names: Mapping[str, str], here: str) -> PublicKey | None:
    pem = line.facts.get("public_key")
    own = signing.fingerprint(pem.encode()) if isinstance(pem, str) else ""
    if not own or line.at is None:
        return None
    return PublicKey(own, str(pem), line.at.date(), names.get(line.by, line.by), own == here)


def make_key(office: Office, passphrase: str, *, instead: bool = False) -> PublicKey:
    """Make the key of this machine and enter it. instead: in the place of one that is there, whose file is kept."""
    file = _place(office)
    _check_passphrase(passphrase)
    old = ""
    if file.exists():
        old = _own_or_broken(file)
        if not instead:
            why = tr(
                "This machine has a signing key already: {key}.", key=signing.grouped(old) or tr("its file is broken")
            )
            what = tr("Use that one; or make another in its place, if its passphrase is lost.")
            raise Refused(tr("signing key"), why, what)
    made = signing.new_key(passphrase)
    with office.book.page() as page, _in_place(file, made):
        return _enter(office, page, made, "make signing key", old)


def enter_key(office: Office, passphrase: str) -> PublicKey:
    """Enter the key that this machine has into a register that does not know it; its passphrase shows whose it is."""
    key_file = _key_file(office)
    signing.sign(key_file, passphrase, b"")
    own = signing.fingerprint(signing.public_part(key_file))
    with office.book.page() as page:
        if own in known_keys(page):
            raise Refused(tr("signing key"), tr("The register knows it already."), tr("Nothing is to do."))
        return _enter(office, page, key_file, "enter signing key", "")


def signer(office: Office, passphrase: str) -> Signer:
    """Who signs with this machine's key. Refused where there is none, the register does not know it, or for another
    passphrase."""
    key_file = _key_file(office)
    public = signing.public_part(key_file)
    own = signing.fingerprint(public)
    with office.book.reading() as page:
        if own not in known_keys(page):
            why = tr("The register does not know the signing key of this machine.")
            raise Refused(tr("signing key"), why, tr("Enter it first, so that it is known whose key it is."))
    signing.sign(key_file, passphrase, b"")
    return Signer(lambda data: signing.sign(key_file, passphrase, data), public, own)


def write_key(office: Office, file: Path) -> Path:
    """Write the open part of this machine's key into a new text file, to be printed and signed by hand."""
    one = next((one for one in keys(office).known if one.here), None)
    if one is None:
        why = tr("The register knows no signing key of this machine.")
        raise Refused(tr("signing key"), why, tr("Make one first: under Register, or by `inspector key new`."))
    with office.book.reading() as page:
        club = page.setting("club")
    lines = (
        tr("The signing key of {club}", club=club),
        "",
        tr("Fingerprint: {key}", key=signing.grouped(one.fingerprint)),
        key_words(one),
        "",
        one.pem.strip(),
        "",
        what_it_proves(),
        "",
        tr("Day, name, signature:"),
        "",
    )
    write_new(file, "\n".join(lines))
    return file


def grouped_key(fingerprint: str) -> str:
    """A fingerprint as it is read out."""
    return signing.grouped(fingerprint)


def key_words(one: PublicKey) -> str:
    """When and by whom a key was entered."""
    said = tr("entered by {name} on {day}", name=one.by, day=show_day(one.on))
    return tr("{said}; this machine has it", said=said) if one.here else said


def what_it_proves() -> str:
    """What a signature proves, and what it does not."""
    return tr(
        "A signature proves that whoever holds the key wrote this, and no more. Whose key it is must be known by "
        "another way: give its fingerprint on paper, signed by hand, to whoever is to check."
    )


def _enter(office: Office, page: Page, key_file: bytes, deed: str, old: str) -> PublicKey:
    public = signing.public_part(key_file)
    own = signing.fingerprint(public)
    facts = {"fingerprint": own, "public_key": public.decode(), "instead_of": old}
    page.enter(deed, by=office.officer.id, at=office.now, facts=facts)
    return PublicKey(own, public.decode(), office.today, office.officer.name, here=True)


@contextmanager
def _in_place(file: Path, key_file: bytes) -> Iterator[None]:
    """The file of a new key, in its place while the deed is entered; all is as it was before where that fails."""
    aside = _free_name(file) if file.exists() else None
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        if aside:
            file.replace(aside)
        _write_secret(file, key_file)
        yield
    except BaseException as error:
        with suppress(OSError):
            file.unlink(missing_ok=True)
            if aside:
                aside.replace(file)
        if isinstance(error, OSError):
            why = tr("{file} cannot be written ({why}).", file=file, why=error.strerror)
            what = tr("Let the settings folder of this machine be written to.")
            raise Refused(tr("signing key"), why, what) from error
        raise


def _free_name(file: Path) -> Path:
    """A name for the key that was there before."""
    every = (file.with_name(f"{file.stem}-old-{number}{file.suffix}") for number in count(1))
    return next(one for one in every if not one.exists())


def _write_secret(file: Path, data: bytes) -> None:
    """Write into a new file that nobody else may read, where the system knows such a thing."""
    handle = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, _ONLY_OWNER)
    with os.fdopen(handle, "wb") as new:
        new.write(data)
        new.flush()
        os.fsync(new.fileno())


def _file(office: Office) -> Path | None:
    folder = office.machine.folder
    return folder / KEY_FILE if folder else None


def _place(office: Office) -> Path:
    file = _file(office)
    if file is None:
        why = tr("This machine keeps no settings, so it can keep no key.")
        raise Refused(tr("signing key"), why, tr("Start the program in the usual way."))
    return file


def _key_file(office: Office) -> bytes:
    file = _place(office)
    if not file.exists():
        why = tr("This machine has no signing key.")
        raise Refused(tr("signing key"), why, tr("Make one first: under Register, or by `inspector key new`."))
    return read_bytes(file)


def _stands(old: str) -> Refused:
    why = tr("This machine has a signing key already: {key}.", key=signing.grouped(old) or tr("its file is broken"))
    what = tr("Use that one; or make another in its place, if its passphrase is lost.")
    return Refused(tr("signing key"), why, what)


def _own(file: Path) -> str:
    return signing.fingerprint(signing.public_part(read_bytes(file)))


def _own_or_broken(file: Path) -> str:
    """The fingerprint of a key that is there; nothing where its file is broken, so that another can take its place."""
    try:
        return _own(file)
    except Refused:
        return ""


def _check_passphrase(passphrase: str) -> None:
    if not _SHORTEST <= len(passphrase) <= _LONGEST:
        why = tr("It has {count} signs.", count=len(passphrase))
        what = tr("Take {least} to {most} signs: several words that only you would put together.",
                  least=_SHORTEST, most=_LONGEST)  # fmt: skip
        raise Refused(tr("passphrase"), why, what)
