"""What is written in the source: refusals and the window's parts get no text but through the look-up."""

import ast
import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

from tests.each import each
from tests.language.extract import SOURCE, messages_in, named

_SPEAKERS = frozenset({
    "said", "short", "button", "Refused", "Fact", "Done", "heading", "paragraph", "echo", "QLabel", "QAction",
    "QPushButton", "setText", "setToolTip", "setAccessibleName", "setAccessibleDescription", "setPlaceholderText",
    "setWindowTitle", "setStatusTip", "addAction", "addMenu", "addItem", "Line", "Prose", "Number", "Count", "Day",
    "OneOf", "SomeOf", "Tick", "Tags", "Secret", "Files", "Part", "Text",
})  # fmt: skip
_NO_TEXT = frozenset({"key", "stands", "dimension", "names", "nl", "err", "anchor", "ink", "fg"})  # keywords, not shown
_FIRST_ALONE = frozenset({"button", "heading"})  # what follows is the name of a look
_KEYS = {  # by which a refusal is told at its field; they stand in a file of a rig, or are told at the field alone
    "joint", "hardest", "jerked", "missed", "apart", "pulls", "none",
}  # fmt: skip
_OTHER_SAID = "given.said"  # what was given at a field of this key; speaks of nothing
_FILES = sorted(SOURCE.rglob("*.py"))


def _spoken_bare(call: ast.Call) -> Iterator[ast.expr]:
    """The arguments of a call that hold words of the source."""
    if named(call.func) in _FIRST_ALONE:
        yield from (one for one in call.args[:1] if _is_bare(one))
        return
    is_refusal = named(call.func) == "Refused"
    given = [*call.args[is_refusal:], *(one.value for one in call.keywords if one.arg not in _NO_TEXT)]
    if is_refusal and _is_bare(call.args[0]) and not _is_key(call.args[0]):
        yield call.args[0]
    yield from (one for one in given if _is_bare(one))


def _is_key(one: ast.expr) -> bool:
    texts = [part.value for part in ast.walk(one) if isinstance(part, ast.Constant)]
    return set(" ".join(map(str, texts)).split()) <= _KEYS


def _is_bare(one: ast.expr) -> bool:
    if isinstance(one, ast.Constant):
        return isinstance(one.value, str) and _has_word(one.value)
    if isinstance(one, ast.JoinedStr):
        return any(isinstance(part, ast.Constant) and _has_word(str(part.value)) for part in one.values)
    if isinstance(one, ast.IfExp):
        return _is_bare(one.body) or _is_bare(one.orelse)
    return isinstance(one, ast.BinOp) and (_is_bare(one.left) or _is_bare(one.right))


def _has_word(text: str) -> bool:
    """Whether it holds a word; names of fields in a file (conditions.layers) and of algorithms (SHA-256) are none."""
    plain = [word for word in text.split() if not re.search(r"\w[._]|\d", word)]
    return any(sum(sign.isalpha() for sign in word) > 1 for word in plain)


@lru_cache(maxsize=1)
def _calls(source: str) -> tuple[ast.Call, ...]:
    """Every call of one file, for both questions that are asked of it."""
    return tuple(one for one in ast.walk(ast.parse(source)) if isinstance(one, ast.Call))


def bare_texts(source: str) -> list[str]:
    """Each bare text given to something that speaks, with its line."""
    calls = [one for one in _calls(source) if named(one.func) in _SPEAKERS]
    speak = [one for one in calls if ast.unparse(one.func) != _OTHER_SAID]
    return [f"{one.lineno}: {named(one.func)}({ast.unparse(text)})" for one in speak for text in _spoken_bare(one)]


def unlisted(source: str) -> list[str]:
    """Each call of the look-up whose text is not written there, with its line: no list of all texts can have it."""
    calls = [one for one in _calls(source) if named(one.func) == "tr_n"]
    return [f"{one.lineno}: {ast.unparse(one)}" for one in calls if not list(messages_in(ast.unparse(one), ""))]


@each("path", _FILES, ids=[str(one.relative_to(SOURCE)) for one in _FILES])
def test_nothing_that_speaks_is_given_a_bare_text(path: Path) -> None:
    source = path.read_text(encoding="utf-8")

    faults = [*bare_texts(source), *unlisted(source)]
    assert not faults, ", ".join(faults)


def test_a_bare_text_would_be_found() -> None:
    source = 'raise Refused(tr("day"), f"{day} is no day.", tr("Try again."))\nsaid("Save" if new else tr("Change"))'

    assert [one.partition("(")[0] for one in bare_texts(source)] == ["1: Refused", "2: said"]
    assert bare_texts('said(tr("Save"))\nsaid(f"{one} · {other}")\nLine(key="place", label=tr("Place"))') == []
    assert unlisted("tr_n(*said, 3)") and not unlisted('tr_n("a piece", "{count} pieces", 3)')
