"""Rigs in the register: what is kept holds together, and nothing is kept that does not."""

from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest

from inspector.duties.keep_rigs import keep_rig, rig, rigs
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.gear.rig import Angle, Conditions, Method, NamedJoint, Rig
from inspector.refused import Refused
from inspector.units import Dimension, Figure, read
from tests.duties.refusals import wrongly_refused
from tests.duties.rigs import SNATCH, named
from tests.fresh import copied


@pytest.fixture
def office(ready_once: Office, tmp_path: Path) -> Iterator[Office]:
    """A club with a fit kit, a member and a trip."""
    made = copied(ready_once, tmp_path)
    yield made
    made.book.close()


def angle(text: str) -> Figure:
    return read(text, Dimension.ANGLE, field="a")


def test_a_rig_is_kept_and_found_again_by_its_reference(office: Office) -> None:
    kept = keep_rig(office, " R-01 ", named(SNATCH, trip="t-1"))
    assert rig(office, "r-01") == kept and rigs(office) == (kept,)
    assert (kept.ref, kept.on, kept.rig.trip) == ("R-01", office.today, "T-1")
    assert verify_book(office).faults == ()


def test_tags_are_kept_as_the_register_writes_them(office: Office) -> None:
    typed = named(
        SNATCH,
        runs=(("tie_down@v-1", "sh-1", "ks-1", "tree@ground"),),
        bogged="v-2",
        pulling="v-1",
        angles=(Angle("ks-1", angle("60 °")),),
        joints=(NamedJoint("sh-1", "ks-1", "eye_in_shackle"),),
    )
    kept = keep_rig(office, "R-1", typed).rig
    assert kept.runs == (("tie_down@V-1", "SH-1", "KS-1", "tree@ground"),)
    assert (kept.bogged, kept.pulling) == ("V-2", "V-1")
    assert kept.angles[0].at == "KS-1" and kept.joints[0] == NamedJoint("SH-1", "KS-1", "eye_in_shackle")


def test_a_winch_on_the_stuck_vehicle_needs_no_other(office: Office) -> None:
    winched = named(SNATCH, method=Method.WINCH, pulling="", runs=(("SH-1", "KS-1", "tree@ground"),))
    assert keep_rig(office, "R-1", winched).rig.pulling == ""


def test_a_reference_is_never_used_twice(office: Office) -> None:
    keep_rig(office, "R-01", SNATCH)
    with pytest.raises(Refused, match="Another rig"):
        keep_rig(office, "r-01", SNATCH)
    for ref in ("", "  ", "R" * 41):
        with pytest.raises(Refused, match="1 to 40"):
            keep_rig(office, ref, SNATCH)


def test_an_unknown_reference_is_refused_with_those_there_are(office: Office) -> None:
    with pytest.raises(Refused, match="none yet"):
        rig(office, "R-9")
    keep_rig(office, "R-01", SNATCH)
    with pytest.raises(Refused, match="Use one of: R-01"):
        rig(office, "R-9")


def with_conditions(**known: object) -> Rig:
    return named(SNATCH, conditions=Conditions(**known))  # type: ignore[arg-type]


