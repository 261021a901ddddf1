"""Keeps the catalogues of other languages: all texts there are now, none that is gone, and the form that is looked up.

python tests/language/catalogue.py de

writes inspector/locale/de/LC_MESSAGES/inspector.po and, from it, inspector.mo, and lists the texts that nobody has
put into that language yet. A language that is not there yet is begun.
"""

import sys
from pathlib import Path
from string import Formatter

import polib

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

# ruff: noqa: E402 - a script that is run by itself finds the program first
from tests.language.extract import Message, asked_for, of_source

_HEAD = "The texts of the recovery gear register in another language."
Forms = tuple[str, ...]


def place_of(language: str) -> Path:
    """The catalogue that translators read and write."""
    return ROOT / "inspector" / "locale" / language / "LC_MESSAGES" / "inspector.po"


def said_in(language: str) -> dict[str, Forms]:
    """What stands in a catalogue, by the English text: one form, or two where a text counts. None if not begun."""
    place = place_of(language)
    kept = polib.pofile(str(place)) if place.exists() else polib.POFile()
    return {one.msgid: _forms(one) for one in kept if all(_forms(one))}


def entries() -> list[polib.POEntry]:
    """Every text there is now, said in no language yet, in the order of the rooms it stands in."""
    found: dict[str, list[Message]] = {}
    for one in (*of_source(), *asked_for()):
        found.setdefault(one.text, []).append(one)
    made = [_entry(text, same) for text, same in found.items()]
    return sorted(made, key=lambda one: (one.occurrences[0], one.msgid))


def catalogue(language: str, said: dict[str, Forms]) -> polib.POFile:
    """All texts of now with what is said of them."""
    made = polib.POFile(wrapwidth=110)
    made.header = _HEAD
    made.metadata = {
        "Content-Type": "text/plain; charset=UTF-8",
        "Content-Transfer-Encoding": "8bit",
        "Language": language,
        "Plural-Forms": "nplurals=2; plural=(n != 1);",
    }
    for one in entries():
        forms = said.get(one.msgid, ())
        if one.msgid_plural:
            one.msgstr_plural = dict(enumerate(forms or ("", "")))
        else:
            one.msgstr = forms[0] if forms else ""
        made.append(one)
    return made


def fields(text: str) -> set[str]:
    """The names of the placeholders of a text."""
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}


def main(language: str) -> int:
    """Bring a catalogue up to date; 1 while texts are missing."""
    said = said_in(language)
    made, place = catalogue(language, said), place_of(language)
    place.parent.mkdir(parents=True, exist_ok=True)
    made.save(str(place))
    made.save_as_mofile(str(place.with_suffix(".mo")))
    missing = [one for one in made if not all(_forms(one))]
    for one in missing:
        print(f"{one.occurrences[0][0]}: {one.msgid!r}")
    print(f"{len(made)} texts, {len(missing)} of them missing; {len(set(said) - {one.msgid for one in made})} dropped")
    return 1 if missing else 0


def _entry(text: str, same: list[Message]) -> polib.POEntry:
    many = next((one.many for one in same if one.many), "")
    places = dict.fromkeys(one.where.partition(":")[0] for one in same)
    flags = ["python-brace-format"] if fields(text) and same[0].where != "click" else []
    return polib.POEntry(msgid=text, msgid_plural=many, occurrences=[(one, "") for one in places], flags=flags)


def _forms(one: polib.POEntry) -> Forms:
    return tuple(one.msgstr_plural.values()) if one.msgid_plural else (one.msgstr,)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
