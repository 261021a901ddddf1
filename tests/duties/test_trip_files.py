"""Trips as files: what is written comes back the same, and what cannot be read is refused with its line."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.exchange_trip import export_trip, import_trip, read_trip, trip_text
from inspector.duties.look_up import trip, trips
from inspector.duties.office import Office
from inspector.gear.trip import Ground, Trip
from inspector.refused import Refused

words = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)
listed = st.lists(words, max_size=6).map(tuple)
days = st.dates(min_value=date(1990, 1, 1), max_value=date(2200, 1, 1))
any_trip = st.builds(
    Trip,
    id=st.just(""),
    ref=words,
    name=words,
    place=words,
    ground=st.sampled_from(Ground),
    first_on=days,
    last_on=days,
    leader=words,
    vehicles=listed,
    kit=listed,
    people=listed,
    note=words,
)

FILE = """# a trip
ref = "T-77"
name = "Long way round"
ground = "rock"
first_on = 2026-12-05
last_on = 2026-12-06
people = ["Nell Hobbery"]
vehicles = ["V-01"]
kit = [
    "SH-01",
    "KS-06",
]
"""


@given(any_trip)
def test_every_trip_comes_back_the_same_from_its_file(planned: Trip) -> None:
    assert read_trip(trip_text(planned), "file") == planned


@given(any_trip)
def test_the_bytes_survive_a_file_with_other_line_ends(planned: Trip) -> None:
    assert read_trip(trip_text(planned).replace("\n", "\r\n"), "file") == planned


def test_a_trip_of_the_sample_goes_out_and_comes_in_under_another_reference(sample: Office) -> None:
    text = export_trip(sample, "T-05")
    assert "Hanne Lodewell" in text and "first_on = 2026-11-28" in text
    with pytest.raises(Refused, match="has a trip T-05 already") as refusal:
        import_trip(sample, text.encode(), "t.toml")
    assert refusal.value.field == "t.toml, line 2, ref" and "--as NEW" in refusal.value.what_to_do
    kept = import_trip(sample, text.encode(), "t.toml", "T-15")
    original = trip(sample, "T-05")
    assert replace(kept, id="", ref="") == replace(original, id="", ref="")
    assert len(trips(sample)) == 7


def test_what_is_left_out_of_a_file_is_empty(sample: Office) -> None:
    kept = import_trip(sample, FILE.encode(), "t.toml")
    assert (kept.place, kept.leader, kept.note) == ("", "", "")
    assert kept.kit == ("SH-01", "KS-06")


@pytest.mark.parametrize(
    ("old", "new", "field", "why"),
    [
        ('"KS-06"', '"KS-66"', "t.toml, line 11, kit", "No piece has the tag “KS-66”"),
        ('"KS-06"', '"SH-01"', "t.toml, line 10, kit", "stands in it twice"),
        ('"V-01"', '"V-99"', "t.toml, line 8, vehicles", "No vehicle has the tag"),
        ('"Nell Hobbery"', '"Nell Hobbler"', "t.toml, line 7, people", "Nobody called"),
        ('"rock"', '"roccia"', "t.toml, line 4, ground", "is no ground"),
        ("2026-12-06", "2026-12-04", "t.toml, line 6, last_on", "end before it begins"),
        ("2026-12-06", '"2026-12-06"', "t.toml, line 6, last_on", "is no day"),
        ("2026-12-06", "2026-12-06T10:00:00", "t.toml, line 6, last_on", "is no day"),
        ('"Long way round"', '""', "t.toml, line 3, name", "empty"),
        ('"Long way round"', "3", "t.toml, line 3, name", "no text"),
        ('["V-01"]', '"V-01"', "t.toml, line 8, vehicles", "no list"),
        ('["V-01"]', "[1]", "t.toml, line 8, vehicles", "no list"),
        ('ref = "T-77"', 'refs = "T-77"', "t.toml, line 2, refs", "A trip has no “refs”"),
        ('ref = "T-77"', "", "t.toml, ref", "missing"),
        ('ref = "T-77"', 'ref = "next"', "t.toml, line 2, ref", "A reference has 1 to 24"),
        ("ground =", "ground", "t.toml", "no TOML.*line 4"),
        ("[\n", "[" * 5000, "t.toml", "no TOML"),
        ("# a trip\n", "[extra]\n", "t.toml, line 1, extra", "no “extra”"),
    ],
)
def test_a_file_that_is_no_good_is_refused_with_its_line_and_nothing_is_kept(
    sample: Office, old: str, new: str, field: str, why: str
) -> None:
    assert old in FILE
    with pytest.raises(Refused, match=why) as refusal:
        import_trip(sample, FILE.replace(old, new).encode(), "t.toml")
    assert refusal.value.field == field
    assert refusal.value.what_to_do
    assert len(trips(sample)) == 6


def test_what_is_no_text_at_all_is_refused(sample: Office) -> None:
    with pytest.raises(Refused, match="UTF-8"):
        import_trip(sample, b"\xff\xfe\x00", "t.toml")
    with pytest.raises(Refused, match="far too long"):
        import_trip(sample, b"#" * 1_000_001, "t.toml")
    assert import_trip(sample, b"\xef\xbb\xbf" + FILE.encode(), "t.toml").ref == "T-77"
