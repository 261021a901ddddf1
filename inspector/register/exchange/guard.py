"""The guard of a CSV cell: a text that a spreadsheet would take for a formula gets an apostrophe before it.

Formula: `'` stands before a text that begins, after any apostrophes, with = + - @, a tab, a line end, or one of the
full-width signs. Taking it off again gives every text back, whatever it was; numbers are never guarded.
"""

import re

_SIGNS = r"=+\-@\t\r\n＝＋－＠"
_HARMFUL = re.compile(rf"'*[{_SIGNS}]")
_GUARDED = re.compile(rf"'+[{_SIGNS}]")


def guarded(text: str) -> str:
    """The text, made harmless for a spreadsheet."""
    return f"'{text}" if _HARMFUL.match(text) else text


def unguarded(text: str) -> str:
    """The text as it was before `guarded`."""
    return text[1:] if _GUARDED.match(text) else text


class Cleaned(dict[str, str]):
    """The texts of a file's cells, `unguarded` and without space at their ends: what comes again is cleaned once."""

    def __missing__(self, text: str) -> str:
        clean = self[text] = (unguarded(text) if text.startswith("'") else text).strip()
        return clean
