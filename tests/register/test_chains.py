"""Whether lines of one copy or of several follow one another, and every way in which they may not."""

import json
from collections.abc import Callable
from typing import Any

from inspector.register.aside import aside
from inspector.register.chains import GENESIS, HEADS, MERGE, Chains, hash_of
from tests.each import each

Line = dict[str, Any]


def line(
    place: int, after: Line | None, origin: str = "HOME", deed: str = "book in", heads: tuple[str, ...] = ()
) -> Line:
    """A line at its place in the register, after another one."""
    made: Line = {"id": place, "number": after["number"] + 1 if after else 1, "origin": origin, "deed": deed}
    made |= {"at": "2026-11-25T19:00:00", "by": "x", "body": json.dumps({"facts": {HEADS: heads}, "rows": []})}
    made["before"] = after["hash"] if after else GENESIS
    return made | {"hash": hash_of(made)}


def merged() -> list[Line]:
    """Two lines at home, two of a field copy begun after the first, and the merge."""
    first = line(1, None)
    second = line(2, first)
    field = line(3, first, "AWAY")
    field_end = line(4, field, "AWAY")
    joined = line(5, second, deed=MERGE, heads=(field_end["hash"],))
    return [first, second, field, field_end, joined, line(6, joined)]


def told(lines: list[Line]) -> list[str]:
    """Every fault of these lines."""
    with aside() as noted:
        chains = Chains(noted)
        found = [fault.why for one in lines for fault in chains.faults_of(one)]
        return [*found, *(fault.why for fault in chains.faults_at_end())]


def test_a_merged_ledger_holds_together_and_ends_in_its_last_line() -> None:
    with aside() as noted:
        chains = Chains(noted)
        assert [fault for one in merged() for fault in chains.faults_of(one)] == []
    assert list(chains.faults_at_end()) == []
    assert (chains.last_id, chains.head) == (6, merged()[-1]["hash"])


def numbered(lines: list[Line]) -> list[Line]:
    """The lines at their places, so that no gap tells of a change."""
    return [one | {"id": place} for place, one in enumerate(lines, 1)]


def _forged(lines: list[Line]) -> list[Line]:
    body = lines[2]["body"].replace("[]", "[1]")
    return [*lines[:2], lines[2] | {"body": body}, *lines[3:]]


def _again(lines: list[Line]) -> list[Line]:
    return numbered([*lines, line(0, lines[4])])


def _another_register(lines: list[Line]) -> list[Line]:
    return numbered([*lines[:2], line(0, None, "ELSE"), *lines[2:]])


def _renumbered(lines: list[Line]) -> list[Line]:
    wrong = line(6, lines[4]) | {"number": 9}
    return [*lines[:5], wrong | {"hash": hash_of(wrong)}]


BROKEN: dict[str, tuple[Callable[[list[Line]], list[Line]], str]] = {
    "a changed line": (_forged, "was changed after it was written"),
    "a line cut out": (lambda lines: [*lines[:2], *lines[3:]], "line 3 is missing"),
    "a line cut out and the gap closed": (lambda lines: numbered([*lines[:2], *lines[3:]]), "does not follow"),
    "the field copy's end cut off": (lambda lines: numbered([*lines[:3], *lines[4:]]), "which are gone"),
    "the field copy cut out whole": (lambda lines: numbered([*lines[:2], *lines[4:]]), "which are gone"),
    "the merge cut off": (lambda lines: lines[:4], "no merge took over"),
    "two lines of one copy after the same": (_again, "another one of the same copy"),
    "another register put in": (_another_register, "follows already"),
    "a wrong number": (_renumbered, "number after the line"),
    "the order changed": (lambda lines: numbered([lines[0], *lines[3:1:-1], lines[1], *lines[4:]]), "does not follow"),
}


@each("how", BROKEN)
def test_what_does_not_hold_together_is_told(how: str) -> None:
    change, why = BROKEN[how]
    assert any(why in one for one in told(change(merged()))), told(change(merged()))
