"""The full archive: written, looked through by whoever has it, and opened by another copy of the program."""

import re
from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from inspector.duties.back_up import file_in
from inspector.duties.keep_key import key_words, known_keys, signer, what_it_proves
from inspector.duties.office import Office, told_nobody
from inspector.duties.register_place import Place
from inspector.gear.exported import Manifest
from inspector.gear.lists import Fault
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused
from inspector.register import signing
from inspector.register.archive import open as opening
from inspector.register.archive.prove import Proved, proved
from inspector.register.archive.write import Making, Written, write_archive
from inspector.rulebook.wording import cautions

_ENDING = ".zip"
_HEAD = re.compile(r"[0-9a-f]{8,64}")
_KEY = re.compile(r"[0-9a-f]{64}")


class LookedThrough(Struct, frozen=True):
    """What came of looking through an archive. key: the fingerprint of the key that signed it, or ""."""

    manifest: Manifest
    faults: tuple[Fault, ...]
    key: str


def archive(office: Office, file: Path, *, with_contacts: bool = False, passphrase: str | None = None) -> Written:
    """Write all of the register into a new zip file, look it through, and enter that it was written.

    with_contacts: with contact details and passphrases, which are left out else. passphrase: of this machine's signing
    key, where it is to be signed.
    """
    if file.suffix.lower() != _ENDING:
        why = tr("“{name}” does not end in {ending}.", name=file.name, ending=_ENDING)
        raise Refused(tr("file"), why, tr("Give it such an ending, so that any computer knows what it is."))
    by = signer(office, passphrase) if passphrase is not None else None
    with office.book.reading() as page:
        club = page.setting("club")
    told = None if office.told is told_nobody else office.told
    read_me = "\n".join(_read_me(office, club, with_contacts=with_contacts, signed=by is not None))
    made = write_archive(office.book, file, Making(office.now, office.program, club, read_me, with_contacts, by, told))
    _check_whole(file)
    facts = {
        "file": file.name,
        "bytes": made.size_bytes,
        "sha256": made.sha256,
        "head": made.manifest.head,
        "with_contacts": with_contacts,
        "key": made.manifest.key,
    }
    with office.book.page() as page:
        page.enter("write archive", by=office.officer.id, at=office.now, facts=facts)
    return made


def _check_whole(file: Path) -> None:
    """Look the archive through as whoever gets it would; one that a bad disk spoilt does not stay."""
    try:
        found = verify_archive(file)
    except Refused:
        file.unlink(missing_ok=True)
        raise
    if found.faults:
        file.unlink(missing_ok=True)
        why = tr("What was written is not what was meant ({where}: {why}).", where=found.faults[0].where,
                 why=found.faults[0].why)  # fmt: skip
        raise Refused(tr("file"), why, tr("Write it to another disk, and have this one looked at."))


def _read_me(office: Office, club: str, *, with_contacts: bool, signed: bool) -> Iterator[str]:
    """What whoever finds the archive is told, in lines."""
    yield tr("The gear register of {club}, as it was on {day}.", club=club, day=show_day(office.today))
    yield ""
    yield tr("register.db: all of it, an SQLite database. The program opens it: inspector open-archive FILE.")
    yield tr("lines.jsonl: its whole history, a line of JSON each row; lines.schema.json says what may stand in one.")
    yield tr("attachments: certificates, papers and photos, each named by its SHA-256.")
    yield tr("rulebooks: the rules by which gear was judged, and those that the club adopted.")
    yield tr("manifest.json: each of these files with its size and SHA-256, and the head of the ledger.")
    yield ""
    yield contacts_words(with_contacts)
    if signed:
        yield tr("It is signed. Take verify.py out of it, and run: python verify.py ARCHIVE FINGERPRINT")
        yield what_it_proves()
    else:
        yield tr("It is not signed: its sums find a fault, and no forgery.")
    yield ""
    yield from cautions(office.rules)
    yield ""


