"""Rigs and debriefs as files that a person writes: the same rig comes back, and every slip is named."""

from datetime import date
from functools import partial
from itertools import pairwise

import pytest
import tomli
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn

from inspector.duties.debrief_files import read_debrief
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.office import Office
from inspector.duties.rig_files import read_rig, rig_text
from inspector.duties.typed_tables import decoded
from inspector.gear.debrief import NewDebrief, RigUsed
from inspector.gear.rig import Angle, Conditions, Footing, Method, NamedJoint, Rig
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.duties.refusals import wrongly_refused
from tests.duties.rigs import SAND, SNATCH, named, ready

WRITTEN = """
name = "Two legs to the tree"
method = "winch"
bogged = "V-05"
runs = [
    ["WI-01", "WR-01", "SN-01", "WH-01", "tie_down@V-05"],
    ["SN-01", "SH-01", "TS-01", "tree@ground"],
]
dampers = ["DM-01"]
note = "after rain"

[conditions]
bogged_in = "sill_deep_mud"
slope = "12 °"
slack = "2 m"
drive = "30 %"
wet = true
layers = 2

[angles]
SN-01 = "20 deg"

[[joint]]
one = "TS-01"
other = "tree@ground"
how = "choked"
"""


def test_a_file_reads_as_it_was_meant() -> None:
    found = read_rig(WRITTEN)
    assert (found.name, found.method, found.bogged, found.pulling) == ("Two legs to the tree", Method.WINCH, "V-05", "")
    assert found.runs[1] == ("SN-01", "SH-01", "TS-01", "tree@ground")
    known = found.conditions
    assert known.bogged_in is Footing.SILL_DEEP_MUD and known.pulling_on is None and known.speed is None
    assert known.slope is not None and known.slope.as_typed == "12 °"
    assert known.slope.si == pytest.approx(0.20943951)
    assert known.slack is not None and known.slack.si == 2.0
    assert known.drive is not None and known.drive.si == pytest.approx(0.3)
    assert known.wet is True and known.layers == 2 and known.scale == "largest"
    angle = found.angle("SN-01")
    assert angle is not None and angle.as_typed == "20 deg"
    assert found.dampers == ("DM-01",)
    assert found.joints == (NamedJoint("TS-01", "tree@ground", "choked"),)


def test_a_written_file_shows_what_somebody_said_and_nothing_else() -> None:
    tables = tomli.loads(rig_text(named(SNATCH, conditions=SAND)))
    assert tables["conditions"] == {"bogged_in": "soft_dry_sand", "speed": "6 km/h", "wet": False}
    assert set(tables) == {"name", "method", "pulling", "bogged", "runs", "decimal", "conditions"}
    assert '    ["SH-1", "KS-1"],\n' in rig_text(named(SNATCH, runs=(("SH-1", "KS-1"), ("KS-1", "SH-2"))))


SLIPS = [
    ("method", 'method = "winch"', 'method = "kinetik"', "Use one of: kinetic, tow_out, winch"),
    ("speeed", 'note = "after rain"', "speeed = 3", "not known here"),
    ("conditions.depth", 'slack = "2 m"', 'depth = "2 m"', "Use one of: bogged_in"),
    ("conditions.bogged_in", '"sill_deep_mud"', '"mud"', "hard_road, grass, hard_wet_sand"),
    ("conditions.slope", '"12 °"', '"12"', "unit is missing"),
    ("conditions.slope", '"12 °"', '"12 kg"', "not a unit"),
    ("conditions.slack", '"2 m"', "2", "with its unit in quotation marks"),
    ("conditions.slack", '"2 m"', '"far"', "begin with a number"),
    ("conditions.wet", "wet = true", 'wet = "yes"', "true or false"),
    ("conditions.layers", "layers = 2", "layers = true", "whole number"),
    ("conditions.layers", "layers = 2", 'layers = "2"', "whole number"),
    ("conditions", "[conditions]", "[[conditions]]", "Write a table"),
    ("angles.SN-02", 'SN-01 = "20', 'SN-02 = "20', "no part of the rig"),
    ("angles.SN-01", '"20 deg"', "20", "with its unit"),
    ("joint 1.how", 'how = "choked"', "", "missing"),
    ("joint 1.why", 'how = "choked"', 'how = "choked"\nwhy = "so"', "Use one of: one, other, how"),
    ("joint", "[[joint]]", "[joint]", "[[joint]]"),
    ("bogged", 'bogged = "V-05"', "", "missing"),
    ("name", '"Two legs to the tree"', "5", "quotation marks"),
    ("runs", '["SN-01", "SH-01", "TS-01", "tree@ground"],', '"SN-01",', "lists of tags"),
    ("dampers", '["DM-01"]', '"DM-01"', "list of texts"),
    ("dampers", '["DM-01"]', "[1]", "list of texts"),
    ("dampers", '["DM-01"]', '["SH-01"]', "in no run"),
    ("decimal", 'note = "after rain"', 'decimal = ";"', "no decimal sign"),
    ("rig file", 'bogged = "V-05"', "bogged = V-05", "line 4"),
    ("rig file", 'bogged = "V-05"', 'bogged = "V-05"\nbogged = "V-06"', "line 5"),
]


