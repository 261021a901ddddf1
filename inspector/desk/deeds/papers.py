"""Papers on the whole: the record of a piece, the report on all the gear, letters that call pieces in."""

from inspector.desk.deeds.common import why
from inspector.desk.form.asked import Day, Line, Tags, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties.office import Office, told_of
from inspector.duties.print_recall import Recalled, recall_pieces
from inspector.duties.print_record import print_record
from inspector.duties.print_report import print_report, print_report_again, year_before
from inspector.language import tr, tr_n

Pieces = tuple[str, ...]


def record(piece: Opened) -> Deed[Opened]:
    """All that is known of a piece, on paper."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        head = tr("The record of {tag} is printed.", tag=about.tag)
        return Done(head, "", (print_record(office, about.tag),), about.tag)

    return Deed(
        "print record", tr("Print its record"), tr("Print the record of {tag}", tag=piece.tag),
        tr("Verdict and reasons first, then the pictures, every inspection with its answers and readings, and all else "
           "that ever happened to it. It is numbered and kept, and can be printed again as it was said."),
        lambda facts, about: (), do, tr("Print it"),
    )  # fmt: skip


def records(tags: Pieces) -> Deed[Pieces]:
    """The record of each of several pieces."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        printed = tuple(print_record(office, tag) for tag in told_of(office, given.tags("tags")))
        return Done(tr_n("One record is printed.", "{count} records are printed.", len(printed)), "", printed)

    return Deed(
        "print records", tr("Records"), tr("Print the record of each piece"),
        tr("All that is known of each, on paper of its own: verdict and reasons, pictures, every inspection, and all "
           "else that ever happened to it. Each is numbered and kept."),
        lambda facts, about: (
            Tags(key="tags", label=tr("Pieces"), needed=True, stands=about, names=(tr("tag"), tr("pieces"))),
        ),
        do, tr("Print"),
    )  # fmt: skip


def report() -> Deed[None]:
    """All the gear, for the club's meeting or an insurer."""

    def do(office: Office, about: None, given: Values) -> Done:
        paper = print_report_again(office) if given.tick("again") else print_report(office, given.day("since"))
        return Done(tr("The report on the gear is printed."), "", (paper,))

    return Deed(
        "print report", tr("Report on the gear"), tr("Report on all the gear"),
        tr("For the club's meeting or an insurer: what may be used, what is late, what went, what is to be decided and "
           "replaced, what it is worth as far as that is known, and each accident in a line."),
        lambda facts, about: (
            Day(key="since", label=tr("Tell what changed since"), stands=year_before(facts.today),
                names=(tr("since"),)),
            Tick(key="again", label=tr("Print the last report again as it was said"), names=(tr("number"),)),
        ),
        do, tr("Print"),
    )  # fmt: skip


def recall(tags: Pieces) -> Deed[Pieces]:
    """Call pieces in, for example a maker's batch."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        done = recall_pieces(office, given.tags("tags"), given.text("why"), send_to=given.text("send_to"),
                            send_by=given.day("send_by"))  # fmt: skip
        head = tr_n("{ref} is kept, and one letter is printed.", "{ref} is kept, and {count} letters are printed.",
                    len(done.papers), ref=done.ref)  # fmt: skip
        return Done(head, "\n".join(_told(done)), done.papers)

    return Deed(
        "recall", tr("Call in"), tr("Call pieces in by letter"),
        tr("The pieces are held at once, as a recall of the club's own. Everybody who has one of them, owns it or "
           "bought it gets a letter: which pieces, why, to stop using them now, how to send them back, and a slip to "
           "answer on."),
        lambda facts, about: (
            Tags(key="tags", label=tr("Pieces"), needed=True, stands=about, names=(tr("tag"), tr("pieces"))),
            why(needed=True, hint=tr("Everybody who gets a letter reads it: what is known, and from whom.")),
            Line(key="send_to", label=tr("Send back to"), example=tr("for example the shed, hold hook"),
                 names=(tr("bring to"),)),
            Day(key="send_by", label=tr("Send back by"), names=(tr("bring by"),)),
        ),
        do, tr("Print the letters"),
    )  # fmt: skip


def _told(done: Recalled) -> list[str]:
    """What the officer must see to himself."""
    return [tr("No letter goes out for {piece}: see to it yourself.", piece=one) for one in done.unwritten]
