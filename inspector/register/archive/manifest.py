"""The manifest of an archive or bundle: canonical JSON, so that a signature over its bytes is one over what it says."""

import msgspec
from msgspec import Struct

from inspector.gear.exported import Manifest, Member
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.canonical import canonical

ARCHIVE, BUNDLE = "gear-register-archive", "gear-register-bundle"
VERSION = 1
MANIFEST, SIGNATURE, PUBLIC_KEY = "manifest.json", "manifest.sig", "public_key.pem"
VERIFIER = "verify.py"
UNLISTED = frozenset({MANIFEST, SIGNATURE})


class _Head(Struct, frozen=True):
    """What every version of a manifest begins with."""

    format: str
    version: int


def manifest_bytes(manifest: Manifest) -> bytes:
    """The one spelling of a manifest. Its members stand in the order of their paths."""
    return (canonical(msgspec.to_builtins(manifest)) + "\n").encode()


def sorted_members(members: list[Member]) -> tuple[Member, ...]:
    """The members in the order of their paths."""
    return tuple(sorted(members, key=lambda one: one.path))


def read_manifest(data: bytes, wanted: str) -> Manifest:
    """The manifest again. wanted: its format. Refused where it is none, or of a newer version."""
    try:
        head = msgspec.json.decode(data, type=_Head)
        if head.format == wanted and head.version > VERSION:
            why = tr("It was written by a newer version of this program.")
            raise Refused(tr("archive"), why, tr("Install the newer version, and open it with that."))
        manifest = msgspec.json.decode(data, type=Manifest)
    except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError) as error:
        raise no_manifest() from error
    if head.format != wanted or manifest_bytes(manifest) != data:
        raise no_manifest()
    return manifest


def no_manifest() -> Refused:
    """There is no list of contents as this program writes it."""
    why = tr("Its list of contents cannot be read.")
    return Refused(tr("archive"), why, tr("Use another copy of it; nothing was taken from this one."))
