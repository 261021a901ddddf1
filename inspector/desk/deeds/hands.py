"""Handing pieces out and taking them back."""

from datetime import date

from inspector.desk.deeds.common import note, on_day, person
from inspector.desk.deeds.words import events, yes_or_no
from inspector.desk.form.asked import Asked, Count, Day, Number, OneOf, Part, Tags, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.drawings.marks import outcome_word
from inspector.duties.form_facts import FormFacts
from inspector.duties.give_back import give_back, give_back_kit
from inspector.duties.lend import lend, lend_kit
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_lending_slip import print_lending_slip
from inspector.duties.went_through import ToldBack, went_through
from inspector.gear.custody import Loan, WentThrough
from inspector.gear.judged import Judged
from inspector.gear.use import Event, Weather
from inspector.language import show_day, tr, tr_n
from inspector.units import Dimension

Pieces = tuple[str, ...]


def hand_out(tags: Pieces) -> Deed[Pieces]:
    """Lend pieces."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        lent = lend(office, given.tags("tags"), given.one("holder", str), given.day("due"), given.one("trip", str),
                    given.text("note"))  # fmt: skip
        return _lent(office, lent, given)

    return Deed(
        "lend", tr("Lend it"), tr("Lend pieces"),
        tr("Each is judged before it leaves: what is on hold or retired stays. All of them go out, or none."),
        lambda facts, about: (_tags(about), *_to_whom(facts)),
        do, tr("Hand them out"),
    )  # fmt: skip


def hand_out_kit(trip: str) -> Deed[str]:
    """Lend a trip's kit."""

    def do(office: Office, about: str, given: Values) -> Done:
        lent = lend_kit(office, about, given.one("holder", str), given.day("due"), given.text("note"))
        return _lent(office, lent, given)

    return Deed(
        "lend kit", tr("Hand the kit out"), tr("Hand the kit of {trip} out", trip=trip),
        tr("The whole kit goes out, or nothing of it. It is to be back by the last day of the trip."),
        lambda facts, about: tuple(one for one in _to_whom(facts) if one.key != "trip"),
        do, tr("Hand it out"),
    )  # fmt: skip


def take_back(tags: Pieces) -> Deed[Pieces]:
    """Pieces came back."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        day = given.day("on") or office.today
        told = _told(given, day)
        with office.book.together():
            back = [give_back(office, tag, given.one("by", str), told, day, given.text("note"))
                    for tag in given.tags("tags")]  # fmt: skip
        return _back(back)

    return Deed(
        "take back", tr("It came back"), tr("Pieces came back"),
        tr("Ask whoever brings them what they went through. What nobody tells holds a piece until a competent person "
           "has looked at it."),
        lambda facts, about: (_tags(about), *_from_whom(facts), *_what_happened()),
        do, tr("Take them back"),
    )  # fmt: skip


def take_kit_back(trip: str) -> Deed[str]:
    """A trip's kit came back."""

    def do(office: Office, about: str, given: Values) -> Done:
        day = given.day("on") or office.today
        back = give_back_kit(office, about, given.one("by", str), _told(given, day),
                             stay_out=given.tags("stay_out"), on=day, note=given.text("note"))  # fmt: skip
        return _back(list(back))

    return Deed(
        "take back kit", tr("The kit came back"), tr("The kit of {trip} came back", trip=trip),
        tr("What is said here holds for every piece of it. What nobody tells holds the pieces until a competent person "
           "has looked at them; tell one piece apart by taking it back alone before."),
        lambda facts, about: (
            *_from_whom(facts),
            Tags(key="stay_out", label=tr("Not brought"), hint=tr("Tags of pieces that are still out.")),
            *_what_happened(),
        ),
        do, tr("Take it back"),
    )  # fmt: skip


def _tags(stands: Pieces) -> Asked:
    return Tags(key="tags", label=tr("Pieces"), needed=True, stands=stands, names=(tr("tag"), tr("tags"), tr("piece")),
                hint=tr("Scan or type their tags, with blanks between them."))  # fmt: skip


