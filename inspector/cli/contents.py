"""Which commands there are, where each stands, and what the list of all says of it.

A command's module, and with it the duties it calls, is read when that command is asked for and not before: a list of
gear imports nothing that prints a PDF. The help stands in the module, where it is read beside the command; here it
stands once more, so that `inspector --help` need not read every module. A test holds the two together.
"""

from importlib import import_module

import click

from inspector.cli.spoken import spoken

# the module and the function, whose name is the command's: "moving.move"; what is named like a word of Python has an
# ending that the command's name has not: "listing.list_command"
_HELP = {
    "calendar_commands.calendar": (
        "Tell what falls due up to a day. What is overdue, or waits without a day, is always among it."
    ),
    "checking.check": (
        "List what is to be checked for TRIP; show the questions on TAGS; keep what a member saw of them.\n"
        "\n"
        "    Of several pieces at once, put the tag before each grade and reading: KS-02/abrasion=slight.\n"
        "    "
    ),
    "demo.demo": "Make the sample register and spend an officer's evening on it.",
    "exchange.archive": (
        "Write all of the register into a new zip FILE: database, files, rulebooks, lines of JSON, checksums."
    ),
    "exchange.export": (
        "Write the gear whose record holds all WORDS, and what happened to it, into a new FILE.\n"
        "\n"
        "    Its ending says how: .xlsx for a workbook with every table, .csv for one table, .jsonl for every row "
        "there is.\n"
        "    "
    ),
    "exchange.key": "The signing key: the one of this machine, and those that the register knows.",
    "exchange.open_archive": (
        "Open the archive FILE in a folder that has no register: inspector --register FOLDER open-archive FILE."
    ),
    "exchange.verify_archive": "Prove that the archive FILE is as it was written; nothing is opened or kept of it.",
    "faults.clock_is_right": (
        "Say that this machine's clock is right though the last entry was made later: that clock ran ahead."
    ),
    "faults.copies": (
        "Tell which copies there are and how they are planned; change the plan; make the copy that is due."
    ),
    "faults.rescue": "Save what can be proved of a damaged register FILE into a new one; FILE stays as it is.",
    "field_copies.bring_back": (
        "Take over what was done on the copy FILE (or the folder it lies in); both histories stay."
    ),
    "field_copies.field_copy": (
        "Make a copy of the register to work on elsewhere; without --to, tell which copies there are."
    ),
    "gear_papers.labels": (
        "Print labels with QR code for the pieces TAGS, on sheets of labels or as large tags to cut apart."
    ),
    "gear_papers.lending_slip": (
        "Print the slip that a borrower signs: all that he has on loan, or the pieces TAGS of it."
    ),
    "gear_papers.tags": (
        "Print tags to tie to the pieces TAGS, which are on hold, derated or retired: what each must not be used for."
    ),
    "handing_over.handover": (
        "Hand the register on: copy it, print the protocol for both to sign, and make another person its officer."
    ),
    "handouts.handout": (
        "Print the handout of TOPIC: why some attachments kill. Without TOPIC, list the topics and their dials."
    ),
    "hands.debrief": (
        "Keep what FILE tells of a trip: the rigs used, their pulls, jerks and near misses, logged on every piece."
    ),
    "hands.lend": "Hand out the pieces TAGS, all of them or none, or the whole kit of a trip.",
    "hands.loans_command": "Tell who has what since when, what is overdue at the head.",
    "hands.return_command": (
        "Take back the pieces TAGS, or a trip's whole kit. What is not told about them holds them until a look."
    ),
    "importing.import_command": (
        "Bring in the list that the club kept before: FILE is CSV, XLSX, ODS or XLS.\n"
        "\n"
        "    Without --take it only tells what each column means, what is not clear, and what would become of "
        "each row. What is\n"
        "    not taken is written into a file beside, with the reason. Nothing that a list says passes a piece: "
        "each is held\n"
        "    until somebody competent has inspected it.\n"
        "    "
    ),
    "incidents.incident": "The bad day: what happened, what is kept as found, who lets it go.",
    "keeping.backup": "Copy the register, and check the copy by opening it.",
    "keeping.restore": (
        "Put the copy FILE into a folder that has no register: inspector --register FOLDER restore FILE."
    ),
    "leaving.destroyed": "Record that the retired piece TAG was made unusable.",
    "leaving.handed_back": "Record that TAG went back to its owner, who is not the club.",
    "leaving.sold": "Record that TAG was sold; nothing more is logged of it.",
    "leaving.voucher": "Print the voucher of TAG again: how it was sold, given back or made unusable.",
    "letters.letters": (
        "Print letters: what somebody has, what falls due of it, what must not be used, what to bring where and when."
    ),
    "letters.slips": (
        "Print slips, eight to a page to be cut apart: one piece each, what is due of it, by when, and to whom."
    ),
    "listing.kinds": "List the kinds of gear with their checks, measures and sizes.",
    "listing.list_command": "List the gear whose record holds all WORDS.",
    "moving.move": (
        "Carry the register in the folder or at the address REGISTER over to an empty database or folder TO.\n"
        "\n"
        "    An address is postgresql://LOGIN@SERVER/DATABASE, without a password. The same command again "
        "completes a move that\n"
        "    was broken off.\n"
        "    "
    ),
    "opening.begin": "Begin an empty register.",
    "opening.window": (
        "Open the window, on the piece TAG where one is named; where there is no register yet, begin or open one there."
    ),
    "papers.record": "Print the record of TAG: verdict, reasons, pictures and all that ever happened to it.",
    "papers.report": "Print the report on all the gear, for the club's meeting or an insurer.",
    "people.people": "List the people: role, what each may judge and until when, and who has a passphrase.",
    "people.person": "Enter a person; whoever judges gear says for which families of kinds.",
    "person_changes.change_person_command": "Change the name or role of WHO.",
    "person_changes.competence": (
        "What a person may judge: give it, renew it, end it. Inspections entered before keep what they were."
    ),
    "person_changes.contact": (
        "How to reach a person. It stands outside the history and is taken out for good on request."
    ),
    "person_changes.passphrase": (
        "Who is at the desk. A script gives a passphrase by INSPECTOR_PASSPHRASE, that of a second name by "
        "INSPECTOR_SECOND_PASSPHRASE and a new one by INSPECTOR_NEW_PASSPHRASE."
    ),
    "printing.notice": "Print the retirement notices of TAGS, each with a number of its own.",
    "printing.sheet": (
        "Print the pre-trip inspection sheet of TRIP (its reference, or the next one), the whole trip on one."
    ),
    "reading.show": "Show a piece: its verdict with reasons and passes, and its history.",
    "reading.verify": "Prove that nothing in the register was changed.",
    "reading.where": "Say where TAG is.",
    "work.marks": "Write down anew the maker's mark and serial that a competent person read on TAG.",
    "recalls.recall": "Find all pieces of a batch, hold them, write to whoever has one, track the answers.",
    "returning.read_sheets": (
        "Read sheets that came back: FILES are photos or scans of the ticked paper, or the form filled in on a "
        "screen.\n"
        "\n"
        "    Look at what was read before it is kept. What is written by hand is typed in with the commands, or "
        "in the window.\n"
        "    "
    ),
    "rigs.rig": "Rigs: which pieces join which vehicles, in what order.",
    "rules.rules": "What the rulebook says, and the club's own limits.",
    "server.server": (
        "Roles and logins of registers on a PostgreSQL server. ADDRESS names the database and its owner's login.\n"
        "\n"
        "    For example postgresql://clubs_owner@server/clubs. A password is asked by the server's own ways: "
        "PGPASSWORD or a\n"
        "    password file, never in the address.\n"
        "    "
    ),
    "showing.documents": (
        "Print every sort of document into FOLDER, and its pages as pictures, to look at them.\n"
        "\n"
        "    They are specimens: printed from a copy of the register, with numbers that are never issued; only "
        "what was printed\n"
        "    once for all, as a voucher, comes out again as it was. The register itself keeps and numbers nothing.\n"
        "    "
    ),
    "speaking.answer": (
        "Answer slight faults that hold TAG, named by their RULES, by a second competent person's opinion."
    ),
    "speaking.doubt": "Hold TAG until a competent person has inspected it.",
    "speaking.strike": "Strike a wrong ENTRY of TAG, named by the sign that `show` prints beside it.",
    "stock.stock": "Count what is there, by scanning tags or by ticking a printed list.",
    "sums.sums": (
        'Work a sum: its NAME, then each input as name=figure, such as pull_n="30 kN".\n'
        "\n"
        "    With no figures it lists the sums that hold all WORDS, with what each wants.\n"
        "    "
    ),
    "telling.ledger": (
        "Tell every deed of the register as a sentence, the newest first, with its line's number and short hash."
    ),
    "trips.trip": "Trips: who goes where with what, and whether it is ready.",
    "vehicles.fit": "Write down that the part TAG sits on VEHICLE.",
    "vehicles.unfit": "Write down that the part TAG was taken off its vehicle.",
    "vehicles.vehicle": "Vehicles: what they weigh, and what sits on them.",
    "visiting.visit": (
        "Take a member's or another club's piece along on TRIP alone; it goes into the trip's kit and is judged."
    ),
    "whereabouts.found": "Record that TAG, missing, stolen or given back, is here again; it is held until inspected.",
    "whereabouts.missing": "Report that TAG cannot be found.",
    "whereabouts.place": "Put TAG in store.",
    "whereabouts.stolen": "Report that TAG was stolen.",
    "work.attach": "Put FILE to ABOUT: a piece's tag, an incident's or a trip's reference.",
    "work.attachments": "List the files put to ABOUT, or write them out.",
    "work.label": "Write down the rating of TAG as a competent person read it anew; it is held until inspected.",
    "work.label_lost": "Write down that the rating on TAG cannot be read any more.",
    "work.owner": "Write down that TAG belongs to NAME from today on.",
    "work.repair": "Write down a repair of TAG or a part put in; it is held until inspected.",
    "work.retag": "Give TAG another tag; the one before still finds it and is never free again.",
    "work.value": 'Write down what TAG is worth ("120 EUR", or "unknown"); without TAG list the value of all gear.',
    "writing.book": "Book a piece in under TAG.",
    "writing.expose": "Log days in salt, mud, sun, heat, chemicals or frost.",
    "writing.inspect": "Log an inspection of TAG and judge it.",
    "writing.use": "Log the pulls of a day.",
}


class Entry(click.Command):
    """A command as the list of all tells it. place: its module in this room, and the function there."""

    def __init__(self, place: str, said: str) -> None:
        module, _, function = place.partition(".")
        super().__init__(function.removesuffix("_command").replace("_", "-"), help=said)
        self.place = place
        self._module, self._function = module, function

    def command(self) -> click.Command:
        """The command itself, from its module."""
        found = getattr(import_module(f"inspector.cli.{self._module}"), self._function)
        assert isinstance(found, click.Command)
        return found


class Contents(click.Group):
    """The group of all commands. It holds entries; whoever asks it for a command by name gets the command itself."""

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command with its help in the officer's language; None where there is none of this name."""
        found = super().get_command(ctx, cmd_name)
        return spoken(found.command()) if isinstance(found, Entry) else found

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List all commands, from their entries alone."""
        click.Group(commands=self.commands).format_commands(ctx, formatter)


def entries() -> dict[str, click.Command]:
    """An entry for each command, by its name."""
    return {one.name or "": one for one in (Entry(place, said) for place, said in _HELP.items())}
