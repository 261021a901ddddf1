"""Sentences of the ledger about recalls."""

from inspector.duties.ledger_line import Line, Sentence, listed, said
from inspector.duties.recall_words import answer_word, notice_words
from inspector.gear.recall_notice import NewPieceCall, NewRecall, NewRecallEntry
from inspector.language import later, tr, tr_n


def _called_in(line: Line) -> str:
    told = line.shape("as", NewRecall)
    certain, asked = (tr_n("{count} piece", "{count} pieces", len(line.many(key))) for key in ("certain", "to_ask"))
    return tr(
        "{name} entered the recall {ref} ({notice}) and held {certain} for certain, {asked} to ask{why}.",
        name=line.name(told.by),
        ref=line.text("ref"),
        notice=notice_words(told),
        certain=certain,
        asked=asked,
        why=said(told.reason),
    )


def _one_more(line: Line) -> str:
    words = {"tag": line.text("tag"), "ref": line.text("recall"), "why": said(line.text("why"))}
    return tr("{who} held {tag} as well for the recall {ref}{why}.", who=line.who, **words)


def _step(what: str) -> Sentence:
    """A sentence about what became of a piece. what: with {name}, {tag}, {ref} and {why}."""

    def told(line: Line) -> str:
        step = line.shape("as", NewPieceCall)
        return tr(what, name=line.name(step.by), tag=line.text("tag"), ref=step.recall, why=said(step.why))

    return told


def _letters(line: Line) -> str:
    """Of letters from before recalls were kept, with the reason that stood in the line itself."""
    if "recall" not in line.facts:
        return tr(
            "{who} called in {tags}, by the letters {numbers} to {names}{why}.",
            who=line.who,
            tags=listed(line.texts("tags")),
            numbers=listed(line.texts("numbers")),
            names=listed([line.name(key) for key in line.texts("people")]),
            why=said(line.text("why")),
        )
    return tr(
        "{who} printed the letters {numbers} of the recall {ref} for {tags} to {names}.",
        who=line.who,
        numbers=listed(line.texts("numbers")),
        ref=line.text("recall"),
        tags=listed(line.texts("tags")),
        names=listed([line.name(key) for key in line.texts("people")]),
    )


def _answered(line: Line) -> str:
    told = line.shape("as", NewRecallEntry)
    return tr(
        "{who} wrote down for the recall {ref} what {name} answered of {tags}: {answer}{text}.",
        who=line.who,
        ref=line.text("recall"),
        name=told.name,
        tags=listed(told.tags),
        answer=answer_word(told.answer) if told.answer else "–",
        text=said(told.text),
    )


def _closed(line: Line) -> str:
    told = line.shape("as", NewRecallEntry)
    return tr("{who} closed the recall {ref}{text}.", who=line.who, ref=line.text("recall"), text=said(told.text))


def _withdrawn(line: Line) -> str:
    told = line.shape("as", NewRecallEntry)
    doubted = line.texts("doubted")
    still = tr(" {tags} must be inspected before use.", tags=listed(doubted)) if doubted else ""
    return tr(
        "{name} and {second} withdrew the recall {ref}, which held {tags}{why}.{still}",
        name=line.name(told.by),
        second=line.name(told.person),
        ref=line.text("recall"),
        tags=listed(told.tags),
        why=said(told.text),
        still=still,
    )


def _withdrawal_letters(line: Line) -> str:
    return tr(
        "{who} printed the letters {numbers} to {names} that the recall {ref} is withdrawn.",
        who=line.who,
        numbers=listed(line.texts("numbers")),
        ref=line.text("recall"),
        names=listed([line.name(key) for key in line.texts("people")]),
    )


def _marks(line: Line) -> str:
    marks = f"{line.text('mark')} {line.text('serial')}".strip()
    said_so = {"tag": line.text("tag"), "marks": marks, "why": said(line.text("why"))}
    return tr("{name} read the marks of {tag} as “{marks}”{why}.", name=line.name(line.text("by")), **said_so)


SENTENCES: dict[str, Sentence] = {
    "call in": _called_in,
    "call one more in": _one_more,
    "not of a recall": _step(later("{name} read on {tag} that the recall {ref} does not mean it{why}.")),
    "remedy": _step(later("{name} wrote down that what {ref} asks for was done to {tag}{why}.")),
    "print recall letters": _letters,
    "answer recall": _answered,
    "close recall": _closed,
    "withdraw recall": _withdrawn,
    "print withdrawal letters": _withdrawal_letters,
    "read marks": _marks,
}