def _to_whom(facts: FormFacts) -> tuple[Asked, ...]:
    ahead = [one for one in facts.trips if one.last_on >= facts.today]
    trips: list[tuple[str, object]] = [(tr("no trip"), "")]
    trips += [(tr("{day}: {name}", day=show_day(one.first_on), name=one.name), one.ref) for one in ahead]
    return (
        person(facts, "holder", tr("Who gets them"), needed=True, names=(tr("holder"),)),
        OneOf(key="trip", label=tr("Trip"), choices=trips),
        Day(key="due", label=tr("To be back by"), names=(tr("due"),),
            hint=tr("The last day of the trip, where none is written.")),
        note(),
        Tick(key="slip", label=tr("Print the lending slip to sign"), stands=True),
    )  # fmt: skip


def _from_whom(facts: FormFacts) -> tuple[Asked, ...]:
    return (
        person(facts, "by", tr("Brought by"), needed=True, names=(tr("brought by"),)),
        on_day(facts.today, tr("Came back on")),
    )


def _what_happened() -> tuple[Asked | Part, ...]:
    days = {
        Weather.SALT: tr("Days in salt"),
        Weather.MUD: tr("Days in mud or sand"),
        Weather.SUN: tr("Days in the sun"),
        Weather.HEAT: tr("Days of heat"),
        Weather.CHEMICAL: tr("Days of chemicals"),
        Weather.FROST: tr("Days of frost, wet"),
    }
    return (
        Tick(key="nothing", label=tr("Nothing happened: no pull, no salt, no mud, no sun"), names=(tr("return"),),
             hint=tr("Only where whoever brings it says so.")),
        Part(tr("Pulls"), (
            Count(key="pulls", label=tr("Pulls of each"), hint=tr("0 for none. Empty: nobody told."),
                  names=(tr("pulls"),)),
            OneOf(key="event", label=tr("What happened"), choices=events()),
        )),
        Part(tr("Weather and water"), (
            Tick(key="no_weather", label=tr("None of these reached them")),
            *(Count(key=f"days {one.value}", label=words, least=1, names=(tr("days"),))
              for one, words in days.items()),
            OneOf(key="rinsed", label=tr("Rinsed"), choices=yes_or_no()),
            OneOf(key="dried", label=tr("Dried"), choices=yes_or_no()),
            Number(key="hottest", label=tr("Hottest"), dimension=Dimension.TEMPERATURE,
                   example=tr("for example 95 °C")),
        )),
        note(),
    )  # fmt: skip


def _told(given: Values, day: date) -> WentThrough:
    days = {one: given.number(f"days {one.value}") for one in Weather}
    told = ToldBack(
        pulls=given.number("pulls"),
        event=given.one("event", Event),
        days={one: count for one, count in days.items() if count},
        hottest=given.figure("hottest"),
        rinsed=given.said("rinsed"),
        dried=given.said("dried"),
        nothing=given.tick("nothing"),
        no_weather=given.tick("no_weather"),
    )
    return went_through(told, day)


def _lent(office: Office, lent: tuple[Loan, ...], given: Values) -> Done:
    """What whoever takes the pieces must know: what each may be used for, and what falls due meanwhile."""
    lines = []
    for one in lent:
        lines.append(tr("{tag}: {use}", tag=one.tag, use=open_item(office, one.tag).explanation.use_line))
        if one.look_due:
            day = show_day(one.look_due)
            lines.append(tr("{tag}: an inspection or reading falls due on {day}, before it is to be back.",
                            tag=one.tag, day=day))  # fmt: skip
    head = tr_n("One piece went out.", "{count} pieces went out.", len(lent))
    tags = [one.tag for one in lent]
    papers = (print_lending_slip(office, given.one("holder", str), tags),) if given.tick("slip") else ()
    return Done(head, "\n".join(lines), papers)


def _back(back: list[Judged]) -> Done:
    lines = [tr("{tag}: {outcome}. {plain}", tag=one.dossier.item.tag, outcome=outcome_word(one.verdict.outcome),
                plain=one.explanation.plain) for one in back]  # fmt: skip
    head = tr_n("One piece is back.", "{count} pieces are back.", len(back))
    return Done(head, "\n".join(lines), tag=back[0].dossier.item.tag if len(back) == 1 else "")
