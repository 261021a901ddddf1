"""Each sort of document has a letter of its own, so that no two papers bear the same number."""

import ast

from tests.house.deeds import HERE


def letters() -> list[tuple[str, str]]:
    """The letter and the kind of every number that a duty gives."""
    found = []
    for path in sorted((HERE / "inspector" / "duties").rglob("*.py")):
        module = ast.parse(path.read_text("utf-8"))
        for call in ast.walk(module):
            if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id == "next_number":
                letter, kind = call.args[1], call.args[2]
                assert isinstance(letter, ast.Constant) and isinstance(kind, ast.Name), path.name
                found.append((str(letter.value), kind.id if kind.id != "_KIND" else path.stem))
    return found


def test_no_two_sorts_share_a_letter() -> None:
    found = letters()
    assert len(found) > 12
    kinds_of = {letter: {kind for one, kind in found if one == letter} for letter, _ in found}
    assert {letter: kinds for letter, kinds in kinds_of.items() if len(kinds) > 1} == {}
