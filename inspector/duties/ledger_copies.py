"""Sentences of the ledger about field copies."""

from inspector.duties.ledger_line import Line, said
from inspector.gear.merging import FieldCopy, Merged
from inspector.language import tr, tr_n


def _taken(line: Line) -> str:
    copy = line.shape("as", FieldCopy)
    return tr(
        "{who} made the field copy {origin}, which {holder} has{note}.",
        who=line.who,
        origin=copy.origin,
        holder=line.name(copy.holder),
        note=said(copy.what_for),
    )


def _begun(line: Line) -> str:
    copy = line.shape("as", FieldCopy)
    return tr(
        "The field copy {origin} goes on from here, from the register {home}.",
        origin=copy.origin,
        home=line.text("of"),
    )


def _merged(line: Line) -> str:
    merged = line.shape("as", Merged)
    words = {"who": line.who, "origin": merged.origin}
    if not merged.clashes:
        return tr_n(
            "{who} brought back the copy {origin} with {count} deed.",
            "{who} brought back the copy {origin} with {count} deeds.",
            merged.deed_count,
            **words,
        )
    about = ", ".join(dict.fromkeys(one.about for one in merged.clashes))
    return tr_n(
        "{who} brought back the copy {origin} with {count} deed. It did not go together with: {about}.",
        "{who} brought back the copy {origin} with {count} deeds. They did not go together with: {about}.",
        merged.deed_count,
        about=about,
        **words,
    )


SENTENCES = {"take field copy": _taken, "begin field copy": _begun, "merge": _merged}
