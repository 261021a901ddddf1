"""What was changed of what a piece was booked with: its tag, its label, its owner, its value."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.item import NewItem


class Altered(StrEnum):
    """What the change is about."""

    TAG = "tag"
    LABEL_LOST = "label_lost"  # the rating cannot be read any more: what is remembered is no rating
    LABEL_NEW = "label_new"  # a rating read anew from the piece or from a certificate
    OWNER = "owner"
    VALUE = "value"
    NOTE = "note"
    MARKS = "marks"  # the maker's mark and serial, read anew
    VISIT = "visit"  # a visiting piece comes along on another trip
    REPAIRED = "repaired"  # a repair left it shorter, or with a part that is marked with less


class NewItemChange(Struct, frozen=True):
    """A piece's facts from a day on, whole. by: a person's id; second: another, where the change asks for two."""

    on: date
    what: Altered
    item: NewItem
    by: str
    why: str
    second: str = ""


class ItemChange(Struct, frozen=True):
    """A logged change."""

    id: str
    item_id: str
    facts: NewItemChange
