"""Lists every text that goes through the look-up.

Texts of the source are read from the calls of `tr`, `tr_n` and `later`; those of the rulebook's files, the help of the
commands and what the sums say of themselves are asked for by the program itself as it reads them.
"""

import ast
from collections.abc import Callable, Iterator
from gettext import NullTranslations
from pathlib import Path

import click
from msgspec import Struct

from inspector.cli.commands import main as commands
from inspector.cli.spoken import spoken
from inspector.gear.kind import kind_word
from inspector.language import use_catalogue
from inspector.rulebook.load import packaged
from inspector.rulebook.sum_texts import text_of
from inspector.rulebook.sums import functions

SOURCE = Path(__file__).parents[2] / "inspector"
_FIRST = {"tr": 1, "later": 1, "tr_n": 2}
_OF_CLICK = (
    "Usage:", "Options", "Commands", "Positional arguments", "Show this message and exit.", "Error: {message}",
    "Try '{command} {option}' for help.", "Missing argument", "Missing option", "Missing command.",
    "Missing parameter", "No such command {name!r}.", "No such option {name!r}.", "Invalid value: {message}",
    "Invalid value for {param_hint}: {message}", "Aborted!", "required", "default: {default}",
    "Option {name!r} does not take a value.",
)  # fmt: skip


class Message(Struct, frozen=True):
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
        "commands": lambda: [one.help for one in every_command(spoken(commands))],
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


def every_command(command: click.Command) -> Iterator[click.Command]:
    """A command and all below it, each read from its module and put into the language that is spoken now."""
    yield command
    if isinstance(command, click.Group):
        context = click.Context(command)
        for name in command.list_commands(context):
            one = command.get_command(context, name)
            assert one is not None
            yield from every_command(one)


def _read_the_rulebook() -> None:
    book = packaged()
    assert book.rules  # the law speaks when it is read
    for kind in book.kinds.values():
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
