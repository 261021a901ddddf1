"""Stories: the club's old list is brought in, row by row as the dry run told, and nothing of it is lost."""

import csv
from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.attach import attachments
from inspector.duties.book_in import book_in
from inspector.duties.import_list import (
    dry_run,
    imports,
    likeliest_sheet,
    matching_of,
    read_list,
    sheet_called,
    take,
)
from inspector.duties.importing.corrections import column_called, with_answer, with_meaning
from inspector.duties.importing.figures import read_figure
from inspector.duties.left_rows import write_left, write_left_again
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.gear.import_list import Asks, Column, Fate
from inspector.gear.item import Provenance
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from inspector.units import Dimension
from tests.duties.gear import shackle
from tests.duties.lists import HEADS, fates, listed, row, run, shackle_line
from tests.paper.test_photo import picture

SAMPLE_LIST = Path(__file__).resolve().parents[2] / "sample_register" / "old_list.csv"


def test_a_row_becomes_a_piece_that_is_held_until_somebody_has_inspected_it(office: Office, tmp_path: Path) -> None:
    heads = f"{HEADS};Last inspected;Owner"
    made = take(office, run(office, listed(tmp_path, f"{shackle_line()};May 2026, all good;Club", heads=heads)))
    piece = open_item(office, "A-1")
    facts = piece.dossier.item.facts
    assert [one.tag for one in made.pieces] == ["A-1"]
    assert (facts.kind, facts.rating.basis, facts.rating.stated_on) == ("bow_shackle", Basis.WLL, "memory")
    assert facts.rating.figure and facts.rating.figure.as_typed == "4.75 t"
    assert facts.provenance is Provenance.UNKNOWN and not piece.dossier.inspections
    assert "May 2026, all good. It counts as none." in facts.note and "list.csv, row 2" in facts.note
    assert piece.verdict.outcome is Outcome.HOLD
    assert verify_book(office).faults == ()


def test_every_row_that_holds_anything_is_taken_or_stands_in_the_file_beside(office: Office, tmp_path: Path) -> None:
    book_in(office, shackle())
    path = tmp_path / "old.csv"
    path.write_bytes(SAMPLE_LIST.read_bytes().replace(b"SH-04", b"SH-1"))
    found = run(office, read_list(path))
    made = take(office, found)
    beside = write_left(office, made, tmp_path)
    assert beside is not None
    left = list(csv.reader(beside.read_text("utf-8-sig").splitlines()))
    every = [one for one in csv.reader(path.read_text("utf-8").splitlines()) if any(one)]
    assert len(made.pieces) == 4 and len(left) - 1 == len(made.left) == 8
    assert len(made.pieces) + len(left) - 1 + len([found.matching.head]) == len(every)
    taken = {one.tag for one in made.pieces}
    kept = [one[: len(every[-1])] for one in left]
    assert all(one in kept or one[0] in taken for one in every)
    assert all(one[-1] for one in left)
    beside.unlink()
    again = write_left_again(office, made.number, tmp_path)
    assert again == beside and list(csv.reader(again.read_text("utf-8-sig").splitlines())) == left


def test_nothing_is_kept_by_a_dry_run_or_where_no_row_passes(office: Office, tmp_path: Path) -> None:
    before = verify_book(office)
    found = run(office, listed(tmp_path, "A-1;Sledge;4.75;19;22"))
    with pytest.raises(Refused, match="No row"):
        take(office, found)
    assert verify_book(office) == before and row(found, 2).fate is Fate.REFUSED


