"""Joints that no strength makes right, cut open with their forces: weld torn from one side, bare tube, tie-down."""

from inspector.drawings.force_marks import beside, cut, lever, pull_arrow
from inspector.drawings.rig_arcs import arc, ring
from inspector.drawings.shapes import Anchor, Circle, Ink, Line, Polygon, Polyline, RoundedRect, Shape
from inspector.drawings.shear_parts import Words
from inspector.language import tr


def weld_section(pull: Words, lever_words: Words, drop_mm: float = 17.0) -> list[Shape]:
    """A shank with a plate welded below it: the pull at the plate's hole opens the weld from below.

    drop_mm: how far the hole is drawn below the middle of the shank.
    """
    hole = 19 + drop_mm
    foot = max(hole + 2, 30.0)
    plate = ((38, 12), (43, 12), (43, max(hole - 6, 12)), (56, hole - 2), (56, hole + 2), (43, foot), (38, foot))
    return [
        RoundedRect((4, 12), 34, 14, fill=Ink.STEEL, tells=tr("Shank")),
        RoundedRect((4, 14.4), 34, 9.2, fill=Ink.BAND, tells=tr("Inside of the shank")),
        Polygon(plate, fill=Ink.STEEL, tells=tr("Plate with the hole")),
        Polygon(((34.6, 12), (38, 12), (38, 8.6)), ink=Ink.INK, fill=Ink.THIN, tells=tr("Weld pressed together")),
        Polygon(((34.6, 26), (38, 26), (38, 29.4)), ink=Ink.LIMIT, fill=Ink.LIMIT, tells=tr("Weld torn open")),
        RoundedRect((47, hole - 2.4), 4, 4.4, ink=None, fill=Ink.PAPER, tells=tr("Hole")),
        Polyline(((49, hole - 3.6), (49, hole + 4.4)), width_mm=2.2, tells=tr("Pin of the shackle")),
        *pull_arrow((51, hole), (68.5, hole), 1.1),
        *beside((69.5, hole + 1), pull),
        *pull_arrow((21, 28.6), (33.6, 28.6), 0.6, back=True),
        *beside((33, 33.2), (tr("torn open"),), Anchor.END),
        *pull_arrow((21, 9.6), (33.6, 9.6), 0.5),
        *beside((20, 10.6), (tr("pressed"),), Anchor.END),
        Line((2, 19), (62, 19), ink=Ink.FAINT, width_mm=0.15, dash_mm=(2.4, 0.8), tells=tr("Middle of the shank")),
        *_right_lever(62, 19, hole, lever_words),
    ]


def _right_lever(at_mm: float, from_mm: float, to_mm: float, words: Words) -> list[Shape]:
    """A lever whose words stand on its right."""
    bare = lever(at_mm, from_mm, to_mm, (), (at_mm + 1.5, at_mm + 1.5))
    return [*bare, *beside((at_mm + 2.2, (from_mm + to_mm) / 2 + 0.6), words)]


def tube_section(pull: Words, lever_words: Words, pin: Words = ()) -> list[Shape]:
    """An empty receiver with a strap's eye over its pin: the pin bends over the whole width, the lip cuts."""
    eye = ((66, 23), (34, 23), *arc((29, 24.5), 4.6, -20, -340), (34, 26), (66, 26))
    return [
        RoundedRect((4, 10), 44, 4, fill=Ink.STEEL, tells=tr("Receiver, one wall")),
        RoundedRect((4, 35), 44, 4, fill=Ink.STEEL, tells=tr("Receiver, other wall")),
        RoundedRect((26.4, 7.6), 5.2, 33.4, 1, fill=Ink.STEEL, tells=tr("Hitch pin")),
        Polyline(eye, width_mm=1.2, tells=tr("Eye of the strap")),
        *pull_arrow((54, 24.5), (68, 24.5), 1.1),
        *beside((69.5, 25.5), pull),
        *pull_arrow((48, 12), (60, 12), 0.6, back=True),
        *pull_arrow((48, 37), (60, 37), 0.6, back=True),
        *lever(18.2, 12.0, 24.5, lever_words, (24, 24)),
        *cut((22.5, 24.5), (35.5, 24.5)),
        Circle((48, 14), 1.4, ink=Ink.LIMIT, width_mm=0.5, tells=tr("Sharp lip")),
        Circle((48, 35), 1.4, ink=Ink.LIMIT, width_mm=0.5, tells=tr("Sharp lip")),
        *beside((51, 17.4), (tr("sharp lip"),)),
        *beside((33.5, 43.2), pin),
    ]


def tie_down_section(pull: Words) -> list[Shape]:
    """A bent sheet under one bolt, a shackle in its slot."""
    return [
        RoundedRect((8, 10), 5, 30, fill=Ink.STEEL, tells=tr("Frame of the vehicle")),
        Polyline(((14, 12), (14, 30), (20, 36), (44, 36)), width_mm=1.4, tells=tr("Thin sheet")),
        RoundedRect((6, 17.6), 12, 2.8, 0.6, fill=Ink.BAND, tells=tr("The only bolt")),
        RoundedRect((17, 15.6), 2.6, 6.8, 0.6, fill=Ink.STEEL, tells=tr("Head of the bolt")),
        *beside((21.5, 20.0), (tr("one bolt"),)),
        *cut((14, 25.5), (22, 33)),
        *beside((23, 29.6), (tr("the sheet bends open"),)),
        ring((40, 36), 2.6, 1.0),
        *pull_arrow((42.6, 36), (64, 36), 1.1),
        *beside((65.5, 37), pull),
    ]
