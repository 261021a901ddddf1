"""The words of the trade in headings and cells, and how two spellings of one are told to be the same."""

import re
import unicodedata
from collections.abc import Mapping
from difflib import get_close_matches
from functools import cache
from importlib.resources import files

import tomli

_NO_WORD = re.compile(r"[^\w²³ø+]+")
_SIZE = re.compile(r"\d\w*|mm|cm|inch|zoll")
_LEAST_SIGNS, _NEARLY, _MOST_NEAR = 4, 0.75, 5
_ASCII = "".join(sign.lower() if sign.isalnum() or sign == "+" else " " for sign in map(chr, range(128)))


def plain(text: str) -> str:
    """A text without what two spellings differ in: capitals, signs and spacing."""
    if text.isascii():
        return " ".join(text.translate(_ASCII).split())
    small = unicodedata.normalize("NFC", text).casefold().replace("ß", "ss").replace("⌀", "ø")
    return " ".join(_NO_WORD.sub(" ", small.replace("_", " ")).split())


@cache
def table(name: str) -> Mapping[str, str]:
    """By each plain word of a table what it means. name: fields, sizes, bases, kinds, pasts, fixings or months."""
    found: dict[str, str] = {}
    for meaning, words in _words()[name].items():
        for word in (*words, meaning):
            found.setdefault(plain(word), meaning)
    return found


@cache
def _words() -> Mapping[str, Mapping[str, list[str]]]:
    return tomli.loads(files(__package__).joinpath("words.toml").read_text("utf-8"))


def kind_meant(text: str, names: Mapping[str, str]) -> str:
    """The key of the kind that a cell names; empty where it names none, or more than one. names: own names, by word."""
    said, known = plain(text), {**table("kinds"), **names}
    without = " ".join(one for one in said.split() if not _SIZE.fullmatch(one))  # "hitch receiver 50mm"
    forms = (said, said.removesuffix("s"), without, without.removesuffix("s"))
    return next((known[one] for one in forms if one in known), "")


def kinds_near(text: str, names: Mapping[str, str]) -> tuple[str, ...]:
    """The keys of the kinds whose names have words of the text, or nearly so; those with most of them first."""
    known: dict[str, set[str]] = {}
    for name, key in (*table("kinds").items(), *names.items()):
        known.setdefault(key, set()).update(_long_words(name))
    every = sorted(set().union(*known.values()))
    near = [found for one in _long_words(plain(text)) for found in get_close_matches(one, every, 1, _NEARLY)]
    ranked = sorted(
        (-sum(one in words for one in near), near[-1] not in words, key)
        for key, words in known.items()
        if words.intersection(near)
    )
    return tuple(key for *_, key in ranked[:_MOST_NEAR])


def _long_words(name: str) -> list[str]:
    return [word for word in name.split() if len(word) >= _LEAST_SIGNS]
