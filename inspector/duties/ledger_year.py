"""Sentences of the ledger about the officer's year: repairs, labels, papers, incidents, counts, and who may judge."""

from datetime import date

from inspector.duties.ledger_line import Line, Sentence, listed, on_day, said
from inspector.gear.attachment import NewAttachment
from inspector.gear.evidence import NewRelease
from inspector.gear.incident import Gravity, NewIncident, NewIncidentEntry
from inspector.gear.item_change import NewItemChange
from inspector.gear.person import scope_word
from inspector.gear.repair import NewRepair, Work
from inspector.gear.stock_take import Counted, NewStockEntry
from inspector.language import later, show_day, tr, tr_n


def _repaired(line: Line) -> str:
    done = line.shape("as", NewRepair)
    words = {
        Work.PIN_AND_BOW: tr("pin and bow put in as a pair"),
        Work.HOOK_LATCH: tr("a new hook latch"),
        Work.RESPLICED: tr("spliced anew"),
        Work.BOLTS: tr("new bolts"),
        Work.GALVANISED: tr("zinc put on anew"),
        Work.CLEANED: tr("cleaned of rust or paint"),
        Work.OTHER: tr("other work"),
    }
    return tr(
        "{who} wrote down work on {tag}, done by {name} on {day}: {work}{note}.",
        who=line.name(done.by),
        tag=line.text("tag"),
        name=done.done_by,
        day=show_day(done.on),
        work=words[done.work],
        note=said(done.note),
    )


def _retagged(line: Line) -> str:
    change = line.shape("as", NewItemChange)
    tags = {"before": line.text("tag"), "tag": change.item.tag}
    return tr("{name} gave {before} the tag {tag}{why}.", name=line.name(change.by), why=said(change.why), **tags)


def _altered(what: str) -> Sentence:
    """A sentence about a change of what a piece was booked with. what: with {name}, {tag}, {second} and {why}."""

    def told(line: Line) -> str:
        change = line.shape("as", NewItemChange)
        second = tr(", with {name} as second name", name=line.name(change.second)) if change.second else ""
        names = {"name": line.name(change.by), "tag": line.text("tag")}
        return tr(what, second=second, why=said(change.why), **names)

    return told


def _attached(line: Line) -> str:
    paper = line.shape("as", NewAttachment)
    name, about = line.name(paper.by), line.text("about")
    return tr(
        "{name} put the file “{file}” to {about}{note}.", name=name, file=paper.name, about=about, note=said(paper.note)
    )


def _incident(line: Line) -> str:
    told = line.shape("as", NewIncident)
    word = tr("an accident") if told.gravity is Gravity.ACCIDENT else tr("a near miss")
    return tr(
        "{name} reported {word} at {place} on {day}, {ref}; {tags} held for it.",
        name=line.name(told.by) if told.by else line.who,
        word=word,
        place=told.place,
        day=show_day(told.on),
        ref=line.text("ref"),
        tags=listed(line.texts("kept")),
    )


def _to_incident(what: str) -> Sentence:
    """A sentence about what was added to a report. what: with {name}, {about}, {holder}, {ref} and {text}."""

    def told(line: Line) -> str:
        entry = line.shape("as", NewIncidentEntry)
        names = [line.name(key) for key in (entry.by, entry.second) if key]
        words = {"about": entry.about, "holder": entry.holder, "ref": line.text("incident")}
        return tr(what, name=listed(names), text=said(entry.text), **words)

    return told


def _released(line: Line) -> str:
    gone = line.shape("as", NewRelease)
    text = later("{one} and {other} released {tag} from the evidence of {ref}{why}.")
    if gone.whole:
        text = later("{one} and {other} answered that {tag} broke in {ref}{why}.")
    return tr(
        text,
        one=line.name(gone.by),
        other=line.name(gone.second),
        tag=line.text("tag"),
        ref=gone.incident,
        why=said(gone.why),
    )


def _plain(what: str, *keys: str) -> Sentence:
    """A sentence that needs texts of the facts alone. what: with {who} and each of the keys."""

    def told(line: Line) -> str:
        return tr(what, who=line.who, **{key: line.text(key) for key in keys})

    return told


def _count_begun(line: Line) -> str:
    count = tr_n("{count} piece", "{count} pieces", len(line.many("expected")))
    where = line.text("scope") or tr("everything")
    return tr(
        "{who} began the count {ref} of {where}: {count} expected.",
        who=line.who,
        ref=line.text("ref"),
        where=where,
        count=count,
    )


