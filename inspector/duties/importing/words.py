"""The words of the trade in headings and cells, and how two spellings of one are told to be the same."""

import re
import unicodedata
from collections.abc import Mapping
from functools import cache
from importlib.resources import files

import tomli

_NO_WORD = re.compile(r"[^\w²³ø+]+")
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
    said = plain(text)
    meant = names.get(said) or table("kinds").get(said, "")
    return meant or names.get(said.removesuffix("s")) or table("kinds").get(said.removesuffix("s"), "")
