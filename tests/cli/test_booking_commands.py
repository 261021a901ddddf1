"""Pieces come in, in every form, as the officer types it."""

from tests.cli.test_commands import SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]

PLAN = ("--name", "Beach day", "--place", "Long Sand", "--ground", "beach", "--leader", "Ada Officer")
STRAP = (
    "--kind",
    "kinetic_strap",
    "--rating",
    "8000 kg",
    "--stated-on",
    "piece",
    "--basis",
    "mbs",
    "--size",
    "length=9 m",
)


def test_a_gift_tells_its_form_its_giver_and_its_paper(desk: Desk) -> None:
    desk.type("book", "SH-1", *_used("gift"), *SIZES, "--from", "Wilf Duncery", "--paper", "letter of May")
    shown = desk.type("show", "SH-1")
    assert "a gift" in shown and "Wilf Duncery" in shown and "letter of May" in shown


def test_what_a_form_ought_to_tell_is_asked_for(desk: Desk) -> None:
    assert "certificate are not written down" in " ".join(desk.type("book", "SH-1", *SHACKLE, *SIZES).split())


def test_a_borrowed_piece_without_its_day_is_refused_with_what_to_do(desk: Desk) -> None:
    said = desk.type("book", "SH-1", *_used("borrowed"), *SIZES, "--from", "Marsh Rovers", code=2)
    assert "borrowed until" in said and "last day on which it may be here" in said


def _used(form: str) -> list[str]:
    return [form if one == "new_certified" else one for one in SHACKLE]


def test_a_members_strap_comes_along_on_one_trip_and_again_on_the_next(desk: Desk) -> None:
    for ref, day in (("T-1", "2126-12-05"), ("T-2", "2126-12-19")):
        desk.type("trip", "plan", ref, *PLAN, "--first", day, "--last", day)
    said = desk.type("visit", "T-1", *STRAP, "--owner", "Di Member")
    assert "came along as VG-1" in said and "VG-1  Hold" in said
    assert "VG-1" in desk.type("trip", "show", "T-1")
    assert "for T-1 alone, to 5 Dec 2126" in desk.type("show", "VG-1")
    assert "VG-1  Hold" in desk.type("visit", "T-2", "--again", "VG-1")
    assert "it comes along on T-2 alone" in " ".join(desk.type("show", "VG-1").split())
    assert "Di Member's own, along on the trip T-2 alone" in " ".join(desk.type("ledger").split())


def test_a_visit_of_nothing_or_of_nobodys_is_refused(desk: Desk) -> None:
    desk.type("trip", "plan", "T-1", *PLAN, "--first", "2126-12-05", "--last", "2126-12-05")
    assert "not said what comes along" in desk.type("visit", "T-1", code=2)
    assert "Whose it is was not said" in desk.type("visit", "T-1", *STRAP, code=2)


def test_where_a_rating_is_read_is_asked_and_never_presumed(desk: Desk) -> None:
    unsaid = [one for one in STRAP if one not in {"--stated-on", "piece"}]
    said = desk.type("book", "KS-9", *unsaid, "--past", "new", code=2)
    assert "not said where the rating stands" in said
    assert all(choice in said for choice in ("piece", "certificate", "memory"))
    assert "it must be said" in " ".join(desk.type("book", "--help").split())
    unrated = ("--kind", "kinetic_strap", "--size", "length=9 m", "--past", "new")
    assert "KS-8" in desk.type("book", "KS-8", *unrated)
