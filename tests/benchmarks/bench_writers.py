"""Several officers at once: processes that log inspections and pulls and book pieces in, all in one register.

python tests/benchmarks/bench_writers.py [writers] [deeds each]

On SQLite and on a PostgreSQL server of its own that syncs to disk. Every deed carries a mark of its own; afterwards
each must be there exactly once, the tags that all wanted exactly once in all, and `verify` must find nothing. Beside
each time stands that of as many processes that put the same bytes into bare tables by the bare driver.
"""

import multiprocessing
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from sqlalchemy import create_engine, text

from inspector.duties.book_in import book_in
from inspector.duties.build_sample import build_sample
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.duties.sit_down import seat
from inspector.duties.verify_book import verify_book
from inspector.gear.use import NewUse
from inspector.refused import Refused
from inspector.register.turns import Disturbed
from inspector.rulebook.load import Rulebook, packaged
from tests import server
from tests.benchmarks.bench_big import office_at

WRITER_COUNT, DEED_COUNT = 8, 500
_WANTED_BY_ALL = 10  # every tenth deed books a tag in that every writer wants
_INSPECTS = 3
_BYTES = {"piece_use": 250, "verdict": 33_000, "ledger": 600}  # of a deed, as the sample has them
_FORK = "fork" if sys.platform == "linux" else "spawn"


class Written(Struct, frozen=True):
    """What became of the deeds. lost, doubled: marks that are not there once; taken: tags booked in more than once."""

    seconds: float
    done: int
    refused: int
    disturbed: int
    lost: int
    doubled: int
    taken: int
    faults: int
    lines: int


def write(place: str, writers: int, deeds: int) -> Written:
    """Let so many processes do so many deeds each, and hold the register against what they say they did."""
    rules = packaged()
    office = seat(office_at(place, rules))
    before = verify_book(office).line_count
    began = time.monotonic()
    answers = [word for some in _in_processes(_write, place, writers, deeds) for word in some]
    seconds = time.monotonic() - began
    found, tags = _marks(office)
    checked = verify_book(office)
    done = Counter(word[1:] for word in answers if word[0] == "+")
    lost = sum(found[mark] < count for mark, count in done.items() if not mark.startswith("R-"))
    doubled = sum(count > done[mark] for mark, count in found.items())
    taken = sum(tags[tag] != 1 or done[tag] != 1 for tag in {one[1:] for one in answers if one[1:].startswith("R-")})
    office.book.close()
    counted = Counter(word[0] for word in answers)
    kept = (len(checked.faults), checked.line_count - before)
    return Written(seconds, counted["+"], counted["-"], counted["!"], lost, doubled, taken, *kept)


def _in_processes(work: Callable[..., Any], place: str, writers: int, deeds: int) -> list[Any]:
    with multiprocessing.get_context(_FORK).Pool(writers) as pool:
        return pool.starmap(work, [(place, writer, deeds) for writer in range(writers)], chunksize=1)


def _write(place: str, writer: int, deeds: int) -> list[str]:
    """The deeds of one officer: what was kept (+), refused (-), disturbed (!), each with its mark."""
    office = seat(office_at(place, packaged()))
    tags = [row.tag for row in list_gear(office).rows if not row.tag.startswith("R-")]
    told = []
    for number in range(deeds):
        mark = f"R-{number}" if number % _WANTED_BY_ALL == 0 else f"w{writer}-{number}"
        try:
            _do(office, tags[(writer * 7 + number) % len(tags)], mark, number)
            told.append(f"+{mark}")
        except Disturbed:
            told.append(f"!{mark}")
        except Refused:
            told.append(f"-{mark}")
    office.book.close()
    return told


def _do(office: Office, tag: str, mark: str, number: int) -> None:
    if mark.startswith("R-"):
        book_in(office, replace(open_item(office, "SH-01").dossier.item.facts, tag=mark, note=""))
    elif number % _INSPECTS == 0 and (looks := open_item(office, tag).dossier.inspections):
        record_inspection(office, tag, replace(looks[-1].facts, on=office.today, note=mark))
    else:
        record_use(office, tag, NewUse(office.today, 1, note=mark))


