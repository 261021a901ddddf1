"""Stories of a club that adopts its own limits, compares, drops them, and opens the book with a newer program."""

from datetime import date, timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties import adopt_rulebook as adopting
from inspector.duties.adopt_rulebook import adopt_rulebook, check_rulebook, drop_rulebook
from inspector.duties.book_in import book_in
from inspector.duties.compare_rulebooks import compare_rulebooks, named_book
from inspector.duties.judge_anew import judge_anew
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.record_inspection import record_inspection
from inspector.duties.retire_item import print_notice
from inspector.duties.rulebook_in_force import in_force, judge_under_new_book, unfit_lines, waiting_lines
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from tests.duties.gear import all_good, shackle

SAMPLE = (Path(__file__).resolve().parents[2] / "sample_register" / "club_rules.toml").read_bytes()
HEAD = b'club = "Test Club"\ntitle = "Ours"\nfrom = 2026-11-25\nwhy = "agreed"\n'
LOOSE = HEAD + b'profile = ["shackle-wear-ten-percent"]\n'
TIGHT = HEAD + b'[[limit]]\nrule = "shackle-body-worn"\nlimit = "3 %"\n'
THIN_WALLS = HEAD + b'[[setting]]\nkey = "required_wall_fraction"\nvalue = "60 %"\nwhy = "thick walls"\n'
WORN = {"bow_diameter": "17.3 mm", "pin_diameter": "22.2 mm"}  # 1 - 17.3 / 19 = 8.9 %


def with_worn_shackle(office: Office) -> Office:
    """A shackle worn by 8.9 %: held by the packaged 8 %."""
    book_in(office, shackle())
    held = record_inspection(office, "SH-1", all_good(office, office.kind("bow_shackle"), WORN))
    assert held.verdict.outcome is Outcome.HOLD
    return office


def test_a_loosened_limit_lets_a_piece_go_and_says_so_everywhere(office: Office) -> None:
    with_worn_shackle(office)
    adopt_rulebook(office, LOOSE, "ours.toml")
    after = in_force(office)
    found = open_item(after, "SH-1")
    assert found.verdict.outcome is Outcome.FIT
    assert found.verdict.unloosened is not None and found.verdict.unloosened.outcome is Outcome.HOLD
    for text in (found.explanation.headline, found.explanation.plain, found.explanation.use_line):
        assert "without the club's loosened limits" in text.lower() and "Hold" in text
    worn = next(one for one in found.explanation.passes if one.rule == "shackle-body-worn")
    assert "club limit 10 %, loosened from 8 %" in worn.limit and "loosened from 8 %" in worn.sentence
    assert "chosen by Test Club" in worn.source
    assert any("shackle-body-worn: club limit 10 %" in one for one in found.explanation.cautions)
    (row,) = list_gear(after).rows
    assert row.unloosened is Outcome.HOLD and "loosened" in row.headline
    assert any("loosened" in line.text for line in history_of(after, "SH-1"))


def test_past_verdicts_keep_the_rulebook_of_their_day_and_the_ledger_tells_the_adoption(office: Office) -> None:
    with_worn_shackle(office)
    old = open_item(office, "SH-1").verdict.rulebook
    adopt_rulebook(office, LOOSE, "ours.toml")
    after = in_force(office)
    assert [line.what for line in history_of(after, "SH-1")].count("Verdict") == 3
    assert open_item(after, "SH-1").verdict.rulebook == after.rules.hash != old
    with office.book.reading() as page:
        assert page.has_rulebook(old) and page.has_rulebook(after.rules.hash)
    found = verify_book(after)
    assert found.faults == ()


def test_dropping_the_club_s_limits_brings_the_packaged_ones_back(office: Office) -> None:
    with_worn_shackle(office)
    adopt_rulebook(office, LOOSE, "ours.toml")
    drop_rulebook(in_force(office))
    after = in_force(office)
    assert after.rules.club is None
    assert open_item(after, "SH-1").verdict.outcome is Outcome.HOLD
    with pytest.raises(Refused, match="adopted already"):
        drop_rulebook(after)


