"""A language nobody speaks: every text is bracketed, longer by a third and written in letters with marks.

A text that came through the look-up has no plain letter left but those of what was put into its placeholders. So a
plain word anywhere in what is shown is either data or a text that was missed.
"""

import re
from gettext import NullTranslations

_PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
_MARKED = "äƀçđëƒğħïĵķŀḿñöþʠŕšŧüṽŵẋÿžÄƁÇĐËƑĞĦÏĴĶĿḾÑÖÞɊŔŠŦÜṼŴẊŸŽ"
_MARKS = str.maketrans(_PLAIN, _MARKED)
_PLACEHOLDER = re.compile(r"(\{[^{}]*\}|%\([a-z]+\)s)")
_LONGER = 0.3


class Pseudo(NullTranslations):
    """The catalogue of that language."""

    def gettext(self, message: str) -> str:
        """The text, marked."""
        return marked(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """The form for one or many, marked."""
        return marked(msgid1 if n == 1 else msgid2)


def marked(text: str) -> str:
    """The text in brackets, its letters marked and a third longer; placeholders and line ends stay."""
    head, tail = text[: len(text) - len(text.lstrip())], text[len(text.rstrip()) :]
    parts = _PLACEHOLDER.split(text.strip())
    said = "".join(one if number % 2 else one.translate(_MARKS) for number, one in enumerate(parts))
    return f"{head}[{said}{_padding(len(text))}]{tail}"


def _padding(length: int) -> str:
    """A third more of letters, in words of five as a text that may wrap has them."""
    more = "ë" * max(1, round(length * _LONGER))
    words = [more[at : at + 5] for at in range(0, len(more), 5)]
    return " " + " ".join(words)
