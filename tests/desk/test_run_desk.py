"""The way in: one call opens the window on a piece and gives back the exit code."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from inspector import app
from inspector.desk.doors import Doors, Start
from inspector.desk.open_desk import run_desk
from inspector.desk.window import DeskWindow
from inspector.duties.office import Office


def test_the_window_opens_on_the_piece_asked_for(
    qtbot: QtBot, qapp: QApplication, office: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """`run_desk` shows the piece, stays until it is closed, and leaves no work behind."""
    seen: list[str] = []

    def stay() -> int:
        window = next(one for one in qapp.topLevelWidgets() if isinstance(one, DeskWindow) and one.isVisible())
        qtbot.waitUntil(lambda: window.is_open and window.pages.piece is not None)
        assert window.pages.piece
        seen.append(window.pages.piece.tag)
        window.close()
        return 7

    monkeypatch.setattr(QApplication, "exec", staticmethod(stay))
    fonts = Path(__file__).parents[2] / "inspector" / "paper" / "fonts"
    doors = Doors(app._begin, app._open, app._sample, app._restore, app._rescue)
    assert run_desk(lambda _told: office, "sh-001", Start(doors, str(tmp_path), tuple(fonts.glob("*.ttf")))) == 7
    assert seen == ["SH-001"]