def test_a_piece_that_is_there_already_is_shown_beside_the_row(office: Office, tmp_path: Path) -> None:
    book_in(office, replace(shackle(), maker_mark="QVO", serial="Q 7"))
    heads = f"{HEADS};Maker;Serial no."
    lines = (f"{shackle_line('sh-1')};;", f"{shackle_line('A-2', '3.25')};QVO;q7", f"{shackle_line('A-3')};BZW;Q 7")
    found = run(office, listed(tmp_path, *lines, heads=heads))
    assert fates(found) == [(Fate.DUPLICATE, "sh-1"), (Fate.TAKEN, "A-2"), (Fate.TAKEN, "A-3")]
    assert {one.name: (one.ours, one.theirs) for one in row(found, 2).beside}["tag"] == ("sh-1", "SH-1")
    lines = (f"{shackle_line('A-2', '3.25')};QVO;Q-7", f"{shackle_line('A-3')};;Q 7", f"{shackle_line('A-4')};BZW;Q 7")
    found = run(office, listed(tmp_path, *lines, heads=heads))
    assert [one for one, _ in fates(found)] == [Fate.DUPLICATE, Fate.DUPLICATE, Fate.DUPLICATE]
    beside = {one.name: (one.ours, one.theirs) for one in row(found, 2).beside}
    assert beside["rating"] == ("WLL 3.25 t (from memory)", "WLL 4.75 t, factor 5") and row(found, 2).like == "SH-1"
    shared = dry_run(office, found.file, replace(found.matching, shared_serials=True))
    assert shared.count(Fate.TAKEN) == 3


def test_a_row_without_a_serial_is_like_no_piece_with_one_of_signs_alone(office: Office, tmp_path: Path) -> None:
    book_in(office, replace(shackle(), maker_mark="QVO", serial="--"))
    heads = f"{HEADS};Maker;Serial no."
    found = run(office, listed(tmp_path, *(f"{shackle_line(f'A-{at}')};QVO;{serial}" for at, serial in
                                           enumerate(("", "--", "-/-"), 1)), heads=heads))  # fmt: skip
    assert [one for one, _ in fates(found)] == [Fate.TAKEN, Fate.DUPLICATE, Fate.TAKEN]


def test_of_rows_that_say_the_same_one_is_taken_and_of_others_none(desk: Office, tmp_path: Path) -> None:
    lines = (shackle_line(), shackle_line(), shackle_line("A-2"), shackle_line("a-2", "3.25"))
    found = run(desk, listed(tmp_path, *lines))
    assert [one for one, _ in fates(found)] == [Fate.TAKEN, Fate.DUPLICATE, Fate.DUPLICATE, Fate.DUPLICATE]
    assert row(found, 3).like == "row 2" and row(found, 5).like == "row 4"


def test_all_is_refused_where_the_register_changed_since_the_dry_run(office: Office, tmp_path: Path) -> None:
    found = run(office, listed(tmp_path, shackle_line("A-1"), shackle_line("SH-1")))
    assert found.count(Fate.TAKEN) == 2
    book_in(office, shackle())
    before = verify_book(office)
    with pytest.raises(Refused, match="row 3 would not pass"):
        take(office, found)
    assert verify_book(office) == before


def test_a_stop_on_the_way_keeps_nothing(office: Office, tmp_path: Path) -> None:
    found = run(office, listed(tmp_path, *(shackle_line(f"A-{number}") for number in range(120))))
    told: list[int] = []

    def stop(done: int, total: int) -> None:
        told.append(done)
        if done == 100:
            raise Refused("x", "stopped", "")

    before = verify_book(office)
    with pytest.raises(Refused, match="stopped"):
        take(replace(office, told=stop), found)
    assert told == list(range(1, 101)) and verify_book(office) == before


def test_what_can_be_read_in_two_ways_is_asked_and_not_taken(desk: Office, tmp_path: Path) -> None:
    file = listed(tmp_path, "A-1;Bow shackle;1,250;19;22;3/4/2020", heads="Tag;Kind;Load;Body (mm);Pin (mm);Bought")
    found = run(desk, file)
    asked = [(one.about, one.answer) for one in found.questions]
    assert asked == [(Asks.UNIT, ""), (Asks.DECIMAL, ""), (Asks.BASIS, ""), (Asks.ORDER, "")]
    answers = [("Load", Asks.UNIT, "short ton"), ("Load", Asks.DECIMAL, ","), ("Load", Asks.BASIS, "wll")]
    for number in range(3):
        partly = run(desk, file, [*answers[:number], *answers[number + 1 :], ("Bought", Asks.ORDER, "mdy")])
        assert fates(partly)[0][0] is Fate.REFUSED
    facts = row(run(desk, file, [*answers, ("Bought", Asks.ORDER, "mdy")]), 2).facts
    assert facts and facts.rating.figure and facts.rating.figure.as_typed == "1,250 short ton"
    assert facts.rating.figure.si == pytest.approx(1.25 * 2000 * 4.4482216152605)
    assert facts.in_service_on == date(2020, 3, 4)


