"""Recalls: look by a notice, enter it, write to whoever has a piece, keep the answers, settle each piece, close."""

from inspector.desk.deeds.common import by, freed, told, why
from inspector.desk.deeds.words import Choices
from inspector.desk.form.asked import Asked, Day, Line, OneOf, Part, Prose, SomeOf, Tags, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.recall.opened_recall import Sought
from inspector.duties.call_in import call_in, hold_more
from inspector.duties.office import Office
from inspector.duties.print_recall import Recalled, print_recall
from inspector.duties.recall_answers import close_recall, note_answer
from inspector.duties.recall_search import search_recall
from inspector.duties.recall_words import answer_word, issuer_word
from inspector.duties.settle_recall import ReadOnIt, not_of_it, remedied
from inspector.duties.tell_recall import CalledTold, RecallTold
from inspector.gear.recall_notice import Answer, Issuer, Meant, NewRecall
from inspector.language import tr, tr_n
from inspector.refused import Refused


def look(sought: Sought) -> Deed[Sought]:
    """Which pieces a notice means; nothing is held."""

    def do(office: Office, about: Sought, given: Values) -> Done:
        meant = _meant(given)
        found = search_recall(office, meant)
        about.meant, about.is_asked = meant, True
        head = tr("Meant: {certain}. To ask: {asked}. Not meant: {others}. Nothing is held yet.",
                  certain=len(found.certain), asked=len(found.to_ask), others=len(found.not_meant))  # fmt: skip
        return Done(head)

    return Deed(
        "look by a notice", tr("Look by a notice"), tr("Which pieces does a notice mean?"),
        tr("Write what the notice says of its pieces; leave empty what it does not say. Every piece that was ever "
           "booked in is looked at, also what is lent, sold or lost. What nobody can read counts as a piece to ask."),
        lambda facts, about: _meant_fields(about), do, tr("Look"),
    )  # fmt: skip


def enter(sought: Sought) -> Deed[Sought]:
    """Keep the notice and hold all that it means."""

    def do(office: Office, about: Sought, given: Values) -> Done:
        facts = NewRecall(
            office.today, given.one("issuer", Issuer), _meant(given), given.text("why"), given.text("remedy"),
            given.text("source"), given.day("issued"), given.one("by", str),
        )  # fmt: skip
        made = call_in(office, facts)
        about.entered = made.recall.ref
        head = tr_n("{ref} is kept, and {count} piece is held.", "{ref} is kept, and {count} pieces are held.",
                    len(made.pieces), ref=made.recall.ref)  # fmt: skip
        return Done(head, tr("Next: write to whoever has one of them."))

    issuers: Choices = [(issuer_word(one), one) for one in Issuer]
    return Deed(
        "call in", tr("Enter the notice"), tr("Enter the notice and hold what it means"),
        tr("All pieces that it means, and all of which nobody can tell, are held at once, wherever they are. Each is "
           "let go only by what a competent person reads on it, or by what the notice asks for and an inspection."),
        lambda facts, about: (
            OneOf(key="issuer", label=tr("Whose notice"), choices=issuers),
            why(needed=True, label=tr("What is wrong"),
                hint=tr("Everybody who gets a letter reads it: what is known, and from whom.")),
            Prose(key="remedy", label=tr("What the notice asks for"), names=(tr("remedy"),),
                  hint=tr("What whoever has a piece is to do.")),
            Line(key="source", label=tr("Where it can be read"), names=(tr("source"),),
                 example=tr("for example its number and the maker's page")),
            Day(key="issued", label=tr("Day of the notice"), names=(tr("day of the notice"),)),
            Part(tr("Which pieces it means"), _meant_fields(about)),
            Part("", (by(facts, tr("entered by")),)),
        ),
        do, tr("Hold them"),
    )  # fmt: skip


def _meant_fields(about: Sought) -> tuple[Asked, ...]:
    stands = about.meant
    kinds = tuple((one.name, one.key) for one in about.kinds)
    return (
        Line(key="mark", label=tr("Maker's mark"), stands=stands.mark, names=(tr("maker's mark"),),
             hint=tr("As the notice writes it. Case, blanks and stops make no difference.")),
        SomeOf(key="kinds", label=tr("Kinds of gear"), choices=kinds, stands=stands.kinds, names=(tr("kind"),),
               hint=tr("None chosen: of every kind.")),
        Line(key="batches", label=tr("Batches"), stands=", ".join(stands.batches), names=(tr("batch"),),
             hint=tr("What their serials begin with; several with commas between them.")),
        Line(key="first", label=tr("First serial"), stands=stands.first, names=(tr("first serial"),)),
        Line(key="last", label=tr("Last serial"), stands=stands.last, names=(tr("last serial"),),
             hint=tr("One of the two may be left empty.")),
        Day(key="made_from", label=tr("Made from"), stands=stands.made_from, names=(tr("made from"),)),
        Day(key="made_until", label=tr("Made until"), stands=stands.made_until, names=(tr("made until"),)),
        Tags(key="tags", label=tr("Pieces in any case"), stands=stands.tags, names=(tr("tag"), tr("pieces")), more=True,
             hint=tr("Tags of pieces that are meant whatever stands on them.")),
    )  # fmt: skip


