"""The ledger read back: every deed a sentence with names and days, the newest first, whatever shape an old line has."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.lend import lend
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_ledger import SENTENCES, tell, told_ledger
from inspector.duties.verify_book import verify_book
from inspector.gear.ledger_line import WrittenLine
from inspector.gear.person import Competence, Person
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.rigs import fit, fit_kit, later, member, ready


def newest(office: Office) -> str:
    return told_ledger(office, last=1)[0].sentence


def test_who_lent_what_to_whom_until_when_is_told_in_one_sentence(office: Office) -> None:
    fit_kit(office)
    member(office)
    lend(office, ["SH-1", "KS-1"], "Di Member", office.today + timedelta(days=4), note="for the beach")
    (line,) = told_ledger(office, last=1)
    wanted = "Ada Officer lent SH-1 and KS-1 to Di Member, to be back by 29 Nov 2026: “for the beach”."
    assert (line.sentence, line.when) == (wanted, "25 Nov 2026, 19:00")
    assert line.hash == verify_book(office).head and line.number == verify_book(office).line_count


def test_a_register_s_first_lines_are_told_though_nobody_sat_at_the_desk(office: Office) -> None:
    assert [one.sentence for one in told_ledger(office)] == [
        "Ada Officer became equipment officer of the club.",
        "Ada Officer was the first to be written into the register.",
        "The register of Test Club was begun.",
    ]


def test_every_line_of_the_sample_register_is_told_in_full_without_ids(sample: Office) -> None:
    told = told_ledger(sample)
    assert len(told) == verify_book(sample).line_count
    assert [one.sentence for one in told if not one.in_full] == []
    with sample.book.reading() as page:
        ids = {one.id for one in page.people()}
    assert [one.sentence for one in told if any(key in one.sentence for key in ids)] == []
    assert [one.number for one in told] == sorted((one.number for one in told), reverse=True)


def test_what_concerns_a_piece_is_told_by_its_tag_in_any_case_and_nothing_else(office: Office) -> None:
    ready(office)
    told = told_ledger(office, of="sh-1")
    assert [one.deed for one in told] == ["plan trip", "inspect", "book in"]
    assert [one.deed for one in told_ledger(office, of="T-1")] == ["plan trip"]
    assert [one.deed for one in told_ledger(office, of="V-1")] == ["plan trip", "add vehicle"]
    assert [one.deed for one in told_ledger(office, of="di member")] == ["add person"]


def test_lines_from_a_day_on_and_a_nonsense_question_are_answered_or_refused(office: Office) -> None:
    then = later(office, 3)
    book_in(then, shackle())
    assert [one.deed for one in told_ledger(then, since=then.today)] == ["book in"]
    with pytest.raises(Refused, match="is called"):
        told_ledger(office, of="XX-9")
    with pytest.raises(Refused, match="no number"):
        told_ledger(office, last=0)


def test_a_person_is_told_by_whoever_wrote_it_down(office: Office) -> None:
    add_person(office, Person("", "Bo Rigger", "inspector", (Competence("all", office.today),)))
    assert newest(office) == "Ada Officer wrote Bo Rigger into the register."


def test_an_inspection_says_by_whom_and_what_was_found(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    checks = len(office.kind("bow_shackle").checks)
    assert newest(office) == f"Ada Officer inspected SH-1 on 25 Nov 2026: {checks} × good, 2 readings."


def test_an_inspection_by_a_member_says_who_wrote_it_down_and_that_it_passes_nothing(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    who = member(office)
    kind = office.kind("bow_shackle")
    record_inspection(office, "SH-1", all_good(office, kind, {}, by=who.id, pin_seats="bad"))
    wanted = f"Di Member inspected SH-1 on 25 Nov 2026: 1 × bad, {len(kind.checks) - 1} × good. "
    assert newest(office) == wanted + "Ada Officer wrote it down. It can hold or retire the piece, not pass it."


KEYS = ("as", "tag", "tags", "pieces", "told", "on", "by", "trip", "id", "from", "ref", "first", "uses")
PLAIN = st.none() | st.booleans() | st.integers() | st.sampled_from(("", "SH-1", "2026-11-25", "p-1"))
JSON = st.recursive(
    PLAIN,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(KEYS), inner, max_size=4),
    max_leaves=8,
)


@given(deed=st.sampled_from((*sorted(SENTENCES), "never heard of")), facts=st.dictionaries(st.sampled_from(KEYS), JSON))
def test_a_line_of_any_shape_is_told_and_never_raises(deed: str, facts: dict[str, object]) -> None:
    line = WrittenLine(7, "f" * 64, None, "p-1", deed, facts, (("verdict", "v"), ("custody", "c"), ("verdict", "w")))
    told = tell(line, {"p-1": "Ada Officer"}, {})
    if not told.in_full:
        assert told.sentence == (
            f"Ada Officer did “{deed}”; it wrote 1 × custody and 2 × verdict. No more of it can be told."
        )
    assert told.sentence and told.when == "at no known time"


def test_an_old_line_without_a_fact_names_its_deed_and_rows(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    with office.book.reading() as page:
        line = next(page.ledger_lines())
    told = tell(replace(line, facts={}), {line.by: "Ada Officer"}, {})
    assert "“inspect”; it wrote 1 × inspection and 1 × verdict" in told.sentence and not told.in_full
