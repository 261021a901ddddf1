"""Each command stands in the contents with its own help, and is read when it is asked for and not before."""

import gc
import pkgutil
import subprocess
import sys
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from shutil import copytree

import click
import pytest

from inspector import cli
from inspector.app import main
from inspector.cli.contents import Entry, entries
from tests.cli.test_commands import SHACKLE, SIZES

HERE = Path(__file__).resolve().parents[2]
# what takes long to import and what no list, no record of a piece and no help needs
HEAVY = {
    "PIL", "PySide6", "alembic", "argon2", "bidi", "cryptography", "icalendar", "numpy", "pint", "psycopg", "pypdf",
    "pypdfium2", "python_calamine", "reportlab", "segno", "shiboken6", "tomli_w", "uharfbuzz", "xlsxwriter", "zxingcpp",
}  # fmt: skip
_ASK = """
import sys
from inspector.app import main
code = main(sys.argv[1:])
print(*sys.modules, file=sys.stderr)
sys.exit(code)
"""


def imported_by(*words: str) -> set[str]:
    """The modules that a process of its own has imported when a command has ended well."""
    done = subprocess.run(
        [sys.executable, "-c", _ASK, *words], cwd=HERE, capture_output=True, text=True, check=True, encoding="utf-8"
    )
    return set(done.stderr.split())


def outer(modules: set[str]) -> set[str]:
    """The packages they stand in."""
    return {name.partition(".")[0] for name in modules}


def _below(command: click.Command) -> Iterator[click.Command]:
    yield command
    if isinstance(command, click.Group):
        for one in command.commands.values():
            yield from _below(one)


def _in_the_room() -> Iterator[click.Command]:
    for found in pkgutil.iter_modules(cli.__path__):
        for one in vars(import_module(f"inspector.cli.{found.name}")).values():
            if isinstance(one, click.Command) and one.name != "main":
                yield one


ENTRIES = [one for one in entries().values() if isinstance(one, Entry)]


@pytest.fixture(scope="module")
def shackle(begun: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a register with a piece in it."""
    folder = tmp_path_factory.mktemp("shackle") / "club"
    copytree(begun, folder)
    assert main(["--register", str(folder), "book", "SH-1", *SHACKLE, *SIZES]) == 0
    return folder


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda one: one.name)
def test_the_contents_say_of_a_command_what_it_says_of_itself(entry: Entry) -> None:
    own = entry.command()
    assert (entry.name, entry.help, entry.short_help) == (own.name, own.help, own.short_help)
    assert not own.hidden and not own.deprecated, "the contents know neither"


def test_every_command_of_the_room_is_in_the_contents() -> None:
    listed = {id(one) for entry in ENTRIES for one in _below(entry.command())}
    forgotten = {one.name for one in _in_the_room() if id(one) not in listed}
    assert len(listed) > 150 and forgotten == set()


def test_no_two_commands_have_one_name() -> None:
    places = [one.place for one in ENTRIES]
    assert len(set(places)) == len(entries()) == len(places) > 80


def test_a_command_that_there_is_not_is_refused_with_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["lst"]) == 2
    assert "lst" in (said := capsys.readouterr().err) and "list" in said


def test_help_reads_no_command_and_no_book() -> None:
    modules = imported_by("--help")
    assert outer(modules) & HEAVY == set() and "sqlalchemy" not in outer(modules)
    ours = {name for name in modules if name.startswith(("inspector.duties.", "inspector.rulebook"))}
    assert ours == {"inspector.duties.machine_settings"}


@pytest.mark.parametrize("words", [("list",), ("list", "bow"), ("kinds",), ("show", "SH-1"), ("where", "SH-1")])
def test_a_list_and_a_record_import_nothing_heavy_and_no_law(shackle: Path, words: tuple[str, ...]) -> None:
    modules = imported_by("--register", str(shackle), *words)
    assert outer(modules) & HEAVY == set()
    assert "sqlalchemy" in outer(modules)
    assert {"inspector.rulebook.law", "inspector.rulebook.judge"} & modules == set(), "nothing was judged"


def test_an_inspection_imports_what_judges_and_nothing_that_prints(shackle: Path) -> None:
    modules = imported_by("--register", str(shackle), "inspect", "SH-1", "--all-good")
    assert outer(modules) & HEAVY == set()
    assert {"inspector.rulebook.law", "inspector.rulebook.judge"} <= modules


def test_what_is_heavy_would_be_seen() -> None:
    assert {"reportlab", "PIL"} <= outer(imported_by("notice", "--help"))


def test_a_command_leaves_the_collecting_of_rubbish_as_it_was() -> None:
    before = gc.get_threshold()
    assert main(["--version"]) == 0 and main(["no-such-command"]) == 2
    assert gc.get_threshold() == before


@pytest.mark.parametrize(
    "words", [("list",), ("show", "no such piece"), ("use", "SH-1"), ("--officer", "Nobody", "list")]
)
def test_whatever_became_of_a_command_its_register_is_one_whole_file_again(
    shackle: Path, words: tuple[str, ...]
) -> None:
    """Nothing stays behind in a file beside it, which nobody would carry to another machine."""
    subprocess.run(
        [sys.executable, "-m", "inspector", "--register", str(shackle), *words],
        cwd=HERE,
        capture_output=True,
        check=False,
    )
    assert sorted(one.name for one in shackle.iterdir()) == ["register.db"]
