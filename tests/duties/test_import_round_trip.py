"""The same list in any dialect, with either decimal sign, in any unit gives the same pieces."""

import csv
import io
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from inspector.duties.import_list import dry_run, matching_of
from inspector.duties.importing.corrections import with_answer
from inspector.duties.office import Office
from inspector.gear.import_list import Asks, Fate, Fates
from inspector.gear.item import NewItem
from inspector.refused import Refused
from inspector.register.exchange.guard import unguarded
from inspector.register.exchange.read_tables import read_tables
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in

_NEWTONS = {"t": 9806.65, "kg": 9.80665, "kN": 1000.0, "lb": 4.4482216152605, "short ton": 8896.443230521}
_NEWTONS["long ton"] = 9964.01641818352
_METRES = {"mm": 0.001, "cm": 0.01, "in": 0.0254, "m": 1.0}
_WORDS = st.text(
    st.characters(codec="cp1252", categories=["L", "N", "P", "S", "Zs"], exclude_characters="\xa0\xad"), max_size=20
).filter(lambda text: text.isprintable())


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Iterator[Office]:
    """An office that nothing is kept in."""
    made = office_in(tmp_path_factory.mktemp("desk"), rules)
    yield made
    made.book.close()


def number(value: float, decimal: str, places: int) -> str:
    """A figure with more places than a group has, so that no sign in it can be taken for a group's."""
    return f"{value:.{places}f}".replace(".", decimal)


@example(
    delimiter=";", quoting=csv.QUOTE_MINIMAL, encoding="utf-8", end="\r\n", decimal=".", weight="kN", length="cm",
    in_cell=False, note="", owner="'=", pulls=[1000.0],
)  # fmt: skip
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    delimiter=st.sampled_from(";,\t|"),
    quoting=st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]),
    encoding=st.sampled_from(["utf-8", "utf-8-sig", "utf-16", "cp1252"]),
    end=st.sampled_from(["\r\n", "\n"]),
    decimal=st.sampled_from(".,"),
    weight=st.sampled_from(sorted(_NEWTONS)),
    length=st.sampled_from(sorted(_METRES)),
    in_cell=st.booleans(),
    note=_WORDS,
    owner=_WORDS,
    pulls=st.lists(st.floats(1_000, 400_000), min_size=1, max_size=4),
)
def test_the_same_value_in_any_unit_and_dialect_is_the_same_piece(
    desk: Office, delimiter: str, quoting: int, encoding: str, end: str, decimal: str, weight: str, length: str,
    in_cell: bool, note: str, owner: str, pulls: list[float],
) -> None:  # fmt: skip
    unit, size = (f" {weight}", f" {length}") if in_cell else ("", "")
    heads = ["Tag", "Kind", "WLL" if in_cell else f"WLL ({weight})", "Owner", "Remarks"]
    heads += [name if in_cell else f"{name} ({length})" for name in ("Body", "Pin")]
    rows = [
        [f"A-{at}", "Bow shackle", number(pull / _NEWTONS[weight], decimal, 9) + unit, owner, note,
         number(0.019 / _METRES[length], decimal, 9) + size, number(0.022 / _METRES[length], decimal, 9) + size]
        for at, pull in enumerate(pulls)
    ]  # fmt: skip
    text = io.StringIO(newline="")
    csv.writer(text, delimiter=delimiter, quoting=quoting, lineterminator=end).writerows([heads, *rows])  # type: ignore[arg-type]
    data = text.getvalue().encode(encoding)
    found = _run(desk, data, encoding if _reads_otherwise(data, text.getvalue()) else "")
    assert [one.fate for one in found.rows[1:]] == [Fate.TAKEN] * len(pulls), [one.why for one in found.rows]
    for pull, one in zip(pulls, found.passed, strict=True):
        facts = one.facts
        assert facts and facts.rating.figure and facts.rating.figure.si == pytest.approx(pull, rel=1e-6, abs=1e-4)
        assert [round(size.figure.si, 6) for size in facts.sizes] == [0.019, 0.022]
        assert _plain(facts, unguarded(owner), unguarded(note))  # an apostrophe before "=" is taken for a guard's


def _reads_otherwise(data: bytes, text: str) -> bool:
    """Whether these bytes are UTF-8 for another text: nobody can tell, and whoever looks at it names the encoding."""
    try:
        return data.decode("utf-8-sig") != text
    except UnicodeDecodeError:
        return False


def _run(desk: Office, data: bytes, encoding: str) -> Fates:
    file = read_tables(data, "list.csv", encoding)
    return dry_run(desk, file, matching_of(desk, file))


def _plain(facts: NewItem, owner: str, note: str) -> bool:
    """What stood in words stands in the piece, but for spaces and for signs that say that nothing was known."""
    said = " ".join(note.split())
    return said in facts.note and " ".join(owner.split()) in {
        facts.owner,
        *facts.note.replace("Owner: ", "").split(" · "),
    }


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    cells=st.lists(st.lists(st.text(max_size=12) | st.sampled_from(
        ["Tag", "Kind", "WLL (t)", "Made on", "Bow shackle", "4,750", "3/4/2020", "8 ton", "A-1", "1/2", "½", "=1+1"]
    ), max_size=7), max_size=8),
    answer=st.sampled_from(["", "t", ".", "dmy"]),
)  # fmt: skip
def test_whatever_stands_in_a_list_each_row_has_a_fate(desk: Office, cells: list[list[str]], answer: str) -> None:
    text = io.StringIO(newline="")
    csv.writer(text, delimiter=";", quoting=csv.QUOTE_ALL).writerows(cells)
    try:
        file = read_tables(text.getvalue().encode("utf-8", "replace"), "list.csv")
    except Refused:
        return
    matching = matching_of(desk, file)
    about = {"t": Asks.UNIT, ".": Asks.DECIMAL, "dmy": Asks.ORDER}.get(answer)
    for one in matching.columns if about else ():
        matching = with_answer(matching, one.at, about or Asks.UNIT, answer)
    found = dry_run(desk, file, matching)
    assert [one.number for one in found.rows] == list(range(1, len(file.sheets[0].rows) + 1))
    assert all(one.why for one in found.rows if one.fate is not Fate.TAKEN)