@pytest.mark.parametrize("said", ["8 ton", "8 to", "8 tons"])
def test_a_ton_is_never_guessed(desk: Office, tmp_path: Path, said: str) -> None:
    file = listed(tmp_path, f"A-1;Snatch strap;{said};9", heads="Tag;Kind;MBS;Length (m)")
    assert row(run(desk, file), 2).fate is Fate.REFUSED
    figures = [row(run(desk, file, [("C", Asks.UNIT, unit)]), 2).facts for unit in ("t", "short ton", "long ton")]
    newtons = [one.rating.figure.si for one in figures if one and one.rating.figure]
    assert newtons == pytest.approx([8000 * 9.80665, 16000 * 4.4482216152605, 17920 * 4.4482216152605])
    assert row(run(desk, file, [("C", Asks.UNIT, "kN")]), 2).fate is Fate.REFUSED


def test_what_a_column_proves_is_proposed_and_still_shown(desk: Office, tmp_path: Path) -> None:
    lines = ("A-1;Bow shackle;4,75;19;22;13/5/2020", "A-2;Bow shackle;1,250;19;22;3/5/2020")
    found = run(desk, listed(tmp_path, *lines, heads=f"{HEADS};Bought on"))
    assert {one.about: one.answer for one in found.questions} == {Asks.DECIMAL: ",", Asks.ORDER: "dmy"}
    facts = row(found, 3).facts
    assert facts and facts.in_service_on == date(2020, 5, 3)
    assert facts.rating.figure and facts.rating.figure.si == pytest.approx(1250 * 9.80665)


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("2024-05-03", date(2024, 5, 3)),
        ("2024-05-03 00:00:00", date(2024, 5, 3)),
        ("03.05.2024", date(2024, 5, 3)),
        ("3.5.24", date(2024, 5, 3)),
        ("25/5/98", date(1998, 5, 25)),
        ("5/25/2024", date(2024, 5, 25)),
        ("3 May 2024", date(2024, 5, 3)),
        ("3. März 2024", date(2024, 3, 3)),
        ("May 3, 2024", date(2024, 5, 3)),
        ("May 2024", date(2024, 5, 1)),
        ("05/2024", date(2024, 5, 1)),
        ("2024", date(2024, 1, 1)),
        ("3/5/2024", None),
        ("45415", None),
        ("31.02.2024", None),
        ("soon", None),
        ("³", None),
        ("9" * 5000, None),
    ],
)
def test_days_in_local_forms(desk: Office, tmp_path: Path, said: str, day: date | None) -> None:
    found = row(run(desk, listed(tmp_path, f"{shackle_line()};{said}", heads=f"{HEADS};Made on")), 2)
    assert found.fate is (Fate.TAKEN if day else Fate.REFUSED)
    assert (found.facts.made_on if found.facts else None) == day
    if said in {"May 2024", "05/2024", "2024"}:
        assert any("the earliest it can be" in one for one in found.told)


@pytest.mark.parametrize(
    ("heads", "line", "basis", "newtons"),
    [
        ("Nr;Gerät;Bruchlast in kN;Länge m", "A-1;Kinetikgurt;86;9", Basis.MBS, 86_000),
        ("Nr;Gerät;Bruchlast (kg);Länge (m)", "A-1;Kinetikgurt;8.000,0;9", Basis.MBS, 8000 * 9.80665),
        ("Tag;Kind;Rating;Length", "A-1;Snatch strap;MBS 17,600.0 lb;30 ft", Basis.MBS, 17_600 * 4.4482216152605),
        ("Tag;Kind;Rating;Rated by;Length", "A-1;Snatch strap;86 kN;MBS;9 m", Basis.MBS, 86_000),
        ("Tag;Item;Capacity (kg);Ball (mm)", "A-1;Tow ball;3500;50", Basis.TOWED_MASS, 3500),
    ],
)
def test_ratings_in_any_unit_and_column(
    desk: Office, tmp_path: Path, heads: str, line: str, basis: Basis, newtons: float
) -> None:
    facts = row(run(desk, listed(tmp_path, line, heads=heads)), 2).facts
    assert facts and facts.rating.basis is basis
    assert facts.rating.figure and facts.rating.figure.si == pytest.approx(newtons)


