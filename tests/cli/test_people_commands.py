"""People, competence, contact details and passphrases, as the officer types them."""

import io
import re
import sys

import pytest

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]

ADAS, BOS = "low water at the spit", "eleven wet dogs barking"


class Keys:
    """Gives passphrases as a script does: by the environment."""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self._patch = patch

    def own(self, passphrase: str) -> None:
        """What whoever is at the desk gives; nothing where it is empty."""
        if passphrase:
            self._patch.setenv("INSPECTOR_PASSPHRASE", passphrase)
        else:
            self._patch.delenv("INSPECTOR_PASSPHRASE", raising=False)

    def second(self, passphrase: str) -> None:
        """What the second person of a deed gives; nothing where it is empty."""
        if passphrase:
            self._patch.setenv("INSPECTOR_SECOND_PASSPHRASE", passphrase)
        else:
            self._patch.delenv("INSPECTOR_SECOND_PASSPHRASE", raising=False)

    def new(self, passphrase: str) -> None:
        """What is typed as a new one."""
        self._patch.setenv("INSPECTOR_NEW_PASSPHRASE", passphrase)


@pytest.fixture
def keys(monkeypatch: pytest.MonkeyPatch) -> Keys:
    monkeypatch.setattr(sys, "stdin", io.StringIO(""))
    made = Keys(monkeypatch)
    made.own("")
    made.second("")
    return made


def run_together(said: str) -> str:
    return " ".join(said.split())


def test_a_name_is_changed_and_its_record_tells_why(desk: Desk) -> None:
    desk.type("person", "Bo Second")
    changed = ["change-person", "Bo Second", "--name", "Bo Wedded", "--role", "deputy", "--why", "married"]
    assert "Bo Wedded is in the register: deputy" in desk.type(*changed)
    shown = run_together(desk.type("people", "--show", "Bo Wedded"))
    assert "Formerly Bo Second" in shown and "married" in shown and "Ada Officer" in shown
    assert "Nobody called" in desk.type(*changed, code=2)
    assert "Nothing was changed." in desk.type("verify")


def test_competence_is_given_renewed_and_ended(desk: Desk) -> None:
    desk.type("person", "Bo Second")
    give = ["competence", "give", "Bo Second", "shackle", "--why", "passed the course"]
    assert "nothing is named that shows it" in desk.type(*give, "--since", "2020-01-01", code=2)
    said = desk.type(*give, "--since", "2020-01-01", "--paper", "certificate 12", "--until", "2990-01-01")
    assert "shackle since 1 Jan 2020 until 1 Jan 2990" in said
    renew = ["competence", "renew", "Bo Second", "shackle", "--why", "refreshed", "--until"]
    assert "until 1 Jan 2991" in desk.type(*renew, "2991-01-01")
    assert "until 1 Jan 2991" in desk.type("people")
    assert "until" in desk.type("competence", "end", "Bo Second", "shackle", "--why", "moved away")
    assert "2991" not in desk.type("people")


def test_nobody_widens_his_own_competence_alone(desk: Desk) -> None:
    desk.type("competence", "end", "Ada Officer", "all", "--why", "lapsed")
    renew = ["competence", "renew", "Ada Officer", "all", "--until", "2990-01-01", "--why", "refreshed"]
    assert "nobody widens his own competence alone" in desk.type(*renew, code=2)
    desk.type("person", "Bo Second")
    assert "until 1 Jan 2990" in desk.type(*renew, "--second", "Bo Second")


def test_a_new_person_s_past_competence_needs_its_paper(desk: Desk) -> None:
    person = ["person", "Bo Second", "--competent", "all", "--since", "2020-01-01"]
    assert "nothing is named that shows it" in desk.type(*person, code=2)
    assert "all since 1 Jan 2020" in desk.type(*person, "--paper", "certificate 12")


