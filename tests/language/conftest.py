"""The small register of the window's tests, written and read in the pseudo-language."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from gettext import NullTranslations
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from inspector.desk.look import Look
from inspector.desk.window import DeskWindow
from inspector.duties.office import Office
from inspector.language import use_catalogue
from inspector.rulebook.load import packaged
from tests.desk import conftest as small
from tests.fresh import copied
from tests.language.pseudo import Pseudo

TYPED = (
    "Dune and Ridge Touring Club", "First officer", "shelf 2", "vehicle 2", "a member", "wagon", "Beach day 1",
    "the long beach", "leader",
    "English", "Deutsch",  # each language under its own name
    "club",  # as somebody typed it for the owner of a piece
)  # fmt: skip
# by which a command and a club's file call a rule or a packaged set
NAMES = (*(rule.id for rule in packaged().rules), *packaged().profiles)
KNOWN = (*TYPED, *NAMES)


_PSEUDO = Pseudo()  # one for all tests: what is made once a language, as the rulebook, is made once for a catalogue


@pytest.fixture
def pseudo() -> Iterator[Pseudo]:
    """The pseudo-language is spoken."""
    with spoken(_PSEUDO):
        yield _PSEUDO


@contextmanager
def spoken(catalogue: NullTranslations) -> Iterator[None]:
    """The language of the catalogue is spoken."""
    use_catalogue(catalogue)
    try:
        yield
    finally:
        use_catalogue(NullTranslations())


def spoken_club(folder: Path) -> Office:
    """Three pieces with a past and a trip ahead, judged in the language that is spoken; closed, to be copied."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(small, "rules_in_force", packaged)
        office = small.with_trips(small.stocked(folder), 1)
    office.book.close()
    return office


@pytest.fixture(scope="session")
def _club_once(tmp_path_factory: pytest.TempPathFactory) -> Office:
    with spoken(_PSEUDO):
        return spoken_club(tmp_path_factory.mktemp("pseudo"))


@pytest.fixture
def club(_club_once: Office, pseudo: Pseudo, tmp_path: Path) -> Iterator[Office]:
    """That club in the pseudo-language. TYPED: all that people wrote."""
    office = copied(_club_once, tmp_path)
    yield office
    office.book.close()


@pytest.fixture
def desk(qtbot: QtBot, qapp: object, club: Office) -> Iterator[DeskWindow]:
    """The window on that register."""
    window = DeskWindow(club, Look(tuple(sorted(small.FONTS.glob("*.ttf"), reverse=True))))
    qtbot.addWidget(window)
    window.show()
    idle = _idle(qtbot, window)
    idle()
    yield window
    window._may_close = True


def _idle(qtbot: QtBot, window: DeskWindow) -> Callable[[], None]:
    return lambda: qtbot.waitUntil(lambda: window.background.is_idle)
