"""On which line of a TOML text each table and key stands; the library that reads TOML does not tell.

It is asked only of texts that the library has read without a fault, and it steps over strings and comments by the
same rules, so a key inside a text or a comment is never taken for one.
"""

import re

from msgspec import Struct, field

_HEADER = re.compile(r"\[\[?[ \t]*((?:\"[^\"\n]*\"|'[^'\n]*'|[^\]\"'\n])+?)[ \t]*\]\]?")
_KEY = re.compile(r"[ \t]*((?:\"(?:\\.|[^\"\\\n])*\"|'[^'\n]*'|[^=\"'\n#])+?)[ \t]*=")
_QUOTES = ('"""', "'''", '"', "'")


class TableLines(Struct):
    """One table: its name ("" for the head of the file), whether it is one of an array, its own and its keys' lines."""

    name: str
    line: int
    is_one_of_many: bool = False
    keys: dict[str, int] = field(default_factory=dict)

    def line_of(self, key: str) -> int:
        """The line of a key; that of the table where the key is not written out."""
        return self.keys.get(key, self.line)


def table_lines(text: str) -> list[TableLines]:
    """Every table of the text in order, the head first."""
    tables = [TableLines("", 1)]
    at, end = 0, len(text)
    while at < end:
        sign = text[at]
        if sign in " \t\r\n":
            at += 1
        elif sign == "#":
            at = _line_end(text, at)
        elif sign == "[":
            at = _header(text, at, tables)
        else:
            at = _pair(text, at, tables[-1])
    return tables


def nth(tables: list[TableLines], name: str, number: int) -> TableLines | None:
    """The n-th table of an array, counted from 0; None where it is written in another way."""
    found = [one for one in tables if one.name == name and one.is_one_of_many]
    return found[number] if number < len(found) else None


def _line_of(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1


def _line_end(text: str, at: int) -> int:
    end = text.find("\n", at)
    return len(text) if end < 0 else end


def _header(text: str, at: int, tables: list[TableLines]) -> int:
    found = _HEADER.match(text, at)
    if found is None:
        return _line_end(text, at)
    tables.append(TableLines(_bare(found[1]), _line_of(text, at), text.startswith("[[", at)))
    return _line_end(text, found.end())


def _pair(text: str, at: int, table: TableLines) -> int:
    found = _KEY.match(text, at)
    if found is None:
        return _line_end(text, at)
    table.keys.setdefault(_bare(found[1].split(".")[0]), _line_of(text, at))
    return _value_end(text, found.end())


def _bare(name: str) -> str:
    return name.strip().strip("\"'")


def _value_end(text: str, at: int) -> int:
    """Where a value ends: the end of its line, unless brackets or a string run on."""
    depth = 0
    while at < len(text):
        sign = text[at]
        if quote := next((one for one in _QUOTES if text.startswith(one, at)), None):
            at = _string_end(text, at, quote)
            continue
        if sign == "#":
            at = _line_end(text, at)
            continue
        if sign == "\n" and depth <= 0:
            return at
        depth += (sign in "[{") - (sign in "]}")
        at += 1
    return at


def _string_end(text: str, at: int, quote: str) -> int:
    at += len(quote)
    while at < len(text):
        if text[at] == "\\" and quote[0] == '"':
            at += 2
        elif text.startswith(quote, at):
            at += len(quote)
            while len(quote) == 3 and text.startswith(quote[0], at):  # up to two quotes may stand before the closing
                at += 1
            return at
        else:
            at += 1
    return at