@pytest.mark.parametrize(("field", "good", "slip", "says"), SLIPS, ids=[f"{one[0]}: {one[2]}" for one in SLIPS])
def test_every_slip_is_refused_with_its_field_and_what_to_write(field: str, good: str, slip: str, says: str) -> None:
    assert good in WRITTEN
    with pytest.raises(Refused) as refusal:
        read_rig(WRITTEN.replace(good, slip, 1))
    assert refusal.value.field == field
    assert says in f"{refusal.value.why} {refusal.value.what_to_do}"


def test_a_file_that_is_no_text_or_far_too_long_or_too_deep_is_refused() -> None:
    with pytest.raises(Refused, match="Line 2"):
        decoded(b"name = 'x'\n\xff\xfe", "rig.toml")
    assert decoded(b"\xef\xbb\xbfname", "rig.toml") == "name"
    with pytest.raises(Refused, match="too long"):
        read_rig("#" * 200_001)
    with pytest.raises(Refused, match="cannot be read"):
        read_rig("runs = " + "[" * 5000)


def test_the_decimal_sign_travels_with_the_file() -> None:
    slack = read("1,250 m", Dimension.LENGTH, field="s", decimal=",")
    text = rig_text(named(SNATCH, conditions=Conditions(slack=slack)), decimal=",")
    again = read_rig(text, decimal=".").conditions.slack
    assert again == slack and slack.si == 1.25


signs = st.text(max_size=12)
tags = st.text("ABCDE-0123456789éß \"'\\.#[]", min_size=1, max_size=8).filter(lambda tag: tag == tag.strip())
printed = st.characters(exclude_categories=["C", "Z"]) | st.just(" ")
words = st.text(printed, min_size=1, max_size=12).filter(lambda text: bool(text.strip()) and text.isprintable())


def figures(dimension: Dimension, most: int, *units: str) -> st.SearchStrategy[object]:
    """Figures as somebody types them: whole, with a point, as a fraction."""
    numbers = st.one_of(
        st.integers(0, most).map(str),
        st.decimals(0, most, places=2).map(str),
        st.sampled_from(["1/2", "3/4", "1 1/2", "½"]),
    )
    typed = st.builds("{} {}".format, numbers, st.sampled_from(units))
    return typed.map(lambda text: read(text, dimension, field="f"))


ANGLES = figures(Dimension.ANGLE, 89, "deg", "°")
CONDITIONS = st.builds(
    Conditions,
    bogged_in=st.none() | st.sampled_from(Footing),
    pulling_on=st.none() | st.sampled_from(Footing),
    slope=st.none() | ANGLES,
    speed=st.none() | figures(Dimension.SPEED, 40, "km/h", "mph", "m/s"),
    slack=st.none() | figures(Dimension.LENGTH, 30, "m", "ft", "cm"),
    drive=st.none() | figures(Dimension.RATIO, 100, "%"),
    wet=st.none() | st.booleans(),
    layers=st.none() | st.integers(0, 30),
    scale=st.just("largest") | signs,
    distance_rule=st.just("longest") | signs,
)


