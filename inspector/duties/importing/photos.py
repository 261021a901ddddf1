"""The photos that go with a list: named in a column, or called by the tag, in one folder."""

from collections.abc import Iterable, Mapping
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.plain_lines import file_name
from inspector.gear.import_list import Fate, RowFate
from inspector.language import tr
from inspector.paper.photo import MOST_BYTES
from inspector.refused import Refused

_ENDINGS = {".jpg", ".jpeg", ".png"}
_MOST_FILES = 50_000


class Folder(Struct, frozen=True):
    """A folder of photos. named: each file by its name in small letters; of_tag: by the stem of its name."""

    place: Path
    named: Mapping[str, Path]
    of_tag: Mapping[str, tuple[Path, ...]]


def folder_of(place: Path) -> Folder:
    """The files of a folder, not of those within it; refused where it is none or cannot be read."""
    try:
        files = sorted(one for one in place.iterdir() if one.is_file())
    except OSError as error:
        why = tr("{folder} cannot be read ({why}).", folder=place, why=error.strerror)
        raise Refused(tr("folder"), why, tr("Choose the folder with the photos.")) from error
    if len(files) > _MOST_FILES:
        why = tr("It has more than {most} files.", most=_MOST_FILES)
        raise Refused(tr("folder"), why, tr("Put the photos of the list into a folder of their own."))
    of_tag: dict[str, tuple[Path, ...]] = {}
    for one in files:
        if one.suffix.lower() in _ENDINGS:
            of_tag[one.stem.casefold()] = (*of_tag.get(one.stem.casefold(), ()), one)
    return Folder(place, {one.name.casefold(): one for one in files}, of_tag)


def with_photos(rows: Iterable[RowFate], folder: Folder | None) -> list[RowFate]:
    """The rows with the files that go with each; what is named and not there is told, and stands in the note."""
    return [_with(one, folder) if (folder or one.photos) and one.fate is Fate.TAKEN else one for one in rows]


def _with(row: RowFate, folder: Folder | None) -> RowFate:
    found: list[str] = []
    missing: list[str] = []
    for name in row.photos:
        path = folder.named.get(name.casefold()) if folder else None
        (found if path else missing).append(path.name if path else name)
    if folder:
        found += [one.name for one in _by_tag(row.tag, folder) if one.name not in found]
    told = [_fault(name, folder) for name in missing]
    facts = row.facts
    if missing and facts:
        facts = replace(facts, note=tr("Photo in the list: {names}", names="; ".join(missing)) + " · " + facts.note)
    return replace(row, facts=facts, photos=tuple(found), told=(*row.told, *told))


def _by_tag(tag: str, folder: Folder) -> tuple[Path, ...]:
    """Files called by the tag, also where its signs cannot stand in a file's name."""
    return folder.of_tag.get(tag.casefold()) or folder.of_tag.get(file_name(tag).casefold(), ())


def _fault(name: str, folder: Folder | None) -> str:
    if folder is None:
        return tr("The photo “{name}” is not taken: no folder with photos was named.", name=name)
    return tr("The photo “{name}” is not in the folder.", name=name)


def photo_bytes(folder: Folder, name: str) -> bytes:
    """The bytes of a photo of the folder; refused where it cannot be read or is too large."""
    path = folder.named.get(name.casefold())
    try:
        if path and path.stat().st_size <= MOST_BYTES:
            return path.read_bytes()
    except OSError as error:
        why = tr("{file} cannot be read ({why}).", file=name, why=error.strerror)
        raise Refused(name, why, tr("Look whether it is still there.")) from error
    why = tr("{file} is no file, or has more than {most} MB.", file=name, most=MOST_BYTES // 10**6)
    raise Refused(name, why, tr("Take a single file, and make it smaller where it is too large."))
