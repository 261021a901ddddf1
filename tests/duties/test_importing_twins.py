"""Rows of a list that may speak of one piece are told of each other, however many of them there are."""

from collections.abc import Sequence

from hypothesis import example, given
from hypothesis import strategies as st

from inspector.duties.importing.twins import names_of, same_maker, say_the_same, twins_in
from inspector.gear.import_list import Fate, RowFate
from inspector.gear.item import NewItem, Rating
from inspector.gear.kind import Basis

_UNRATED = Rating(Basis.UNRATED, None, None, "none")
_ROW = st.tuples(
    st.sampled_from("AaB"),
    st.sampled_from(["", "S1", "s-1", "T", "--", "--", "/"]),
    st.sampled_from(["", "Q", "q.", "Z"]),
)
_ROWS = st.lists(st.tuples(_ROW, st.sampled_from(["", "shed"])), max_size=9)


def _listed(said: Sequence[tuple[tuple[str, str, str], str]]) -> list[RowFate]:
    rows = []
    for number, ((tag, serial, mark), place) in enumerate(said, 2):
        note = f"row {number}"
        facts = NewItem(tag, "winch", _UNRATED, maker_mark=mark, serial=serial, place=place, note=note)
        rows.append(RowFate(number, Fate.TAKEN, tag, facts=facts))
    return rows


def _by_looking_at_every_pair(one: RowFate, group: Sequence[RowFate]) -> RowFate | None:
    """What is meant, in as many words: among all others of the group."""
    facts = one.facts
    assert facts
    others = [two for two in group if two is not one and two.facts]
    others = [
        two for two in others if two.tag.lower() == one.tag.lower() or (two.facts and same_maker(facts, two.facts))
    ]
    unlike = [two for two in others if two.facts and not say_the_same(facts, two.facts)]
    before = [two for two in others if two.number < one.number]
    return unlike[0] if unlike else before[0] if before else None


def _groups(rows: Sequence[RowFate], *, shared: bool) -> list[list[RowFate]]:
    groups: dict[tuple[str, str], list[RowFate]] = {}
    for one in rows:
        assert one.facts
        groups.setdefault(("tag", one.tag.lower()), []).append(one)
        if one.facts.serial and not shared:
            serial = one.facts.serial  # one of signs alone is its own text: with its signs away it would be none
            spelt = serial.lower().replace("-", " ") if any(map(str.isalnum, serial)) else serial
            groups.setdefault(("serial", spelt), []).append(one)
    return list(groups.values())


@given(_ROWS, st.booleans())
@example([(("A", "S1", ""), ""), (("B", "S1", "Q"), ""), (("B", "S1", "Z"), ""), (("A", "S1", ""), "")], False)
def test_each_row_is_told_of_the_row_it_may_be(said: list[tuple[tuple[str, str, str], str]], shared: bool) -> None:
    rows = _listed(said)
    wanted: dict[int, RowFate] = {}
    for group in _groups(rows, shared=shared):
        for one in group:
            if other := _by_looking_at_every_pair(one, group):
                wanted.setdefault(one.number, other)
    names = [names_of(one.facts, shared_serials=shared) if one.facts else None for one in rows]
    assert twins_in(rows, names) == wanted


@given(st.text("-–/.#*_ ", max_size=4), st.text(max_size=4))
@example("--", "")
def test_a_serial_of_signs_alone_is_like_itself_and_like_no_other(signs: str, other: str) -> None:
    """Neither like none, nor like another such, nor like one that can be read."""
    one, two = (names_of(NewItem("A", "winch", _UNRATED, serial=text), shared_serials=False).serial
                for text in (signs.strip(), other.strip()))  # fmt: skip
    assert (one is None) is (not signs.strip()) and (two is None) is (not other.strip())
    if signs.strip() != other.strip():
        assert one != two
