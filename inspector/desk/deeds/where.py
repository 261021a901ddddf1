"""Where a piece is: put away, missing, stolen, sold, given back, found again."""

from inspector.desk.deeds.common import on_day, people_line, told, why
from inspector.desk.form.asked import Line, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties import whereabouts as deeds
from inspector.duties.office import Office
from inspector.duties.print_voucher import print_voucher
from inspector.language import tr


def place_it(piece: Opened) -> Deed[Opened]:
    """Put it in store."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = deeds.put_in_store(office, about.tag, given.text("place"), given.day("on"), given.text("why"))
        return told(tr("{tag} lies at {place}.", tag=about.tag, place=given.text("place")), judged)

    return Deed(
        "put in store", tr("Put it in store"), tr("Put {tag} in store", tag=piece.tag),
        tr("Write where it lies from now on."),
        lambda facts, about: (
            Line(key="place", label=tr("Place"), needed=True, example=tr("for example shelf 2")),
            on_day(facts.today),
            why(label=tr("Remark")),
        ),
        do, tr("Put it there"),
    )  # fmt: skip


def missing(piece: Opened) -> Deed[Opened]:
    """It cannot be found."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        day, seen = given.day("on"), given.text("seen_at")
        judged = deeds.report_missing(office, about.tag, seen, given.text("why"), day)
        return told(tr("{tag} is missing.", tag=about.tag), judged)

    return Deed(
        "report missing", tr("It cannot be found"), tr("{tag} cannot be found", tag=piece.tag),
        tr("From now on it goes into no kit and no rig. A loan ends as not returned, and a fitted part comes off its "
           "vehicle. Found again, it is held until it is inspected."),
        lambda facts, about: (_seen_at(), on_day(facts.today),
                              why(needed=True, label=tr("How it was noticed"))),
        do, tr("Report it missing"),
    )  # fmt: skip


def stolen(piece: Opened) -> Deed[Opened]:
    """It was stolen."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = deeds.report_stolen(
            office, about.tag, given.text("seen_at"), given.text("paper"), given.day("on"), given.text("why")
        )
        return told(tr("{tag} is written down as stolen.", tag=about.tag), judged)

    return Deed(
        "report stolen", tr("It was stolen"), tr("{tag} was stolen", tag=piece.tag),
        tr("Report the theft first; the number of that report belongs here. Found again, the piece is held until it is "
           "inspected."),
        lambda facts, about: (
            _seen_at(),
            Line(key="paper", label=tr("Report's number"), needed=True, names=(tr("report number"),)),
            on_day(facts.today),
            why(label=tr("What is known of it")),
        ),
        do, tr("Write it down"),
    )  # fmt: skip


def found(piece: Opened) -> Deed[Opened]:
    """It is here again."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = deeds.report_found(office, about.tag, given.text("place"), given.day("on"), given.text("why"))
        return told(tr("{tag} is here again; it is held until it is inspected.", tag=about.tag), judged)

    return Deed(
        "report found", tr("It is here again"), tr("{tag} is here again", tag=piece.tag),
        tr("Nobody knows what it went through meanwhile, so it is held until a competent person has inspected it."),
        lambda facts, about: (
            Line(key="place", label=tr("Where it lies now"), needed=True, names=(tr("place"),)),
            on_day(facts.today),
            why(label=tr("Who found it, and how")),
        ),
        do, tr("It is here again"),
    )  # fmt: skip


def sell(piece: Opened) -> Deed[Opened]:
    """It was sold."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = deeds.sell(
            office, about.tag, given.text("to"), on=given.day("on"), why=given.text("why"),
            as_it_is=given.tick("as_it_is"),
        )  # fmt: skip
        return told(tr("{tag} is sold.", tag=about.tag), judged, print_voucher(office, about.tag))

    return Deed(
        "sell", tr("It was sold"), tr("{tag} was sold", tag=piece.tag),
        tr("Nothing more is logged of it; a voucher is printed for buyer and club to sign. What is retired is never "
           "sold."),
        lambda facts, about: (
            people_line(facts, "to", tr("Bought by"), needed=True, names=(tr("to"),)),
            on_day(facts.today),
            why(label=tr("Why, and for how much")),
            Tick(key="as_it_is", label=tr("The buyer knows that it is on hold"), names=(tr("as it is"),)),
        ),
        do, tr("Sell it and print the voucher"),
    )  # fmt: skip


def hand_back(piece: Opened) -> Deed[Opened]:
    """It went back to its owner."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        judged = deeds.hand_to_owner(
            office, about.tag, on=given.day("on"), why=given.text("why"), as_it_is=given.tick("as_it_is")
        )
        return told(tr("{tag} is with its owner.", tag=about.tag), judged, print_voucher(office, about.tag))

    return Deed(
        "hand to owner", tr("It went back to its owner"), tr("{tag} went back to its owner", tag=piece.tag),
        tr("Only what is not the club's own goes back. A voucher is printed for owner and club to sign."),
        lambda facts, about: (
            on_day(facts.today),
            why(label=tr("Remark")),
            Tick(key="as_it_is", label=tr("The owner knows that it is retired or on hold"), names=(tr("as it is"),)),
        ),
        do, tr("Give it back and print the voucher"),
    )  # fmt: skip


def voucher(piece: Opened) -> Deed[Opened]:
    """Print the voucher again."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        return Done(tr("The voucher of {tag} is printed.", tag=about.tag), "", (print_voucher(office, about.tag),))

    return Deed(
        "print voucher", tr("Print its voucher again"), tr("Print the voucher of {tag} again", tag=piece.tag),
        tr("It says what it said on the day the piece was sold, given back or made unusable."),
        lambda facts, about: (), do, tr("Print it"),
    )  # fmt: skip


def _seen_at() -> Line:
    hint = tr("Where it was last seen, or that nobody knows.")
    return Line(key="seen_at", label=tr("Last seen"), hint=hint, needed=True, names=(tr("seen at"),))