def _marks(office: Office) -> tuple[Counter[str], Counter[str]]:
    """How often each mark and each wanted tag is there."""
    marks: Counter[str] = Counter()
    with office.book.reading() as page:
        pieces = page.every_item()
        every = page.dossiers([(one, office.kind(one.facts.kind)) for one in pieces], office.today)
    for one in every:
        notes = [look.facts.note for look in one.inspections] + [use.facts.note for use in one.uses]
        marks.update(note for note in notes if note[:1] == "w" and note[1:2].isdigit())
    return marks, Counter(one.tag for one in pieces if one.tag.startswith("R-"))


# --- the same bytes without a register ---


def write_bare(url: str, writers: int, deeds: int) -> float:
    """Seconds for as many processes that put as many bytes into bare tables."""
    engine = create_engine(url)
    with engine.begin() as connection:
        for name in _BYTES:
            connection.execute(text(f"CREATE TABLE bare_{name} (id varchar(36) PRIMARY KEY, body text NOT NULL)"))
    engine.dispose()
    began = time.monotonic()
    _in_processes(_write_bare, url, writers, deeds)
    return time.monotonic() - began


def _write_bare(url: str, writer: int, deeds: int) -> int:
    import uuid

    engine = create_engine(url, connect_args={"timeout": 60} if url.startswith("sqlite") else {})
    body = {name: ("strap, shackle, pin and what was seen of them; " * 800)[:size] for name, size in _BYTES.items()}
    for _ in range(deeds):
        with engine.connect() as connection:
            if url.startswith("sqlite"):
                connection.exec_driver_sql("PRAGMA synchronous=FULL")
                connection.exec_driver_sql("BEGIN IMMEDIATE")
            for name, said in body.items():
                row = {"id": str(uuid.uuid4()), "body": said}
                connection.execute(text(f"INSERT INTO bare_{name} VALUES (:id, :body)"), row)
            connection.commit()
    engine.dispose()
    return deeds


@contextmanager
def on_server(folder: Path, rules: Rulebook) -> Iterator[tuple[str, str]]:
    """Register and bare database on the server alone, the sample in the register. Raises NoServerError without one."""
    running = server.start(folder / "server", quick=False)
    try:
        with running.database() as one, running.database() as bare:
            office = office_at(one.url, rules)
            build_sample(office)
            office.book.close()
            yield one.url, bare.url
    finally:
        server.stop(folder / "server")


@contextmanager
def places(folder: Path, rules: Rulebook) -> Iterator[list[tuple[str, str, str]]]:
    """Name, register and bare database on both makes, the sample in each register."""
    with on_server(folder, rules) as (one, bare):
        here = folder / "file"
        here.mkdir()
        office = office_at(str(here), rules)
        build_sample(office)
        office.book.close()
        yield [("SQLite", str(here), f"sqlite:///{here / 'bare.db'}"), ("PostgreSQL", one, bare)]


def main(writers: int, deeds: int) -> None:
    """Write on both makes and print what came of it."""
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        folder.chmod(0o711)
        with places(folder, packaged()) as every:
            for name, place, bare in every:
                one = write(place, writers, deeds)
                bare_s = write_bare(bare, writers, deeds)
                rate = one.done / one.seconds
                print(
                    f"{name}: {writers} writers x {deeds} deeds in {one.seconds:,.1f} s ({rate:,.0f} kept a second),"
                    f" bare {bare_s:,.1f} s ({one.seconds / bare_s:.1f} times); kept {one.done}, refused {one.refused},"
                    f" disturbed {one.disturbed}, lost {one.lost}, doubled {one.doubled}, tags taken twice {one.taken},"
                    f" {one.lines} ledger lines, {one.faults} faults"
                )


if __name__ == "__main__":
    given = [int(one) for one in sys.argv[1:]]
    main(*(given or [WRITER_COUNT, DEED_COUNT]))
