"""What a form holds as plain values for its draft, and back. Whatever a draft says, nothing here breaks the form."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from PySide6.QtCore import QDate

from inspector.desk.inspect.form_head import FormHead
from inspector.desk.inspect.grade_row import GradeRow
from inspector.desk.inspect.how_box import HowBox
from inspector.desk.inspect.measure_box import MeasureBox
from inspector.gear.inspection import FirstValue, InspectionKind, Method, Surface
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from inspector.language import tr, tr_n

Values = Mapping[str, Any]


def values_of(head: FormHead, rows: list[GradeRow], boxes: list[MeasureBox], noted: tuple[FirstValue, ...]) -> Values:
    """Everything that is typed, and the first values that a preview has noted."""
    return {
        "by": head.inspector.id,
        "on": head.day.isoformat(),
        "occasion": head.occasion.value.value,
        "note": head.note.toPlainText(),
        "second": head.more.second.value,
        "gauge": head.more.gauge.text(),
        "next_within": head.more.next_within.text(),
        "grades": {row.check.key: row.grade.value for row in rows if row.grade},
        "readings": {box.measure.key: box.typed_texts for box in boxes if not box.is_empty},
        "how": {box.measure.key: _how(box.how_box) for box in boxes},
        "noted": [[one.observation, one.point, one.typed, one.outcome.value] for one in noted],
    }


def restore(values: Values, head: FormHead, rows: list[GradeRow], boxes: list[MeasureBox]) -> None:
    """Let everything stand as it was typed; what the form does not know any more is passed over."""
    _give_head(values, head)
    grades, readings, how = (_table(values, name) for name in ("grades", "readings", "how"))
    for row in rows:
        given = _text(grades, row.check.key)
        grade = Grade(given) if given in set(Grade) else None
        if grade in row.buttons:
            row.give(grade)
    for box in boxes:
        box.give({point: text for point, text in _table(readings, box.measure.key).items() if isinstance(text, str)})
        _give_how(_table(how, box.measure.key), box.how_box)


def noted_in(values: Values) -> tuple[FirstValue, ...]:
    """The first values a draft has kept: what held or retired the piece in a preview."""
    told = values.get("noted")
    lines = [one for one in told if isinstance(one, list) and len(one) == 4] if isinstance(told, list) else []
    return tuple(
        FirstValue(one[0], one[1], one[2], Outcome(one[3]))
        for one in lines
        if all(isinstance(part, str) for part in one) and one[3] in set(Outcome)
    )


def files_of(values: Values) -> tuple[Path, ...]:
    """Where the photos of a draft lie that were files."""
    told = values.get("files")
    return tuple(Path(one) for one in told if isinstance(one, str)) if isinstance(told, list) else ()


def told_of(values: Values) -> str:
    """What a draft holds, in words."""
    grades = len(_table(values, "grades"))
    readings = sum(len(_table(_table(values, "readings"), key)) for key in _table(values, "readings"))
    parts = [tr_n("One check graded.", "{count} checks graded.", grades)] if grades else []
    parts += [tr_n("One reading typed.", "{count} readings typed.", readings)] if readings else []
    parts += [tr("A note.")] if _text(values, "note").strip() else []
    parts += [_noted_words(noted)] if (noted := noted_in(values)) else []
    photos = values.get("photos")
    if isinstance(photos, int) and photos > 0:
        parts.append(
            tr_n("One photo was not kept; add it again.", "{count} photos were not kept; add them again.", photos)
        )
    return " ".join(parts)


def _noted_words(noted: tuple[FirstValue, ...]) -> str:
    typed = ", ".join(f"“{one.typed}”" for one in noted)
    return tr("The verdict held or retired it by {values}; that is told whatever you choose.", values=typed)


def _give_head(values: Values, head: FormHead) -> None:
    head.choose_inspector(_text(values, "by"))
    day = QDate.fromString(_text(values, "on"), "yyyy-MM-dd")
    if day.isValid():
        head.on.setDate(day)
    if (occasion := _text(values, "occasion")) in set(InspectionKind):
        head.occasion.choose(InspectionKind(occasion))
    head.note.setPlainText(_text(values, "note"))
    if head.more.second.has(second := _text(values, "second")):
        head.more.second.choose(second)
    head.more.gauge.setText(_text(values, "gauge"))
    head.more.next_within.setText(_text(values, "next_within"))
    if head.more.is_written:
        head.more.open()


def _how(box: HowBox) -> Values:
    how = box.how
    return {"method": how.method.value if how.method else "", "surface": how.surface.value, "block": how.block_checked}


def _give_how(values: Values, box: HowBox) -> None:
    method, surface, block = _text(values, "method"), _text(values, "surface"), values.get("block")
    if method in set(Method) and box.method.has(Method(method)):
        box.method.choose(Method(method))
    if surface in set(Surface):
        box.surface.choose(Surface(surface))
    if block is None or isinstance(block, bool):
        box.block.choose(block)


def _table(values: Values, key: str) -> Values:
    found = values.get(key)
    return found if isinstance(found, dict) else {}


def _text(values: Values, key: str) -> str:
    found = values.get(key)
    return found if isinstance(found, str) else ""
