"""A small register with a bit of everything, an archive of it, and ways to spoil one."""

import hashlib
import json
import struct
import warnings
from collections.abc import Callable
from pathlib import Path
from zipfile import ZIP_BZIP2, ZIP_DEFLATED, ZIP_STORED, ZipFile, ZipInfo

from msgspec.structs import replace

from inspector.duties.archive_register import archive
from inspector.duties.attach import attach
from inspector.duties.book_in import book_in
from inspector.duties.keep_contact import write_contact
from inspector.duties.keep_key import make_key
from inspector.duties.machine_settings import MachineSettings
from inspector.duties.office import Office
from inspector.gear.attachment import PaperKind
from tests.duties.gear import shackle
from tests.paper.test_photo import PDF

MAIL = "nobody@example.org"
SECRET = "four wet gloves hang"
MANIFEST = "manifest.json"
Members = dict[str, bytes]


def on_machine(office: Office, folder: Path) -> Office:
    """The office on a machine whose settings lie in the folder."""
    return replace(office, machine=MachineSettings(folder / "settings" / "window.json"))


def filled(office: Office, folder: Path) -> Office:
    """The register with a piece, a certificate and a contact; the machine's settings lie in the folder."""
    book_in(office, shackle())
    attach(office, "SH-1", "Cert 19mm.PDF", PDF, PaperKind.CERTIFICATE)
    write_contact(office, office.officer.name, mail=MAIL)
    return on_machine(office, folder)


def signed_in(office: Office, file: Path) -> str:
    """A signed archive of the register; the fingerprint of its key."""
    key = make_key(office, SECRET).fingerprint
    archive(office, file, passphrase=SECRET)
    return key


def members(file: Path) -> Members:
    """What is in a zip file, by name, in its order."""
    with ZipFile(file) as box:
        return {info.filename: box.read(info) for info in box.infolist()}


def put(file: Path, parts: Members) -> None:
    """A zip file of these parts, as this program writes one."""
    with ZipFile(file, "w") as box:
        for name, data in parts.items():
            add(box, name, data)


def add(box: ZipFile, name: str, data: bytes, mode: int = 0o100644, packed: int = ZIP_DEFLATED) -> None:
    """Put one member in."""
    info = ZipInfo(name)
    info.external_attr, info.compress_type = mode << 16, packed
    box.writestr(info, data)


def listed(parts: Members, **changes: object) -> Members:
    """The parts with a manifest that was made to fit them, by somebody who does not have the key."""
    manifest = json.loads(parts[MANIFEST])
    own = {name: data for name, data in parts.items() if name not in {MANIFEST, "manifest.sig"}}
    manifest["members"] = [
        {"path": name, "sha256": hashlib.sha256(data).hexdigest(), "size_bytes": len(data)}
        for name, data in sorted(own.items())
    ]
    text = json.dumps({**manifest, **changes}, sort_keys=True, separators=(",", ":"), ensure_ascii=False) + "\n"
    return {**parts, MANIFEST: text.encode()}


def _with(change: Callable[[Members], Members]) -> Callable[[Path], None]:
    return lambda file: put(file, change(members(file)))


def _and(name: str, data: bytes = b"x", mode: int = 0o100644, packed: int = ZIP_STORED) -> Callable[[Path], None]:
    def spoil(file: Path) -> None:
        with ZipFile(file, "a") as box, warnings.catch_warnings(action="ignore"):
            add(box, name, data, mode, packed)

    return spoil


def _listed_and(name: str) -> Callable[[Path], None]:
    """A member that the manifest lists as well."""
    return _with(lambda parts: listed({**parts, name: b"x"}))


def _bomb(file: Path) -> None:
    parts = members(file)
    put(file, listed({**parts, "lines.jsonl": bytes(64 << 20)}))


def _cut(file: Path) -> None:
    file.write_bytes(file.read_bytes()[:-200])


def _many(file: Path) -> None:
    """The end of the file says that its directory is larger than memory."""
    data = bytearray(file.read_bytes())
    struct.pack_into("<I", data, len(data) - 10, 0x7FFFFFFF)
    file.write_bytes(bytes(data))


def _encrypted(file: Path) -> None:
    data = bytearray(file.read_bytes())
    at = data.rfind(b"PK\x01\x02")
    data[at + 8] |= 1
    file.write_bytes(bytes(data))


REFUSED: dict[str, Callable[[Path], object]] = {
    "no zip": lambda file: file.write_bytes(b"not an archive" * 100),
    "empty": lambda file: file.write_bytes(b""),
    "cut off": _cut,
    "a directory larger than memory": _many,
    "out of the folder": _and("../evil.txt"),
    "out of the folder, listed": _listed_and("../evil.txt"),
    "an absolute name": _listed_and("/tmp/evil.txt"),
    "a name of another system": _listed_and("..\\evil.txt"),
    "a drive": _listed_and("C:evil.txt"),
    "a folder": _and("attachments/", b""),
    "a link": _and("attachments/" + "0" * 64, b"/etc/passwd", 0o120777),
    "twice": _and("register.db"),
    "twice in other letters": _and("Register.db"),
    "one more": _and("attachments/" + "0" * 64 + ".pdf"),
    "a strange one, listed": _listed_and("extra.txt"),
    "encrypted": _encrypted,
    "packed in another way": _and("attachments/" + "0" * 64, b"x" * 9000, packed=ZIP_BZIP2),
    "a bomb": _bomb,
    "no database": _with(lambda parts: {name: data for name, data in parts.items() if name != "register.db"}),
    "no manifest": _with(lambda parts: {name: data for name, data in parts.items() if name != MANIFEST}),
    "a manifest that is none": _with(lambda parts: {**parts, MANIFEST: b"[" * 5000}),
    "a manifest of another program": _with(lambda parts: listed(parts, format="something else")),
    "a manifest spelt otherwise": _with(lambda parts: {**parts, MANIFEST: b" " + parts[MANIFEST]}),
    "a newer version": _with(lambda parts: listed(parts, version=2, more="unheard of")),
}


def _fitted(change: Callable[[Members], Members], **said: object) -> Callable[[Path], None]:
    """A change with a manifest made to fit it, and no signature."""
    return _with(lambda parts: listed({**parts, **change(parts)}, key="", **said))


def _in(name: str, old: bytes, new: bytes) -> Callable[[Members], Members]:
    return lambda parts: {name: parts[name].replace(old, new)}


def _rulebook(parts: Members) -> Members:
    return {name: data + b"#" for name, data in parts.items() if name.startswith("rulebooks/")}


DATABASE, LINES = "register.db", "lines.jsonl"
FAULTY: dict[str, tuple[Callable[[Path], object], str]] = {
    "another database": (_with(lambda parts: {**parts, DATABASE: parts[DATABASE][:-1] + b"?"}), DATABASE),
    "other lines": (_with(lambda parts: {**parts, LINES: parts[LINES][:-2] + b" \n"}), LINES),
    "lines made to fit": (_fitted(_in(LINES, b"SH-1", b"SH-9")), LINES),
    "a rulebook made to fit": (_fitted(_rulebook), "rulebooks/"),
    "a database made to fit": (_fitted(_in(DATABASE, b"4.75 t", b"9.75 t")), "ledger"),
    "no database at all, made to fit": (_fitted(lambda _: {DATABASE: b"no database" * 999}), DATABASE),
    "another head, made to fit": (_fitted(lambda _: {}, head="ab" * 32), MANIFEST),
}
