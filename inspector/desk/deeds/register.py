"""Deeds about the register itself: a copy, a proof that nothing was changed, another officer."""

from inspector.desk.deeds.common import person
from inspector.desk.form.asked import Asked, Files, Line
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.back_up import back_up
from inspector.duties.hand_over import hand_over
from inspector.duties.move_register import move_register, moved_words
from inspector.duties.office import Office
from inspector.duties.register_place import place_of
from inspector.duties.verify_book import verified_words, verify_book
from inspector.language import tr, tr_n


def copy() -> Deed[None]:
    """Copy the register, and check the copy."""

    def do(office: Office, about: None, given: Values) -> Done:
        made = back_up(office, next(iter(given.files("folder")), None))
        size = tr_n("{count} byte", "{count} bytes", made.size_bytes)
        lines = (
            tr("It lies in {file}", file=made.file),
            tr("Size: {size}", size=size),
            tr("Checksum (SHA-256): {sha256}", sha256=made.sha256),
            tr("Head of its ledger: {head}", head=made.head),
            tr("Carry it to another disk: one that burns takes both."),
        )
        return Done(tr("The register is copied; the copy was opened and is whole."), "\n".join(lines))

    return Deed(
        "back up", tr("Back up now"), tr("Copy the register"),
        tr("The copy is made while the register is open, and checked by opening it. Keep it on another disk."),
        lambda facts, about: (_folder(),), do, tr("Back up now"),
    )  # fmt: skip


def verify() -> Deed[None]:
    """Prove that nothing was changed."""

    def do(office: Office, about: None, given: Values) -> Done:
        against = given.text("head") or None
        head, lines = verified_words(verify_book(office, against), against)
        return Done(head, "\n".join(lines))

    return Deed(
        "verify", tr("Check that nothing was changed"), tr("Check that nothing was changed"),
        tr("Every line of the ledger and every row it accounts for is reckoned again. With the head that is printed at "
           "the foot of a document, lines that were cut off or written anew since then show as well."),
        lambda facts, about: (
            Line(key="head", label=tr("Head from a document"), names=(tr("head"),),
                 hint=tr("May stay empty. Eight signs or more of it are enough.")),
        ),
        do, tr("Check it"),
    )  # fmt: skip


def move() -> Deed[None]:
    """Carry the register over to a server, or back into a folder."""

    def do(office: Office, about: None, given: Values) -> Done:
        moved = move_register(office, place_of(given.text("to")))
        again = tr("Open it there now: menu Register, Open another register.")
        return Done(tr("The register is moved."), "\n".join((*moved_words(moved), again)))

    return Deed(
        "move register", tr("Move it"), tr("Move the register"),
        tr("Everything in it is carried over to an empty database of a server, or into an empty folder, and proved to "
           "be the same. What lies here stays as it is and takes no deed any more."),
        lambda facts, about: (
            Line(key="to", label=tr("Move it to"), needed=True, names=(tr("register"), tr("folder"), tr("login")),
                 example=tr("for example postgresql://LOGIN@SERVER/DATABASE"), drafted=False,
                 hint=tr("The address of a database, without a password, or a folder.")),
        ),
        do, tr("Move it"),
    )  # fmt: skip


def hand_on() -> Deed[None]:
    """Another person becomes the club's equipment officer."""

    def do(office: Office, about: None, given: Values) -> Done:
        done = hand_over(office, given.one("to", str), next(iter(given.files("folder")), None))
        name = done.protocol.to_name
        lines = (
            tr("The lists of all that is open stand on this page and in the protocol: let both sign it."),
            tr("The copy lies in {file}", file=done.backup.file),
            tr("Let {name} sit down at the desk now.", name=name),
        )
        return Done(tr("{name} is the equipment officer from now on.", name=name), "\n".join(lines), (done.paper,))

    return Deed(
        "hand over", tr("Hand the register on"), tr("Hand the register on"),
        tr("The register is copied, a protocol with everything that is still open is printed for both to sign, and "
           "another person becomes its equipment officer. A count of everything must have been closed shortly before."),
        lambda facts, about: (
            person(facts, "to", tr("Who takes it over"), needed=True, nobody=tr("choose a name"),
                   names=(tr("to"), tr("officer"), tr("count"), tr("handover"))),
            _folder(),
        ),
        do, tr("Hand it on"),
    )  # fmt: skip


def _folder() -> Asked:
    hint = tr("Left empty, the copy goes into the folder “backups” beside the register.")
    return Files(key="folder", label=tr("Folder for the copy"), hint=hint, folder=True, one=True, names=(tr("backup"),))
