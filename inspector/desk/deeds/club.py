"""What the club wants of every document and figure."""

from inspector.desk.form.asked import Files, Line, OneOf, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.club_settings import ClubSettings, change_club_settings, read_mark
from inspector.duties.office import Office
from inspector.language import tr
from inspector.units import System


def settings() -> Deed[ClubSettings]:
    """Name, mark, units, paper, decimal sign."""

    def do(office: Office, about: ClubSettings, given: Values) -> Done:
        files = given.files("mark")
        mark = b"" if about.mark and given.tick("no_mark") else read_mark(files[0]) if files else about.mark
        wanted = ClubSettings(
            given.text("club"), given.one("units", System), given.one("paper", str), given.one("decimal", str), mark
        )
        change_club_settings(office, wanted, about)
        return Done(tr("It holds from now on."), tr("Papers that were printed before stay as they are."))

    return Deed(
        "club settings", tr("What the club wants"), tr("What the club wants of figures and papers"),
        tr("It holds for everybody who opens this register. Figures stay as they were typed; what is reckoned is shown "
           "in these units."),
        lambda facts, about: (
            Line(key="club", label=tr("Name of the club"), needed=True, stands=about.club, names=(tr("club"),),
                 hint=tr("It stands on every document.")),
            OneOf(key="units", label=tr("Units"), choices=unit_choices(), stands=about.system),
            OneOf(key="paper", label=tr("Paper"), choices=paper_choices(), stands=about.page, names=(tr("paper"),)),
            OneOf(key="decimal", label=tr("Decimal sign"), choices=decimal_choices(), stands=about.decimal,
                  names=(tr("settings"),)),
            Files(key="mark", label=tr("Mark, a picture"), one=True, names=(tr("file"),),
                  hint=tr("JPEG or PNG. It stands small at the head of every document; empty: as it is.")),
            *([Tick(key="no_mark", label=tr("No mark from now on"))] if about.mark else []),
        ),
        do, tr("Let it hold"),
    )  # fmt: skip


def unit_choices() -> list[tuple[str, object]]:
    """Units in words."""
    return [(tr("millimetres, kilonewtons, tonnes"), System.METRIC), (tr("inches, pounds"), System.IMPERIAL)]


def paper_choices() -> list[tuple[str, object]]:
    """Sizes of paper in words."""
    return [(tr("A4, 210 × 297 mm"), "a4"), (tr("Letter, 8.5 × 11 in"), "letter")]


def decimal_choices() -> list[tuple[str, object]]:
    """Decimal signs in words."""
    return [(tr("a point: 4.75"), "."), (tr("a comma: 4,75"), ",")]


def word_of(choices: list[tuple[str, object]], value: object) -> str:
    """The words that a value is chosen by."""
    return next(word for word, one in choices if one == value)
