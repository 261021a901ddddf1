"""Every deed that the program enters in the ledger can be read back as a sentence."""

import ast

import pytest

from inspector.duties.tell_ledger import SENTENCES
from tests.each import each
from tests.house.deeds import Entered, entered, entered_in

HOW = """
The deed “{deed}”, entered in {place}, has no sentence. Write one in the module inspector/duties/ledger_*.py that it
belongs to, and enter it in SENTENCES there (a new module also in SENTENCES of tell_ledger.py):

    def _done(line: Line) -> str:
        facts = line.shape("as", NewSomething)
        return tr("{{who}} did it to {{tag}}.", who=line.who, tag=line.text("tag"))

    SENTENCES = {{..., "{deed}": _done}}
"""


@each("one", entered(), ids=lambda one: one.place)
def test_every_deed_has_its_sentence(one: Entered) -> None:
    assert one.names, f"{one.place}: the deed's name cannot be read here; write it as a plain text"
    missing = sorted(one.names - set(SENTENCES))
    assert not missing, "".join(HOW.format(deed=deed, place=one.place) for deed in missing)


def test_the_search_finds_the_deeds_that_are_named_by_a_variable() -> None:
    names = {name for one in entered() for name in one.names}
    assert {"fit part", "take off part", "use", "expose", "doubt", "answer", "book in", "strike"} <= names


@pytest.mark.parametrize(
    ("source", "names"),
    [
        ('page.enter("sell", by=b, at=a, facts=f)', {"sell"}),
        ('page.enter("sell" if x else "give", by=b, at=a, facts=f)', {"sell", "give"}),
        ('deed = {1: "sell", 2: "give"}[x]\n    page.enter(deed, by=b, at=a, facts=f)', {"sell", "give"}),
        ("page.enter(x.name, by=b, at=a, facts=f)", set()),
    ],
)
def test_a_name_is_read_where_it_stands_and_told_missing_where_it_cannot_be(source: str, names: set[str]) -> None:
    (found,) = entered_in(ast.parse(f"def keep(page):\n    {source}"), "here")
    assert found.names == names
