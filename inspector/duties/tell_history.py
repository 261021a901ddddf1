"""Tell what happened to a piece, newest first, in words."""

from collections.abc import Iterator

from msgspec.structs import replace

from inspector.drawings.marks import outcome_word
from inspector.duties import tell_work
from inspector.duties.office import Office
from inspector.duties.tell_evidence import evidence_row
from inspector.duties.tell_recall_rows import recall_row
from inspector.duties.tell_whereabouts import where_words
from inspector.gear.custody import Hands, NewCustody, Untold
from inspector.gear.fitting import NewFitting
from inspector.gear.inspection import InspectionKind, NewInspection
from inspector.gear.kind import Grade, Kind, kind_word
from inspector.gear.lists import HistoryRow
from inspector.gear.opinion import NewOpinion, Stance
from inspector.gear.person import Passphrases
from inspector.gear.strike import NewDestruction, NewStrike
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.gear.verdict import Explanation
from inspector.gear.whereabouts import NewWhereabouts, Whereabouts
from inspector.language import show_day, tr, tr_n
from inspector.register.history import HistoryLine
from inspector.register.rows import from_body
from inspector.rulebook.words import fitted_words

_REF_SIGNS = 6
_MAY_BE_STRUCK = {"inspection", "use", "exposure"}


def history_of(office: Office, tag: str) -> tuple[HistoryRow, ...]:
    """Everything that was done with a piece or said of it, and its documents; a struck entry says so."""
    return tuple(row for _, row in told_lines(office, tag))


def told_lines(office: Office, tag: str) -> tuple[tuple[HistoryLine, HistoryRow], ...]:
    """The same, newest first, each row beside the line it was told from."""
    with office.book.reading() as page:
        item = page.item(tag)
        names = {person.id: person.name for person in page.people()}
        lines = page.history(item.id)
        asked = page.setting("passphrases", Passphrases.OFF.value) != Passphrases.OFF.value
    kind = office.kind(item.facts.kind)
    struck = {from_body(line.body, NewStrike).entry for line in lines if line.what == "strike"}
    return tuple((line, _marked(_as_stated(_row(line, kind, names), line, asked), line, struck)) for line in lines)


def _as_stated(row: HistoryRow, line: HistoryLine, asked: bool) -> HistoryRow:
    """Where the club asks for passphrases, an inspection of which the inspector gave none says so beside the name."""
    if asked and line.what == "inspection" and not from_body(line.body, NewInspection).vouched:
        return replace(row, by=tr("{name} (name as stated)", name=row.by))
    return row


def _marked(row: HistoryRow, line: HistoryLine, struck: set[str]) -> HistoryRow:
    """A struck entry says so; one that may be struck carries the sign to strike it by."""
    if line.key in struck:
        return replace(row, text=tr("STRUCK, does not count. {text}", text=row.text))
    return replace(row, ref=line.key[-_REF_SIGNS:]) if line.what in _MAY_BE_STRUCK else row


def _row(line: HistoryLine, kind: Kind, names: dict[str, str]) -> HistoryRow:
    if line.what == "inspection":
        seen = from_body(line.body, NewInspection)
        return HistoryRow(line.on, _occasion(seen), _seen(seen, kind), _people(names, seen.by, seen.second))
    if line.what == "use":
        use = from_body(line.body, NewUse)
        return HistoryRow(line.on, tr("Use"), _used(use), names.get(use.by, use.by))
    if line.what == "exposure":
        sea = from_body(line.body, NewExposure)
        return HistoryRow(line.on, tr("Exposure"), _exposed(sea), names.get(sea.by, sea.by))
    if line.what in {"opinion", "strike", "destruction"}:
        return _said(line, names)
    if line.what == "fitting":
        return _fitted(line, names)
    if line.what == "custody":
        return _handed(line, names)
    if line.what == "whereabouts":
        return _moved(line, names)
    if line.what in tell_work.TOLD:
        return tell_work.TOLD[line.what](line, names)
    if line.what in {"quarantine", "release"}:
        return evidence_row(line, names)
    if line.what == "piece_call":
        return recall_row(line, names)
    if line.what == "verdict":
        return HistoryRow(line.on, tr("Verdict"), from_body(line.body, Explanation).headline, "")
    papers = {"retirement_notice": tr("Retirement notice printed"), "voucher": tr("Voucher printed")}
    return HistoryRow(line.on, tr("Document"), papers.get(line.body, line.body), "")


def _fitted(line: HistoryLine, names: dict[str, str]) -> HistoryRow:
    moved = from_body(line.body, NewFitting)
    what = tr("Fitted") if moved.to else tr("Taken off")
    place = fitted_words(moved.to) if moved.to else tr("on no vehicle since")
    return HistoryRow(line.on, what, _with_note(place, moved.note), names.get(moved.by, moved.by))


def _moved(line: HistoryLine, names: dict[str, str]) -> HistoryRow:
    """Where it was put, that it is gone, or that it is here again."""
    entry = from_body(line.body, NewWhereabouts)
    text = where_words(Whereabouts(entry.where, entry.to or entry.place), names)
    text += tr(", paper: {paper}", paper=entry.paper) if entry.paper else ""
    what = tr("Found again") if entry.found else tr("Whereabouts")
    return HistoryRow(line.on, what, _with_note(text, entry.why), names.get(entry.by, entry.by))


