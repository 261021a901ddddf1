"""Wires the rooms together.

Start-up order: language, then the command line; a command that needs the register opens rulebook and book (bringing
its tables up to date), lays the club's adopted limits over the rulebook, seats the officer, and judges anew what time
alone or a rulebook whose day has come has changed. A window is there before: it says that the register is being opened,
has it done in the background, and shows nothing of it until all is done. Where there is none yet, it asks which one is
to be worked on, and does the same for it. What a step needs is imported with it, so that a list answers at once.
"""

import contextlib
import gettext
import os
import sys
from collections.abc import Sequence
from datetime import datetime
from functools import cache
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING

import platformdirs
from msgspec.structs import replace

from inspector import __version__
from inspector.cli import commands
from inspector.cli.wiring import Wiring
from inspector.duties.machine_settings import LAST_PLACE, MachineSettings
from inspector.language import tr, use_catalogue
from inspector.refused import Refused
from inspector.register.where_it_lies import REGISTER_FILE, is_address

if TYPE_CHECKING:
    from inspector.desk.doors import Opening, Start
    from inspector.duties.office import Office
    from inspector.duties.register_place import Place
    from inspector.duties.rescue_register import RescueDone

_NAME = "recovery-gear-register"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command; returns the exit code. No traceback of a refusal reaches a user, and no register stays open."""
    _print_whatever_the_terminal_cannot()
    speak(_machine().language)
    with contextlib.ExitStack() as at_the_end:
        return commands.run(_wiring(at_the_end), list(sys.argv[1:] if arguments is None else arguments))


def speak(wanted: str) -> None:
    """Take the catalogue of the language this machine is set to; "": the one that the computer itself speaks.

    What click and Qt say is looked up by what the environment names, so a choice is named there too.
    """
    if wanted or not any(os.environ.get(name) for name in ("LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG")):
        os.environ["LANGUAGE"] = wanted or _spoken_by_windows()
    folder = str(Path(__file__).parent / "locale")
    gettext.bindtextdomain("inspector", folder)
    gettext.textdomain("inspector")
    use_catalogue(_catalogue(gettext.find("inspector", folder) or ""))


@cache
def _catalogue(file: str) -> gettext.NullTranslations:
    """The texts of a catalogue's file; without one the English of the source."""
    if not file:
        return gettext.NullTranslations()
    with Path(file).open("rb") as stream:
        return gettext.GNUTranslations(stream)


def _spoken_by_windows() -> str:
    """The language of its own texts, e.g. "de_DE"; it names none in the environment as others do."""
    if sys.platform != "win32":
        return "en"
    import ctypes
    import locale

    return locale.windows_locale.get(ctypes.windll.kernel32.GetUserDefaultUILanguage(), "en")


def _print_whatever_the_terminal_cannot() -> None:
    """A sign that an old terminal or a redirected file lacks is replaced there; it never ends a command."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")


def note_fault(fault: Exception) -> Path:
    """Append the traceback to the log of this machine; the file it stands in."""
    import traceback

    place = Path(platformdirs.user_log_dir(_NAME, appauthor=False)) / "faults.log"
    told = "".join(traceback.format_exception(fault))
    with contextlib.suppress(OSError):
        place.parent.mkdir(parents=True, exist_ok=True)
        with place.open("a", encoding="utf-8") as log:
            log.write(f"{datetime.now().astimezone().isoformat(timespec='seconds')} {__version__}\n{told}\n")
    return place


def _wiring(at_the_end: contextlib.ExitStack) -> Wiring:
    """What a command gets. at_the_end: closes each register that it opens."""

    def opened(place: "Place") -> "Office":
        office = open_office(place)
        at_the_end.callback(office.book.close)
        return office

    return Wiring(
        version=__version__,
        usual_place=_usual_place(),
        has_register=_has_register,
        open_office=opened,
        rescue=rescue,
        open_window=open_window,
        welcome=welcome,
        has_display=has_display,
        note_fault=note_fault,
    )


def _machine() -> MachineSettings:
    return MachineSettings(Path(platformdirs.user_config_dir(_NAME, appauthor=False)) / "window.json")


def _usual_place() -> "Place":
    """Where this machine's register lies: the one opened in the window last, while it is there."""
    if is_address(last := _machine().get(LAST_PLACE)):
        return last
    return Path(last) if last and (Path(last) / REGISTER_FILE).exists() else _own_folder()


def _own_folder() -> Path:
    return Path(platformdirs.user_data_dir(_NAME, appauthor=False))


def _has_register(place: "Place") -> bool:
    if isinstance(place, Path):
        return (place / REGISTER_FILE).exists()
    from inspector.register.engines import holds_register

    return holds_register(place)


