"""Ratings held against each other: which is the lower, and whether one is more than another. Unknown is never less."""

from inspector.gear.item import Rating
from inspector.gear.kind import Basis

NONE = Rating(Basis.UNRATED, None, None, "none")


def is_written(rating: Rating) -> bool:
    """Whether it was read on the piece or on a certificate; one from memory is none."""
    return rating.figure is not None and rating.basis is not Basis.UNRATED and rating.stated_on != "memory"


def is_within(rating: Rating, other: Rating) -> bool:
    """Whether a rating promises no more than another in any way; False wherever that cannot be told."""
    if not (is_written(rating) and is_written(other)) or rating.figure is None or other.figure is None:
        return False
    if rating.basis is not other.basis:
        mine, its = _failure_n(rating), _failure_n(other)
        return mine is not None and its is not None and mine <= its
    if rating.figure.si > other.figure.si:
        return False
    if rating.basis is not Basis.WLL or rating.design_factor == other.design_factor:
        return True
    if rating.design_factor is None:
        return True  # an unknown factor is held by a rule of its own
    return other.design_factor is not None and rating.design_factor <= other.design_factor


def lower_of(one: Rating, other: Rating | None) -> Rating:
    """The rating of two parts that bear one pull; none where one bears none or nobody can tell which is lower."""
    if other is None or not is_written(other) or not is_written(one):
        return NONE
    if is_within(other, one):
        return other
    return one if is_within(one, other) else NONE


def _failure_n(rating: Rating) -> float | None:
    if rating.figure is None:
        return None
    if rating.basis is Basis.MBS:
        return rating.figure.si
    if rating.basis is Basis.WLL and rating.design_factor is not None:
        return rating.figure.si * rating.design_factor
    return None
