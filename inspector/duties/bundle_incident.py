"""Bundle an incident for whoever inquires into it: a folder that `sha256sum -c SHA256SUMS` can prove.

The checksum of the checksum file is kept in the register, so a bundle made anew by somebody else is found out as well.
"""

import hashlib
import json
from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from inspector.duties.evidence_paper import enter_evidence, entry_words, stood_of
from inspector.duties.incident_checks import incident_called
from inspector.duties.keep_key import signer
from inspector.duties.office import Office
from inspector.duties.out_tray import put_out
from inspector.duties.plain_lines import file_name
from inspector.duties.rig_files import rig_text
from inspector.duties.sign_bundle import key_files, signature_faults_of, signed_manifest
from inspector.gear.evidence_list import EvidenceList
from inspector.gear.incident import Incident, StoodThen
from inspector.gear.lists import Fault
from inspector.gear.verdict import Explanation
from inspector.language import show_day, tr
from inspector.paper.evidence_list import evidence_list
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.register.archive.manifest import UNLISTED
from inspector.register.page import Page
from inspector.register.rows import as_facts, from_body

SUMS = "SHA256SUMS"
_BUNDLE = "evidence_bundle"  # what the register calls a kept checksum
_LIST, _REPORT, _RIG = "evidence-list.pdf", "report.json", "rig.toml"
_NUMBER = "evidence-list-number.txt"


class Bundle(Struct, frozen=True):
    """A bundle as it was written. sums_sha256: of its checksum file; missing: signs its list could not print.

    key: the fingerprint of the key that signed it, or "".
    """

    folder: Path
    number: str
    files: tuple[str, ...]
    sums_sha256: str
    missing: tuple[str, ...]
    key: str = ""


def bundle_incident(office: Office, ref: str, folder: Path, passphrase: str | None = None) -> Bundle:
    """Write the bundle into a new or empty folder, with an evidence list printed for it.

    passphrase: of this machine's signing key, where the bundle is to be signed.
    """
    _check_empty(folder)
    by = signer(office, passphrase) if passphrase is not None else None
    made = enter_evidence(office, ref)
    printed = evidence_list(made, PageSize(office.page), office.system)
    put_out(office, made.imprint.number, printed)
    files = {_LIST: printed.pdf, _NUMBER: f"{made.imprint.number}\n".encode(), **_contents(office, ref, made)}
    files = dict(sorted({**files, **(key_files(by) if by else {})}.items()))
    sums = "".join(f"{_sha256(data)}  {name}\n" for name, data in files.items()).encode()
    signature = signed_manifest(office, made, {**files, SUMS: sums}, by) if by else {}
    _write(folder, {**files, SUMS: sums, **signature})
    key = by.fingerprint if by else ""
    with office.book.page() as page:
        kept = {"incident": made.ref, "sha256": _sha256(sums), "files": sorted(files), "key": key}
        page.add_document(_sums_number(made.imprint.number), _BUNDLE, office.today, made.imprint.number, kept)
        page.enter("bundle incident", by=office.officer.id, at=office.now, facts=kept)
    return Bundle(folder, made.imprint.number, tuple(files), _sha256(sums), printed.missing_glyphs, key)


def check_bundle(office: Office, folder: Path) -> tuple[Fault, ...]:
    """What is wrong with a bundle: files changed, missing or put in, a checksum file other than the one written, or a
    signature that does not fit."""
    sums = _read(folder / SUMS)
    if sums is None:
        return (Fault(SUMS, tr("It is missing.")),)
    named = dict(_named(sums))
    faults = [_fault(folder, name, sha256) for name, sha256 in named.items()]
    there = {path.relative_to(folder).as_posix() for path in folder.rglob("*") if not path.is_dir()}
    kept = _kept(office, folder)
    key = str(kept.get("key", "")) if kept else ""
    unlisted = {SUMS, *(UNLISTED if key else ())}
    faults += [Fault(name, tr("It was put in afterwards.")) for name in sorted(there - {*named, *unlisted})]
    faults += signature_faults_of(folder, key) if key else ()
    faults.append(_against_register(kept, sums))
    return tuple(one for one in faults if one is not None)


def _fault(folder: Path, name: str, sha256: str) -> Fault | None:
    path = folder / name
    if not name or not path.resolve().is_relative_to(folder.resolve()):
        return Fault(name, tr("It lies outside the bundle."))
    data = _read(path)
    if data is None:
        return Fault(name, tr("It is missing."))
    return None if _sha256(data) == sha256 else Fault(name, tr("It was changed."))


