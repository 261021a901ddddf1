"""The law is read when it is asked for, as a whole, and nothing is judged by one with a fault in it."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from gettext import NullTranslations
from pathlib import Path
from shutil import copytree

import pytest

from inspector.language import use_catalogue
from inspector.rulebook import load
from inspector.rulebook.judge import judge
from inspector.rulebook.load import BadRulebook, Rulebook, parse
from tests.rulebook.sound import sound

FOLDER = Path(load.__file__).parent
_A_RULE = '[[rule]]\nid = "made-up"\n'


class Loud(NullTranslations):
    """A language in which everything is said in capitals."""

    def gettext(self, message: str) -> str:
        """The text in capitals."""
        return message.upper()


@contextmanager
def spoken(catalogue: NullTranslations) -> Iterator[None]:
    """Another language for a while."""
    use_catalogue(catalogue)
    try:
        yield
    finally:
        use_catalogue(NullTranslations())


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the rulebook's files, which the program takes for its own."""
    copytree(FOLDER, tmp_path / "rulebook", ignore=lambda place, names: [one for one in names if one.endswith(".py")])
    monkeypatch.setattr(load, "files", lambda _package: tmp_path / "rulebook")
    return tmp_path / "rulebook"


def read_anew() -> Rulebook:
    """The packaged rulebook as a new process reads it."""
    make: Callable[[], Rulebook] = load.packaged.__wrapped__  # type: ignore[attr-defined]
    return make()


def is_read(book: Rulebook) -> bool:
    """Whether its law was read yet."""
    return "law" in vars(book)


def change(file: Path, old: str, new: str) -> None:
    """Put another text into a file of the rulebook."""
    body = file.read_text("utf-8")
    assert old in body
    file.write_text(body.replace(old, new, 1), "utf-8")


def test_kinds_and_the_hash_need_no_law_and_judging_reads_it(folder: Path) -> None:
    book = read_anew()
    assert len(book.kinds) > 20 and len(book.hash) == 64 and book.kind("bow_shackle").checks
    assert not is_read(book)

    judge(sound(book.kind("bow_shackle")), book, "test")

    assert is_read(book)


def test_what_is_read_later_is_what_is_read_at_once(folder: Path) -> None:
    later = read_anew()
    whole = parse({str(one.relative_to(folder)): one.read_text("utf-8") for one in folder.rglob("*.toml")})

    assert (later.text, later.hash, later.kinds, later.checks) == (whole.text, whole.hash, whole.kinds, whole.checks)
    assert later.law == whole.law == load.packaged().law
    assert len(later.rules) > 150 and later.settings and later.sources and later.profiles and later.joints


@pytest.mark.parametrize(
    ("file", "old", "new", "fault"),
    [
        ("rules/shackles.toml", "[[rule]]", f"{_A_RULE}[[rule]]", "rules/shackles.toml: made-up: "),
        ("rules/shackles.toml", 'must = "', 'must = "about_', "must 'about_"),
        ("settings.toml", 'source = "', 'source = "no_', "unknown source"),
        ("kinds/bow_shackle.toml", 'source = "', 'source = "no_', "kind 'bow_shackle': unknown source"),
        ("joints.toml", "[[role]]", '[[role]]\nkey = "made-up"\n[[role]]', "joints.toml: made-up: "),
        ("profiles/hook_wear_ten_percent.toml", 'source = "', 'source = "no_', "unknown source"),
    ],
)
def test_nothing_is_judged_by_a_law_with_a_fault(folder: Path, file: str, old: str, new: str, fault: str) -> None:
    change(folder / file, old, new)
    book = read_anew()
    dossier = sound(book.kind("bow_shackle"))

    for _ in range(2):  # a second asking finds no half of it
        with pytest.raises(BadRulebook, match=fault):
            judge(dossier, book, "test")
    assert not is_read(book)


def test_a_fault_in_a_kind_is_found_at_once_with_those_of_the_law(folder: Path) -> None:
    change(folder / "kinds" / "bow_shackle.toml", 'checks = ["', 'checks = ["made_up", "')
    change(folder / "rules" / "shackles.toml", "[[rule]]", f"{_A_RULE}[[rule]]")

    with pytest.raises(BadRulebook) as found:
        read_anew()

    said = "\n".join(found.value.faults)
    assert "check 'made_up' is not in checks.toml" in said and "rules/shackles.toml: made-up: " in said


def test_the_law_speaks_as_the_kinds_do_whatever_is_spoken_when_it_is_read(folder: Path) -> None:
    with spoken(Loud()):
        book = read_anew()

    assert book.kind("bow_shackle").name == "BOW SHACKLE"
    assert book.rules[0].says == book.rules[0].says.upper() != load.packaged().rules[0].says
