"""No text of a command is missed: the help of each, and what the main ones print of a register with a past."""

import gettext
from collections.abc import Iterator
from inspect import signature

import click
import pytest

from inspector.app import main
from inspector.cli import commands
from inspector.duties.office import Office
from inspector.language import use_catalogue
from inspector.rulebook.bench.work import topics
from inspector.rulebook.load import packaged
from inspector.rulebook.sums import catalogue, functions
from inspector.units import System
from tests.language.conftest import KNOWN
from tests.language.pseudo import Pseudo
from tests.language.shown import assert_none_missed

_PRINTS = (
    ("list",), ("show", "HR-007"), ("show", "SH-001"), ("show", "SH-002"), ("kinds",), ("verify",), ("people",),
    ("person", "show", "First officer"), ("vehicle", "list"), ("vehicle", "show", "V1"), ("trip", "list"),
    ("trip", "show", "T1"), ("trip", "pairs", "T1"), ("trip", "pack", "T1"), ("check", "show", "T1"),
    ("where", "SH-001"), ("loans",), ("value",), ("attachments", "SH-001"), ("ledger",), ("rules", "list"),
    ("rules", "show", "inspection-current"), ("sums", "single_shear_lever_m"), ("handout",),
    ("incident", "list"), ("stock", "list"), ("rig", "list"), ("rig", "propose", "T1"),
    # what is refused
    ("show", "XX-1"), ("lend", "HR-007"), ("notice", "SH-001"), ("rig", "check", "R9"), ("person", "show", "R9"),
    ("inspect", "SH-001", "--reading", "bow_diameter=7"), ("book", "SH-9", "--kind", "R9"), ("R9",), ("show",),
)  # fmt: skip
_SYNTAX = (  # what is typed and so is no text
    "OPTIONS", "COMMAND", "ARGS", "inspector", "TEXT", "INTEGER", "FLOAT", "PATH", "FILE", "DIRECTORY", "FILENAME",
    "RANGE",
)  # fmt: skip


def _all_of(command: click.Command, path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], click.Command]]:
    yield path, command
    if isinstance(command, click.Group):
        context = click.Context(command)
        for name in command.list_commands(context):
            one = command.get_command(context, name)
            assert one is not None
            yield from _all_of(one, (*path, name))


_COMMANDS = dict(_all_of(commands.main))


def _typed_words() -> set[str]:
    """Names of commands, of their arguments and of the choices of options: a person types them as they are."""
    found = set(_SYNTAX)
    for path, command in _COMMANDS.items():
        found |= {*path}
        for one in command.params:
            found |= {(one.name or "").upper(), (one.metavar or "").upper()} - {""}
            if isinstance(one.type, click.Choice):
                found |= {str(choice) for choice in one.type.choices}
            if isinstance(one.default, str):
                found.add(one.default)
    return found


def _names() -> set[str]:
    """What commands list for somebody to type: keys of kinds, checks, sizes, points, settings, sums, figures."""
    book, sums = packaged(), functions()
    found = {*book.kinds, *book.checks, *book.settings, *sums, *book.profiles}
    for kind in book.kinds.values():
        found |= {kind.family, *(one.key for one in kind.sizes), *(one.key for one in kind.measures)}
        found |= {word for size in kind.measures for point in size.points for word in (point, *point.split())}
    found |= {one.topic for one in catalogue()}  # sums are found by them
    for function in sums.values():
        found |= {*signature(function).parameters}
    for topic in topics(book, System.METRIC):
        found |= {topic.key, *(dial.key for dial in topic.dials)}
    return found


@pytest.fixture
def spoken(pseudo: Pseudo, monkeypatch: pytest.MonkeyPatch) -> Pseudo:
    """The program speaks the pseudo-language, and click asks the same catalogue."""
    monkeypatch.setattr("inspector.app.speak", lambda _folder: use_catalogue(pseudo))
    monkeypatch.setattr(gettext, "dgettext", lambda _domain, text: pseudo.gettext(text))
    monkeypatch.setattr(gettext, "dngettext", lambda _domain, one, many, count: pseudo.ngettext(one, many, count))
    monkeypatch.setenv("COLUMNS", "110")
    return pseudo


def test_no_text_of_any_command_s_help_is_missed(spoken: Pseudo, capsys: pytest.CaptureFixture[str]) -> None:
    told = []
    for path in _COMMANDS:
        assert main([*path, "--help"]) == 0
        told += [(" ".join(path), line) for line in capsys.readouterr().out.splitlines()]

    assert len(_COMMANDS) > 80
    assert_none_missed(told, (*KNOWN, *_typed_words()))


def test_no_text_that_a_command_prints_is_missed(
    spoken: Pseudo, club: Office, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = str(club.out_tray.parent)
    club.book.close()
    told = []
    for words in _PRINTS:
        main(["--register", folder, *words])
        printed = capsys.readouterr()
        told.append((" ".join(words), " ".join((printed.out + printed.err).split())))

    assert_none_missed(told, (*KNOWN, "R9", *_typed_words(), *_names()))


def test_click_asks_the_catalogue_that_the_program_speaks() -> None:
    main(["--version"])

    assert gettext.textdomain() == "inspector"
    assert str(gettext.bindtextdomain("inspector")).endswith("locale")
