"""Stricter is stricter, loosened is marked, and nothing may be loosened further than the house allows."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.outcome import Outcome
from inspector.gear.rulebooks import Direction, Part
from inspector.gear.verdict import Finding, Status, Value, Verdict
from inspector.rulebook.club_book import licences_of, with_club
from inspector.rulebook.club_figures import Figures, Licence, dimension_of, direction, loosening_fault
from inspector.rulebook.club_marks import in_force_lines, marked
from inspector.rulebook.club_words import marked_limit
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook, packaged
from inspector.rulebook.texts import Rule
from inspector.rulebook.wording import explain
from inspector.units import Dimension
from tests.each import each
from tests.rulebook.dossiers import dossiers
from tests.rulebook.test_laws import check_never_milder

BOOK = packaged()
HEAD = 'club = "C"\ntitle = "T"\nfrom = 2026-12-01\nwhy = "W"\n'
STRICTER = {
    "required_wall_fraction": "90 %",
    "reference_pull": "80 kN",
    "gauge_accuracy": "0.4 mm",
    "gauge_accuracy_paint": "0.9 mm",
    "calliper_accuracy": "0.3 mm",
    "rough_face_over_reading": "2.9 mm",
    "wall_rate_field_default": "0.25 mm",
    "wall_rate_field_high": "0.5 mm",
    "wall_rate_worst": "2 mm",
    "wall_rate_open_air": "0.12 mm",
    "wall_reading_cap": "150 days",
    "tube_yield_mpa": "180",
    "hitch_pin_diameter": "12 mm",
    "tube_ultimate_mpa": "290",
    "hitch_insert_side": "60 mm",
    "hitch_insert_play": "3 mm",
    "hitch_receiver_wall": "6 mm",
    "age_loss_per_year": "4 %",
    "abrasion_allowance": "20 %",
    "strap_band_low": "2.2",
    "strap_band_high": "2.8",
    "margin_kinetic_fibre": "1.6",
    "margin_kinetic_steel": "2.5",
    "margin_tow_out_fibre": "3",
    "margin_tow_out_steel": "3",
    "margin_winch_line": "2.5",
    "margin_winch_block": "5",
    "winch_stall_factor": "1.6",
    "kinetic_speed_unsaid": "12 km/h",
    "pull_away_acceleration": "4 m/s²",
    "tow_out_slack_unsaid": "0.6 m",
    "drive_firm": "100 %",
    "drive_loose": "75 %",
    "drive_soft": "60 %",
    "kinetic_stretch_least": "10 %",
    "kinetic_stretch_most": "35 %",
    "static_stretch_least": "3 %",
    "static_stretch_most": "20 %",
    "line_stretch_least": "1.5 %",
    "line_stretch_most": "7 %",
    "bridle_angle_most": "40 °",
    "bridle_angle_unsaid": "120 °",
    "ball_shank_unsaid": "20 mm",
    "ball_lever_unsaid": "80 mm",
    "mount_side_unsaid": "40 mm",
    "mount_wall_unsaid": "3 mm",
    "mount_lever_unsaid": "60 mm",
    "pack_connectors": "6",
    "pack_dampers": "3",
    "pack_spare_straps": "2",
    "overload_share_steel": "40 %",
    "handover_count_days": "7 days",
    "recall_answer_days": "7 days",
}
LOOSE = """
profile = ["shackle-wear-ten-percent", "hook-wear-ten-percent", "hook-opening-ten-percent", "wire-diameter-six-percent"]
[[limit]]
rule = "age-retires-fibre"
limit = "12 years"
why = "dry"
[[limit]]
rule = "strength-left-fibre"
limit = "55 %"
why = "spare"
[[setting]]
key = "required_wall_fraction"
value = "65 %"
why = "thick"
[[setting]]
key = "age_loss_per_year"
value = "1.5 %"
why = "dark"
[[interval]]
for = "tube"
every_days = 450
every_days_severe = 220
why = "few trips"
"""


def club(body: str) -> Rulebook:
    found = with_club(BOOK, HEAD + body)
    assert found.faults == ()
    return found.book


LOOSE_BOOK = club(LOOSE)


def verdict_by(book: Rulebook, dossier: Dossier) -> Verdict:
    return judge(replace(dossier, kind=book.kinds[dossier.kind.key]), book, "test")


def test_every_setting_says_which_way_is_stricter() -> None:
    assert {key for key, one in BOOK.setting_texts.items() if one.stricter not in {"more", "less"}} == set()
    assert set(STRICTER) == set(BOOK.settings), "each is tried below"


@each("key", sorted(STRICTER))
def test_the_tried_figures_are_stricter_by_the_file(key: str) -> None:
    found = with_club(BOOK, f'{HEAD}[[setting]]\nkey = "{key}"\nvalue = "{STRICTER[key]}"')
    assert [one.direction for one in found.changes] == [Direction.STRICTER]


STRICT_BOOKS = {key: club(f'[[setting]]\nkey = "{key}"\nvalue = "{value}"') for key, value in STRICTER.items()}


@given(dossiers(), st.sampled_from(sorted(STRICT_BOOKS)))
def test_a_stricter_setting_is_never_milder(dossier: Dossier, key: str) -> None:
    stricter, plain = verdict_by(STRICT_BOOKS[key], dossier), verdict_by(BOOK, dossier)
    check_never_milder(stricter, plain)
    assert stricter.unloosened is None
    assert not any(one.loosened for one in stricter.findings)


NUMERIC = [rule for rule in BOOK.rules if rule.limit]


@each("rule", NUMERIC, ids=[rule.id for rule in NUMERIC])
def test_which_way_a_limit_is_stricter_follows_from_its_demand(rule: Rule) -> None:
    number, _, unit = rule.limit.partition(" ")
    tighter, looser = (
        f"{float(number) * times:g} {unit}".strip()
        for times in ((0.9, 1.1), (1.1, 0.9))[rule.must in {"at_least", "above"}]
    )
    head = f'[[limit]]\nrule = "{rule.id}"\nwhy = "w"\nlimit = '
    assert [c.direction for c in with_club(BOOK, f'{HEAD}{head}"{tighter}"').changes] == [Direction.STRICTER]
    found = with_club(BOOK, f'{HEAD}{head}"{looser}"')
    printed = BOOK.sources[rule.source].certainty not in {"club", "common_practice"}
    licensed = any(place[1] == rule.id for place in licences_of(BOOK))
    if rule.fixed or (printed and not licensed):
        assert found.changes == () and len(found.faults) == 1
    elif not printed:
        assert [c.direction for c in found.changes] == [Direction.LOOSER]


@given(dossiers(), st.sampled_from(NUMERIC), st.floats(0.3, 0.99))
def test_a_stricter_limit_is_never_milder(dossier: Dossier, rule: Rule, share: float) -> None:
    number, _, unit = rule.limit.partition(" ")
    more = rule.must in {"at_least", "above"}
    wanted = float(number) / share if more else float(number) * share
    assume(unit != "%" or wanted < 100)
    book = club(f'[[limit]]\nrule = "{rule.id}"\nlimit = "{wanted:.6f} {unit}"')
    check_never_milder(verdict_by(book, dossier), verdict_by(BOOK, dossier))


@given(dossiers())
def test_the_measure_of_a_limit_is_that_of_its_value(dossier: Dossier) -> None:
    limits = {rule.id: rule.limit for rule in BOOK.rules if rule.limit}
    for one in verdict_by(BOOK, dossier).findings:
        if one.rule in limits and one.limit and one.limit.number is not None:
            seen, plain = one.limit.dimension, {Dimension.COUNT, Dimension.FACTOR}
            found = dimension_of(limits[one.rule])
            assert found is seen or {found, seen} <= plain, one.rule


@given(dossiers())
def test_whatever_a_loosening_changes_is_marked_in_the_verdict_and_its_words(dossier: Dossier) -> None:
    loose, plain = verdict_by(LOOSE_BOOK, dossier), verdict_by(BOOK, dossier)
    check_never_milder(plain, loose)
    others = {one.rule: one for one in plain.findings}
    for one in loose.findings:
        other = others[one.rule]
        if (one.outcome, one.value, one.limit) != (other.outcome, other.value, other.limit):
            assert "loosened from" in one.loosened, one.rule
    words = explain(replace(dossier, kind=LOOSE_BOOK.kinds[dossier.kind.key]), loose, LOOSE_BOOK)
    marked = [one for one in loose.findings if one.loosened]
    said = [one.limit for one in (*words.reasons, *words.passes) if "loosened from" in one.limit]
    assert len(said) == len(marked)
    assert any("Club limits loosened" in one for one in words.cautions)
    if loose.by_purpose != plain.by_purpose:
        assert loose.unloosened is not None and loose.unloosened.outcome is plain.outcome
        for text in (words.headline, words.plain, words.use_line):
            assert "without the club's loosened limits" in text.lower()
    elif (loose.capacity.now_n, loose.next_due) == (plain.capacity.now_n, plain.next_due):
        assert loose.unloosened is None


@given(dossiers())
def test_loosenings_that_only_together_have_an_effect_are_all_named(dossier: Dossier) -> None:
    part = LOOSE_BOOK.club
    assert part is not None
    loose, strict = verdict_by(LOOSE_BOOK, dossier), verdict_by(BOOK, dossier)
    bare = replace(loose, findings=tuple(replace(one, loosened="") for one in loose.findings), unloosened=None)
    found = marked(bare, dossier.kind.key, LOOSE_BOOK, lambda book: strict if book is part.strict else bare)
    limits = {one.about for one in part.loosened if one.part is Part.LIMIT}
    for one, seen in zip(found.findings, loose.findings, strict=True):
        if seen.loosened and one.rule not in limits:
            assert one.loosened.count("loosened from") == len(part.loosened)


def test_kinds_that_share_a_loosened_interval_are_named_together() -> None:
    (line,) = in_force_lines(LOOSE_BOOK)
    assert "club's time between inspections of ball mount, hitch receiver and tow bar 450 days, loosened from" in line
    assert in_force_lines(BOOK) == ()


def test_a_mark_stands_beside_the_limit() -> None:
    found = Finding(
        "r", "q", Status.PASSES, Outcome.FIT, "s", "x", (), "at_most", Value(1.0), None, loosened="club limit"
    )
    assert marked_limit("at most 1", found) == "at most 1 (club limit)"
    assert marked_limit("at most 1", replace(found, loosened="")) == "at most 1"


def test_every_profile_is_sound_and_its_source_was_read_or_restated() -> None:
    for key, (profile, _) in BOOK.profiles.items():
        found = with_club(BOOK, f'{HEAD}profile = ["{key}"]')
        assert found.faults == () and found.changes, key
        assert BOOK.sources[profile.source].certainty in {"read", "second_hand"}, key
        assert {one.profile for one in found.changes} == {key}
        assert Direction.SAME not in {one.direction for one in found.changes}


def at(club_si: float) -> Figures:
    return Figures(0.08, "8 %", club_si, more_is_stricter=False, certainty="second_hand", source="guide")


def own(club_si: float) -> Figures:
    return Figures(0.8, "80 %", club_si, more_is_stricter=True, certainty="club", source="club")


def test_a_club_s_own_figure_may_go_as_far_as_a_printed_one_and_no_further() -> None:
    licence = (Licence(0.10, "10 %", "p", "print"),)
    assert loosening_fault(at(0.09), licence) == loosening_fault(at(0.10), licence) == ""
    assert "10 %" in loosening_fault(at(0.1001), licence)
    assert loosening_fault(at(0.05), ()) == ""
    assert loosening_fault(own(0.6), ()) == "" and "quarter" in loosening_fault(own(0.599), ())


@pytest.mark.parametrize(
    ("packaged_si", "club_si", "more", "wanted"),
    [
        (0.08, 0.07, False, Direction.STRICTER),
        (0.08, 0.09, False, Direction.LOOSER),
        (0.08, 0.08 * (1 + 1e-12), False, Direction.SAME),
        (5.0, 6.0, True, Direction.STRICTER),
        (5.0, 4.0, True, Direction.LOOSER),
    ],
)
def test_direction(packaged_si: float, club_si: float, more: bool, wanted: Direction) -> None:
    assert direction(packaged_si, club_si, more_is_stricter=more) is wanted


def test_an_outcome_made_stricter_carries_the_club_s_source() -> None:
    book = club('[[outcome]]\nrule = "wire-one-broken"\nelse = "hold"\nwhy = "we sleep better"')
    rule = next(one for one in book.rules if one.id == "wire-one-broken")
    assert rule.otherwise == "hold"
    assert "we sleep better" in book.source_text(rule.source) and "ISO 4309" in book.source_text(rule.source)
