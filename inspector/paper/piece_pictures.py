"""The pictures of a piece: the wall of a tube, shear of a ball or pin, the damage of a strap, the strength."""

import re
from datetime import date

from msgspec import Struct

from inspector.drawings.pin_shear import pin_shear_picture
from inspector.drawings.shapes import Drawing
from inspector.drawings.shear import shear_picture
from inspector.drawings.strap_damage import strap_damage_picture
from inspector.drawings.strength_bars import has_strength_bars, strength_bars
from inspector.drawings.wall_history import wall_history
from inspector.drawings.wall_section import wall_section
from inspector.drawings.waterfall import has_waterfall, waterfall
from inspector.gear.capacity import Capacity
from inspector.gear.damage import PinWear, StrapDamage
from inspector.gear.verdict import WallForecast
from inspector.paper.blocks import Block, picture, row, stack, words
from inspector.paper.page_style import BODY, GRID, MM
from inspector.units import System


class Pictured(Struct, frozen=True):
    """What the pictures of a piece are drawn from. on: the day of its verdict; damage, pin: None for what is none."""

    kind: str
    kind_name: str
    family: str
    on: date
    wall: WallForecast | None
    capacity: Capacity | None
    damage: StrapDamage | None
    pin: PinWear | None


def pictures(one: Pictured, width_pt: float, system: System, scale: float = 1.0) -> list[Block]:
    """What people would rather look at than read; none where no picture tells anything. scale: of their own size."""
    shown: list[Block] = []
    if one.wall:
        section = wall_section(one.wall, system)
        history = wall_history(one.wall, one.on, system)
        shown.append(_pair(section, history, width_pt, scale))
    elif is_ball(one.kind, one.family, one.kind_name):
        shown.append(_titled(shear_picture(width_pt / MM), scale))
    elif one.pin:
        shown.append(_titled(pin_shear_picture(one.pin), scale))
    if one.damage:
        shown.append(_titled(strap_damage_picture(one.damage, width_pt / MM / scale, system), scale))
    if one.capacity:
        shown += _strength(one.capacity, width_pt, system, scale)
    return shown


def _strength(capacity: Capacity, width_pt: float, system: System, scale: float) -> list[Block]:
    """What became of the strength, and what gives way first; side by side where there are both."""
    found = [waterfall(capacity, system)] if has_waterfall(capacity) else []
    if has_strength_bars(capacity):
        found.append(strength_bars(capacity, system))
    if len(found) > 1:
        return [_pair(found[0], found[1], width_pt, scale)]
    return [_titled(one, scale) for one in found]


def is_ball(kind: str, family: str, kind_name: str) -> bool:
    """Whether the piece is a ball or carries one."""
    if kind:
        return family == "ball" or kind == "ball_mount"
    return "ball" in re.findall(r"[a-z]+", f"{family} {kind_name}".lower())  # kept before there was a key


def _pair(left: Drawing, right: Drawing, width_pt: float, most: float) -> Block:
    """Two drawings side by side, shrunk together where the page is too narrow. most: the largest scale."""
    scale = min(most, (width_pt - 2 * GRID) / ((left.width_mm + right.width_mm) * MM))
    return row((0, _titled(left, scale)), (width_pt - right.width_mm * MM * scale, _titled(right, scale)))


def _titled(drawing: Drawing, scale: float = 1.0) -> Block:
    title = words(drawing.title, drawing.width_mm * MM * scale, BODY.in_bold())
    return stack([title, picture(drawing, scale).below(GRID / 2)])
