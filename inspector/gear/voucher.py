"""What a voucher says of a piece that left the club for good, went back to its owner, or was made unusable."""

from datetime import date

from msgspec import Struct

from inspector.gear.lists import HistoryRow
from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint
from inspector.gear.verdict import Fact
from inspector.gear.whereabouts import Where


class Voucher(Struct, frozen=True):
    """The paper by which a piece's record closes. where: sold, given back or destroyed; entry: the id of what says so.

    to: buyer, owner or witness as the word asks; how: how it was made unusable, or what was said of the sale.
    headline, plain: the verdict of that day in words. mind: what whoever signs should know. life: its history, newest
    first.
    """

    imprint: Imprint
    where: Where
    entry: str
    on: date
    tag: str
    kind_name: str
    piece: tuple[Fact, ...]
    outcome: Outcome
    headline: str
    plain: str
    to: str
    how: str
    by: str
    mind: tuple[str, ...]
    life: tuple[HistoryRow, ...]