def test_the_same_book_twice_and_a_day_that_is_past_are_refused(office: Office) -> None:
    adopt_rulebook(office, TIGHT, "ours.toml")
    with pytest.raises(Refused, match="adopted already"):
        adopt_rulebook(office, TIGHT, "ours.toml")
    with pytest.raises(Refused, match="which is past"):
        adopt_rulebook(office, LOOSE, "ours.toml", office.today - timedelta(days=1))
    with pytest.raises(Refused, match="adopted already"):
        drop_rulebook(with_new_register(office))


def with_new_register(office: Office) -> Office:
    """The same office before anything was adopted: a register of its own."""
    from inspector.register.book import open_book

    return replace(office, book=open_book(office.out_tray.parent / "other.db"))


def test_a_faulty_file_is_refused_with_every_fault_and_nothing_is_kept(office: Office) -> None:
    faulty = HEAD + b'[[limit]]\nrule = "pin-worn"\nlimit = "9 mm"\n[[outcome]]\nrule = "pin-worn"\nelse = "note"\n'
    head = verify_book(office).head
    with pytest.raises(Refused) as refused:
        adopt_rulebook(office, faulty, "ours.toml")
    assert "ours.toml, line 7" in refused.value.why and "ours.toml, line 10" in refused.value.why
    assert verify_book(office).head == head
    assert [one.line for one in check_rulebook(faulty, "ours.toml").faults] == [7, 10]
    assert check_rulebook(b"\xff", "ours.toml").faults[0].line == 1


def test_a_book_that_retires_is_adopted_only_by_whoever_names_how_many(office: Office) -> None:
    with_worn_shackle(office)
    stricter = HEAD + b'profile = ["shackle-wear-eight-percent-retires"]\n'
    with pytest.raises(Refused, match="one piece at once: SH-1"):
        adopt_rulebook(office, stricter, "ours.toml")
    assert open_item(office, "SH-1").verdict.outcome is Outcome.HOLD
    adopt_rulebook(office, stricter, "ours.toml", retires=1)
    after = in_force(office)
    assert open_item(after, "SH-1").verdict.outcome is Outcome.RETIRE
    drop_rulebook(after)
    assert open_item(in_force(office), "SH-1").verdict.outcome is Outcome.RETIRE, "a retirement is final"


def test_a_book_from_a_later_day_waits_for_it_and_judges_once(office: Office) -> None:
    with_worn_shackle(office)
    begins = office.today + timedelta(days=6)
    adopt_rulebook(office, LOOSE, "ours.toml", begins)
    assert in_force(office).rules.club is None
    assert open_item(office, "SH-1").verdict.outcome is Outcome.HOLD
    assert judge_under_new_book(in_force(office)) == {}
    later = in_force(office.at(office.now + timedelta(days=6)))
    assert list(judge_under_new_book(later).values()) == [Outcome.FIT]
    assert open_item(later, "SH-1").verdict.outcome is Outcome.FIT
    assert judge_under_new_book(later) == {} and judge_anew(later) == ()
    assert verify_book(later).faults == ()


def test_a_book_adopted_later_takes_the_place_of_one_that_has_not_begun(office: Office) -> None:
    adopt_rulebook(office, LOOSE, "ours.toml", office.today + timedelta(days=6))
    adopt_rulebook(office, TIGHT, "ours.toml")
    later = in_force(office.at(office.now + timedelta(days=9)))
    assert later.rules.club is not None
    assert [one.club for one in later.rules.club.changes] == ["3 %"]


def test_a_newer_program_takes_the_packaged_limit_where_the_club_s_no_longer_fits(office: Office) -> None:
    with_worn_shackle(office)
    both = LOOSE + b'[[limit]]\nrule = "stretched-static"\nlimit = "4 %"\n'
    adopt_rulebook(office, both, "ours.toml")
    renamed = tuple(
        replace(one, id="body-worn-anew") if one.id == "shackle-body-worn" else one for one in office.rules.rules
    )
    newer = in_force(replace(office, rules=office.rules.with_law(rules=renamed)))
    assert newer.rules.club is not None
    assert [one.about for one in newer.rules.club.changes] == ["stretched-static"], "what fits still holds"
    assert any("No rule is called “shackle-body-worn”" in one for one in unfit_lines(newer))
    judged = record_inspection(newer, "SH-1", all_good(newer, newer.kind("bow_shackle"), WORN))
    assert judged.verdict.outcome is Outcome.HOLD, "the packaged 8 % stands"
    assert any("do not fit this version" in one for one in judged.explanation.cautions)


