"""Every other language is complete: each text said, with its placeholders, and looked up as it was said."""

from gettext import GNUTranslations
from pathlib import Path

import polib
import pytest

from inspector.language import later
from tests.language.catalogue import ROOT, Forms, entries, fields, place_of, said_in

LANGUAGES = sorted(one.name for one in (ROOT / "inspector" / "locale").iterdir())
_HOW = "run: python tests/language/catalogue.py"


@pytest.fixture(scope="module")
def now() -> list[polib.POEntry]:
    """Every text there is."""
    return entries()


def test_there_is_one_more_language() -> None:
    assert "de" in LANGUAGES


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_text_is_said_and_none_is_left_over(language: str, now: list[polib.POEntry]) -> None:
    said = said_in(language)
    missing = [one.msgid for one in now if not said.get(one.msgid)]
    assert not missing, f"{len(missing)} texts are not said, {_HOW} {language}: {missing[:5]}"
    assert set(said) == {one.msgid for one in now}, f"some are gone from the source, {_HOW} {language}"


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_text_has_the_placeholders_of_the_english_one(language: str, now: list[polib.POEntry]) -> None:
    said = said_in(language)
    assert [fault for one in now for fault in faults_of(one, said.get(one.msgid, ()))] == []


def faults_of(one: polib.POEntry, forms: Forms) -> list[str]:
    """What is wrong with what is said of a text: its placeholders, its ends, its lines, the commands in it."""
    wanted = [one.msgid, one.msgid_plural] if one.msgid_plural else [one.msgid]
    return [
        f"{english!r}: {text!r}"
        for english, text in zip(wanted, forms, strict=True)
        if _shape(english, counts=bool(one.msgid_plural)) != _shape(text, counts=bool(one.msgid_plural))
    ]


def _shape(text: str, *, counts: bool) -> tuple[object, ...]:
    holes = fields(text) - ({"count"} if counts else set())
    ends = (len(text) - len(text.lstrip()), len(text) - len(text.rstrip()))
    return sorted(holes), ends, text.count("\n"), text.count("`")


def test_a_lost_placeholder_would_be_found() -> None:
    one = polib.POEntry(msgid=later("until {day}"))
    assert faults_of(one, ("bis {day}",)) == []
    assert faults_of(one, ("bis {tag}",)) and faults_of(one, ("bis {day} ",))


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_is_looked_up_is_what_was_said(language: str, tmp_path: Path) -> None:
    place = place_of(language)
    made = tmp_path / "made.mo"
    polib.pofile(str(place)).save_as_mofile(str(made))
    assert place.with_suffix(".mo").read_bytes() == made.read_bytes(), f"{_HOW} {language}"
    with place.with_suffix(".mo").open("rb") as stream:
        assert GNUTranslations(stream).info()["language"] == language
