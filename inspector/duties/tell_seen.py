"""Tell every inspection of a piece in full: what was good, what was not, each reading and how it was taken."""

from collections.abc import Iterator

from inspector.drawings.marks import outcome_word
from inspector.duties.office import Office
from inspector.duties.tell_history import told_lines
from inspector.duties.tell_readings import taken_words
from inspector.gear.inspection import Answer, NewInspection
from inspector.gear.item_record import SeenOn
from inspector.gear.kind import Grade, Kind, kind_word
from inspector.gear.strike import NewStrike
from inspector.language import tr, tr_n
from inspector.register.rows import from_body


def seen_in_full(office: Office, tag: str, kind: Kind) -> tuple[SeenOn, ...]:
    """Every inspection and check, the newest first; a struck one says so and stays."""
    told = told_lines(office, tag)
    struck = {from_body(line.body, NewStrike).entry for line, _ in told if line.what == "strike"}
    return tuple(
        _seen(from_body(line.body, NewInspection), kind, (row.what, row.by), is_struck=line.key in struck)
        for line, row in told
        if line.what == "inspection"
    )


def _seen(seen: NewInspection, kind: Kind, told: tuple[str, str], *, is_struck: bool) -> SeenOn:
    occasion, by = told
    return SeenOn(
        on=seen.on,
        occasion=occasion,
        by=by,
        state=_state(seen, is_struck=is_struck),
        good=tuple(_check_name(kind, one) for one in seen.answers if one.grade is Grade.GOOD),
        faults=tuple(_fault(kind, one) for one in seen.answers if one.grade is not Grade.GOOD),
        readings=tuple(_readings(seen, kind)),
        aside=tuple(_aside(seen, kind)),
    )


def _state(seen: NewInspection, *, is_struck: bool) -> str:
    if is_struck:
        return tr("STRUCK, does not count")
    return "" if seen.competent else tr("can pass nothing: whoever looked was not entered as competent for it")


def _check_name(kind: Kind, one: Answer) -> str:
    check = kind.check(one.check)
    return check.name if check else one.check


def _fault(kind: Kind, one: Answer) -> str:
    words = {Grade.SLIGHT: tr("slight"), Grade.BAD: tr("bad"), Grade.NOT_SEEN: tr("not seen")}
    check = kind.check(one.check)
    means = {Grade.SLIGHT: check.slight, Grade.BAD: check.bad}.get(one.grade, "") if check else ""
    said = tr("{check}: {grade}", check=_check_name(kind, one), grade=words[one.grade])
    return " ".join(part for part in (f"{said}.", means, one.note) if part)


def _readings(seen: NewInspection, kind: Kind) -> Iterator[str]:
    """Each measure once with its places, as long as all of it was taken the same way."""
    taken: dict[tuple[str, str], list[str]] = {}
    for one in seen.readings:
        said = f"{kind_word(one.point)} {one.figure.as_typed}".strip()
        taken.setdefault((one.measure, taken_words(one)), []).append(said)
    for (key, how), places in taken.items():
        measure = kind.measure(key)
        yield tr("{what}: {value} ({how})", what=measure.name if measure else key, value=", ".join(places), how=how)


def _aside(seen: NewInspection, kind: Kind) -> Iterator[str]:
    """The note, what was typed first, a shorter time to the next look, and for which trip and sheet."""
    if seen.note:
        yield seen.note
    for one in seen.first_values:
        found = kind.measure(one.observation) or kind.check(one.observation)
        place = f"{found.name if found else one.observation} {kind_word(one.point)}".strip()
        came_to = outcome_word(one.outcome)
        yield tr("{place} was first typed “{typed}” ({outcome})", place=place, typed=one.typed, outcome=came_to)
    if seen.next_within_days is not None:
        yield tr_n("next within {count} day", "next within {count} days", seen.next_within_days)
    if seen.trip:
        yield tr("for the trip {ref}", ref=seen.trip)
    if seen.sheet:
        yield tr("on sheet {number}", number=seen.sheet)
