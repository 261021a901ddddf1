"""A ball on its shank and a pin through a receiver, each cut open with its forces; the words are given."""

from inspector.drawings.force_marks import beside, cut, lever, pull_arrow
from inspector.drawings.shapes import Circle, Ink, Polygon, RoundedRect, Shape
from inspector.language import tr

Words = tuple[str, ...]


def ball_section(pull: Words, lever_words: Words, neck: Words = ()) -> list[Shape]:
    """A ball from the side: plate, shank, nut, neck, ball; the pull at the ball's height."""
    return [
        RoundedRect((8, 33), 44, 4, fill=Ink.STEEL, tells=tr("Plate of the ball mount")),
        RoundedRect((25, 37), 10, 4.4, 0.6, fill=Ink.STEEL, tells=tr("Nut")),
        RoundedRect((27, 41.4), 6, 2.2, 0.4, fill=Ink.STEEL, tells=tr("Shank")),
        RoundedRect((23.5, 30.6), 13, 2.4, 0.5, fill=Ink.STEEL, tells=tr("Collar")),
        Polygon(((27, 30.6), (26.8, 24), (33.2, 24), (33, 30.6)), fill=Ink.STEEL, tells=tr("Neck")),
        Circle((30, 17), 8, fill=Ink.STEEL, tells=tr("Ball")),
        *pull_arrow((38, 17), (60, 17), 1.1),
        *beside((61.5, 18.0), pull),
        *pull_arrow((52, 35), (66, 35), 0.6, back=True),
        *beside((67.5, 36.0), (tr("held here"),)),
        *beside((39.5, 27.6), neck),
        *lever(18.2, 17.0, 30.2, lever_words, (22, 26)),
        *cut((22, 30.2), (38, 30.2)),
    ]


def pin_section(pull: Words, half: Words, pin: Words = ()) -> list[Shape]:
    """Two walls or ears cut open, what pulls between them, the pin through all three."""
    return [
        RoundedRect((4, 11.5), 40, 5, fill=Ink.STEEL, tells=tr("Wall or ear that holds the pin")),
        RoundedRect((4, 32.5), 40, 5, fill=Ink.STEEL, tells=tr("Wall or ear that holds the pin")),
        RoundedRect((14, 17.5), 42, 14, 1, fill=Ink.BAND, tells=tr("What pulls")),
        RoundedRect((26, 9), 6, 31, 1, fill=Ink.STEEL, tells=tr("Pin")),
        *pull_arrow((56, 24.5), (68, 24.5), 1.1),
        *beside((69.5, 25.5), pull),
        *pull_arrow((44, 14), (58, 14), 0.6, back=True),
        *beside((59.5, 15.0), half),
        *pull_arrow((44, 35), (58, 35), 0.6, back=True),
        *beside((59.5, 36.0), half),
        *beside((33.5, 42.0), pin),
        *cut((22.5, 17), (35.5, 17)),
        *cut((22.5, 32), (35.5, 32)),
    ]
