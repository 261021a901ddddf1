"""What is said of a clash between two copies: about what, who did what where, and what follows."""

from collections.abc import Sequence

from inspector.duties.clashes import Found
from inspector.duties.office import Office
from inspector.duties.tell_ledger import tell
from inspector.gear.merging import Clash, Clashed, Merged
from inspector.language import later, tr, tr_n, within
from inspector.register.page import Page

_MOST_TOLD = 3
CLASH_WORDS = {
    Clash.WHERE_IT_IS: later("where it is"),
    Clash.WHAT_IT_IS: later("what is written of it was changed in both"),
    Clash.LEFT_FOR_GOOD: later("it left for good in one copy and was worked on in the other"),
    Clash.EVIDENCE: later("it was kept as evidence in one copy and moved or changed in the other"),
    Clash.RETIRED_AND_USED: later("it was retired in one copy and handed out or used in the other"),
    Clash.WRITTEN_TWICE: later("the very same was written in both"),
    Clash.SAME_TAG: later("two pieces were booked in under one tag"),
    Clash.SAME_NAME: later("two people were entered under one name"),
    Clash.CHANGED_BOTH: later("it was changed in both"),
    Clash.RULEBOOK: later("limits were adopted in both"),
    Clash.COUNT_CLOSED: later("the count was closed in one copy and went on in the other"),
}
_FOLLOWS = {
    Clash.WHERE_IT_IS: later(
        "What was written last stands. It is held until a competent person has it in hand and inspects it."
    ),
    Clash.WHAT_IT_IS: later("What was written last stands, and it is held until a competent person has inspected it."),
    Clash.LEFT_FOR_GOOD: later("Both stand as written. Find out which piece it was before anybody pulls with it."),
    Clash.EVIDENCE: later("It stays evidence. Tell whoever looks into the incident that it was moved or changed."),
    Clash.RETIRED_AND_USED: later("It stays retired. Fetch it from whoever has it; nobody may use it."),
    Clash.WRITTEN_TWICE: later("Both count, which is the safe side. Where it happened once, strike one of them."),
    Clash.SAME_TAG: later("Both are held until inspected. Put the label right on both pieces."),
    Clash.SAME_NAME: later("Whoever was entered later is now called {tag}. Give the right name under People."),
    Clash.CHANGED_BOTH: later("What was written last stands. Look it through."),
    Clash.RULEBOOK: later("What was adopted last holds from its day on. Compare the two under Rules."),
    Clash.COUNT_CLOSED: later("What was marked after the close changes nothing. Count those pieces again."),
}


def told_clash(office: Office, page: Page, found: Found) -> Clashed:
    """A clash in words, each deed told as the ledger tells it."""
    about = _about(page, found)
    done = tr(_FOLLOWS[found.clash]).format(tag=about)
    if found.clash is Clash.SAME_TAG:
        done = f"{_named_apart(office, page, found)} {done}"
    return Clashed(found.clash, about, _told(office, page, found.ours), _told(office, page, found.theirs), done)


def _named_apart(office: Office, page: Page, found: Found) -> str:
    """Which two pieces they are, by kind, and where each was booked in; which tag stays and which is new."""
    first, (second, was) = found.owner[1], found.beside
    items = {one.id: one for one in page.items_with([first, second])}
    kinds = {key: within(office.kind(one.facts.kind).name) for key, one in items.items()}
    origins = page.origins([("item", key) for key in items])
    where = {key: _booked_where(page, origins[("item", key)]) for key in items}
    stays = tr(
        "The {kind} that was booked in {where} keeps the tag {tag}.",
        kind=kinds[first], where=where[first], tag=items[first].tag,
    )  # fmt: skip
    anew = tr(
        "The {kind} that was booked in as {was} {where} is now called {tag}.",
        kind=kinds[second], was=was, where=where[second], tag=items[second].tag,
    )  # fmt: skip
    return f"{stays} {anew}"


def _booked_where(page: Page, origin: str) -> str:
    return tr("here") if origin == page.origin else tr("in the copy {origin}", origin=origin)


def _about(page: Page, found: Found) -> str:
    table, key = found.owner
    names = {
        "item": lambda: {one.id: one.tag for one in page.items_with([key])},
        "vehicle": lambda: {one.id: one.tag for one in page.vehicles()},
        "trip": lambda: {one.id: one.ref for one in page.trips()},
        "person": lambda: {one.id: one.name for one in page.people()},
        "stock_take": lambda: {one.id: one.ref for one in page.stock_takes()},
    }
    return names[table]().get(key, key) if table in names else tr("the rulebook")


def _told(office: Office, page: Page, hashes: Sequence[str]) -> tuple[str, ...]:
    lines = page.lines_with(hashes)
    names = {one.id: one.name for one in page.people()}
    kinds = {key: kind.name for key, kind in office.rules.kinds.items()}
    told = [tell(lines[own], names, kinds) for own in hashes if own in lines]
    return tuple(tr("{when}: {sentence}", when=one.when, sentence=one.sentence) for one in told)


def clash_lines(merged: Merged) -> tuple[str, ...]:
    """Every clash in lines: about what and in what, who did what here and there, and what follows."""
    return tuple(line for one in merged.clashes for line in _clash_lines(one))


def clash_heads(merged: Merged) -> tuple[str, ...]:
    """The first clashes in a line each, and how many others there are."""
    heads = tuple(_head(one) for one in merged.clashes[:_MOST_TOLD])
    others = len(merged.clashes) - len(heads)
    return (*heads, tr_n("and {count} other", "and {count} others", others)) if others else heads


def _head(one: Clashed) -> str:
    return tr("{about}: {clash}.", about=one.about, clash=tr(CLASH_WORDS[one.clash]))


def _clash_lines(one: Clashed) -> tuple[str, ...]:
    here = tuple(tr("  Here – {said}", said=said) for said in one.ours)
    there = tuple(tr("  There – {said}", said=said) for said in one.theirs)
    return _head(one), *here, *there, tr("  {done}", done=one.done)


def merged_words(merged: Merged) -> tuple[str, ...]:
    """What came of bringing a copy back, a sentence a line; the clashes are told by themselves."""
    if not merged.deed_count:
        return (tr("The copy {origin} holds nothing that is not here already.", origin=merged.origin),)
    deeds = tr_n(
        "{count} deed of the copy {origin} is new here.",
        "{count} deeds of the copy {origin} are new here.",
        merged.deed_count,
        origin=merged.origin,
    )
    judged = tr_n("{count} piece is judged anew.", "{count} pieces are judged anew.", len(merged.tags))
    clashed = tr_n(
        "{count} thing does not go together; both histories stay.",
        "{count} things do not go together; both histories stay.",
        len(merged.clashes),
    )
    settled = tr("Settings, contact details and passphrases of that copy are not taken over.")
    return deeds, judged, clashed if merged.clashes else tr("Nothing contradicts anything."), settled
