"""Say in words what becomes of a list, for command and window."""

from inspector.gear.import_list import Column, Fate, Fates
from inspector.language import tr, tr_n


def fate_word(fate: Fate) -> str:
    """What becomes of a row, in a word."""
    words = {
        Fate.TAKEN: tr("taken"),
        Fate.REFUSED: tr("not taken"),
        Fate.DUPLICATE: tr("there already"),
        Fate.BLANK: tr("left blank"),
    }
    return words[fate]


def fate_counts(run: Fates) -> str:
    """How many rows have which fate."""
    counts = {one: run.count(one) for one in Fate}
    return " · ".join(
        (
            tr_n("{count} row would be taken", "{count} rows would be taken", counts[Fate.TAKEN]),
            tr_n("{count} cannot be taken", "{count} cannot be taken", counts[Fate.REFUSED]),
            tr_n("{count} is there already", "{count} are there already", counts[Fate.DUPLICATE]),
            tr_n("{count} is no row of the list", "{count} are no rows of the list", counts[Fate.BLANK]),
        )
    )


def what_is_told(column: Column) -> str:
    """How the cells of a column are read, as far as it is known: "t · WLL · decimal sign ,"."""
    parts = [column.unit, column.basis.replace("_", " ").upper()]
    if column.decimal:
        parts.append(tr("decimal sign {sign}", sign=column.decimal))
    if column.order:
        parts.append({"dmy": tr("day, month, year"), "mdy": tr("month, day, year"), "ymd": tr("year, month, day"),
                      "count": tr("count of days")}[column.order])  # fmt: skip
    return " · ".join(part for part in parts if part)


def stated_choices() -> tuple[tuple[str, str], ...]:
    """Where the ratings of a list may have been read off, as words and what is kept."""
    return (
        (tr("nobody knows: they count as from memory, which is as good as none"), "memory"),
        (tr("off the pieces themselves"), "piece"),
        (tr("off their certificates"), "certificate"),
    )


def open_questions(run: Fates) -> int:
    """How many questions nobody and nothing has answered."""
    return sum(1 for one in run.questions if not one.answer)
