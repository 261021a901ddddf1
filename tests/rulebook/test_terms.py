"""No word of the trade stands in a verdict without its meaning."""

import re

from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.gear.verdict import Explanation
from inspector.rulebook.judge import judge
from inspector.rulebook.terms import meanings
from inspector.rulebook.wording import explain
from tests.each import each
from tests.rulebook.dossiers import BOOK, KINDS
from tests.rulebook.faults import faulty
from tests.rulebook.sound import sound, with_size

_UNITS = {"MPA", "KN", "MM", "NM"}


def read(words: Explanation) -> str:
    """What a person reads of a verdict, without sources and without what the officer typed of the piece."""
    reasons = [text for one in words.reasons for text in (one.sentence, one.limit, one.why, one.release)]
    return "\n".join([words.headline, words.plain, words.use_line, *reasons, *(one.text for one in words.sums)])


def test_every_abbreviation_in_the_sample_s_verdicts_is_explained_beside_it(sample: Office) -> None:
    unexplained = set()
    for row in list_gear(sample).rows:
        found = open_item(sample, row.tag)
        told = {fact.label for fact in found.explanation.terms}
        short = set(re.findall(r"\b[A-Z]{2,}\b", read(found.explanation))) - {row.tag.split("-")[0]}
        unexplained |= {f"{row.tag}: {one}" for one in short - told if one.upper() not in _UNITS}
    assert unexplained == set()


def test_every_abbreviation_of_every_rule_that_fires_is_explained() -> None:
    unexplained = set()
    for kind in KINDS:
        for rule in BOOK.rules_for(kind):
            dossier = faulty(kind, rule)
            words = explain(dossier, judge(dossier, BOOK, "test"), BOOK)
            told = {fact.label for fact in words.terms}
            short = set(re.findall(r"\b[A-Z]{2,}\b", read(words))) - {"X"}
            unexplained |= {f"{rule.id}: {one}" for one in short - told if one.upper() not in _UNITS}
    assert unexplained == set()


@each(("name", "meaning"), meanings(), ids=[name for name, _ in meanings()])
def test_a_meaning_is_a_plain_short_text(name: str, meaning: str) -> None:
    assert 15 < len(meaning) < 110 and not meaning.endswith(".")
    assert name.casefold() not in meaning.casefold()


def test_every_word_is_met_somewhere(sample: Office) -> None:
    met = set()
    for row in list_gear(sample).rows:
        met |= {fact.label for fact in open_item(sample, row.tag).explanation.terms}
    for kind in KINDS:
        for rule in BOOK.rules_for(kind):
            dossier = faulty(kind, rule)
            met |= {fact.label for fact in explain(dossier, judge(dossier, BOOK, "test"), BOOK).terms}
        met |= {fact.label for fact in explain(sound(kind), judge(sound(kind), BOOK, "test"), BOOK).terms}
    thin = with_size(sound(BOOK.kind("hitch_receiver")), "wall", 0.005)  # so that the pull decides what must be left
    met |= {fact.label for fact in explain(thin, judge(thin, BOOK, "test"), BOOK).terms}
    assert {name for name, _ in meanings()} - met == set()
