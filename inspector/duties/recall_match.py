"""How a piece answers to a notice: certain, to be asked, or not meant, and why. What nobody can read is asked."""

import calendar
from collections.abc import Mapping
from datetime import date

from msgspec import Struct

from inspector.duties.recall_marks import (
    Serial,
    as_misread,
    distance,
    is_readable,
    is_same,
    may_be_same,
    parts_of,
    plain,
)
from inspector.gear.item import NewItem
from inspector.gear.kind import Kind
from inspector.gear.recall_notice import Meant, Sure
from inspector.language import show_day, tr, within


class Answers(Struct, frozen=True):
    """How far a piece answers to a notice, or to one point of it, and why."""

    sure: Sure
    why: str


def match(meant: Meant, facts: NewItem, kinds: Mapping[str, Kind]) -> Answers:
    """Hold a piece as it is written down against what a notice says of its pieces; those it names are not looked at.

    certain: mark, kind and what tells its pieces apart are within; not_meant: one of them is legible and another.
    """
    if not says_which(meant):
        return Answers(Sure.NOT_MEANT, tr("it is not among the pieces that are named"))
    mark, kind = _mark(meant, facts), _kind(meant, facts, kinds)
    if mark.sure is Sure.NOT_MEANT:
        return mark
    serial, made = _serial(meant, facts), _made(meant, facts)
    if kind.sure is Sure.NOT_MEANT:
        odd = meant.names_serials and mark.sure is serial.sure is Sure.CERTAIN
        return Answers(Sure.TO_ASK, _both(serial.why, kind.why)) if odd else kind
    told_by = serial if meant.names_serials else made
    if told_by.sure is Sure.NOT_MEANT:
        return told_by
    if Sure.TO_ASK in {mark.sure, told_by.sure}:
        return Answers(Sure.TO_ASK, _both(*(one.why for one in (mark, told_by) if one.sure is Sure.TO_ASK)))
    off = made.why if made.sure is Sure.NOT_MEANT else ""
    return Answers(Sure.CERTAIN, _both(mark.why, told_by.why or kind.why, off))


def says_which(meant: Meant) -> bool:
    """Whether it describes its pieces at all, beside naming them."""
    return bool(meant.mark or meant.kinds or meant.names_serials or meant.made_from or meant.made_until)


def _both(*whys: str) -> str:
    return "; ".join(why for why in whys if why)


def _mark(meant: Meant, facts: NewItem) -> Answers:
    if not meant.mark:
        return Answers(Sure.CERTAIN, "")
    if not is_readable(facts.maker_mark):
        return Answers(Sure.TO_ASK, tr("no maker's mark could be read on it"))
    said = {"mark": facts.maker_mark.strip(), "meant": meant.mark}
    if is_same(facts.maker_mark, meant.mark):
        return Answers(Sure.CERTAIN, tr("its mark is “{mark}”", **said))
    if may_be_same(facts.maker_mark, meant.mark):
        return Answers(Sure.TO_ASK, tr("its mark is written as “{mark}”, which may be “{meant}”", **said))
    return Answers(Sure.NOT_MEANT, tr("its mark is “{mark}”, not “{meant}”", **said))


def _kind(meant: Meant, facts: NewItem, kinds: Mapping[str, Kind]) -> Answers:
    name = within(kinds[facts.kind].name) if facts.kind in kinds else facts.kind
    if meant.kinds and facts.kind not in meant.kinds:
        return Answers(Sure.NOT_MEANT, tr("it is a {kind}", kind=name))
    return Answers(Sure.CERTAIN, tr("it is a {kind}", kind=name) if meant.kinds else "")


def _serial(meant: Meant, facts: NewItem) -> Answers:
    """By what is stamped into it. What is not there, not legible or written in another way is asked."""
    serial = facts.serial.strip()
    if not meant.names_serials:
        return Answers(Sure.CERTAIN, "")
    if not is_readable(serial):
        why = tr("its serial is written as “{serial}”", serial=serial) if serial else tr("its serial is not known")
        return Answers(Sure.TO_ASK, why)
    found = [_batch(one, serial) for one in meant.batches]
    if meant.first or meant.last:
        found.append(_range(meant, serial))
    for sure in (Sure.CERTAIN, Sure.TO_ASK):
        if one := next((one for one in found if one.sure is sure), None):
            return one
    told = plain(f"{facts.note} {facts.paper}")
    if batch := next((one for one in meant.batches if plain(one) in told), ""):
        return Answers(Sure.TO_ASK, tr("its note or paper names “{batch}”", batch=batch))
    return Answers(Sure.NOT_MEANT, tr("its serial is {serial}", serial=serial))


