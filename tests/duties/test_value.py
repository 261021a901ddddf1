"""What the gear is worth: by owner, place and currency; what nobody knows is told and never taken as nothing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.change_item import change_value
from inspector.duties.office import Office
from inspector.duties.tell_history import history_of
from inspector.duties.value_gear import read_worth, show_money, value_list
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.refused import Refused
from tests.duties.gear import shackle, strap


@pytest.mark.parametrize(
    ("text", "decimal", "hundredths", "currency"),
    [
        ("120 EUR", ".", 12_000, "EUR"),
        ("eur120", ".", 12_000, "EUR"),
        ("AUD 1,250.5", ".", 125_050, "AUD"),
        ("1.250,50 EUR", ",", 125_050, "EUR"),
        ("1 250 NZD", ".", 125_000, "NZD"),
        ("0 EUR", ".", 0, "EUR"),
    ],
)
def test_an_amount_is_read_with_its_currency(text: str, decimal: str, hundredths: int, currency: str) -> None:
    worth = read_worth(text, decimal)
    assert (worth.hundredths, worth.currency, worth.as_typed) == (hundredths, currency, text)


@pytest.mark.parametrize(
    "text",
    ["", "120", "EUR", "-5 EUR", "120 EUR EUR", "EUR 120 EUR", "1,25 EUR", "1.234 EUR", "9" * 20 + " EUR", "² EUR"],
)
def test_what_is_no_clear_amount_is_refused(text: str) -> None:
    with pytest.raises(Refused, match="value"):
        read_worth(text)


@given(st.integers(0, 10**10), st.sampled_from([".", ","]))
def test_what_is_shown_is_read_back(hundredths: int, decimal: str) -> None:
    assert read_worth(show_money(hundredths, "EUR", decimal), decimal).hundredths == hundredths


def test_the_list_adds_each_owner_place_and_currency_and_counts_what_nobody_knows(office: Office) -> None:
    for tag, place, typed in (("SH-1", "Shed", "40 EUR"), ("SH-2", "Shed", "0.50 EUR"), ("SH-3", "Shed", "20 AUD")):
        book_in(office, replace(shackle(tag), place=place))
        change_value(office, tag, read_worth(typed))
    book_in(office, replace(shackle("SH-4"), place="Shed"))
    book_in(office, replace(strap(owner="Bo"), place="Van"))
    found = value_list(office)
    assert [(one.owner, one.place, one.piece_count) for one in found.lines] == [("Bo", "Van", 1), ("Club", "Shed", 4)]
    assert found.lines[1].totals == (("AUD", 2_000), ("EUR", 4_050)) and found.lines[1].unknown_tags == ("SH-4",)
    assert found.lines[0].totals == () and found.total.unknown_tags == ("KS-1", "SH-4")
    assert any(row.text.startswith("its value is 40 EUR") for row in history_of(office, "SH-1"))


def test_a_value_may_become_unknown_again_and_what_was_sold_is_left_out(office: Office) -> None:
    book_in(office, shackle())
    book_in(office, shackle("SH-2"))
    change_value(office, "SH-1", read_worth("40 EUR"))
    change_value(office, "SH-1", None)
    with office.book.page() as page:
        page.add_whereabouts(page.item("SH-2"), NewWhereabouts(office.today, Where.SOLD, to="Bo"))
        page.enter("sell", by=office.officer.id, at=office.now, facts={"tag": "SH-2"})
    total = value_list(office).total
    assert (total.piece_count, total.unknown_tags, total.totals) == (1, ("SH-1",), ())


def test_an_amount_of_thousands_of_digits_is_refused_like_any_other() -> None:
    with pytest.raises(Refused, match="amount"):
        read_worth("9" * 5000 + " EUR")