def _meant(given: Values) -> Meant:
    batches = tuple(one.strip() for one in given.text("batches").split(",") if one.strip())
    return Meant(
        given.text("mark").strip(), given.some("kinds"), batches, given.text("first").strip(),
        given.text("last").strip(), given.day("made_from"), given.day("made_until"), given.tags("tags"),
    )  # fmt: skip


def letters(recall: RecallTold) -> Deed[RecallTold]:
    """To everybody who was not written to yet."""
    return _letters(recall, remind=False)


def remind(recall: RecallTold) -> Deed[RecallTold]:
    """To everybody who has not answered."""
    return _letters(recall, remind=True)


def _letters(recall: RecallTold, *, remind: bool) -> Deed[RecallTold]:
    def do(office: Office, about: RecallTold, given: Values) -> Done:
        done = print_recall(
            office, about.ref, send_to=given.text("send_to"), send_by=given.day("send_by"), remind=remind
        )
        head = tr_n("One letter is printed.", "{count} letters are printed.", len(done.papers))
        return Done(head, "\n".join(unwritten(done)), done.papers)

    says = tr("Everybody who has one of its open pieces, owns it or bought it gets a letter, once: which pieces, why, "
              "to stop using them now, how to send them back, and a slip to answer on.")  # fmt: skip
    again = tr("Those who were written to and have not answered for all of their pieces get a letter again.")
    name = tr("Remind who has not answered") if remind else tr("Write letters")
    return Deed(
        "remind" if remind else "print recall", name, tr("{what}: {ref}", what=name, ref=recall.ref),
        again if remind else says,
        lambda facts, about: (
            Line(key="send_to", label=tr("Send back to"), example=tr("for example the shed, hold hook"),
                 names=(tr("bring to"), tr("letters"), tr("remind"))),
            Day(key="send_by", label=tr("Send back by"), names=(tr("bring by"),)),
        ),
        do, tr("Print the letters"), fits=_nobody_waits if remind else _is_open,
    )  # fmt: skip


def unwritten(done: Recalled) -> list[str]:
    """What the officer must see to himself."""
    return [tr("No letter goes out for {piece}: see to it yourself.", piece=one) for one in done.unwritten]


def answer(recall: RecallTold) -> Deed[RecallTold]:
    """What somebody answered."""

    def do(office: Office, about: RecallTold, given: Values) -> Done:
        tags, name = _ticked(about, given), given.text("name")
        note_answer(office, about.ref, tags, name, given.one("answer", Answer), given.text("text"), on=given.day("on"))
        return Done(tr("The answer of {name} is kept.", name=name), tr("An answer lets nothing go."))

    choices: Choices = [(answer_word(one), one) for one in Answer]
    names = tuple(dict.fromkeys(one.name for one in recall.letters))
    return Deed(
        "answer recall", tr("Keep an answer"), tr("An answer to {ref}", ref=recall.ref),
        tr("From a slip that came back, or by word. An answer lets nothing go: only what a competent person reads on a "
           "piece, or what the notice asks for and an inspection, does."),
        lambda facts, about: (
            Line(key="name", label=tr("Who answered"), needed=True, names=(tr("answered by"),),
                 offers=names or tuple(one.name for one in facts.people)),
            Part(tr("Which pieces"), _ticks(about.pieces)),
            Part("", (
                OneOf(key="answer", label=tr("The answer"), choices=choices),
                Line(key="text", label=tr("To whom, or what was read"), names=(tr("text"),)),
                Day(key="on", label=tr("Day it came"), names=(tr("day"),), stands=facts.today),
            )),
        ),
        do, tr("Keep it"), fits=_is_open,
    )  # fmt: skip