def _batch(batch: str, serial: str) -> Answers:
    wanted, has = plain(batch), plain(serial)
    said = {"serial": serial, "batch": batch}
    if has.startswith(wanted):
        return Answers(Sure.CERTAIN, tr("its serial {serial} begins with {batch}", **said))
    if wanted in has or wanted.startswith(has):
        return Answers(Sure.TO_ASK, tr("its serial {serial} has to do with {batch}", **said))
    begins = has[: len(wanted)]
    if as_misread(wanted) in as_misread(has) or (
        len(wanted) > 1 and distance(begins, wanted) <= 1 and _odd(has, wanted)
    ):
        return Answers(Sure.TO_ASK, tr("its serial {serial} may be misread for {batch}", **said))
    return Answers(Sure.NOT_MEANT, "")


def _odd(has: str, wanted: str) -> bool:
    """Whether a difference is one of letters: figures that differ tell one batch from the next."""
    return any(
        one != other and not (one.isdigit() and other.isdigit()) for one, other in zip(has, wanted, strict=False)
    )


def _range(meant: Meant, serial: str) -> Answers:
    said = {"serial": serial, "range": range_words(meant)}
    inside = Answers(Sure.CERTAIN, tr("its serial {serial} lies within {range}", **said))
    asked = Answers(Sure.TO_ASK, tr("its serial {serial} may lie within {range}", **said))
    ends = [one for one in (parts_of(meant.first), parts_of(meant.last)) if one]
    if plain(serial) in {plain(meant.first), plain(meant.last)}:
        return inside
    has = parts_of(serial)
    if has is None or not ends:
        return asked
    if (has.before, has.after) == (ends[0].before, ends[0].after):
        if _between(meant, has.number):
            return inside
        return Answers(Sure.NOT_MEANT, "") if has.digits in _lengths(ends) else asked
    return asked if _may_lie(meant, has, ends) else Answers(Sure.NOT_MEANT, "")


def _lengths(ends: list[Serial]) -> range:
    """How many figures the serials of the range have."""
    digits = [one.digits for one in ends]
    return range(min(digits), max(digits) + 1)


def _may_lie(meant: Meant, has: Serial, ends: list[Serial]) -> bool:
    """Whether it would lie within, were its letters misread, left out or others."""
    misread = parts_of(as_misread(f"{has.before}{has.number:0{has.digits}d}{has.after}"))
    wanted = ends[0].before
    near = distance(has.before, wanted) <= 1 or has.before.endswith(wanted) or wanted.endswith(has.before)
    return (near and _between(meant, has.number)) or (misread is not None and _misread_between(meant, misread.number))


def _misread_between(meant: Meant, number: int) -> bool:
    first, last = (parts_of(as_misread(plain(one))) for one in (meant.first, meant.last))
    return (first is None or first.number <= number) and (last is None or number <= last.number)


def _between(meant: Meant, number: int) -> bool:
    first, last = parts_of(meant.first), parts_of(meant.last)
    return (first is None or first.number <= number) and (last is None or number <= last.number)


def range_words(meant: Meant) -> str:
    """The range of serials in words."""
    if meant.first and meant.last:
        return tr("{first} to {last}", first=meant.first, last=meant.last)
    return tr("{first} and later", first=meant.first) if meant.first else tr("up to {last}", last=meant.last)


def _made(meant: Meant, facts: NewItem) -> Answers:
    """By the day of making. A first of a month may stand for the month, and one of January for the year."""
    if not (meant.made_from or meant.made_until):
        return Answers(Sure.CERTAIN, "")
    day = facts.made_on
    if day is None:
        return Answers(Sure.TO_ASK, tr("nobody knows when it was made"))
    lowest, highest = meant.made_from or date.min, meant.made_until or date.max
    said = tr("it was made on {day}", day=show_day(day))
    if lowest <= day <= highest:
        return Answers(Sure.CERTAIN, said)
    if day <= highest and _latest(day) >= lowest:
        return Answers(Sure.TO_ASK, tr("{said}, which may stand for all of its month or year", said=said))
    return Answers(Sure.NOT_MEANT, said)


def _latest(day: date) -> date:
    if day.day > 1:
        return day
    month = 12 if day.month == 1 else day.month
    return date(day.year, month, calendar.monthrange(day.year, month)[1])