def test_a_newer_program_with_a_stricter_limit_does_not_keep_a_club_s_looser_one(office: Office) -> None:
    adopt_rulebook(office, TIGHT.replace(b"3 %", b"7 %"), "ours.toml")
    stricter = tuple(replace(one, limit="5 %") if one.id == "shackle-body-worn" else one for one in office.rules.rules)
    newer = in_force(replace(office, rules=office.rules.with_law(rules=stricter)))
    rule = next(one for one in newer.rules.rules if one.id == "shackle-body-worn")
    assert rule.limit == "5 %"
    assert len(unfit_lines(newer)) == 1


def text_of(place: Path) -> str:
    pypdf = pytest.importorskip("pypdf")
    return " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(place).pages).split())


def test_sheets_and_notices_say_which_limits_are_loosened(sample: Office) -> None:
    adopt_rulebook(sample, THIN_WALLS, "ours.toml")
    after = in_force(sample)
    loosened = [row.tag for row in list_gear(after).rows if row.unloosened]
    assert "HR-01" in loosened
    sheet = text_of(print_trip_sheet(after, "next").path)
    assert "Club limits loosened from the packaged rulebook" in sheet
    assert "required wall fraction 60 %, loosened from 80 %" in sheet and "Ours" in sheet
    tag = next(row.tag for row in list_gear(after, outcome=Outcome.RETIRE).rows)
    notice = text_of(print_notice(after, tag).path)
    assert "Club limits loosened from the packaged rulebook" in notice


def test_the_sheet_writes_the_club_s_limit_beside_a_measured_check(office: Office) -> None:
    from inspector.rulebook.limits import measure_limit

    with_worn_shackle(office)
    limits = {}
    for name, body in (("loose", LOOSE), ("tight", TIGHT)):
        rules = adopting.sound_book(body, "ours.toml")[0]
        dossier = open_item(replace(office, rules=rules), "SH-1").dossier
        measure = dossier.kind.measure("bow_diameter")
        assert measure is not None
        limits[name] = measure_limit(dossier, measure, rules, office.system)
    assert limits["loose"] == "more than 17.1 mm (club limit 10 %, loosened from 8 %)", "10 % is retired"
    assert limits["tight"] == "at least 18.43 mm"


def test_comparing_keeps_nothing_and_names_the_rule(sample: Office) -> None:
    head = verify_book(sample).head
    first, second = named_book(sample, "packaged", b""), named_book(sample, "ours.toml", THIN_WALLS)
    found = compare_rulebooks(sample, first, second)
    assert verify_book(sample).head == head
    moved = {one.tag: one for one in found.pieces if one.before.outcome is not one.after.outcome}
    assert (moved["HR-01"].before.outcome, moved["HR-01"].after.outcome) == (Outcome.HOLD, Outcome.FIT)
    assert any("wall-soon-too-thin" in why for why in moved["HR-01"].because)
    assert found.piece_count == sum(row.outcome is not Outcome.RETIRE for row in list_gear(sample).rows)
    assert all(one.because for one in found.pieces)
    assert compare_rulebooks(sample, first, named_book(sample, "current", b"")).pieces == ()


def test_comparing_the_other_way_round_turns_every_difference(sample: Office) -> None:
    first, second = named_book(sample, "packaged", b""), named_book(sample, "ours.toml", SAMPLE)
    there, back = compare_rulebooks(sample, first, second), compare_rulebooks(sample, second, first)
    assert there.pieces and [(one.tag, one.before, one.after) for one in there.pieces] == [
        (one.tag, one.after, one.before) for one in back.pieces
    ]


