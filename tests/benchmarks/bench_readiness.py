"""How long it takes to tell whether a trip is ready: 300 pieces and 12 vehicles, in a register that was just opened.

python tests/benchmarks/bench_readiness.py

The register is the sample three times over. Beside the seconds stands how often a bare loop runs in that time, and
how long reading the same dossiers one by one takes.
"""

import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from inspector.duties.judging import judge_and_keep
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.look_up import list_gear, vehicles
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.trip_readiness import readiness
from inspector.duties.work_rigs import pair_trip
from inspector.gear.dossier import Dossier
from inspector.gear.trip import Ground, Trip
from inspector.register.page import Page
from inspector.rulebook.load import Rulebook, packaged
from tests.benchmarks.registers import office_on, sample_in

BAR_S = 2.0
KIT_COUNT, VEHICLE_COUNT = 300, 12


class Measured(Struct, frozen=True):
    """What was measured, in seconds and in bare loops of 10,000 additions."""

    name: str
    seconds: float
    loops: float


def prepare(place: Path, rules: Rulebook, kit_count: int = KIT_COUNT) -> int:
    """Copies of the pieces of the folder's register, two more vehicles, and a trip with all of it. How many go."""
    office = office_on(place, rules)
    tags = [row.tag for row in list_gear(office).rows]
    copies = 0
    while len(tags) < kit_count:
        copies += 1
        tags += _copied(office, [row.tag for row in list_gear(office).rows][: kit_count - len(tags)], f"/{copies}")
    one = vehicles(office)[0]
    while len(known := vehicles(office)) < VEHICLE_COUNT:
        add_vehicle(office, f"V-{len(known) + 1}", one.name, one.owner, one.gvm, one.mass)
    first = office.today + timedelta(days=20)
    every = tuple(vehicle.tag for vehicle in vehicles(office))
    kit = tuple(tags[:kit_count])
    plan_trip(office, Trip("", "T-99", "All of it", "", Ground.BEACH, first, first, "", every, kit))
    office.book.close()
    return len(kit)


def _copied(office: Office, tags: list[str], mark: str) -> list[str]:
    """The pieces once more under other tags, with all that happened to them."""
    with office.book.page() as page:
        for tag in tags:
            item = page.item(tag)
            dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
            _copy(page, dossier, tag + mark, office)
        page.enter("copy", by="bench", at=office.now, facts={"tags": tags})
    return [tag + mark for tag in tags]


def _copy(page: Page, dossier: Dossier, tag: str, office: Office) -> None:
    twin = page.add_item(replace(dossier.item.facts, tag=tag), dossier.item.booked_on)
    for inspection in dossier.inspections:
        page.add_inspection(twin, inspection.facts)
    for use in dossier.uses:
        page.add_use(twin, use.facts)
    for exposure in dossier.exposures:
        page.add_exposure(twin, exposure.facts)
    judge_and_keep(office, page, twin)


def measure(place: Path, repeats: int = 5) -> list[Measured]:
    """Each step on a register opened anew, its rulebook read anew."""
    rules = packaged()
    bare_s = loop_s()

    def cold() -> None:
        office = office_on(place, packaged())
        readiness(office, "T-99")
        office.book.close()

    def with_pairs() -> None:
        office = office_on(place, packaged())
        pair_trip(office, "T-99", ready=readiness(office, "T-99"))
        office.book.close()

    def together() -> None:
        _read(place, rules, lambda page, wanted, on: page.dossiers(wanted, on))

    def one_by_one() -> None:
        _read(place, rules, lambda page, wanted, on: [page.dossier(item, kind, on) for item, kind in wanted])

    steps = {
        "ready? rulebook and register opened anew": cold,
        "ready, and who can bring out whom": with_pairs,
        "all dossiers in one look": together,
        "the same, one by one": one_by_one,
    }
    return [
        Measured(name, taken, taken / bare_s) for name, taken in ((n, median_s(s, repeats)) for n, s in steps.items())
    ]


def _read(place: Path, rules: Rulebook, read: Callable[..., object]) -> None:
    office = office_on(place, rules)
    with office.book.reading() as page:
        kit = next(one.kit for one in page.trips() if one.ref == "T-99")
        items = page.items(kit)
        read(page, [(items[tag], office.kind(items[tag].facts.kind)) for tag in kit], office.today)
    office.book.close()


def median_s(work: Callable[[], None], repeats: int) -> float:
    """The seconds that the work takes, in the median."""
    taken = []
    for _ in range(repeats):
        began = time.perf_counter()
        work()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken)


def loop_s() -> float:
    """A bare loop of 10,000 additions, the machine's measure."""
    return median_s(lambda: _ignored(sum(number for number in range(10_000))), 50)


def _ignored(_: object) -> None:
    return None


def main() -> int:
    """Print the figures; 0 when readiness keeps the bar."""
    with tempfile.TemporaryDirectory() as folder:
        sample_in(Path(folder), packaged())
        count = prepare(Path(folder), packaged())
        rows = measure(Path(folder))
    print(f"a kit of {count} pieces, {VEHICLE_COUNT} vehicles")
    for one in rows:
        print(f"{one.name:<44}{one.seconds:7.3f} s  {one.loops:8.0f} x a bare loop of 10,000 additions")
    met = max(rows[0].seconds, rows[1].seconds) < BAR_S
    print(f"bar: {BAR_S} s: {'met' if met else 'not met'}")
    return 0 if met else 1


if __name__ == "__main__":
    sys.exit(main())
