"""A ticked sheet and its photo, all from one number. Even numbers are for setting limits, odd ones for measuring."""

from random import Random

from msgspec import Struct

from inspector.gear.sheet_layout import SheetLayout
from tests.paper.photo_sheets.camera import photo_of
from tests.paper.photo_sheets.clean_sheet import DOTS_PER_MM, CleanSheet
from tests.paper.photo_sheets.pens import Hand, any_pen
from tests.paper.photo_sheets.shots import Shot, any_shot
from tests.paper.photo_sheets.ticking import Told, tick_rows


class Case(Struct, frozen=True):
    """told: what each row truly says, in the order of the page's rows."""

    seed: int
    layout: SheetLayout
    page: int
    shot: Shot
    pen: str
    told: tuple[Told, ...]
    photo: bytes


def case(seed: int, sheets: list[CleanSheet]) -> Case:
    """One of the sheets, ticked and photographed."""
    rng = Random(seed)
    sheet = rng.choice(sheets)
    page = rng.choice([number for number, rows in enumerate(sheet.rows) if rows])
    hand = Hand(sheet.pictures[page].copy(), DOTS_PER_MM, any_pen(rng), rng)
    told = tick_rows(hand, list(sheet.rows[page]), rng)
    shot = any_shot(rng)
    return Case(seed, sheet.layout, page, shot, hand.pen.name, tuple(told), photo_of(hand.page, shot, rng))