def test_a_kind_that_nobody_knows_and_one_that_could_be_several_are_not_taken(desk: Office, tmp_path: Path) -> None:
    found = run(desk, listed(tmp_path, "A-1;Shackle;1;19;22", "A-2;Sledge;1;19;22", "A-3;;1;19;22"))
    assert [one for one, _ in fates(found)] == [Fate.REFUSED] * 3
    assert "could be several" in row(found, 2).why


def test_of_a_wll_and_an_mbs_the_wll_is_the_rating_and_the_other_stands_in_the_note(
    desk: Office, tmp_path: Path
) -> None:
    heads = "Tag;Kind;MBS (kN);WLL (t);Body (mm);Pin (mm);Colour;Width"
    facts = row(run(desk, listed(tmp_path, "A-1;Bow shackle;279;4.75;19;22;red;50 mm", heads=heads)), 2).facts
    assert facts and facts.rating.basis is Basis.WLL and facts.rating.design_factor is None
    assert facts.note.startswith("Colour: red · MBS (kN): 279 kN · Width: 50 mm · From the list")


def test_a_day_that_a_program_made_of_a_fraction_is_no_size(desk: Office, tmp_path: Path) -> None:
    file = listed(tmp_path, shackle_line())
    sheet = file.sheets[0]
    spoilt = replace(file, sheets=(replace(sheet, rows=(sheet.rows[0], (*sheet.rows[1][:3], date(2026, 4, 3), 22.0))),))
    assert "a program may have made one" in row(run(desk, spoilt), 2).why


def test_headings_below_a_title_are_found_and_columns_without_one_are_told_by_what_is_in_them(
    desk: Office, tmp_path: Path
) -> None:
    found = run(desk, listed(tmp_path, "", HEADS, shackle_line(), HEADS, heads="Our gear"))
    assert found.matching.head == 3
    assert [one for one, _ in fates(found)] == [Fate.TAKEN, Fate.REFUSED] and found.rows[0].fate is Fate.REFUSED
    bare = run(desk, listed(tmp_path, "A-2;Bow shackle;x", heads="A-1;Dee shackle;x"))
    assert bare.matching.head == 0 and [one.field for one in bare.matching.columns] == ["tag", "kind", "note"]


def test_the_sheet_is_asked_where_there_are_several(desk: Office, tmp_path: Path) -> None:
    file = listed(tmp_path, shackle_line())
    gear = replace(file.sheets[0], name="Gear")
    other = replace(gear, name="Other", rows=(("a", "b"),))
    two = replace(file, sheets=(other, gear))
    with pytest.raises(Refused, match="several sheets"):
        matching_of(desk, two)
    assert likeliest_sheet(desk, two) == "Gear"
    found = dry_run(desk, two, matching_of(desk, two, "gear"))
    assert found.count(Fate.TAKEN) == 1 and any("“Other” (1 row) was not read" in one for one in found.told)
    with pytest.raises(Refused, match="no sheet"):
        matching_of(desk, two, "nowhere")


def test_what_was_said_of_headings_is_remembered_for_the_next_file(office: Office, tmp_path: Path) -> None:
    heads = "Code;Thing;Strength;Long"
    first = listed(tmp_path, "A-1;Snatch strap;86;9", heads=heads)
    answers = [("Strength", Asks.UNIT, "kN"), ("Strength", Asks.BASIS, "mbs"), ("Long", Asks.UNIT, "m")]
    found = run(office, first, answers, B="kind", C="rating", D="size:length")
    take(office, found)
    second = listed(tmp_path, "A-2;Snatch strap;90;6", heads=heads, name="next.csv")
    assert fates(run(office, second)) == [(Fate.TAKEN, "A-2")]
    assert run(office, listed(tmp_path, "A-2;Snatch strap;90", heads="Code;Thing;Strength")).matching != found.matching


