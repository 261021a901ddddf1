"""What the officer says of the columns: another meaning, and the answers to what was asked."""

from msgspec.structs import replace

from inspector.duties.importing.columns import meanings, reproven
from inspector.duties.importing.figures import LENGTHS, WEIGHTS
from inspector.duties.importing.headings import heading_meant
from inspector.duties.importing.words import plain
from inspector.duties.office import Office
from inspector.gear.import_list import Asks, Column, Field, Matching, Sheet
from inspector.gear.kind import Basis
from inspector.language import tr
from inspector.refused import Refused

_ANSWERS = {
    Asks.UNIT: (*WEIGHTS, *LENGTHS),
    Asks.BASIS: tuple(one.value for one in Basis if one is not Basis.UNRATED),
    Asks.DECIMAL: (".", ","),
    Asks.ORDER: ("dmy", "mdy", "ymd", "count"),
}


def column_called(matching: Matching, name: str) -> Column:
    """The column with this letter or heading; refused where there is none, or several share the heading."""
    wanted = name.strip()
    found = [one for one in matching.columns if one.letter == wanted.upper()]
    found = found or [one for one in matching.columns if one.heading and plain(one.heading) == plain(wanted)]
    if len(found) == 1:
        return found[0]
    why = (
        tr("Several columns are called “{name}”.", name=name)
        if found
        else tr("No column is called “{name}”.", name=name)
    )
    raise Refused(tr("column"), why, tr("Name it by its letter: A, B, C …"))


def with_meaning(office: Office, sheet: Sheet, matching: Matching, at: int, field: str) -> Matching:
    """The column at a place means something else; what its heading and cells tell of that is found anew."""
    if field not in dict(meanings(office)):
        why = tr("“{field}” is nothing that a column can mean.", field=field)
        names = ", ".join(one for one, _ in meanings(office) if one)
        raise Refused(tr("column"), why, tr("Use one of: {names}.", names=names))
    old = matching.columns[at]
    meant = heading_meant(old.heading, {})
    basis = meant.basis if field == Field.RATING else ""
    new = Column(old.at, old.heading, field, meant.unit, basis)
    columns = (*matching.columns[:at], new, *matching.columns[at + 1 :])
    return reproven(office, sheet, replace(matching, columns=columns), at)


def with_answer(matching: Matching, at: int, about: Asks, answer: str) -> Matching:
    """A question about a column is answered; an empty answer takes it back."""
    if answer and answer not in _ANSWERS[about]:
        why = tr("“{answer}” is no answer.", answer=answer)
        raise Refused(matching.columns[at].heading, why, tr("Use one of: {names}.", names=", ".join(_ANSWERS[about])))
    old = matching.columns[at]
    column = {
        Asks.UNIT: replace(old, unit=answer),
        Asks.BASIS: replace(old, basis=answer),
        Asks.DECIMAL: replace(old, decimal=answer),
        Asks.ORDER: replace(old, order=answer),
    }[about]
    return replace(matching, columns=(*matching.columns[:at], column, *matching.columns[at + 1 :]))
