"""Work on a piece, and papers and pictures put to it."""

from typing import Any

from inspector.desk.deeds.common import by, note, on_day, people_line, told
from inspector.desk.deeds.labels import rating_fields, rating_in
from inspector.desk.form.asked import Files, Line, Number, OneOf, Part, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties.attach import attach
from inspector.duties.keep_draft import forget_files
from inspector.duties.named_files import read_bytes
from inspector.duties.office import Office
from inspector.duties.repair_item import repair_item
from inspector.duties.tell_work import paper_word, work_word
from inspector.gear.attachment import PaperKind
from inspector.gear.item import SizeAsNew
from inspector.gear.kind import Kind
from inspector.gear.repair import NewRepair, Work
from inspector.language import tr, tr_n


def repair(piece: Opened) -> Deed[Opened]:
    """A repair or a part put in."""
    kind = piece.judged.dossier.kind

    def do(office: Office, about: Opened, given: Values) -> Done:
        rated = bool(given.text("rating"))
        facts = NewRepair(
            on=given.day("on") or office.today,
            work=given.one("work", Work),
            done_by=given.text("done_by"),
            by=given.one("by", str),
            part=given.text("part"),
            rating=rating_in(office, given) if rated else None,
            note=given.text("note"),
            maker=given.text("maker"),
            own=given.tick("own"),
            sizes=sizes_in(kind, given),
        )
        return told(tr("The work on {tag} is kept.", tag=about.tag), repair_item(office, about.tag, facts))

    return Deed(
        "repair", tr("A repair, or a part put in"), tr("Work on {tag}", tag=piece.tag),
        tr("The piece is held until it is inspected after the work. Welding, heating, straightening, drilling or "
           "grinding on gear that bears a pull is refused."),
        lambda facts, about: (
            OneOf(key="work", label=tr("Work"), choices=[(_work_word(one), one) for one in Work]),
            people_line(facts, "done_by", tr("Done by"), needed=True, hint=tr("The maker, a workshop, a person."),
                        names=(tr("done by"),)),
            on_day(facts.today),
            Part(tr("The part put in"), (
                Line(key="part", label=tr("Part"), hint=tr("What was put in, with its marking.")),
                Line(key="maker", label=tr("Maker's mark on it"), names=(tr("maker of the pin"),)),
                Tick(key="own", label=tr("It is the maker's own part for this very piece")),
                *rating_fields(),
            )),
            Part(tr("Sizes of the new part, or of the piece since"), size_fields(kind)),
            Part("", (note(), by(facts, tr("written down by")))),
        ),
        do, tr("Keep the work"),
    )  # fmt: skip


def _work_word(work: Work) -> str:
    refused = {
        Work.WELDED: tr("welded (refused)"),
        Work.HEATED: tr("heated (refused)"),
        Work.STRAIGHTENED: tr("straightened (refused)"),
        Work.DRILLED: tr("drilled (refused)"),
        Work.GROUND: tr("ground (refused)"),
    }
    return refused.get(work) or work_word(work)


def size_fields(kind: Kind) -> tuple[Number, ...]:
    """A field for each size of the kind; `sizes_in` reads them."""
    return tuple(
        Number(key=f"size {one.key}", label=one.name, dimension=one.dimension, names=(one.key, one.name))
        for one in kind.sizes
    )


def sizes_in(kind: Kind, given: Values) -> tuple[SizeAsNew, ...]:
    """The sizes that were typed."""
    found = ((one.key, given.figure(f"size {one.key}")) for one in kind.sizes)
    return tuple(SizeAsNew(key, figure) for key, figure in found if figure)


def add_file(piece: Opened, paths: tuple[str, ...] = ()) -> Deed[Any]:
    """Certificates, receipts, photos. paths: files that were chosen already."""
    return file_deed(piece.tag, piece.tag, paths)


def file_deed(about_ref: str, tag: str = "", paths: tuple[str, ...] = ()) -> Deed[Any]:
    """Files put to a piece, a report or a trip, by its tag or reference. tag: the piece to show afterwards.

    paths: files that were chosen already.
    """

    def do(office: Office, about: object, given: Values) -> Done:
        files, kind = given.files("files"), given.one("kind", PaperKind)
        with office.book.together():  # all of them or none
            for one in files:
                attach(office, about_ref, one.name, read_bytes(one), kind, note=given.text("note"),
                       by=given.one("by", str))  # fmt: skip
        forget_files(office, files)
        head = tr_n("One file is kept with {about}.", "{count} files are kept with {about}.", len(files),
                    about=about_ref)  # fmt: skip
        return Done(head, tag=tag)

    return Deed(
        "attach", tr("Add a paper or photo"), tr("Papers and photos of {about}", about=about_ref),
        tr("Certificates, receipts, instructions, photos: PDF, JPEG, PNG or text. Where a picture was taken is left "
           "out of it."),
        lambda facts, about: (
            Files(key="files", label=tr("Files"), needed=True, names=(tr("file"),),
                  stands=paths, hint=tr("Choose them, or drop them here.")),
            OneOf(key="kind", label=tr("What they are"), choices=[(paper_word(one), one) for one in PaperKind]),
            note(), by(facts, tr("put in by")),
        ),
        do, tr("Keep them"),
    )  # fmt: skip
