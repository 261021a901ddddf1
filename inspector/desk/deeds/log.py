"""What a piece went through: a day's pulls, and days in salt, mud or sun."""

from inspector.desk.deeds.common import note, on_day, told
from inspector.desk.deeds.words import events, weather, yes_or_no
from inspector.desk.form.asked import Count, Number, OneOf
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties.office import Office
from inspector.duties.record_use import record_exposure, record_use
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.language import tr
from inspector.units import Dimension


def use(piece: Opened) -> Deed[Opened]:
    """Pulls of a day."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        facts = NewUse(
            given.day("on") or office.today, given.number("pulls") or 0, given.one("event", Event),
            office.officer.id, given.text("note"),
        )  # fmt: skip
        return told(tr("The use of {tag} is kept.", tag=about.tag), record_use(office, about.tag, facts))

    return Deed(
        "use", tr("It was used"), tr("{tag} was used", tag=piece.tag),
        tr("One day's pulls. A jerk, a stall or anything else beyond an ordinary pull holds the piece until it is "
           "inspected."),
        lambda facts, about: (
            Count(key="pulls", label=tr("Pulls"), needed=True, stands="1"),
            OneOf(key="event", label=tr("What happened"), choices=events()),
            on_day(facts.today),
            note(),
        ),
        do, tr("Keep it"),
    )  # fmt: skip


def expose(piece: Opened) -> Deed[Opened]:
    """Days in salt, mud, sun and the like."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        facts = NewExposure(
            given.day("on") or office.today, given.one("weather", Weather), given.number("days") or 0,
            given.said("rinsed"), office.officer.id, given.text("note"), given.figure("hottest"), given.said("dried"),
        )  # fmt: skip
        return told(tr("The exposure of {tag} is kept.", tag=about.tag), record_exposure(office, about.tag, facts))

    return Deed(
        "expose", tr("It was in salt, mud or sun"), tr("{tag} was in salt, mud or sun", tag=piece.tag),
        tr("Salt thins a tube from inside where nobody can see it, and sun weakens a strap: write down every day."),
        lambda facts, about: (
            OneOf(key="weather", label=tr("Exposed to"), choices=weather()),
            on_day(facts.today, tr("First day")),
            Count(key="days", label=tr("Days"), needed=True, least=1, stands="1"),
            OneOf(key="rinsed", label=tr("Rinsed"), choices=yes_or_no()),
            OneOf(key="dried", label=tr("Dried"), choices=yes_or_no()),
            Number(key="hottest", label=tr("Hottest"), dimension=Dimension.TEMPERATURE,
                   example=tr("for example 95 °C"), hint=tr("Of a heat: the greatest temperature, where known.")),
            note(),
        ),
        do, tr("Keep it"),
    )  # fmt: skip
