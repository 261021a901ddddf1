"""A register of a million inspections: making it, and how long list, search, record, judging and verify take in it.

python tests/benchmarks/bench_big.py ADDRESS_OR_FOLDER [inspections]

ADDRESS is that of an empty PostgreSQL database, FOLDER an empty folder; where the register stands there already it is
measured as it is. How it is made, and what of it is unlike life, stands in big_register.py.
"""

import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from inspector.duties.build_sample import build_sample
from inspector.duties.office import Office
from inspector.duties.sit_down import seat
from inspector.gear.person import Person
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook, packaged
from tests.benchmarks import big_register
from tests.benchmarks.registers import EVENING, office_on

INSPECTION_COUNT = 1_000_000


def office_at(place: str, rules: Rulebook) -> Office:
    """An office on the register at an address or in a folder."""
    if "://" not in place:
        return office_on(Path(place), rules)
    return Office(open_book(place), rules, Path("documents"), Person("nobody", "nobody", ""), lambda: EVENING, "bench")


def make(place: str, rules: Rulebook, inspections: int) -> None:
    """Make the register where none is: the sample, and as many copies as so many inspections take."""
    office = office_at(place, rules)
    build_sample(office)
    big_register.live_again(office := seat(office))
    pattern = big_register.pattern_of(office)
    big_register.check(pattern)
    count = -(-inspections // pattern.inspection_count)
    began = time.monotonic()

    def told(done: int) -> None:
        print(f"\r{done} of {count} copies, {time.monotonic() - began:,.0f} s", end="", flush=True)

    with office.book.own_connection(write=True) as connection:
        big_register.write_into(connection, pattern, count, told)
    print()
    office.book.close()


if __name__ == "__main__":
    given, wanted = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else INSPECTION_COUNT
    make(given, packaged(), wanted)