def _kept(office: Office, folder: Path) -> dict[str, object] | None:
    """What the register keeps of the bundle with this evidence list; None where it knows none."""
    number = (_read(folder / _NUMBER) or b"").decode(errors="replace").strip()
    with office.book.reading() as page:
        kept = page.latest_document(_BUNDLE, number)
    return from_body(kept[1], dict) if kept else None


def _against_register(kept: dict[str, object] | None, sums: bytes) -> Fault | None:
    """Whether the register knows this very checksum file by the number of the bundle's evidence list."""
    if kept is None:
        return Fault(_NUMBER, tr("The register knows no bundle with this evidence list."))
    if kept["sha256"] != _sha256(sums):
        return Fault(SUMS, tr("It is not the one that the register wrote: files may have been changed with it."))
    return None


def _named(sums: bytes) -> Iterator[tuple[str, str]]:
    """Name and checksum of each line, as sha256sum writes them."""
    for text in sums.decode(errors="replace").splitlines():
        sha256, _, name = text.partition("  ")
        yield name, sha256


def _contents(office: Office, ref: str, made: EvidenceList) -> dict[str, bytes]:
    """The report, the rig, the words of each verdict and each attachment, by name."""
    with office.book.reading() as page:
        incident = incident_called(page, ref)
        files = {_REPORT: _report(page, incident, made)}
        if incident.facts.rig:
            files[_RIG] = rig_text(incident.facts.rig, office.decimal).encode()
        for number, one in enumerate(stood_of(page, incident), 1):
            files[f"verdicts/{number:02d}-{file_name(one.tag)}.txt"] = _verdict_text(page, one).encode()
        for number, attached in enumerate(page.attachments(incident.id), 1):
            name = f"attachments/{number:02d}-{file_name(attached.facts.name)}"
            files[name] = page.attachment_bytes(attached.facts.sha256)
    return files


def _report(page: Page, incident: Incident, made: EvidenceList) -> bytes:
    """All of the report and of what was added, as JSON for another program."""
    names = {one.id: one.name for one in page.people()}
    told = as_facts(incident.facts)
    told["rig_result"] = json.loads(incident.facts.rig_result) if incident.facts.rig_result else None
    entries = page.incident_entries(incident)
    said: dict[str, object] = {
        "ref": incident.ref,
        "report": told,
        "added": [as_facts(one.facts) for one in entries],
        "added_in_words": [" ".join(entry_words(one, names)) for one in entries],
        "pieces": as_facts(made.pieces),
        "vehicles": as_facts(made.vehicles),
        "evidence_list": made.imprint.number,
        "ledger_head": made.head,
        "cautions": list(made.imprint.cautions),
    }
    told_of = json.dumps(said, ensure_ascii=False)
    said["people"] = {key: name for key, name in names.items() if key in told_of}
    return json.dumps(said, indent=2, ensure_ascii=False, sort_keys=True).encode()


def _verdict_text(page: Page, stood: StoodThen) -> str:
    """The verdict of that day with its reasons and passes, as it was said."""
    if not stood.verdict_id:
        return f"{stood.tag}\n{stood.headline}\n"
    verdict, words = page.verdict_with(stood.verdict_id)
    head = [stood.tag, tr("Judged on {day}: {headline}", day=show_day(verdict.on), headline=words.headline)]
    head.append(tr("Rulebook {name}, program {program}", name=verdict.rulebook, program=verdict.program))
    return "\n".join([*head, words.plain, *_reasons(words), "", *words.cautions, ""])


def _reasons(words: Explanation) -> Iterator[str]:
    for title, found in ((tr("Reasons:"), words.reasons), (tr("Passed:"), words.passes)):
        yield title
        for one in found:
            yield f"- {one.sentence} {one.value} / {one.limit} [{one.source}; {one.rule}]"


def _check_empty(folder: Path) -> None:
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        why = tr("{folder} is not empty.", folder=folder)
        raise Refused(tr("folder"), why, tr("Name a new folder; a bundle is never mixed with other files."))


def _write(folder: Path, files: dict[str, bytes]) -> None:
    try:
        for name, data in files.items():
            place = folder / name
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(data)
    except OSError as error:
        why = tr("{place} cannot be written ({why}).", place=folder, why=error.strerror)
        raise Refused(tr("folder"), why, tr("Make room or name another folder, then bundle again.")) from error


def _read(file: Path) -> bytes | None:
    try:
        return file.read_bytes()
    except OSError:
        return None


def _sums_number(number: str) -> str:
    return f"{number}-sums"


def _sha256(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
