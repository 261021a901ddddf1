"""Words of the trade with their meaning, so that no sentence stands without it."""

from collections.abc import Iterable

from inspector.gear.verdict import Explanation, Fact, Reason
from inspector.language import once_a_language, tr


def terms_in(words: Explanation) -> tuple[Fact, ...]:
    """The trade's words that a verdict uses, each once, with what it means."""
    return terms_of("\n".join(_said(words)))


def terms_of(text: str) -> tuple[Fact, ...]:
    """The trade's words in a text, each once, with what it means."""
    plain = text.casefold()
    return tuple([term for name, term in _sought() if name in plain and _is_word_of(name, plain)])


@once_a_language
def _sought() -> tuple[tuple[str, Fact], ...]:
    """Each term as it is sought, in small letters, and what is told of it."""
    return tuple((name.casefold(), Fact(name, meaning)) for name, meaning in meanings())


def _is_word_of(name: str, text: str) -> bool:
    """Whether the words begin a word of the text: "ears" is not said by "gears"."""
    at = text.find(name)
    while at > 0 and (text[at - 1].isalnum() or text[at - 1] == "_"):
        at = text.find(name, at + 1)
    return at >= 0


def _said(words: Explanation) -> Iterable[str]:
    """All that is read of a verdict but the sources, which are quoted in their own words."""
    yield from (words.headline, words.plain, words.use_line)
    for fact in (*words.sums, *words.piece):
        yield from (fact.label, fact.text)
    for reason in words.reasons:
        yield from _read_of(reason)


def _read_of(reason: Reason) -> Iterable[str]:
    yield from (reason.sentence, reason.value, reason.limit, reason.why, reason.release)


@once_a_language
def meanings() -> tuple[tuple[str, str], ...]:
    """Every word that is explained, and its meaning."""
    return (*_of_strength(), *_of_use(), *_of_steel(), *_of_ropes())


def _of_strength() -> tuple[tuple[str, str], ...]:
    return (
        (tr("WLL"), tr("working load limit: the most its maker lets it bear in use; it fails only far above it")),
        (tr("working load limit"), tr("the most its maker lets it bear in use; it fails only far above it")),
        (
            tr("MBS"),
            tr("minimum breaking strength: what a new one bears before it breaks, with no reserve in it"),
        ),
        (tr("design factor"), tr("how many times its working load limit a new piece bears before it breaks")),
        (tr("first lasting set"), tr("the load from which it stays bent or stretched when it is let go")),
        (tr("reference pull"), tr("the pull that the club reckons with where a piece carries no rating")),
        (tr("derate"), tr("it may be used, but less strength is reckoned with than its marking says")),
    )


def _of_use() -> tuple[tuple[str, str], ...]:
    return (
        (tr("competent person"), tr("somebody whom the club has entered as able to judge this kind of gear")),
        (tr("periodic inspection"), tr("the thorough one, with every check and measurement, at its set time")),
        (
            tr("recall"),
            tr("a notice by which its maker, a regulator or the club asks for gear back, since it may be faulty"),
        ),
        (tr("kinetic pull"), tr("a pull with the swing of a moving vehicle on a stretching strap or rope")),
        (tr("static pull"), tr("a slow, steady pull: a winch, or a tow-out without a run")),
        (tr("road towing"), tr("drawing a trailer or vehicle along a road")),
        (tr("special service"), tr("an overload, a drop, a run-over, heat or chemicals within the last year")),
    )


def _of_steel() -> tuple[tuple[str, str], ...]:
    return (
        (tr("throat"), tr("of a weld: its thickness across the narrowest way; of a hook: its opening")),
        (tr("dressed"), tr("ground smooth to bright metal, so that the gauge stands flat")),
        (tr("rough face"), tr("a face not ground smooth; a gauge reads it too thick")),
        (tr("gauge's allowance"), tr("what the gauge may read wrong; it is taken off the reading")),
        (tr("tried on its block"), tr("held against a step of known thickness that day, to show that it reads true")),
        (tr("pin hole"), tr("the hole through both walls that the hitch pin goes through")),
        (tr("insert"), tr("the block that slides into a receiver, with a hole for a shackle")),
        (tr("ears"), tr("the two ends of a shackle that its pin goes through")),
    )


def _of_ropes() -> tuple[tuple[str, str], ...]:
    return (
        (tr("thimble"), tr("the grooved lining of a rope's eye")),
        (tr("sheave"), tr("the grooved wheel that a line runs over")),
        (tr("splice"), tr("an eye or joint made by working the strands into the rope")),
        (tr("fairlead"), tr("the guide in front of a winch that the line runs through")),
        (tr("valley"), tr("the groove between two outer strands of a wire rope")),
    )
