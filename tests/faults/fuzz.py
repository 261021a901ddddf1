"""Gives every door spoilt files: each is refused or taken, nothing is half written, and nothing elsewhere.

python -m tests.faults.fuzz 300 [SEED]    so many files a door; counts, the longest case, the most memory
"""

import os
import random
import resource
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct, field
from msgspec.structs import replace

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["LANGUAGE"] = "en"

from inspector.duties.found_club import found_club
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.refused import Refused
from inspector.rulebook.load import packaged
from tests.conftest import office_in
from tests.faults.doors import DOORS, Door, furnished

MOST_MEMORY = 1 << 30  # bytes of address space beyond what is there at the start; a file that needs more is a fault


class Tried(Struct):
    """What came of the cases at one door. faults: how a file that broke something was made, and what it broke."""

    taken: int = 0
    refused: int = 0
    longest_s: float = 0.0
    faults: list[str] = field(default_factory=list)

    @property
    def count(self) -> int:
        """All cases."""
        return self.taken + self.refused + len(self.faults)


def spoilt(seeds: list[bytes], words: tuple[bytes, ...], dice: random.Random) -> bytes:
    """A file made from good ones by one to six changes."""
    data = bytearray(dice.choice(seeds))
    for _ in range(dice.choice((1, 1, 1, 2, 3, 6))):
        data = _changed(data, seeds, words, dice)
    return bytes(data)


def _changed(data: bytearray, seeds: list[bytes], words: tuple[bytes, ...], dice: random.Random) -> bytearray:
    at, size = dice.randrange(len(data) + 1), dice.choice((1, 2, 8, 64, 512))
    how = dice.choice(("flip", "cut", "drop", "double", "word", "word", "word", "noise", "splice", "tokens"))
    if how == "flip" and data:
        for _ in range(size):
            data[dice.randrange(len(data))] ^= 1 << dice.randrange(8)
    elif how == "cut":
        del data[at:]
    elif how == "drop":
        del data[at : at + size]
    elif how == "double":
        data[at:at] = data[at : at + size] * dice.randint(1, 4)
    elif how == "word" and words:
        data[at : at + dice.choice((0, 0, 4, size))] = dice.choice(words)
    elif how == "noise":
        data[at:at] = dice.randbytes(size)
    elif how == "splice":
        other = dice.choice(seeds)
        data[at:] = other[dice.randrange(len(other)) :]
    else:
        return _swapped(data, dice)
    return data


def _swapped(data: bytearray, dice: random.Random) -> bytearray:
    """Two lines change places, so that the grammar stays and the sense goes."""
    lines = bytes(data).split(b"\n")
    one, other = dice.randrange(len(lines)), dice.randrange(len(lines))
    lines[one], lines[other] = lines[other], lines[one]
    return bytearray(b"\n".join(lines))


def run(office: Office, name: str, count: int, seed: int) -> Tried:
    """Try so many spoilt files at a door of a furnished office."""
    door, tried = DOORS[name], Tried()
    seeds, dice = door.seeds(office), random.Random(f"{name} {seed}")
    for number in range(count):
        _try(office, door, spoilt(seeds, door.words, dice), tried, f"{name} {seed}/{number}")
    faults = verify_book(office).faults
    tried.faults += [f"{name}: afterwards {one.where}: {one.why}" for one in faults[:3]]
    return tried


def _try(office: Office, door: Door, data: bytes, tried: Tried, case: str) -> None:
    before, stand = _head(office), set(_files(office.out_tray.parent))
    with tempfile.TemporaryDirectory() as place:
        began = time.monotonic()
        try:
            door.enter(office, data, Path(place) / "x" if _made(Path(place) / "x") else Path(place))
            tried.taken += 1
        except Refused as refusal:
            tried.refused += 1
            tried.faults += [f"{case}: {one}" for one in _half_done(office, refusal, before, Path(place))]
        except Exception as fault:  # whatever else comes out is what is sought
            tried.faults.append(f"{case}: {type(fault).__name__}: {fault}")
        tried.longest_s = max(tried.longest_s, time.monotonic() - began)
    strays = [one for one in _files(office.out_tray.parent) if one not in stand and not _own(one)]
    tried.faults += [f"{case}: wrote {one}" for one in strays]


def _made(folder: Path) -> bool:
    folder.mkdir()
    return True


def _half_done(office: Office, refusal: Refused, before: str, place: Path) -> Iterator[str]:
    if not (refusal.field and refusal.why and refusal.what_to_do):
        yield f"a refusal without field, reason or advice: {refusal}"
    if _head(office) != before:
        yield "refused, and something was entered all the same"
    if left := [one.name for one in (place / "x").rglob("*") if one.name != "given.db" and one.is_file()]:
        yield f"refused, and left {left}"
    if outside := [one.name for one in place.iterdir() if one.name != "x"]:
        yield f"wrote outside its folder: {outside}"


def _head(office: Office) -> str:
    with office.book.reading() as page:
        return page.head()


def _files(folder: Path) -> Iterator[Path]:
    return (one for one in folder.rglob("*") if one.is_file())


def _own(file: Path) -> bool:
    """The register's own file and what lies beside it while it is open."""
    return file.name.startswith("register.db")


def office_for(folder: Path) -> Office:
    """A furnished office on a register in the folder."""
    made = office_in(folder, packaged())
    return furnished(replace(made, officer=found_club(made, "Test Club", "Ada Officer")))


def main(count: int, seed: int) -> int:
    """Every door; the exit code."""
    resource.setrlimit(resource.RLIMIT_AS, (_address_space() + MOST_MEMORY,) * 2)
    total: Counter[str] = Counter()
    for name in DOORS:
        with tempfile.TemporaryDirectory() as place:
            office = office_for(Path(place))
            tried = run(office, name, count, seed)
            office.book.close()
        total += Counter({"taken": tried.taken, "refused": tried.refused, "faults": len(tried.faults)})
        print(f"{name}: {tried.taken} taken, {tried.refused} refused, longest {tried.longest_s:.2f} s", flush=True)
        for fault in tried.faults:
            print(f"  FAULT {fault[:300]}", flush=True)
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    print(
        f"{dict(total)}, seed {seed}; most memory {peak} MiB, of at most {MOST_MEMORY >> 20} MiB more than at the start"
    )
    return 1 if total["faults"] else 0


def _address_space() -> int:
    return int(Path("/proc/self/statm").read_text("ascii").split()[0]) * resource.getpagesize()


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 9))