def clear(recall: RecallTold) -> Deed[RecallTold]:
    """What a competent person read on a piece lets it go."""

    def do(office: Office, about: RecallTold, given: Values) -> Done:
        read = ReadOnIt(given.text("serial"), given.text("mark"), given.day("made"))
        tag = given.one("tag", str)
        judged = not_of_it(office, about.ref, tag, read, by=given.one("by", str))
        return freed(office, tr("{tag} is not meant by {ref}.", tag=tag, ref=about.ref), judged)

    return Deed(
        "not of a recall", tr("Read on it: not meant"), tr("A piece that {ref} does not mean", ref=recall.ref),
        tr("A competent person who does not own the piece reads its marks. If by them it is not meant, it is let go, "
           "and what was read stands as its marks. What cannot be read stays held."),
        lambda facts, about: (
            _which(about),
            Line(key="serial", label=tr("Serial as read"), names=(tr("serial"),)),
            Line(key="mark", label=tr("Maker's mark as read"), names=(tr("maker's mark"),),
                 hint=tr("Only where it is another than what is written down.")),
            Day(key="made", label=tr("Day of making, as stamped"), names=(tr("made"),)),
            by(facts),
        ),
        do, tr("Let it go"), fits=_nothing_held,
    )  # fmt: skip


def remedy(recall: RecallTold) -> Deed[RecallTold]:
    """What the notice asks for was done."""

    def do(office: Office, about: RecallTold, given: Values) -> Done:
        tag = given.one("tag", str)
        held = remedied(office, about.ref, tag, given.text("done"), by=given.one("by", str))
        return told(tr("What {ref} asks for was done to {tag}: inspect it now.", ref=about.ref, tag=tag), held)

    return Deed(
        "remedy", tr("Done as the notice asks"), tr("What {ref} asks for was done", ref=recall.ref),
        tr("A part was replaced, or the piece was looked at as the notice asks. A competent person who does not own it "
           "says so, and it stays held until all of it was inspected afterwards."),
        lambda facts, about: (
            _which(about),
            Prose(key="done", label=tr("What was done, and by whom"), needed=True, names=(tr("what was done"),)),
            by(facts),
        ),
        do, tr("Write it down"), fits=_nothing_held,
    )  # fmt: skip


def one_more(recall: RecallTold) -> Deed[RecallTold]:
    """A further piece is held."""

    def do(office: Office, about: RecallTold, given: Values) -> Done:
        (tag,) = given.tags("tag") or ("",)
        held = hold_more(office, about.ref, tag, given.text("why"))
        return told(tr("{tag} is held for {ref}.", tag=held.dossier.item.tag, ref=about.ref), held)

    return Deed(
        "call one more in", tr("Hold one more piece"), tr("Hold one more piece for {ref}", ref=recall.ref),
        tr("For a piece that the notice means in another way than by its marks, for example one from the same box."),
        lambda facts, about: (Line(key="tag", label=tr("Tag"), needed=True, names=(tr("tag"),)), why(needed=True)),
        do, tr("Hold it"), fits=_is_open,
    )  # fmt: skip


def close(recall: RecallTold) -> Deed[RecallTold]:
    """Close the recall."""

    def do(office: Office, about: RecallTold, given: Values) -> Done:
        close_recall(office, about.ref, given.text("text"))
        return Done(tr("{ref} is closed.", ref=about.ref))

    return Deed(
        "close recall", tr("Close the recall"), tr("Close the recall {ref}", ref=recall.ref),
        tr("Once every piece is settled. A closed recall takes no letters and answers any more; what is booked in "
           "later and meant by it is held all the same."),
        lambda facts, about: (Prose(key="text", label=tr("What came of it"), needed=True, names=(tr("outcome"),)),),
        do, tr("Close it"), fits=lambda about: _is_open(about) or _left(about),
    )  # fmt: skip


def _which(about: RecallTold) -> OneOf:
    choices: Choices = [(f"{one.tag} · {one.kind_name}", one.tag) for one in about.pieces if one.is_called]
    return OneOf(key="tag", label=tr("Which piece"), choices=choices, names=(tr("tag"),))


def _is_open(about: RecallTold) -> str:
    if about.withdrawn:
        return tr("The recall was withdrawn.")
    return tr("The recall is closed.") if about.is_closed else ""


def _nobody_waits(about: RecallTold) -> str:
    waits = any(one.due for one in about.letters)
    return _is_open(about) or ("" if waits else tr("Nobody who was written to has still to answer."))


def _nothing_held(about: RecallTold) -> str:
    return "" if any(one.is_called for one in about.pieces) else tr("Nothing is held for it.")


def _left(about: RecallTold) -> str:
    tags = ", ".join(one.tag for one in about.left)
    return tr("Not settled yet: {pieces}", pieces=tags) if tags else ""


def _ticks(pieces: tuple[CalledTold, ...]) -> tuple[Asked, ...]:
    return tuple(
        Tick(key=f"tag {one.tag}", label=f"{one.tag} · {one.kind_name}", names=(tr("pieces"),)) for one in pieces
    )  # fmt: skip


def _ticked(about: RecallTold, given: Values) -> list[str]:
    tags = [one.tag for one in about.pieces if given.tick(f"tag {one.tag}")]
    if not tags:
        raise Refused(tr("pieces"), tr("Nothing is ticked."), tr("Tick what is meant."))
    return tags