def open_office(place: "Place") -> "Office":
    """The office of the register in a folder or at an address, with nobody at the desk yet.

    The folder is made where it is missing; papers, drafts and copies of a register on a server lie in one of its own.
    """
    from inspector.duties.club_settings import as_the_club_wants
    from inspector.duties.office import Office
    from inspector.duties.rulebook_in_force import in_force
    from inspector.duties.tell_opening import enter_upgrade
    from inspector.gear.person import Person
    from inspector.register.address import own_folder
    from inspector.register.book import open_book
    from inspector.rulebook.load import packaged

    folder = place if isinstance(place, Path) else _own_folder() / "on servers" / own_folder(place)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        why = tr("{folder} cannot be made ({why}).", folder=folder, why=error.strerror)
        raise Refused(tr("folder"), why, tr("Choose a folder you may write to.")) from error
    office = Office(
        book=open_book(place / REGISTER_FILE if isinstance(place, Path) else place, minds_clock=True),
        rules=packaged(),
        out_tray=folder / "documents",
        officer=Person("nobody", "nobody", ""),
        clock=lambda: datetime.now().astimezone(),
        program=__version__,
        machine=_machine(),
    )
    enter_upgrade(office)
    return as_the_club_wants(in_force(office))


def rescue(file: Path, folder: Path) -> "RescueDone":
    """Save what can be proved of a damaged register into a folder that has none."""
    from inspector.duties.rescue_register import rescue_register

    return rescue_register(file, folder, open_office)


def has_display() -> bool:
    """Whether a window can be shown: always on Windows and macOS, elsewhere where a screen is announced."""
    if sys.platform in {"win32", "darwin"} or os.environ.get("QT_QPA_PLATFORM"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def open_window(opening: "Opening", tag: str = "") -> int:
    """Open the window, then the register in it, and stay until it is closed. tag: the piece to show first."""
    from inspector.desk.open_desk import run_desk

    start = _start(_usual_place())
    return run_desk(lambda told: replace(opening(told), machine=start.machine), tag, start)


def welcome(place: "Place") -> int:
    """Ask which register is to be worked on, and open the window on it. Returns the exit code."""
    from inspector.desk.open_desk import run_welcome

    return run_welcome(_start(place))


def _start(place: "Place") -> "Start":
    from inspector.desk.doors import Doors, Start
    from inspector.paper.font_files import font_files

    return Start(Doors(_begin, _open, _sample, _restore, _rescue), str(place), font_files(), _machine())


def _begin(place: "Place", club: str, officer: str) -> "Office":
    from inspector.duties.found_club import found_club
    from inspector.duties.sit_down import seat

    office = open_office(place)
    try:
        found_club(office, club, officer)
    except Refused:
        office.book.close()
        raise
    return _remembered(place, seat(office))


def _open(place: "Place") -> "Office":
    from inspector.duties.judge_anew import judge_anew
    from inspector.duties.register_place import moved_away_to, moved_away_words
    from inspector.duties.rulebook_in_force import judge_under_new_book
    from inspector.duties.sit_down import seat
    from inspector.duties.tell_opening import clock_trouble

    if not _has_register(place):
        why = tr("There is no register in {folder}.", folder=place)
        raise Refused(tr("folder"), why, tr("Choose the folder it lies in, or begin one here."))
    office = seat(open_office(place))
    if gone_to := moved_away_to(office):
        office.book.close()
        raise Refused(tr("folder"), moved_away_words(gone_to), tr("Write the new place here, and open it there."))
    if clock_trouble(office) is None:  # else nothing can be entered; the window says why
        judge_under_new_book(office)
        judge_anew(office)
    return _remembered(place, office)


def _rescue(place: "Place", file: Path) -> "Office":
    from inspector.duties.back_up import file_in

    rescue(file, file_in(place).parent)
    return _open(place)


def _sample(place: "Place") -> "Office":
    from inspector.duties.build_sample import build_sample
    from inspector.duties.look_up import people
    from inspector.duties.sit_down import seat

    office = open_office(place)
    if people(office):
        office.book.close()
        why = tr("{folder} holds a register already.", folder=place)
        raise Refused(tr("folder"), why, tr("Open it, or choose another folder."))
    build_sample(office)
    return seat(office)


def _restore(place: "Place", file: Path, head: str) -> "Office":
    from inspector.duties.archive_register import enter_opened, is_archive, open_archive
    from inspector.duties.back_up import enter_restored, restore

    if is_archive(file):
        found = open_archive(file, place, head)
        office = _open(place)
        enter_opened(office, file, found)
        return office
    made = restore(file, place, head)
    office = _open(place)
    enter_restored(office, made)
    return office


def _remembered(place: "Place", office: "Office") -> "Office":
    """The register that this machine opens from now on."""
    office.machine.put(LAST_PLACE, place if isinstance(place, str) else str(place.resolve()))
    return office