def _said(line: HistoryLine, names: dict[str, str]) -> HistoryRow:
    if line.what == "opinion":
        said = from_body(line.body, NewOpinion)
        answered = ", ".join(one.rule for one in said.answers)
        what = tr("Doubt") if said.stance is Stance.DOUBTS else tr("Opinion")
        text = tr("answers {rules}: {why}", rules=answered, why=said.why) if answered else said.why
        return HistoryRow(line.on, what, text, names.get(said.by, said.by))
    if line.what == "strike":
        gone = from_body(line.body, NewStrike)
        text = tr("entry {ref} was wrong: {why}", ref=gone.entry[-_REF_SIGNS:], why=gone.why)
        return HistoryRow(line.on, tr("Entry struck"), text, _people(names, gone.by, gone.second))
    end = from_body(line.body, NewDestruction)
    return HistoryRow(line.on, tr("Made unusable"), end.how, _people(names, end.by, end.witness))


def _handed(line: HistoryLine, names: dict[str, str]) -> HistoryRow:
    """Lent or returned: to whom or from whom, by whom it was handed over, and what nobody told of it."""
    hands = from_body(line.body, NewCustody)
    holder = names.get(hands.holder, hands.holder)
    on_trip = tr(", trip {ref}", ref=hands.trip) if hands.trip else ""
    if hands.what is Hands.LENT:
        back = tr(", to be back by {day}", day=show_day(hands.due)) if hands.due else ""
        text = tr("to {name}", name=holder) + back + on_trip
        return HistoryRow(line.on, tr("Lent"), _with_note(text, hands.note), names.get(hands.by, hands.by))
    if hands.what is Hands.NOT_RETURNED:
        text = tr("lent to {name}, reported missing or stolen", name=holder) + on_trip
        return HistoryRow(line.on, tr("Not returned"), text, names.get(hands.by, hands.by))
    words = {Untold.USES: tr("nobody told its pulls"), Untold.EXPOSURES: tr("nobody told of salt, mud or sun")}
    text = "; ".join([tr("from {name}", name=holder) + on_trip, *(words[one] for one in hands.untold)])
    return HistoryRow(line.on, tr("Returned"), _with_note(text, hands.note), names.get(hands.by, hands.by))


def _people(names: dict[str, str], *keys: str) -> str:
    return ", ".join(names.get(key, key) for key in keys if key)


def _occasion(seen: NewInspection) -> str:
    words = {
        InspectionKind.PERIODIC: tr("Inspection"),
        InspectionKind.AFTER_EVENT: tr("Inspection after an event"),
        InspectionKind.BEFORE_USE: tr("Check before use"),
    }
    return words[seen.kind]


def _seen(seen: NewInspection, kind: Kind) -> str:
    """Faults and readings, or that all was good; then the note."""
    found = [*_faults(seen, kind), *_readings(seen, kind)]
    told = [*(found or [tr("all good")]), *_first(seen, kind), *_sooner(seen), *_for_trip(seen)]
    return _with_note("; ".join(told), seen.note)


def _faults(seen: NewInspection, kind: Kind) -> Iterator[str]:
    words = {Grade.SLIGHT: tr("slight"), Grade.BAD: tr("bad"), Grade.NOT_SEEN: tr("not seen")}
    for answer in seen.answers:
        if answer.grade is not Grade.GOOD:
            check = kind.check(answer.check)
            yield f"{check.name if check else answer.check}: {words[answer.grade]}"


def _readings(seen: NewInspection, kind: Kind) -> Iterator[str]:
    """Each measure once, with its places and figures as typed."""
    for key in dict.fromkeys(reading.measure for reading in seen.readings):
        measure = kind.measure(key)
        taken = [f"{kind_word(one.point)} {one.figure.as_typed}".strip() for one in seen.readings if one.measure == key]
        yield f"{measure.name if measure else key}: {', '.join(taken)}"


def _first(seen: NewInspection, kind: Kind) -> Iterator[str]:
    """What was typed first and changed after a preview."""
    for one in seen.first_values:
        found = kind.measure(one.observation) or kind.check(one.observation)
        place = f"{found.name if found else one.observation} {kind_word(one.point)}".strip()
        came_to = outcome_word(one.outcome)
        yield tr("{place} was first typed “{typed}” ({outcome})", place=place, typed=one.typed, outcome=came_to)


def _sooner(seen: NewInspection) -> Iterator[str]:
    if seen.next_within_days is not None:
        yield tr_n("next within {count} day", "next within {count} days", seen.next_within_days)


def _for_trip(seen: NewInspection) -> Iterator[str]:
    if seen.trip:
        yield tr("for the trip {ref}", ref=seen.trip)
    if seen.sheet:
        yield tr("on sheet {number}", number=seen.sheet)


def _used(use: NewUse) -> str:
    events = {
        Event.OVERLOAD: tr(", overload"),
        Event.DROPPED: tr(", dropped"),
        Event.RAN_OVER: tr(", run over"),
    }
    said = tr_n("{count} pull", "{count} pulls", use.pull_count) + events.get(use.event, "")
    return _with_note(said, use.note)


def _exposed(sea: NewExposure) -> str:
    words = {
        Weather.SALT: tr("salt"),
        Weather.MUD: tr("mud"),
        Weather.SUN: tr("sun"),
        Weather.HEAT: tr("heat"),
        Weather.CHEMICAL: tr("chemicals"),
        Weather.FROST: tr("frozen while wet"),
    }
    rinsed = {True: tr(", rinsed"), False: tr(", not rinsed")}.get(sea.rinsed, "") if sea.rinsed is not None else ""
    dried = {True: tr(", dried"), False: tr(", not dried")}.get(sea.dried, "") if sea.dried is not None else ""
    heat = tr(", up to {heat}", heat=sea.hottest.as_typed) if sea.hottest else ""
    days = tr_n("{count} day", "{count} days", sea.days_count)
    return _with_note(f"{words[sea.weather]}, {days}{heat}{rinsed}{dried}", sea.note)


def _with_note(said: str, note: str) -> str:
    return f"{said}. {note}" if note else said
