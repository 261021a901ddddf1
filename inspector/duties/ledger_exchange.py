"""Sentences of the ledger about what left the register and came into it, and about signing keys."""

from inspector.duties.ledger_line import Line, Sentence
from inspector.language import tr
from inspector.register.signing import grouped

_SHORT = 12


def _archived(line: Line) -> str:
    said = tr(
        "{who} wrote the archive {file} of the register with the head {head}.",
        who=line.who, file=line.text("file"), head=line.text("head")[:_SHORT],
    )  # fmt: skip
    private = tr(" Contact details are in it.") if line.facts["with_contacts"] else ""
    signed = tr(" It is signed with the key {key}.", key=grouped(line.text("key"))) if line.text("key") else ""
    return said + private + signed


def _opened(line: Line) -> str:
    return tr(
        "{who} opened the register from the archive {file} of the copy {origin}, with the head {head}.",
        who=line.who, file=line.text("file"), origin=line.text("origin"), head=line.text("head")[:_SHORT],
    )  # fmt: skip


def _made_key(line: Line) -> str:
    key = grouped(line.text("fingerprint"))
    if old := line.text("instead_of"):
        old = grouped(old)
        return tr("{who} made the signing key {key} in the place of {old}.", who=line.who, key=key, old=old)
    return tr("{who} made the signing key {key}.", who=line.who, key=key)


def _entered_key(line: Line) -> str:
    return tr("{who} entered the signing key {key} of a machine.", who=line.who, key=grouped(line.text("fingerprint")))


SENTENCES: dict[str, Sentence] = {
    "write archive": _archived,
    "open archive": _opened,
    "make signing key": _made_key,
    "enter signing key": _entered_key,
}