RUN = SNATCH.runs[0]
FAULTS: list[tuple[str, Rig, str, str]] = [
    ("a piece nobody knows", named(SNATCH, runs=(("SH-1", "ZZ-9"),)), "tag", "No piece has the tag"),
    ("a vehicle nobody knows", named(SNATCH, bogged="V-9"), "bogged", "Use one of: V-1, V-2"),
    ("a puller nobody knows", named(SNATCH, pulling="V-9"), "pulling", "No vehicle"),
    ("a loose end nobody knows", named(SNATCH, runs=(("rock@ground", "SH-1"),)), "runs", "Use one of: chain_plate"),
    ("a tree on a vehicle", named(SNATCH, runs=(("tree@V-1", "SH-1"),)), "runs", "does not stand there"),
    ("a tie-down in the ground", named(SNATCH, runs=(("tie_down@ground", "SH-1"),)), "runs", "does not stand there"),
    ("an eye on no vehicle", named(SNATCH, runs=(("towing_eye@V-9", "SH-1"),)), "runs", "No vehicle"),
    ("no name", named(SNATCH, name=" "), "name", "empty"),
    ("no stuck vehicle", named(SNATCH, bogged=""), "bogged", "empty"),
    ("no puller", named(SNATCH, pulling=""), "pulling", "Only a winch"),
    ("a vehicle that pulls itself", named(SNATCH, pulling="V-2"), "pulling", "pull itself"),
    ("no runs", named(SNATCH, runs=()), "runs", "at least two"),
    ("a run of one", named(SNATCH, runs=(RUN, ("SH-1",))), "runs", "at least two"),
    ("a part joined to itself", named(SNATCH, runs=(("SH-1", "SH-1"),)), "runs", "joined to itself"),
    ("the same in two spellings", named(SNATCH, runs=(("SH-1", "sh-1"),)), "runs", "joined to itself"),
    ("an empty tag", named(SNATCH, runs=(("SH-1", ""),)), "runs", "no tag"),
    ("an angle elsewhere", named(SNATCH, angles=(Angle("SH-9", angle("60 °")),)), "angles.SH-9", "no part"),
    ("an angle past straight", named(SNATCH, angles=(Angle("KS-1", angle("181 °")),)), "angles.KS-1", "cannot be"),
    ("two angles at one part", named(SNATCH, angles=(Angle("KS-1", angle("9 °")),) * 2), "angles.KS-1", "twice"),
    ("a joint of no neighbours", named(SNATCH, joints=(NamedJoint("SH-1", "SH-2", "x"),)), "joint", "not joined"),
    ("a joint without a word", named(SNATCH, joints=(NamedJoint("SH-1", "KS-1", " "),)), "joint.how", "empty"),
    ("a joint nobody knows", named(SNATCH, joints=(NamedJoint("SH-1", "KS-1", "x"),)), "joint.how", "eye_in_shackle"),
    ("a scale nobody knows", with_conditions(scale="x"), "scale", "Use one of"),
    ("a damper nobody knows", named(SNATCH, dampers=("DM-9",)), "tag", "No piece"),
    ("a damper in the line", named(SNATCH, dampers=("KS-1",)), "dampers", "twice"),
    ("a damper named twice", named(SNATCH, dampers=("DM-1", "DM-1")), "dampers", "twice"),
    ("a joint named twice", named(SNATCH, joints=(NamedJoint("SH-1", "KS-1", "x"),) * 2), "joint", "twice"),
    ("a trip nobody knows", named(SNATCH, trip="T-9"), "trip", "Use one of: T-1"),
    ("a wall of a slope", with_conditions(slope=angle("91 °")), "conditions.slope", "cannot be"),
    ("downhill", with_conditions(slope=angle("-3 °")), "conditions.slope", "cannot be"),
    ("backwards", with_conditions(speed=read("-6 km/h", Dimension.SPEED, field="s")), "conditions.speed", "cannot"),
    ("slack below nothing", with_conditions(slack=read("-1 m", Dimension.LENGTH, field="s")), "conditions.slack", "ca"),
    ("thrice the weight", with_conditions(drive=read("300 %", Dimension.RATIO, field="d")), "conditions.drive", "ca"),
    ("too many layers", with_conditions(layers=31), "conditions.layers", "0 to 30"),
    ("layers below none", with_conditions(layers=-1), "conditions.layers", "0 to 30"),
    ("too many parts", named(SNATCH, runs=(tuple(f"X-{at}" for at in range(61)),)), "runs", "more than 60"),
]


def test_what_does_not_hold_together_is_refused_by_field_and_not_kept(office: Office) -> None:
    wrong: list[str] = []
    for number, (case, typed, field, why) in enumerate(FAULTS):
        if fault := wrongly_refused(partial(keep_rig, office, f"R-{number}", typed), field, why):
            wrong.append(f"{case}: {fault}")
    assert not wrong, "\n".join(wrong)
    assert rigs(office) == ()