def contacts_words(with_contacts: bool) -> str:
    """Whether contact details are in it."""
    if with_contacts:
        return tr("Contact details and passphrases are in it: give it to nobody who may not have them.")
    return tr("Contact details and passphrases are not in it.")


def written_facts(made: Written) -> list[Fact]:
    """What is told of an archive once it is written."""
    facts = [
        Fact(tr("Size"), tr_n("{count} byte", "{count} bytes", made.size_bytes)),
        Fact("SHA-256", made.sha256),
        Fact(tr("Ledger head"), made.manifest.head),
        Fact(tr("Files in it"), str(len(made.manifest.members))),
    ]
    return [*facts, *([Fact(tr("Signed with"), signing.grouped(made.manifest.key))] if made.manifest.key else [])]


def verify_archive(file: Path, head: str = "", key: str = "") -> LookedThrough:
    """Look an archive through without opening it. head: one that its ledger must hold; key: the fingerprint of the key
    that must have signed it."""
    with proved(file, _asked_head(head), _asked_key(key)) as found:
        return _looked(found)


def looked_words(found: LookedThrough, office: Office | None = None) -> tuple[str, tuple[str, ...]]:
    """What came of it in a sentence, and the lines below it. office: a register that may know the key."""
    manifest = found.manifest
    told = [
        tr("Written by {club} at {at}, copy {origin}, program {program}.", club=manifest.club, at=manifest.made_at,
           origin=manifest.origin, program=manifest.program),
        tr_n("{count} ledger line, head {head}", "{count} ledger lines, head {head}", manifest.line_count,
             head=manifest.head),
        tr_n("{count} file in it", "{count} files in it", len(manifest.members)),
        contacts_words(manifest.with_contacts),
        *_key_lines(found, office),
    ]  # fmt: skip
    if found.faults:
        head = tr_n("{count} fault found.", "{count} faults found.", len(found.faults))
        return head, (*told, *(f"{one.where}: {one.why}" for one in found.faults))
    return tr("The archive is as it was written."), tuple(told)


def _key_lines(found: LookedThrough, office: Office | None) -> Iterator[str]:
    if not found.key:
        yield tr("It is not signed: its sums find a fault, and no forgery.")
        return
    yield tr("Signed with the key {key}.", key=signing.grouped(found.key))
    if office:
        with office.book.reading() as page:
            known = known_keys(page).get(found.key)
        yield (
            tr("This register knows the key: {said}.", said=key_words(known))
            if known
            else tr("This register does not know the key.")
        )
    yield what_it_proves()


def open_archive(file: Path, place: Place, head: str = "", key: str = "") -> LookedThrough:
    """Put the register of an archive into a folder that has none, once all of it was found as it was written."""
    return _looked(opening.open_archive(file, file_in(place), _asked_head(head), _asked_key(key)))


def enter_opened(office: Office, file: Path, found: LookedThrough) -> None:
    """Enter into the register which archive it was opened from."""
    facts = {"file": file.name, "head": found.manifest.head, "origin": found.manifest.origin, "key": found.key}
    with office.book.page() as page:
        page.enter("open archive", by=office.officer.id, at=office.now, facts=facts)


def is_archive(file: Path) -> bool:
    """Whether a file says that it is a zip file."""
    return file.suffix.lower() == _ENDING


def _looked(found: Proved) -> LookedThrough:
    return LookedThrough(found.manifest, found.faults, signing.fingerprint(found.key.encode()) if found.key else "")


def _asked_head(text: str) -> str:
    sought = text.strip().lower()
    if sought and not _HEAD.fullmatch(sought):
        why = tr("A ledger head has at least {least} signs of 0-9 and a-f.", least=8)
        raise Refused(tr("head"), why, tr("Copy it from the foot of a document."))
    return sought


def _asked_key(text: str) -> str:
    sought = "".join(text.split()).lower()
    if sought and not _KEY.fullmatch(sought):
        why = tr("A fingerprint has {count} signs of 0-9 and a-f.", count=64)
        raise Refused(tr("key"), why, tr("Copy it from the paper that its owner gave you."))
    return sought
