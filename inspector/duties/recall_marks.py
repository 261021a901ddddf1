"""Marks and serials as they are stamped, held against what a notice says: whatever can be misread is no difference."""

import re
import unicodedata
from functools import lru_cache

from msgspec import Struct

_UNREADABLE_SIGNS = set("?*_#…\ufffd")
_UNREADABLE_WORDS = {
    "unreadable", "illegible", "unknown", "none", "worn", "wornoff", "missing", "lost", "gone", "na", "notreadable",
    "unleserlich", "unbekannt", "keine", "fehlt",
}  # fmt: skip
_MISREAD = str.maketrans({"o": "0", "q": "0", "d": "0", "i": "1", "l": "1", "z": "2", "s": "5", "g": "6", "b": "8"})
_SERIAL = re.compile(r"(.*?)(\d+)(\D*)")
_SHORT = 4  # letters: of a mark no longer than this, one letter is much


class Serial(Struct, frozen=True):
    """A serial in its parts, without blanks and stops. number: its last run of figures; digits: how many there are."""

    before: str
    number: int
    digits: int
    after: str


@lru_cache(maxsize=1024)  # what a notice says is held against every piece
def plain(text: str) -> str:
    """Letters and figures alone, without case."""
    return "".join(sign for sign in unicodedata.normalize("NFKC", text).casefold() if sign.isalnum())


def is_readable(text: str) -> bool:
    """Whether something stands there and all of it could be read."""
    letters = plain(text)
    return bool(letters) and letters not in _UNREADABLE_WORDS and not _UNREADABLE_SIGNS & set(text)


def is_same(one: str, other: str) -> bool:
    """Whether two marks differ in nothing but case, blanks and stops."""
    return plain(one) == plain(other)


def may_be_same(one: str, other: str) -> bool:
    """Whether one mark may be the other, misread, misspelt or shortened."""
    first, second = plain(one), plain(other)
    if as_misread(first) == as_misread(second) or first in second or second in first:
        return True
    if plain(_initials(one)) == second or plain(_initials(other)) == first:
        return True
    most = 1 if min(len(first), len(second)) <= _SHORT else 2
    return distance(first, second) <= most


def _initials(text: str) -> str:
    words = re.findall(r"\w+", text)
    return "".join(word[0] for word in words) if len(words) > 1 else text


def as_misread(text: str) -> str:
    """Letters that are taken for figures, as those figures."""
    return text.translate(_MISREAD)


def distance(one: str, other: str) -> int:
    """How many signs must be put in, taken out, changed or swapped with their neighbour to make one the other."""
    rows = [list(range(len(other) + 1))]
    for at, sign in enumerate(one, start=1):
        row = [at]
        for to, against in enumerate(other, start=1):
            best = min(rows[-1][to] + 1, row[-1] + 1, rows[-1][to - 1] + (sign != against))
            if at > 1 and to > 1 and sign == other[to - 2] and one[at - 2] == against:
                best = min(best, rows[-2][to - 2] + 1)
            row.append(best)
        rows.append(row)
    return rows[-1][-1]


@lru_cache(maxsize=1024)
def parts_of(serial: str) -> Serial | None:
    """A serial in its parts; None where no figure stands in it."""
    found = _SERIAL.fullmatch(plain(serial))
    return None if found is None else _parts(*found.groups())


def _parts(before: str, figures: str, after: str) -> Serial:
    return Serial(before, int(figures), len(figures), after)
