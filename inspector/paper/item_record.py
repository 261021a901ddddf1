"""The record of a piece: its verdict with reasons first, then its pictures and its whole life."""

from collections.abc import Sequence

from inspector.drawings.life_marks import row_words
from inspector.drawings.marks import outcome_word
from inspector.drawings.timeline import timeline
from inspector.gear.item_record import ItemRecord, Passed
from inspector.gear.life import LifeEntry, LifeSort
from inspector.gear.lists import PaperRow
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr, tr_n
from inspector.paper.blocks import Block, picture, row, stack, words
from inspector.paper.columns import line, names, under, widths
from inspector.paper.common import cautions, facts, heading, mark, may_be_used, word_type
from inspector.paper.document import Document
from inspector.paper.notice_reasons import why
from inspector.paper.page_style import BODY, DISPLAY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.piece_pictures import Pictured, pictures
from inspector.paper.printed import Printed
from inspector.paper.record_seen import seen_in_full

_MARK_MM = 20.0
_DAYS = (0.16, 0.84)
_PASSED = (0.4, 0.22, 0.14, 0.24)
_ELSEWHERE = {LifeSort.INSPECTION, LifeSort.PAPER}  # they have a list of their own


def item_record(record: ItemRecord, page: PageSize) -> Printed:
    """The record as a PDF, in the units in which it was kept."""
    width = page.column_pt
    blocks = (
        _hero(record, width),
        *(why(record.reasons, width, record.outcome) if record.reasons else []),
        *_facts(tr("The piece"), record.piece, width, 4),
        cautions(record.imprint.cautions, width).below(3 * GRID),
        *(block.below(3 * GRID) for block in pictures(_pictured(record), width, record.system)),
        *_facts(tr("What would change this"), record.turns, width, 2),
        *_facts(tr("The figures behind it"), record.sums, width, 2),
        *_life(record, width),
        *seen_in_full(record.seen, width),
        *(block for sort in LifeSort for block in _entries(sort, record.life.entries, width)),
        *_nothing_of(record.life.entries, width),
        *_papers(record.papers, width),
        *_passes(record.passes, width),
        *_terms(record.terms, width),
        _head_words(record, width),
    )
    return Document(record.imprint, f"{record.tag} {record.kind_name}", blocks).printed(page)


def _pictured(record: ItemRecord) -> Pictured:
    one = record
    return Pictured(one.kind, one.kind_name, one.family, one.judged_on, one.wall, one.capacity, one.damage, one.pin)


def _hero(record: ItemRecord, width_pt: float) -> Block:
    """The mark with its word, the piece, and what the verdict says and means."""
    start = _MARK_MM * MM + 4 * GRID
    text_pt = width_pt - start
    outcome = record.outcome
    day = tr("Verdict of {day}", day=show_day(record.judged_on))
    texts = [
        words(outcome_word(outcome), text_pt, word_type(outcome, DISPLAY)),
        words(f"{record.tag} · {record.kind_name}", text_pt, HEAD),
        words(_said(record.headline, outcome), text_pt, BODY.in_bold()),
        words(record.plain, text_pt, BODY),
    ]
    if may_be_used(outcome):
        texts.append(words(tr("Use: {line}", line=record.use_line), text_pt, BODY.in_bold()))
    return row((0, mark(outcome, _MARK_MM)), (start, stack([*texts, words(day, text_pt, SMALL)])))


def _said(headline: str, outcome: Outcome) -> str:
    """The headline without the word that stands above it."""
    told = headline.removeprefix(f"{outcome_word(outcome)}: ")
    return told[:1].upper() + told[1:]


def _facts(title: str, given: Sequence[Fact], width_pt: float, columns: int) -> list[Block]:
    if not given:
        return []
    return [heading(title, width_pt), facts(given, width_pt, columns, BODY)]


def _life(record: ItemRecord, width_pt: float) -> list[Block]:
    told = tr("A number in a frame stands for that many entries too close to each other to be drawn.")
    drawn = timeline(record.life, width_pt / MM)
    return [heading(drawn.title, width_pt), stack([picture(drawn), words(told, width_pt, SMALL).below(GRID)])]


def _entries(sort: LifeSort, entries: Sequence[LifeEntry], width_pt: float) -> list[Block]:
    """The entries of one sort, the newest first, each with its day and who."""
    lines = [_entry(one, width_pt) for one in reversed(entries) if one.sort is sort]
    return [heading(row_words(sort), width_pt), *lines] if lines and sort not in _ELSEWHERE else []


def _nothing_of(entries: Sequence[LifeEntry], width_pt: float) -> list[Block]:
    """The sorts of which nothing was ever written, so that nobody looks for a page that is lacking."""
    there = {one.sort for one in entries} | _ELSEWHERE
    lacking = [row_words(sort) for sort in LifeSort if sort not in there]
    if not lacking:
        return []
    said = tr("Nothing was ever written down under: {sorts}.", sorts="; ".join(lacking))
    return [words(said, width_pt, BODY).below(2.5 * GRID)]


def _entry(one: LifeEntry, width_pt: float) -> Block:
    day_pt, says_pt = widths(_DAYS, width_pt)
    says = [words(one.says, says_pt, BODY)]
    if one.outcome:
        says.insert(0, words(outcome_word(one.outcome), says_pt, BODY.in_bold()))
    return line(_DAYS, [words(show_day(one.on), day_pt, BODY.in_bold()), stack(says)], width_pt)


def _papers(papers: Sequence[PaperRow], width_pt: float) -> list[Block]:
    title = heading(tr("Documents that name it"), width_pt)
    day_pt, says_pt = widths(_DAYS, width_pt)
    lines = [
        line(_DAYS, [words(show_day(one.on), day_pt, BODY.in_bold()), words(_paper(one), says_pt, BODY)], width_pt)
        for one in papers
    ]
    return [title, *(lines or [words(tr("No document names it yet."), width_pt, BODY)])]


def _paper(one: PaperRow) -> str:
    return tr("{what} {number}", what=one.what, number=one.number)


def _passes(passes: Sequence[Passed], width_pt: float) -> list[Block]:
    if not passes:
        return []
    said = (tr("Passed or noted"), tr("Found"), tr("Limit"), tr("Where the limit comes from"))
    title = tr_n("The rule it passed ({count})", "The rules it passed ({count})", len(passes))
    named = names(_PASSED, said, width_pt)
    return [heading(title, width_pt), *under(named, [_pass(one, width_pt) for one in passes])]


def _pass(one: Passed, width_pt: float) -> Block:
    texts = (one.sentence, one.value, one.limit, one.source)
    cells = [words(text or "–", wide, SMALL.in_bold() if at == 0 else SMALL) for at, (text, wide) in
             enumerate(zip(texts, widths(_PASSED, width_pt), strict=True))]  # fmt: skip
    return line(_PASSED, cells, width_pt)


def _terms(terms: Sequence[Fact], width_pt: float) -> list[Block]:
    if not terms:
        return []
    said = "; ".join(tr("{word}: {meaning}", word=one.label, meaning=one.text) for one in terms)
    return [words(tr("Words of the trade. {said}.", said=said), width_pt, SMALL).below(2 * GRID)]


def _head_words(record: ItemRecord, width_pt: float) -> Block:
    said = tr("Ledger head when this was prepared: {head}", head=record.head)
    return words(said, width_pt, SMALL).below(2 * GRID)
