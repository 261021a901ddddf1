"""A copy of a register that an older program wrote, made before its tables are changed."""

from contextlib import closing, suppress
from datetime import date
from pathlib import Path

from inspector.register.backup import (
    FOLDER,
    Backup,
    check_pages,
    copy_into,
    name_of,
    opened_still,
    raise_tables,
    readable,
    sha256_of,
    take_name,
    written,
)


def back_up_before(file: Path, revision: str, on: date) -> Backup:
    """Copy a register beside itself before its tables are changed, and try the change on another copy first.

    revision: that the tables are to have. What would not go well is refused before the register is touched.
    """
    folder = file.parent / FOLDER
    part, trial = folder / f".before-{revision}.part", folder / f".trial-{revision}.part"
    try:
        with written(folder):
            folder.mkdir(parents=True, exist_ok=True)
            head = copy_into(file, part)
            copy_into(part, trial)
        with readable(part), closing(opened_still(part)) as copy:
            check_pages(part, copy)
        raise_tables(trial)
        place = folder / name_of(f"before-{revision}", on, head)
        if not place.exists():  # else a try that was killed has made it already
            take_name(part, place)
    finally:
        for one in (part, trial):
            with suppress(OSError):
                one.unlink(missing_ok=True)
    return Backup(place, place.stat().st_size, sha256_of(place), head, 0)