def test_repeated_headings_and_wrong_corrections(desk: Office, tmp_path: Path) -> None:
    file = listed(tmp_path, f"{shackle_line()};B-1;x", heads=f"{HEADS};Tag;Tag")
    found = run(desk, file)
    assert [one.field for one in found.matching.columns[-2:]] == ["note", "note"] and found.count(Fate.TAKEN) == 1
    matching, sheet = found.matching, sheet_called(file)
    with pytest.raises(Refused, match="Several columns"):
        column_called(matching, "tag")
    assert column_called(matching, "f").at == 5
    with pytest.raises(Refused, match="No column"):
        column_called(matching, "Q")
    with pytest.raises(Refused, match="nothing that a column can mean"):
        with_meaning(desk, sheet, matching, 0, "colour")
    with pytest.raises(Refused, match="no answer"):
        with_answer(matching, 2, Asks.UNIT, "ton")


def test_photos_go_with_their_pieces_and_unusable_ones_are_told(office: Office, tmp_path: Path) -> None:
    folder = tmp_path / "photos"
    folder.mkdir()
    (folder / "Front.JPG").write_bytes(picture("JPEG"))
    (folder / "a-2.png").write_bytes(picture("PNG"))
    (folder / "broken.jpg").write_bytes(b"no picture")
    lines = (
        f"{shackle_line('A-1')};front.jpg|gone.jpg",
        f"{shackle_line('A-2')};",
        f"{shackle_line('A-3')};broken.jpg",
    )
    file = listed(tmp_path, *lines, heads=f"{HEADS};Photo")
    found = dry_run(office, file, matching_of(office, file), folder)
    assert [one.photos for one in found.passed] == [("Front.JPG",), ("a-2.png",), ("broken.jpg",)]
    made = take(office, found)
    assert [len(attachments(office, tag)) for tag in ("A-1", "A-2", "A-3")] == [1, 1, 0]
    assert len(made.told) == 1 and "broken.jpg" in made.told[0]
    assert "Photo in the list: gone.jpg" in open_item(office, "A-1").dossier.item.facts.note
    assert any("“gone.jpg” is not in the folder" in one for one in found.passed[0].told)
    assert verify_book(office).faults == ()


def test_the_ledger_tells_of_an_import_and_the_imports_are_listed(office: Office, tmp_path: Path) -> None:
    made = take(office, run(office, listed(tmp_path, shackle_line(), "A-2;Sledge;1;1;1")))
    told = told_ledger(office, last=1)[0]
    assert told.sentence == (
        f"Ada Officer brought in 1 piece from the list list.csv (import {made.number}): A-1; 1 row was not taken."
    )
    assert imports(office) == (made,)


def test_a_folder_or_a_file_that_is_not_there_is_refused(desk: Office, tmp_path: Path) -> None:
    with pytest.raises(Refused, match="cannot be read"):
        read_list(tmp_path / "none.csv")
    with pytest.raises(Refused):
        read_list(tmp_path)
    file = listed(tmp_path, shackle_line())
    with pytest.raises(Refused, match="cannot be read"):
        dry_run(desk, file, matching_of(desk, file), tmp_path / "none")


@pytest.mark.parametrize(("sign", "tonnes"), [(",", 1.25), (".", 1250)])
def test_a_figure_that_can_be_two_is_read_as_the_column_says_and_kept_as_it_was_written(
    desk: Office, tmp_path: Path, sign: str, tonnes: float
) -> None:
    column = Column(0, "Load", "rating", decimal=sign)
    figure = read_figure("1,250 t", column, Dimension.FORCE, "rating")
    assert figure.si == pytest.approx(tonnes * 9806.65) and figure.as_typed == "1,250 t"
