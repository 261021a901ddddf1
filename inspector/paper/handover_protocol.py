"""The handover protocol: from whom to whom, what passes on, what is open, and both signatures."""

from collections.abc import Sequence

from inspector.drawings.shapes import Ink
from inspector.gear.papers import HandoverProtocol
from inspector.gear.verdict import Fact
from inspector.language import tr
from inspector.paper.blocks import Block, blank, row, stack, words
from inspector.paper.columns import line, table, widths
from inspector.paper.common import facts, heading, listed, small_cautions
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed

_SHARES = (0.3, 0.7)


def handover_protocol(protocol: HandoverProtocol, page: PageSize) -> Printed:
    """The protocol as a PDF."""
    width = page.column_pt
    blocks = (
        _people(protocol, width),
        *_handed_on(protocol.handed_on, width),
        *(listed(one, width) for one in protocol.mind),
        *(block for one in protocol.tables for block in table(one, width)),
        _signatures(protocol, width),
        small_cautions(protocol.imprint.cautions, width).below(3 * GRID),
    )
    subject = tr("From {old} to {new}", old=protocol.from_name, new=protocol.to_name)
    return Document(protocol.imprint, subject, blocks).printed(page)


def _people(protocol: HandoverProtocol, width_pt: float) -> Block:
    said = tr("The register of the club's recovery gear passes from one equipment officer to the next.")
    known = [Fact(tr("Handed over by"), protocol.from_name), Fact(tr("Taken over by"), protocol.to_name)]
    return stack([words(said, width_pt, BODY), facts(known, width_pt, 2, HEAD).below(2 * GRID)])


def _handed_on(given: Sequence[Fact], width_pt: float) -> list[Block]:
    return [heading(tr("What passes on"), width_pt), *(_fact(fact, width_pt) for fact in given)]


def _fact(fact: Fact, width_pt: float) -> Block:
    label_pt, text_pt = widths(_SHARES, width_pt)
    return line(_SHARES, [words(fact.label, label_pt, BODY), words(fact.text, text_pt, BODY.in_bold())], width_pt)


def _signatures(protocol: HandoverProtocol, width_pt: float) -> Block:
    """Both sign what they have read; kept together on one page."""
    half_pt = (width_pt - 6 * GRID) / 2
    said = tr("We have gone through these lists together.")
    old = _signs(tr("Handed over: {name}", name=protocol.from_name), half_pt)
    new = _signs(tr("Taken over: {name}", name=protocol.to_name), half_pt)
    title = heading(tr("Signed by both"), width_pt).below(0)
    return stack([title, words(said, width_pt, BODY), row((0, old), (half_pt + 6 * GRID, new)).below(GRID)]).below(
        4 * GRID
    )


def _signs(title: str, width_pt: float) -> Block:
    lines = [
        blank(label, width_pt, SMALL.in_ink(Ink.INK), 12 * MM) for label in (tr("Signature"), tr("Place and date"))
    ]
    return stack([words(title, width_pt, BODY.in_bold()), *lines])
