"""A recall by command: looked through, entered, written for, answered, settled and closed."""

import re

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]
MEANT = ("--maker-mark", "Kelpline", "--kind", "bow_shackle", "--first", "KS100", "--last", "KS199")

HANGS = re.compile(r"A hold tag printed on \d+ \w+ \d{4} may still hang on it: take it off\.")


def test_a_notice_from_the_look_to_the_close(desk: Desk) -> None:
    for tag, serial in (("SH-1", "KS150"), ("SH-2", "")):
        desk.type("book", tag, *SHACKLE, *SIZES, "--maker-mark", "KELP-LINE", "--serial", serial)
        desk.type("inspect", tag, *GOOD)
    desk.type("sold", "SH-1", "--to", "Cal Buyer", "--why", "spare")
    assert "No recall was entered." in desk.type("recall", "list")
    said = desk.type("recall", "search", *MEANT)
    assert "Meant for certain (1)" in said and "(1)" in said.split("To be asked")[1]
    said = desk.type("recall", "enter", *MEANT, "--why", "Pins may snap.", "--do", "Send the pin back.")
    (ref,) = set(re.findall(r"N-\w+-0001", said))
    assert "Hold" in desk.type("list")
    said = desk.type("recall", "letters", ref)
    assert "C-" in said and "SH-2: in store" in said
    assert "was written to" in desk.type("recall", "letters", ref, code=2)
    assert "Cal Buyer" in desk.type("recall", "show", ref)
    (number,) = set(re.findall(r"C-\w+-0001", said))
    assert number in desk.type("recall", "letters", ref, "--again", number)
    assert "Not settled yet" in desk.type("recall", "close", ref, "--outcome", "done", code=2)
    desk.type("recall", "answer", ref, "SH-1", "--from", "Cal Buyer", "--said", "made_unusable", "--text", "cut")
    assert "is meant" in desk.type("recall", "clear", ref, "SH-2", "--serial", "KS101", code=2)
    desk.type("tags", "SH-2")
    assert "hold tag" not in desk.type("show", "SH-2")
    assert HANGS.search(" ".join(desk.type("recall", "clear", ref, "SH-2", "--serial", "KS901").split()))
    assert HANGS.search(" ".join(desk.type("show", "SH-2").split()))
    assert "is closed" in desk.type("recall", "close", ref, "--outcome", "One pin cut, one not meant.")
    assert "closed" in desk.type("recall", "list")
    desk.type("marks", "SH-2", "--serial", "KS105", "--why", "looked again")
    assert "Called in" in desk.type("show", "SH-2")
    assert "Remedies of a recall not yet inspected" in desk.type("recall", "remedy", ref, "SH-2", "--done", "a new pin")
    assert "Nothing was changed." in desk.type("verify")


def test_named_pieces_are_held_and_written_for_in_one_go(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    said = desk.type("recall", "pieces", "SH-1", "--why", "The dealer wrote: the wrong thread.")
    assert "SH-1: in store" in said and "Hold" in desk.type("list")
    assert "No piece is named" in desk.type("recall", "pieces", "--why", "x", code=2)
    (ref,) = set(re.findall(r"N-\w+-0001", said))
    desk.type("recall", "remedy", ref, "SH-1", "--done", "The thread was gauged: it is the right one.")
    assert "Hold" in desk.type("list")
    desk.type("tags", "SH-1")
    assert HANGS.search(" ".join(desk.type("inspect", "SH-1", *GOOD).split()))
    assert "Fit" in desk.type("list")


def test_a_wrong_entry_is_withdrawn_and_told(desk: Desk) -> None:
    desk.type("person", "Bo Second", "--competent", "all", "--since", "2020-01-01", "--paper", "card 12")
    desk.type("person", "Di Member")
    desk.type("book", "SH-1", *SHACKLE, *SIZES, "--maker-mark", "KELP-LINE", "--serial", "KS150")
    desk.type("inspect", "SH-1", *GOOD)
    desk.type("lend", "SH-1", "--to", "Di Member", "--due", "2026-12-24")
    said = desk.type("recall", "enter", *MEANT, "--why", "Pins may snap.")
    (ref,) = set(re.findall(r"N-\w+-0001", said))
    desk.type("recall", "letters", ref)
    desk.type("tags", "SH-1")
    assert "Hold" in desk.type("list")
    why = ("--why", "It is another maker's notice.")
    assert "cannot be both names" in desk.type("recall", "withdraw", ref, "--second", "Ada Officer", *why, code=2)
    said = desk.type("recall", "withdraw", ref, "--second", "Bo Second", *why)
    assert f"{ref} is withdrawn." in said and "SH-1  Fit" in said and "Di Member" in said
    assert HANGS.search(" ".join(said.split()))
    assert f"recall letters {ref}" in said and "Fit" in desk.type("list")
    assert "withdrawn" in desk.type("recall", "list")
    said = desk.type("recall", "show", ref)
    assert "another maker's notice" in said and "Not told yet that it was withdrawn: Di Member" in said
    assert "was withdrawn on" in desk.type("recall", "letters", ref, "--remind", code=2)
    (number,) = set(re.findall(r"W-\w+-0001", desk.type("recall", "letters", ref)))
    assert number in desk.type("recall", "letters", ref, "--again", number)
    assert "Not told yet" not in desk.type("recall", "show", ref)
    assert "was withdrawn on" in desk.type("recall", "close", ref, "--outcome", "done", code=2)
    assert "Nothing was changed." in desk.type("verify")
