"""Every piece ever booked in, held against a notice: which are meant, which are to be asked, which are not, and why."""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from inspector.duties.office import Office
from inspector.duties.recall_checks import check_meant, recall_called
from inspector.duties.recall_match import Answers, match
from inspector.duties.tell_whereabouts import where_words
from inspector.gear.item import Item
from inspector.gear.recall_notice import Meant, Sure
from inspector.gear.whereabouts import Where
from inspector.language import tr
from inspector.register.page import Page


class Match(Struct, frozen=True):
    """A piece and how it answers to a notice. marks: its maker's mark and serial; place: where it is, in words."""

    item: Item
    kind_name: str
    sure: Sure
    why: str
    place: str

    @property
    def marks(self) -> str:
        """What is written down of its marks, or that nothing is."""
        facts = self.item.facts
        return " ".join(one for one in (facts.maker_mark, facts.serial) if one) or tr("none written down")


class Searched(Struct, frozen=True):
    """What a search came to, each by tag. destroyed: how many pieces were not looked at, since they are no more."""

    certain: tuple[Match, ...]
    to_ask: tuple[Match, ...]
    not_meant: tuple[Match, ...]
    destroyed: int

    @property
    def held(self) -> tuple[Match, ...]:
        """Those that a recall holds."""
        return (*self.certain, *self.to_ask)


def search_recall(office: Office, meant: Meant) -> Searched:
    """Look through the register by a notice; nothing is held by it."""
    check_meant(office, meant)
    with office.book.reading() as page:
        return searched(office, page, meant)


def searched(office: Office, page: Page, meant: Meant) -> Searched:
    """The same on an open page. What is lent, fitted, lost, sold, given back, visiting or retired is looked at too."""
    every = page.every_item()
    where = page.whereabouts(every)
    left = [one for one in every if where[one.id].where is not Where.DESTROYED]
    found = tuple(_matches(office, page, meant, left))
    by_sure = {sure: tuple(one for one in found if one.sure is sure) for sure in Sure}
    return Searched(by_sure[Sure.CERTAIN], by_sure[Sure.TO_ASK], by_sure[Sure.NOT_MEANT], len(every) - len(left))


def answers_of(office: Office, page: Page, meant: Meant, items: Sequence[Item]) -> tuple[Answers, ...]:
    """How each piece answers: those that a notice names are meant, whatever stands on them."""
    named = {page.item(tag).id for tag in meant.tags}
    return tuple(
        Answers(Sure.CERTAIN, tr("it is named")) if item.id in named else match(meant, item.facts, office.rules.kinds)
        for item in items
    )


def _matches(office: Office, page: Page, meant: Meant, items: Iterable[Item]) -> Iterator[Match]:
    names = {one.id: one.name for one in page.people()}
    wanted = list(items)
    where = page.whereabouts(wanted)
    for item, said in zip(wanted, answers_of(office, page, meant, wanted), strict=True):
        kind = office.rules.kinds.get(item.facts.kind)
        place = where_words(where[item.id], names)
        yield Match(item, kind.name if kind else item.facts.kind, said.sure, said.why, place)


def meant_by(office: Office, ref: str) -> Meant:
    """What a kept recall means."""
    with office.book.reading() as page:
        return recall_called(page, ref).facts.meant
