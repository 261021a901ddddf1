"""A damaged register is saved as far as it can be proved, and what is lost is told."""

import random
import shutil
from pathlib import Path

import pytest

from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.duties.rescue_register import RescueDone, rescue_register
from inspector.duties.sit_down import seat
from inspector.duties.verify_book import verify_book
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.faults.flips import _pages
from tests.faults.small import inspect

PAGE = 4096


def rescued(file: Path, rules: Rulebook) -> tuple[RescueDone, Office]:
    """Rescue it beside itself, and open what came of it."""
    folder = file.parent / "saved"
    done = rescue_register(file, folder, lambda place: office_in(place, rules))
    assert sorted(one.name for one in folder.iterdir() if one.name != "documents") == [
        done.list_file.name,
        "register.db",
    ]
    return done, seat(office_in(folder, rules))


def outcomes(office: Office) -> dict[str, Outcome | None]:
    return {row.tag: row.outcome for row in list_gear(office).rows}


def zero(file: Path, *pages: int) -> None:
    """Wipe pages, the first is 1."""
    data = bytearray(file.read_bytes())
    for page in pages:
        data[(page - 1) * PAGE : page * PAGE] = bytes(PAGE)
    file.write_bytes(bytes(data))


def test_of_a_whole_register_nothing_is_lost_and_nothing_held(small: Path, rules: Rulebook) -> None:
    before = small.read_bytes()
    done, office = rescued(small, rules)
    assert done.rescued.rows == () and done.held == () and not done.rescued.lost_lines
    assert done.piece_count == 5
    found = verify_book(office)
    assert (found.faults, found.gaps) == ((), ())
    stands = outcomes(office)
    assert stands["SH-2"] is Outcome.RETIRE and stands["SH-1"] is Outcome.FIT
    assert small.read_bytes() == before, "the damaged file stays as it is"
    office.book.close()


def test_a_lost_inspection_holds_its_piece_alone(small: Path, rules: Rulebook) -> None:
    zero(small, *_pages(small)["inspection"][-1:])
    done, office = rescued(small, rules)
    lost = {one.table for one in done.rescued.rows}
    assert lost == {"inspection"} and not done.rescued.lost_lines
    stands = outcomes(office)
    assert set(done.held) and all(stands[tag] is Outcome.HOLD for tag in done.held)
    assert "KS-1" not in done.held, "nothing of it is lost"
    found = verify_book(office)
    assert found.faults == () and len(found.gaps) == len(done.rescued.rows), "the gap is known, not clean"
    assert "inspection" in done.list_file.read_text("utf-8")
    office.book.close()


def test_lost_lines_hold_every_piece_since_nobody_knows_of_which_they_told(small: Path, rules: Rulebook) -> None:
    zero(small, _pages(small)["ledger"][3])
    done, office = rescued(small, rules)
    assert done.rescued.lost_lines
    stands = outcomes(office)
    assert all(one in {Outcome.HOLD, Outcome.RETIRE} for one in stands.values()), stands
    found = verify_book(office)
    assert found.faults == () and found.gaps
    office.book.close()


@pytest.mark.parametrize("share", [0.4, 0.9])
def test_a_file_cut_off_is_saved_as_far_as_it_goes(small: Path, rules: Rulebook, share: float) -> None:
    data = small.read_bytes()
    small.write_bytes(data[: int(len(data) * share)])
    try:
        done, office = rescued(small, rules)
    except Refused as refusal:
        assert share < 0.8 and "can be" in refusal.why
        return
    assert done.rescued.lost_lines, "the newest pages are gone"
    assert Outcome.FIT not in outcomes(office).values()
    assert verify_book(office).faults == ()
    office.book.close()


@pytest.mark.parametrize("seed", range(3))
def test_random_damage_never_shows_a_changed_fact_and_never_lets_a_touched_piece_pass(
    small: Path, rules: Rulebook, seed: int
) -> None:
    whole = office_in(small.parent, rules)
    before = outcomes(whole)
    whole.book.close()
    dice = random.Random(seed)
    data = bytearray(small.read_bytes())
    for _ in range(dice.randrange(1, 12)):
        at = dice.randrange(len(data) // PAGE) * PAGE + dice.randrange(PAGE)
        data[at : at + 200] = dice.randbytes(min(200, len(data) - at))
    small.write_bytes(bytes(data))
    try:
        done, office = rescued(small, rules)
    except Refused as refusal:
        assert "can be" in refusal.why
        return
    for tag, outcome in outcomes(office).items():
        assert outcome is before[tag] or tag in done.held, (tag, outcome, before[tag])
        assert outcome in {before[tag], Outcome.HOLD, Outcome.RETIRE}
    assert verify_book(office).faults == ()
    office.book.close()


def test_a_change_after_the_rescue_is_a_fault_beside_the_known_gap(small: Path, rules: Rulebook) -> None:
    zero(small, *_pages(small)["inspection"][-1:])
    _, office = rescued(small, rules)
    gaps = verify_book(office).gaps
    with office.book.reading() as page:
        connection = page._connection
        connection.exec_driver_sql("DROP TRIGGER person_no_update")
        connection.exec_driver_sql("UPDATE person SET role = 'x'")
        found = page.verify()
    assert {one.where for one in found.faults} == {"person", "guards"} and found.gaps == gaps
    office.book.close()


def test_what_was_committed_beside_the_file_is_saved_and_what_was_not_is_left(small: Path, rules: Rulebook) -> None:
    """A program was killed: its last deeds stand in the write-ahead file alone, and half of another one behind them."""
    office = seat(office_in(small.parent, rules))
    with office.book.reading() as held:  # a reader keeps the file from taking them in
        held.line_number()
        inspect(office, "SH-1")
        inspect(office, "SH-3")
        head = verify_book(office).head
        bad = small.parent / "killed" / "register.db"
        bad.parent.mkdir()
        shutil.copyfile(small, bad)
        wal = small.with_name("register.db-wal").read_bytes()
    office.book.close()
    for size, last in ((len(wal), True), (len(wal) - 4096, False)):
        bad.with_name("register.db-wal").write_bytes(wal[:size] + b"half of the next one" * 300)
        done = rescue_register(bad, bad.parent / f"saved{size}", lambda place: office_in(place, rules))
        saved = office_in(bad.parent / f"saved{size}", rules)
        found = verify_book(saved, head[:16])
        assert any("has the head" in one.why for one in found.faults) is not last
        assert done.rescued.rows == () and done.held == ()
        saved.book.close()


def test_a_rescue_that_fails_leaves_nothing(small: Path, rules: Rulebook) -> None:
    def fails(folder: Path) -> Office:
        raise Refused("x", "no", "no")

    with pytest.raises(Refused):
        rescue_register(small, small.parent / "saved", fails)
    assert list((small.parent / "saved").iterdir()) == []


def test_a_folder_with_a_register_is_left_alone(small: Path, rules: Rulebook) -> None:
    before = small.read_bytes()
    with pytest.raises(Refused, match="holds a register already"):
        rescue_register(small, small.parent, lambda place: office_in(place, rules))
    assert small.read_bytes() == before


def test_a_file_that_is_none_is_refused(tmp_path: Path, rules: Rulebook) -> None:
    (tmp_path / "x.db").write_bytes(b"nothing" * 3000)
    with pytest.raises(Refused, match="Nothing of a register"):
        rescue_register(tmp_path / "x.db", tmp_path / "saved", lambda place: office_in(place, rules))
