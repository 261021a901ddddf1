"""In which order a line's signs stand on paper: right-to-left words turned round, figures and Latin words in them not.

The program's own sentences run to the right, whoever is named in them: a date, a figure or a second name that follows a
right-to-left name keeps its place after it. Only a line that is wholly in such a script, with tags and figures within,
reads to the left.
"""

from collections.abc import Iterator
from itertools import groupby
from unicodedata import bidirectional

from bidi import algorithm
from msgspec import Struct

_LEFTWARDS = frozenset({"R", "AL"})
_STRONG = _LEFTWARDS | {"L"}
_UNSEEN = "BN"  # joiners: the order takes no note of them
_MARK = "\N{COMBINING GRAVE ACCENT}"


class Stretch(Struct, frozen=True):
    """Signs in the order of reading that go one way."""

    text: str
    leftwards: bool


def reads_leftwards(text: str) -> bool:
    """Whether a line begins and ends in a script that runs to the left, other words in it in capitals as tags are."""
    letters = [(bidirectional(sign), sign.islower()) for sign in text if bidirectional(sign) in _STRONG]
    if not letters or any(way == "L" and small for way, small in letters):
        return False
    return letters[0][0] in _LEFTWARDS and letters[-1][0] in _LEFTWARDS


def in_order(text: str) -> tuple[Stretch, ...]:
    """The stretches of a line as they stand from left to right."""
    if not any(bidirectional(sign) in _LEFTWARDS for sign in text):
        return (Stretch(text, False),)
    if reads_leftwards(text):
        return tuple(_turned(text))
    return tuple(_rightwards(text))


def _rightwards(text: str) -> Iterator[Stretch]:
    """A line to the right, its leftward words turned round each for itself."""
    start = 0
    for first, last in _leftward_words(text):
        if first > start:
            yield Stretch(text[start:first], False)
        yield from _turned(text[first:last])
        start = last
    if start < len(text):
        yield Stretch(text[start:], False)


def _leftward_words(text: str) -> list[tuple[int, int]]:
    """From where to where leftward words reach, with what stands between them; a rightward letter parts them."""
    found: list[tuple[int, int]] = []
    parted = True
    for at, sign in enumerate(text):
        way = bidirectional(sign)
        if way in _LEFTWARDS:
            found[len(found) - (not parted) :] = [(at if parted else found[-1][0], at + 1)]
            parted = False
        elif way in {"NSM", _UNSEEN} and found and found[-1][1] == at:
            found[-1] = (found[-1][0], at + 1)
        elif way == "L":
            parted = True
    return found


def _turned(text: str) -> Iterator[Stretch]:
    """A text that reads to the left, as it stands from left to right."""
    levels = zip(text, _levels(text), strict=True)
    parts = [(level, "".join(sign for sign, _ in some)) for level, some in groupby(levels, key=lambda one: one[1])]
    for level, part in reversed(parts):
        yield Stretch(part, level % 2 == 1)


def _levels(text: str) -> list[int]:
    """The level of each sign by the Unicode algorithm: odd to the left, even to the right."""
    seen = "".join(_MARK if bidirectional(sign) == _UNSEEN else sign for sign in text)
    storage = algorithm.get_empty_storage()
    storage["base_level"], storage["base_dir"] = 1, "R"
    algorithm.get_embedding_levels(seen, storage)
    algorithm.explicit_embed_and_overrides(storage)
    algorithm.resolve_weak_types(storage)
    algorithm.resolve_neutral_types(storage, False)
    algorithm.resolve_implicit_levels(storage, False)
    return [sign["level"] for sign in storage["chars"]]