def test_the_sample_club_s_own_limits_are_adopted_from_their_day(sample: Office) -> None:
    kept = adopt_rulebook(sample, SAMPLE, "club_rules.toml")
    assert kept.from_on == date(2026, 12, 1)
    later = in_force(sample.at(sample.now + timedelta(days=6)))
    judged = judge_under_new_book(later)
    assert len(judged) == sum(row.outcome is not Outcome.RETIRE for row in list_gear(sample).rows)
    assert {open_item(later, tag).verdict.rulebook for tag in judged} == {later.rules.hash}
    assert verify_book(later).faults == ()


def test_a_newer_program_with_a_stricter_rulebook_judges_every_standing_verdict_anew(office: Office) -> None:
    book_in(office, shackle())
    kind = office.kind("bow_shackle")
    record_inspection(office, "SH-1", all_good(office, kind, WORN | {"bow_diameter": "17.7 mm"}))
    assert open_item(office, "SH-1").verdict.outcome is Outcome.FIT
    rules = tuple(replace(one, limit="5 %") if one.id == "shackle-body-worn" else one for one in office.rules.rules)
    newer = replace(office, rules=replace(office.rules.with_law(rules=rules), text=office.rules.text + "# newer"))
    assert list(judge_under_new_book(newer).values()) == [Outcome.HOLD]
    assert list_gear(newer).rows[0].outcome is Outcome.HOLD
    assert judge_under_new_book(newer) == {}
    with newer.book.reading() as page:
        assert page.judged_by_another(newer.rules.hash) == ()
    assert verify_book(newer).faults == ()


def test_a_book_from_a_later_day_retires_nothing_that_nobody_was_asked_about(office: Office) -> None:
    book_in(office, shackle())
    book_in(office, shackle("SH-2"))
    stricter = HEAD + b'profile = ["shackle-wear-eight-percent-retires"]\n'
    adopt_rulebook(office, stricter, "ours.toml", office.today + timedelta(days=6))
    kind = office.kind("bow_shackle")
    for tag in ("SH-1", "SH-2"):
        record_inspection(office, tag, all_good(office, kind, WORN))
    day = in_force(office.at(office.now + timedelta(days=6)))
    assert day.waits_for == ("SH-1", "SH-2") and day.rules.club is None
    assert judge_under_new_book(day) == {}
    assert open_item(day, "SH-1").verdict.outcome is Outcome.HOLD
    assert "SH-1, SH-2" in " ".join(waiting_lines(day))
    with pytest.raises(Refused, match="2 pieces at once"):
        adopt_rulebook(day, stricter, "ours.toml", day.today)
    adopt_rulebook(day, stricter, "ours.toml", day.today, retires=2)
    after = in_force(replace(day, waits_for=()))
    assert after.waits_for == () == waiting_lines(after)
    assert open_item(after, "SH-1").verdict.outcome is Outcome.RETIRE
    assert verify_book(after).faults == ()


def test_a_book_from_a_later_day_retires_the_pieces_that_were_agreed(office: Office) -> None:
    with_worn_shackle(office)
    stricter = HEAD + b'profile = ["shackle-wear-eight-percent-retires"]\n'
    adopt_rulebook(office, stricter, "ours.toml", office.today + timedelta(days=6), retires=1)
    day = in_force(office.at(office.now + timedelta(days=6)))
    assert day.waits_for == ()
    assert list(judge_under_new_book(day).values()) == [Outcome.RETIRE]


def test_adopting_tells_how_far_it_is_and_once_stopped_keeps_nothing(office: Office) -> None:
    steps: list[tuple[int, int]] = []

    def stop_at_the_last(done: int, total: int) -> None:
        steps.append((done, total))
        if len(steps) == 2 * total:  # each piece is judged to see what would retire, then judged and kept
            raise Refused("work", "stopped", "Begin it again.")

    book_in(office, shackle("SH-8"))
    book_in(office, shackle("SH-9"))
    before = verify_book(office).head
    with pytest.raises(Refused, match="stopped"):
        adopt_rulebook(replace(office, told=stop_at_the_last), LOOSE, "ours.toml")
    assert steps[0] == (1, steps[0][1]) and steps[-1][0] == steps[-1][1] > 1
    assert verify_book(office).head == before
