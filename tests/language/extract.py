"""Lists every text that goes through the look-up, as a template for a catalogue in another language (.pot).

python tests/language/extract.py inspector.pot

Texts of the source are read from the calls of `tr`, `tr_n` and `later`; those of the rulebook's files, the help of the
commands and what the sums say of themselves are asked for by the program itself as it reads them.
"""

import ast
import re
import sys
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from gettext import NullTranslations
from pathlib import Path

SOURCE = Path(__file__).parents[2] / "inspector"
if __name__ == "__main__":
    sys.path.insert(0, str(SOURCE.parent))

# ruff: noqa: E402 - a script that is run by itself finds the program first
from inspector.cli.commands import main as commands
from inspector.cli.spoken import spoken
from inspector.gear.kind import kind_word
from inspector.language import use_catalogue
from inspector.rulebook.load import packaged
from inspector.rulebook.sum_texts import text_of
from inspector.rulebook.sums import functions

_FIRST = {"tr": 1, "later": 1, "tr_n": 2}
_OF_CLICK = (
    "Usage:", "Options", "Commands", "Positional arguments", "Show this message and exit.", "Error: {message}",
    "Try '{command} {option}' for help.", "Missing argument", "Missing option", "Missing command.",
    "Missing parameter", "No such command {name!r}.", "No such option {name!r}.", "Invalid value: {message}",
    "Invalid value for {param_hint}: {message}", "Aborted!", "required", "default: {default}",
    "Option {name!r} does not take a value.",
)  # fmt: skip


@dataclass(frozen=True)
class Message:
    """A text, its form for many where it has one, and where it stands."""

    text: str
    many: str
    where: str


def named(called: ast.expr) -> str:
    """The last name of what is called."""
    return called.id if isinstance(called, ast.Name) else called.attr if isinstance(called, ast.Attribute) else ""


def messages_in(source: str, where: str) -> Iterator[Message]:
    """The texts of a module."""
    for call in ast.walk(ast.parse(source)):
        if isinstance(call, ast.Call) and (count := _FIRST.get(named(call.func), 0)):
            texts = [one.value for one in call.args[:count] if isinstance(one, ast.Constant)]
            if len(texts) == count and texts[0]:
                yield Message(str(texts[0]), str(texts[1]) if count > 1 else "", f"{where}:{call.lineno}")


def of_source() -> list[Message]:
    """The texts of every module, by file and line."""
    found: list[Message] = []
    for path in sorted(SOURCE.rglob("*.py")):
        found += messages_in(path.read_text(encoding="utf-8"), str(path.relative_to(SOURCE.parent)))
    return found


def asked_for() -> list[Message]:
    """What is looked up without standing in a call: the rulebook, the commands' help, the sums, click's own words."""
    rooms: dict[str, Callable[[], object]] = {
        "rulebook": _read_the_rulebook,
        "commands": lambda: spoken(commands),
        "sums": lambda: [text_of(one) for one in functions().values()],
    }
    found = [Message(text, "", "click") for text in _OF_CLICK]
    for where, ask in rooms.items():
        catalogue = _Asked()
        use_catalogue(catalogue)
        ask()
        found += [Message(text, "", where) for text in sorted(catalogue.asked)]
    use_catalogue(NullTranslations())
    return found


def _read_the_rulebook() -> None:
    for kind in packaged().kinds.values():
        for word in (kind.material, kind.steel_grade, *(point for one in kind.measures for point in one.points)):
            kind_word(word)


class _Asked(NullTranslations):
    """Notes what is asked and says it in English."""

    def __init__(self) -> None:
        super().__init__()
        self.asked: set[str] = set()

    def gettext(self, message: str) -> str:
        self.asked.add(message)
        return message


def template(messages: Iterable[Message]) -> str:
    """The messages in the form that translators' tools read; each text once, with all its places."""
    places: dict[str, list[Message]] = {}
    for one in messages:
        places.setdefault(one.text, []).append(one)
    plural = "Content-Type: text/plain; charset=UTF-8\\nPlural-Forms: nplurals=2; plural=(n != 1);\\n"
    return "\n".join([f'msgid ""\nmsgstr "{plural}"\n', *(_entry(text, same) for text, same in places.items())])


def _entry(text: str, same: list[Message]) -> str:
    lines = [f"#: {' '.join(dict.fromkeys(one.where for one in same))}"]
    if re.search(r"\{\w", text):
        lines.append("#, python-brace-format")
    many = next((one.many for one in same if one.many), "")
    plural = [f"msgid_plural {_quoted(many)}", 'msgstr[0] ""', 'msgstr[1] ""'] if many else ['msgstr ""']
    return "\n".join([*lines, f"msgid {_quoted(text)}", *plural, ""])


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n") + '"'


def main(place: str) -> int:
    """Write the template and tell how much there is to translate."""
    messages = [*of_source(), *asked_for()]
    Path(place).write_text(template(messages), encoding="utf-8")
    for room in ("inspector", "rulebook", "commands", "sums", "click", ""):
        once = {one.text: one.many for one in messages if one.where.startswith(room)}
        words = sum(len(f"{text} {many}".split()) for text, many in once.items())
        print(f"{room or 'in all':<10} {len(once):5} texts, {words:6} words")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
