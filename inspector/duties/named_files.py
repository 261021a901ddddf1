"""Files that the officer names: read in, and written where none was before."""

from collections.abc import Iterable
from pathlib import Path

from inspector.language import tr
from inspector.refused import Refused


def read_bytes(file: Path) -> bytes:
    """What stands in a file; refused where it cannot be read."""
    try:
        return file.read_bytes()
    except OSError as error:
        why = tr("{file} cannot be read ({why}).", file=file, why=error.strerror)
        raise Refused(tr("file"), why, tr("Check its name and where it lies.")) from error


def write_new(file: Path, text: str) -> None:
    """Write a text into a new file; one that is there already stays as it is."""
    write_new_bytes(file, text.encode("utf-8"))


def write_new_bytes(file: Path, data: bytes) -> None:
    """Write into a new file; one that is there already stays as it is."""
    write_new_parts(file, (data,))


def write_new_parts(file: Path, parts: Iterable[bytes]) -> int:
    """Write parts one after the other into a new file, and return how many; where one fails, no file is left."""
    count = 0
    try:
        with file.open("xb") as new:
            try:
                for part in parts:
                    new.write(part)
                    count += 1
            except BaseException:
                new.close()
                file.unlink(missing_ok=True)
                raise
    except FileExistsError as error:
        why = tr("{file} is there already and stays as it is.", file=file)
        raise Refused(tr("file"), why, tr("Name another file, or move that one away first.")) from error
    except OSError as error:
        why = tr("{file} cannot be written ({why}).", file=file, why=error.strerror)
        raise Refused(tr("file"), why, tr("Choose a folder you may write to.")) from error
    return count
