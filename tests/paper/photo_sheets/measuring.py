"""Photos read and held against what was truly ticked: counts, and the bounds that they allow."""

import math
import time
from collections import Counter

from msgspec import Struct, field

from inspector.gear.photo_read import Answer, BoxRead, BoxState, PageRead, row_answer
from inspector.paper.photo_sheet.opening import open_photo
from inspector.paper.photo_sheet.reading import codes_in, read_page
from inspector.refused import Refused
from tests.paper.photo_sheets.cases import Case
from tests.paper.photo_sheets.ticking import Told

PASSED = {Answer.GOOD, Answer.NONE}


class Counts(Struct):
    """Of photos that must be accepted (usable) and of all.

    asked_boxes: those of rows without a sure answer, both of each; wrong: sure answers that are not the true one;
    passed: faults among them that came out as good or as untouched.
    """

    photos: int = 0
    usable: int = 0
    usable_accepted: int = 0
    accepted: int = 0
    boxes: int = 0
    asked_boxes: int = 0
    unsure_boxes: int = 0
    wrong_boxes: int = 0
    rows: int = 0
    sure_rows: int = 0
    wrong: int = 0
    passed: int = 0
    wrong_sheets: int = 0
    reasons: Counter[str] = field(default_factory=Counter)
    seconds: list[float] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


def count(counts: Counts, shown: Case) -> None:
    """Read one photo and add what came of it."""
    counts.photos += 1
    counts.usable += shown.shot.usable
    began = time.perf_counter()
    read = _read(counts, shown)
    counts.seconds.append(time.perf_counter() - began)
    if read:
        counts.accepted += 1
        counts.usable_accepted += shown.shot.usable
        for number, told in enumerate(shown.told):
            _count_row(counts, shown, read, number, told)


def _read(counts: Counts, shown: Case) -> PageRead | None:
    page = shown.layout.pages[shown.page]
    try:
        (photo,) = open_photo(shown.photo)
        codes = codes_in(photo)
        counts.wrong_sheets += sum(code.text != page.code for code in codes)
        return read_page(photo, codes[0], page, shown.layout)
    except Refused as refused:
        reason = refused.why.split(":")[0]
        counts.reasons[f"{'usable' if shown.shot.usable else 'not usable'}: {reason}"] += 1
        if shown.shot.usable:
            counts.notes.append(f"{shown.seed}: refused, {refused.why} {shown.shot}")
        return None


def _count_row(counts: Counts, shown: Case, read: PageRead, number: int, told: Told) -> None:
    good, fault = read.boxes[2 * number], read.boxes[2 * number + 1]
    for box, marked in ((good, told.good), (fault, told.fault)):
        counts.boxes += 1
        counts.unsure_boxes += box.state is BoxState.UNSURE
        counts.wrong_boxes += _wrong(box, marked)
        if _wrong(box, marked):
            counts.notes.append(f"{shown.seed}: row {number}, {box.name} is {box.state}, ticked: {told}")
    answer = row_answer(good, fault).answer
    counts.rows += 1
    if answer is Answer.UNSURE:
        counts.asked_boxes += 2
        return
    counts.sure_rows += 1
    counts.wrong += answer is not told.answer
    counts.passed += answer in PASSED and told.fault and told.answer is not Answer.GOOD
    if answer is not told.answer:
        counts.notes.append(f"{shown.seed}: row {number} read as {answer}, ticked: {told}, {shown.pen}")


def _wrong(box: BoxRead, marked: bool) -> bool:
    return box.state is not BoxState.UNSURE and (box.state is BoxState.MARKED) is not marked


def upper_bound(wrong: int, of: int, surety: float = 0.95) -> float:
    """Clopper-Pearson: the share of wrong ones that is not above this with such surety (for none: about 3 / of)."""
    if of == 0 or wrong >= of:
        return 1.0
    low, high = wrong / of, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if _at_most(wrong, of, middle) > 1 - surety else (low, middle)
    return high


def _at_most(wrong: int, of: int, share: float) -> float:
    """How likely it is to see so few wrong, were this the share."""
    if share in {0.0, 1.0}:
        return 1.0 - share
    logs = [
        math.lgamma(of + 1) - math.lgamma(k + 1) - math.lgamma(of - k + 1)
        + k * math.log(share) + (of - k) * math.log1p(-share)
        for k in range(wrong + 1)
    ]  # fmt: skip
    return math.fsum(math.exp(one) for one in logs)
