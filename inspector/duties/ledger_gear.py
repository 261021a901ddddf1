"""Sentences of the ledger about a single piece: booked, inspected, used, doubted, struck, fitted, destroyed."""

from inspector.duties.ledger_line import Line, Sentence, listed, said
from inspector.gear.fitting import NewFitting
from inspector.gear.inspection import FirstValue, NewInspection
from inspector.gear.item import NewItem
from inspector.gear.kind import Grade
from inspector.gear.opinion import NewOpinion
from inspector.gear.strike import NewDestruction, NewStrike
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.language import show_day, tr, tr_n
from inspector.register.rows import from_facts
from inspector.rulebook.words import fitted_words

_REF_SIGNS = 6


def _booked(line: Line) -> str:
    piece = line.whole(NewItem)
    owner = tr(", owner: {owner}", owner=piece.owner) if piece.owner else ""
    kind = line.kind(piece.kind)
    return tr("{who} booked in {tag} ({kind}{owner}).", who=line.who, tag=piece.tag, kind=kind, owner=owner)


def _inspected(line: Line) -> str:
    seen = line.shape("as", NewInspection)
    done = tr(
        "{names} inspected {tag} on {day}: {found}.",
        names=listed([line.name(key) for key in (seen.by, seen.second) if key]),
        tag=line.text("tag"),
        day=show_day(seen.on),
        found=_found(seen),
    )
    written = tr("{who} wrote it down.", who=line.who) if line.by not in {seen.by, seen.second} else ""
    bound = "" if seen.competent else tr("It can hold or retire the piece, not pass it.")
    return " ".join(part for part in (done, written, bound) if part)


def _found(seen: NewInspection) -> str:
    grades = [one.grade for one in seen.answers]
    words = {
        Grade.BAD: tr("{count} × bad"),
        Grade.SLIGHT: tr("{count} × slight"),
        Grade.NOT_SEEN: tr("{count} × not seen"),
        Grade.GOOD: tr("{count} × good"),
    }
    told = [word.format(count=grades.count(grade)) for grade, word in words.items() if grade in grades]
    if seen.readings:
        told.append(tr_n("{count} reading", "{count} readings", len(seen.readings)))
    return ", ".join(told)


def _left(line: Line) -> str:
    first = [from_facts(one, FirstValue).typed for one in line.many("first")]
    return tr(
        "{who} left an inspection of {tag} unwritten after {values} had held or retired it in the preview.",
        who=line.who,
        tag=line.text("tag"),
        values=listed([f"“{one}”" for one in first]),
    )


def _used(line: Line) -> str:
    use = line.shape("as", NewUse)
    events = {
        Event.OVERLOAD: tr(", an overload"),
        Event.DROPPED: tr(", and that it was dropped"),
        Event.RAN_OVER: tr(", and that it was run over"),
    }
    pulls = tr_n("{count} pull", "{count} pulls", use.pull_count) + events.get(use.event, "")
    return tr(
        "{who} logged {pulls} of {tag} on {day}{told}.",
        who=line.who,
        pulls=pulls,
        tag=line.text("tag"),
        day=show_day(use.on),
        told=line.as_told_by(use.by),
    )


def _exposed(line: Line) -> str:
    sea = line.shape("as", NewExposure)
    words = {
        Weather.SALT: tr("salt"),
        Weather.MUD: tr("mud"),
        Weather.SUN: tr("sun"),
        Weather.HEAT: tr("heat"),
        Weather.CHEMICAL: tr("chemicals"),
        Weather.FROST: tr("frost while it was wet"),
    }
    return tr(
        "{who} logged {days} of {weather} for {tag} from {day} on{told}.",
        who=line.who,
        days=tr_n("{count} day", "{count} days", sea.days_count),
        weather=words[sea.weather],
        tag=line.text("tag"),
        day=show_day(sea.on),
        told=line.as_told_by(sea.by),
    )


def _doubted(line: Line) -> str:
    spoken = line.shape("as", NewOpinion)
    return tr("{name} doubted {tag}{why}.", name=line.name(spoken.by), tag=line.text("tag"), why=said(spoken.why))


def _answered(line: Line) -> str:
    spoken = line.shape("as", NewOpinion)
    return tr(
        "{name} answered {rules} of {tag}{why}.",
        name=line.name(spoken.by),
        rules=listed([f"“{one.rule}”" for one in spoken.answers]),
        tag=line.text("tag"),
        why=said(spoken.why),
    )


def _struck(line: Line) -> str:
    gone = line.shape("as", NewStrike)
    fell = tr(" The retirement that rested on it fell.") if gone.voids else ""
    return (
        tr(
            "{one} and {other} struck the entry {ref} of {tag}{why}.",
            one=line.name(gone.by),
            other=line.name(gone.second),
            ref=gone.entry[-_REF_SIGNS:],
            tag=line.text("tag"),
            why=said(gone.why),
        )
        + fell
    )


def _destroyed(line: Line) -> str:
    end = line.shape("as", NewDestruction)
    seen = tr(", seen by {name}", name=line.name(end.witness)) if end.witness else ""
    return tr(
        "{name} made {tag} unusable on {day}{seen}{how}.",
        name=line.name(end.by),
        tag=line.text("tag"),
        day=show_day(end.on),
        seen=seen,
        how=said(end.how),
    )


def _fitted(line: Line) -> str:
    moved = line.shape("as", NewFitting)
    if moved.to is None:
        raise ValueError("a part that was fitted sits somewhere")
    return tr(
        "{name} fitted {tag} to {place} on {day}{note}.",
        name=line.name(moved.by),
        tag=line.text("tag"),
        place=fitted_words(moved.to),
        day=show_day(moved.on),
        note=said(moved.note),
    )


def _taken_off(line: Line) -> str:
    moved = line.shape("as", NewFitting)
    return tr(
        "{name} took {tag} off its vehicle on {day}{note}.",
        name=line.name(moved.by),
        tag=line.text("tag"),
        day=show_day(moved.on),
        note=said(moved.note),
    )


def _judged_anew(line: Line) -> str:
    return tr("The program judged {tags} anew, since their day had come.", tags=listed(line.texts("tags")))


def _notice(line: Line) -> str:
    return tr(
        "{who} printed the retirement notice {number} of {tag}.",
        who=line.who,
        number=line.text("number"),
        tag=line.text("tag"),
    )


SENTENCES: dict[str, Sentence] = {
    "book in": _booked,
    "inspect": _inspected,
    "leave inspection": _left,
    "use": _used,
    "expose": _exposed,
    "doubt": _doubted,
    "answer": _answered,
    "strike": _struck,
    "destroy": _destroyed,
    "fit part": _fitted,
    "take off part": _taken_off,
    "judge anew": _judged_anew,
    "print notice": _notice,
}