def test_contact_details_are_shown_for_one_person_and_taken_out(desk: Desk) -> None:
    desk.type("contact", "write", "Ada Officer", "--phone", "0555 010 44", "--mail", "ada@club.example")
    shown = desk.type("people", "--show", "Ada Officer")
    assert "0555 010 44" in shown and "ada@club.example" in shown
    assert "0555" not in desk.type("people")
    gone = run_together(desk.type("contact", "remove", "Ada Officer"))
    assert "taken out of the register" in gone and "Back-ups" in gone and "may still lie" not in gone
    assert "0555" not in desk.type("people", "--show", "Ada Officer")
    assert "Nothing is written down" in desk.type("contact", "remove", "Ada Officer", code=2)
    assert all(b"0555 010 44" not in file.read_bytes() for file in desk.folder.glob("register.db*"))


def test_a_passphrase_is_set_given_and_refused(desk: Desk, keys: Keys) -> None:
    keys.new(ADAS)
    assert "asks for no passphrases" in desk.type("passphrase", "set", code=2)
    assert "now: wanted" in desk.type("passphrase", "rule", "wanted")
    assert "Ada Officer has a passphrase" in desk.type("passphrase", "set")
    assert "set" in desk.type("people").splitlines()[1]
    keys.new("")
    keys.own(ADAS)
    assert "None was typed" in desk.type("passphrase", "set", code=2)
    keys.own("a wrong one entirely")
    assert "not that of Ada Officer" in desk.type("list", code=2)
    keys.own("")
    keys.new(BOS)
    assert "was not shown by a passphrase" in desk.type("passphrase", "set", code=2)
    keys.own(ADAS)
    assert "Ada Officer has a passphrase" in desk.type("passphrase", "set")
    assert "not that of" in desk.type("list", code=2)


def test_required_an_inspection_says_that_a_stated_name_passes_nothing(desk: Desk, keys: Keys) -> None:
    desk.type("person", "Bo Second", "--competent", "all")
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("passphrase", "rule", "wanted")
    keys.new(ADAS)
    desk.type("passphrase", "set")
    keys.own(ADAS)
    assert "at least 2 people" in desk.type("passphrase", "rule", "required", code=2)
    keys.new(BOS)
    desk.type("passphrase", "set", "--for", "Bo Second")
    desk.type("passphrase", "rule", "required")
    keys.own("")
    said = run_together(desk.type("inspect", "SH-1", *GOOD))
    assert "none was given here for: Ada Officer" in said and "SH-1 Hold" in said
    keys.own(BOS)
    assert "SH-1 Fit" in run_together(desk.type("--officer", "Bo Second", "inspect", "SH-1", *GOOD))
    keys.own(ADAS)
    assert "at least 2 people" in desk.type("passphrase", "remove", code=2)
    desk.type("passphrase", "rule", "off")
    keys.own("")
    assert "Passphrase" not in desk.type("people")


def test_on_a_terminal_it_is_asked_for_without_being_shown(
    desk: Desk, keys: Keys, monkeypatch: pytest.MonkeyPatch
) -> None:
    typed: list[str] = []
    asked: list[str] = []

    def hidden(prompt: str) -> str:
        asked.append(prompt)
        return typed.pop(0)

    monkeypatch.setattr("click.termui.hidden_prompt_func", hidden)
    monkeypatch.setattr(sys.stdin, "isatty", lambda: True)
    monkeypatch.delenv("INSPECTOR_NEW_PASSPHRASE", raising=False)
    desk.type("passphrase", "rule", "wanted")
    typed += [ADAS, ADAS]
    said = desk.type("passphrase", "set")
    assert "has a passphrase" in said and ADAS not in said and "New passphrase of Ada Officer" in asked[0]
    typed += [""]
    assert "Ada Officer" in desk.type("people")
    typed += [BOS]
    assert "not that of" in desk.type("people", code=2)
    assert typed == [] and "Passphrase of Ada Officer" in asked[-1]


def both_required(desk: Desk, keys: Keys) -> None:
    """Ada, who gives hers at the desk, and Bo have a passphrase, and the club requires them."""
    desk.type("passphrase", "rule", "wanted")
    keys.new(ADAS)
    desk.type("passphrase", "set")
    keys.own(ADAS)
    keys.new(BOS)
    desk.type("passphrase", "set", "--for", "Bo Second")
    desk.type("passphrase", "rule", "required")