def _counted(line: Line) -> str:
    entry = line.shape("as", NewStockEntry)
    words = {Counted.PRESENT: tr("there"), Counted.ABSENT: tr("not there"), Counted.UNKNOWN: tr("not looked for")}
    tags = listed((*line.texts("tags"), *line.texts("labels")))
    return tr(
        "{name} marked {tags} as {word} in the count {ref}.",
        name=line.name(entry.by),
        tags=tags,
        word=words[entry.counted],
        ref=line.text("ref"),
    )


def _handed_over(line: Line) -> str:
    return tr(
        "{old} handed the office over to {new}, by the protocol {number} and the count {ref}.",
        old=line.name(line.text("from")),
        new=line.name(line.text("to")),
        number=line.text("number"),
        ref=line.text("count"),
    )


def _of_person(what: str) -> Sentence:
    """A sentence about a person. what: with {who} and {name}."""

    def told(line: Line) -> str:
        return tr(what, who=line.who, name=line.name(line.text("id")))

    return told


def _competence(what: str) -> Sentence:
    """A sentence about what a person may judge. what: with {who}, {name}, {scope} and {until}."""

    def told(line: Line) -> str:
        last = line.facts["until"]
        until = tr(" until {day}", day=on_day(date.fromisoformat(last))) if last else ""
        scope = scope_word(line.text("scope"))
        return tr(what, who=line.who, name=line.name(line.text("id")), scope=scope, until=until)

    return told


def _letters(line: Line) -> str:
    names = listed([line.name(key) for key in line.texts("people")])
    return tr(
        "{who} printed the letters {numbers} to {names}.",
        who=line.who,
        numbers=listed(line.texts("numbers")),
        names=names,
    )


def _slips(line: Line) -> str:
    tags = listed(line.texts("tags"))
    return tr("{who} printed the slips {number} for {tags}.", who=line.who, number=line.text("number"), tags=tags)


SENTENCES: dict[str, Sentence] = {
    "repair": _repaired,
    "retag": _retagged,
    "label lost": _altered(later("{name} wrote down that the label of {tag} is lost{second}{why}.")),
    "label anew": _altered(later("{name} wrote down anew what {tag} is marked with{second}{why}.")),
    "change owner": _altered(later("{name} wrote down another owner of {tag}{second}{why}.")),
    "value": _altered(later("{name} wrote down what {tag} is worth{second}{why}.")),
    "change note": _altered(later("{name} changed the note of {tag}{second}{why}.")),
    "attach": _attached,
    "report incident": _incident,
    "hold evidence": _to_incident(later("{name} kept {about} as found as well, for {ref}{text}.")),
    "add statement": _to_incident(later("{name} added what {about} said to {ref}{text}.")),
    "hand evidence over": _to_incident(later("{name} wrote down for {ref} that {holder} has {about} now{text}.")),
    "close incident": _to_incident(later("{name} closed {ref}{text}.")),
    "release vehicle": _to_incident(later("{name} released the vehicle {about} from {ref}{text}.")),
    "release evidence": _released,
    "print evidence list": _plain(
        later("{who} printed the evidence list {number} of {incident}."), "number", "incident"
    ),
    "bundle incident": _plain(later("{who} bundled the evidence of {incident} with its checksums."), "incident"),
    "begin count": _count_begun,
    "count": _counted,
    "close count": _plain(later("{who} closed the count {ref}."), "ref"),
    "print count list": _plain(later("{who} printed the list {number} of the count {ref}."), "number", "ref"),
    "print letters": _letters,
    "print slips": _slips,
    "print record": _plain(later("{who} printed the record {number} of {tag}."), "number", "tag"),
    "print report": _plain(later("{who} printed the report {number} on the gear."), "number"),
    "hand over": _handed_over,
    "back up": _plain(later("{who} made the copy {file} of the register."), "file"),
    "restore": _plain(later("The register was restored from the copy {file}."), "file"),
    "change person": _of_person(later("{who} changed what is written of {name}.")),
    "write contact": _of_person(later("{who} wrote down how to reach {name}.")),
    "remove contact": _of_person(later("{who} took out for good how to reach {name}.")),
    "set passphrase": _of_person(later("{name} got a passphrase.")),
    "remove passphrase": _of_person(later("The passphrase of {name} was taken out.")),
    "give competence": _competence(later("{who} wrote down that {name} may judge {scope}{until}.")),
    "renew competence": _competence(later("{who} renewed that {name} may judge {scope}{until}.")),
    "end competence": _competence(later("{who} wrote down that {name} may judge {scope} only{until}.")),
    "set passphrase rule": _plain(
        later("{who} set the club's wish for passphrases to “{passphrases}”."), "passphrases"
    ),
}
