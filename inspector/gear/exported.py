"""What leaves the register for other programs: tables of cells, and what an archive is."""

from datetime import date

from msgspec import Struct

Cell = str | int | float | date | None


class ExportedTable(Struct, frozen=True):
    """A table for a spreadsheet. name: of its sheet, without signs that a sheet may not have; None: an empty cell."""

    name: str
    heads: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


class Member(Struct, frozen=True):
    """A file of an archive or a bundle. path: with "/" between folders; sha256: of its bytes."""

    path: str
    size_bytes: int
    sha256: str


class Manifest(Struct, frozen=True):
    """What an archive or a bundle says of itself; its own file and its signature's are not among the members.

    format: which of the two it is; version: of that format. origin: the copy of the register that wrote it; head: of
    its ledger, with so many lines. made_at: day and time with the zone. about: the incident of a bundle. key: the
    fingerprint of the key that signed it; empty where nobody did.
    """

    format: str
    version: int
    program: str
    club: str
    origin: str
    head: str
    line_count: int
    made_at: str
    members: tuple[Member, ...]
    about: str = ""
    with_contacts: bool = False
    key: str = ""


class PublicKey(Struct, frozen=True):
    """A signing key as the register knows it. on, by: when and by whom it was entered; here: this machine has it."""

    fingerprint: str
    pem: str
    on: date
    by: str
    here: bool = False