def test_where_they_are_required_every_deed_of_two_asks_the_second_one_too(desk: Desk, keys: Keys) -> None:
    desk.type("person", "Bo Second", "--competent", "all", "--since", "2020-01-01", "--paper", "certificate 12")
    for tag in ("SH-1", "SH-2"):
        desk.type("book", tag, *SHACKLE, *SIZES)
    desk.type("use", "SH-1")
    desk.type("incident", "report", "--what", "It opened.", "--place", "Long Sand", "--piece", "SH-2")
    desk.type("recall", "enter", "--maker-mark", "Kelpline", "--kind", "bow_shackle", "--why", "Pins may snap.")
    incident, recall = (desk.type(one, "list").splitlines()[1].split()[0] for one in ("incident", "recall"))
    entry = next(
        re.findall(r"[0-9a-f]{6}", line)[-1] for line in desk.type("show", "SH-1").splitlines() if "Use" in line
    )
    both_required(desk, keys)
    two = ("--second", "Bo Second", "--why", "both looked at it")
    deeds = [
        ("strike", "SH-1", entry, *two),
        ("incident", "release", incident, "SH-2", *two),
        ("recall", "withdraw", recall, *two),
        ("label", "SH-1", "--rating", "9.5 t", "--basis", "wll", "--stated-on", "piece", *two),
        ("owner", "SH-1", "Cy Third", *two),
        ("competence", "give", "Ada Officer", "rope", "--until", "2989-01-01", *two),
        ("competence", "renew", "Ada Officer", "rope", "--until", "2990-01-01", *two),
    ]
    for words in deeds:
        keys.second("")
        said = run_together(desk.type(*words, code=2))
        assert "assphrase of the second name" in said and "Bo Second has not given one" in said, words
        keys.second(ADAS)
        assert "It is not that of Bo Second. Let Bo Second type it again." in run_together(desk.type(*words, code=2))
        keys.second(BOS)
        desk.type(*words)


def test_one_s_own_gear_is_passed_by_two_who_both_gave_theirs(desk: Desk, keys: Keys) -> None:
    desk.type("person", "Bo Second", "--competent", "all")
    desk.type("book", "SH-1", *SHACKLE, *SIZES, "--owner", "Ada Officer")
    both_required(desk, keys)
    own = ("inspect", "SH-1", *GOOD, "--second", "Bo Second")
    said = run_together(desk.type(*own))
    assert "SH-1 Hold" in said and "none was given here for: Bo Second" in said
    keys.second(ADAS)
    assert "It is not that of Bo Second." in run_together(desk.type(*own, code=2))
    keys.second(BOS)
    said = run_together(desk.type(*own))
    assert "SH-1 Fit" in said and "none was given" not in said


def test_on_a_terminal_the_second_one_is_asked_after_the_first_and_only_where_required(
    desk: Desk, keys: Keys, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []
    typed = {"Ada Officer": ADAS, "Bo Second": BOS}

    def hidden(prompt: str) -> str:
        asked.append(next(name for name in typed if f"Passphrase of {name}" in prompt))
        return typed[asked[-1]]

    desk.type("person", "Bo Second", "--competent", "all")
    both_required(desk, keys)
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    keys.own("")
    monkeypatch.setattr("click.termui.hidden_prompt_func", hidden)
    monkeypatch.setattr(sys.stdin, "isatty", lambda: True)
    label = ["label", "SH-1", "--rating", "9.5 t", "--basis", "wll", "--stated-on", "piece", "--why", "read anew"]
    said = desk.type(*label, "--second", "Bo Second")
    assert asked == ["Ada Officer", "Bo Second"] and BOS not in said
    desk.type("passphrase", "rule", "wanted")
    asked.clear()
    desk.type("owner", "SH-1", "Cy Third", "--second", "Bo Second", "--why", "sold")
    assert asked == ["Ada Officer"]
