"""Sign the bundle of an incident, so that it can be checked by whoever has neither the register nor the program."""

import hashlib
from collections.abc import Iterator, Mapping
from pathlib import Path

from inspector.duties.office import Office
from inspector.gear.evidence_list import EvidenceList
from inspector.gear.exported import Manifest, Member
from inspector.gear.lists import Fault
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.archive.manifest import (
    BUNDLE,
    MANIFEST,
    PUBLIC_KEY,
    SIGNATURE,
    VERIFIER,
    VERSION,
    manifest_bytes,
    read_manifest,
    sorted_members,
)
from inspector.register.archive.prove import signature_faults
from inspector.register.archive.write import Signer, verifier


def key_files(by: Signer) -> dict[str, bytes]:
    """What a signed bundle holds beside its evidence: the open part of the key, and the script that checks it."""
    return {PUBLIC_KEY: by.public_key, VERIFIER: verifier()}


def signed_manifest(office: Office, made: EvidenceList, files: Mapping[str, bytes], by: Signer) -> dict[str, bytes]:
    """The manifest of these files, and its signature."""
    with office.book.reading() as page:
        club, head, count = page.setting("club"), page.head(), page.line_number()
    manifest = Manifest(
        format=BUNDLE,
        version=VERSION,
        program=office.program,
        club=club,
        origin=office.book.origin,
        head=head,
        line_count=count,
        made_at=office.now.isoformat(timespec="seconds"),
        members=sorted_members([_member(name, data) for name, data in files.items()]),
        about=f"{made.ref} {made.imprint.number}",
        key=by.fingerprint,
    )
    data = manifest_bytes(manifest)
    return {MANIFEST: data, SIGNATURE: by.sign(data)}


def signature_faults_of(folder: Path, key: str) -> Iterator[Fault]:
    """What is wrong with the signature of a bundle. key: the fingerprint of the key that signed it."""
    try:
        data, own, pem = ((folder / name).read_bytes() for name in (MANIFEST, SIGNATURE, PUBLIC_KEY))
    except OSError as error:
        yield Fault(Path(str(error.filename)).name, tr("It is missing."))
        return
    try:
        manifest = read_manifest(data, BUNDLE)
    except Refused:
        yield Fault(MANIFEST, tr("It was changed."))
        return
    yield from signature_faults(manifest, data, pem, own, key)


def _member(name: str, data: bytes) -> Member:
    return Member(name, len(data), hashlib.sha256(data).hexdigest())
