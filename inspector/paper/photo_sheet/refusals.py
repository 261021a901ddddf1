"""Why a photo cannot be read, as whoever took it understands it, and what to do."""

from inspector.language import tr
from inspector.refused import Refused


def photo_refused(why: str, what: str) -> Refused:
    """A refusal of the photo."""
    return Refused(tr("photo"), why, what)


def no_code() -> Refused:
    """Neither dark nor blurred, and yet no code."""
    return photo_refused(
        tr("No sheet's code is seen in it."),
        tr("Take the whole page, with the square code at the top right in sight and nothing on it."),
    )


def code_blurred() -> Refused:
    """No code, and nothing in the picture has sharp edges."""
    return photo_refused(
        tr("It is too blurred, or the page too small in it, to read the sheet's code."),
        tr("Let the page fill the picture, hold the telephone still with both hands, and take it again."),
    )


def other_sheet() -> Refused:
    """The code is that of another page."""
    return photo_refused(
        tr("It shows another page than the one asked for."), tr("Choose the photo that belongs to this page.")
    )


def too_small() -> Refused:
    """Too few dots for each millimetre."""
    return photo_refused(
        tr("The page is too small in it."), tr("Go nearer, until the page fills the picture, and take it again.")
    )


def too_dark() -> Refused:
    """Too little light."""
    return photo_refused(
        tr("It is too dark."), tr("Take it again in daylight or under a lamp, without your own shadow.")
    )


def too_blurred() -> Refused:
    """Out of focus, or moved."""
    return photo_refused(
        tr("It is too blurred."), tr("Lay the page down, hold the telephone still with both hands, and take it again.")
    )


def corner_missing(corner: str) -> Refused:
    """A part of the page lies beyond the picture. corner: its name, as `place_name` gives it."""
    return photo_refused(
        tr("A part of the page is missing: {corner}.", corner=corner),
        tr("Take it again from further away, with all four corners in the picture."),
    )


def marks_hidden(places: str) -> Refused:
    """Marks that should be in the picture are not seen. places: their names."""
    return photo_refused(
        tr("Too few of the square marks at the edges are seen; missing: {places}.", places=places),
        tr("Lay the page flat, with nothing on its edges and no glare, and take it again."),
    )


def not_flat() -> Refused:
    """The marks or the frames are not where they should be."""
    return photo_refused(
        tr("The boxes are not where they were printed."), tr("Lay the page flat on something hard and take it again.")
    )


def frames_hidden() -> Refused:
    """Too many frames are not seen."""
    return photo_refused(
        tr("Too many boxes cannot be seen."),
        tr("Take it again in even light, with no glare, no finger and no fold over the boxes."),
    )


def too_much_unsure() -> Refused:
    """So many boxes would have to be asked that the paper itself is the better source."""
    return photo_refused(
        tr("Too many boxes cannot be told."),
        tr("Take it again, sharp and in even light; or type the answers in from the paper."),
    )


def place_name(across: float, down: float) -> str:
    """What to call a place on the page. across, down: 0 to 1 from its top left."""
    if 1 / 3 < down < 2 / 3:
        return tr("middle of the left edge") if across < 0.5 else tr("middle of the right edge")
    if down < 0.5:
        return tr("top left") if across < 0.5 else tr("top right")
    return tr("bottom left") if across < 0.5 else tr("bottom right")