@st.composite
def drawn_rigs(draw: DrawFn) -> Rig:
    """A rig that holds together, with any text a person may write."""
    named_tags = draw(st.lists(tags, min_size=2, max_size=8, unique=True))
    runs = draw(st.lists(st.lists(st.sampled_from(named_tags), min_size=2, max_size=6, unique=True), min_size=1))
    parts = list(dict.fromkeys(tag for run in runs for tag in run))
    pairs = {frozenset(pair): pair for run in runs for pair in pairwise(run)}
    at = draw(st.lists(st.sampled_from(parts), unique=True, max_size=3))
    joined = draw(st.lists(st.sampled_from(list(pairs.values())), unique=True, max_size=3))
    bogged, pulling = draw(st.lists(words, min_size=2, max_size=2, unique=True))
    return Rig(
        name=draw(words),
        method=draw(st.sampled_from(Method)),
        bogged=bogged,
        pulling=pulling,
        runs=tuple(tuple(run) for run in runs),
        conditions=draw(CONDITIONS),
        angles=tuple(Angle(tag, draw(ANGLES)) for tag in at),  # type: ignore[arg-type]
        joints=tuple(NamedJoint(one, other, draw(words)) for one, other in joined),
        trip=draw(signs),
        note=draw(st.text(max_size=40)),
        dampers=tuple(tag for tag in draw(st.lists(tags, unique=True, max_size=2)) if tag not in parts),
    )


@given(drawn_rigs())
@settings(max_examples=35, deadline=None)
def test_a_written_rig_reads_back_the_same_figures_as_typed(rig: Rig) -> None:
    text = rig_text(rig)
    assert read_rig(text) == rig
    assert read_rig(text.replace("\n", "\r\n")).runs == rig.runs


DEBRIEF = """
trip = "t-1"
on = 2026-11-26
note = "good weekend"

[[used]]
rig = "r-01"
pulls = 2
on = 2026-11-25
hardest = "25 kN"
jerked = false
near_miss = ""

[[used]]
pulls = 1
on = 2026-11-26
jerked = true
near_miss = "the line slid off the hook"

[used.rig]
name = "By the creek"
method = "kinetic"
pulling = "V-1"
bogged = "V-2"
runs = [["SH-1", "KS-1", "SH-2"]]
"""


def test_a_debrief_names_its_rigs_or_writes_them_out(office: Office) -> None:
    ready(office)
    kept = keep_rig(office, "R-01", SNATCH).rig
    creek = Rig("By the creek", Method.KINETIC, "V-2", "V-1", (("SH-1", "KS-1", "SH-2"),))
    first = RigUsed(kept, 2, date(2026, 11, 25), read("25 kN", Dimension.FORCE, field="h"))
    second = RigUsed(creek, 1, date(2026, 11, 26), None, True, "the line slid off the hook")
    told = NewDebrief("t-1", date(2026, 11, 26), (first, second), note="good weekend")
    assert read_debrief(office, DEBRIEF) == told


DEBRIEF_SLIPS = (
    ("used 1.jerked", "jerked = false\n", "", "missing"),
    ("used 1.near_miss", 'near_miss = ""\n', "", "missing"),
    ("used 1.pulls", "pulls = 2", 'pulls = "2"', "whole number"),
    ("used 1.hardest", '"25 kN"', '"25 km"', "not a unit"),
    ("used 1.hardest", '"25 kN"', '"0 kN"', "no pull"),
    ("used 1.on", "on = 2026-11-25", 'on = "yesterday"', "2026-11-25"),
    ("used 1.on", "on = 2026-11-25", "on = 2026-11-25T10:00:00", "2026-11-25"),
    ("used 1.strain", 'hardest = "25 kN"', 'strain = "25 kN"', "Use one of: rig, pulls"),
    ("used 2.rig.method", 'method = "kinetic"', 'method = "tug"', "Use one of"),
    ("used 2.rig.speed", 'method = "kinetic"', 'method = "kinetic"\nspeed = "3 km/h"', "not known here"),
    ("rig", '"r-01"', '"R-99"', "No rig has"),
    ("trip", 'trip = "t-1"', "", "missing"),
    ("debrief file", "pulls = 2", "pulls = two", "line 8"),
)


def test_a_slip_in_a_debrief_is_refused_with_its_field(office: Office) -> None:
    ready(office)
    keep_rig(office, "R-01", SNATCH)
    wrong: list[str] = []
    for field, good, slip, says in DEBRIEF_SLIPS:
        text = DEBRIEF.replace(good, slip, 1)
        if fault := wrongly_refused(partial(read_debrief, office, text), field, says):
            wrong.append(f"{slip} for {good}: {fault}")
    assert not wrong, "\n".join(wrong)
