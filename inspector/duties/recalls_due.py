"""What falls due of recalls: one that is open waits, whoever has not answered is reminded on a day, and whoever was
written to by one that was withdrawn is to be told."""

from collections.abc import Iterator

from inspector.duties.office import Office
from inspector.duties.recall_answers import under_recall, waiting
from inspector.duties.recall_untold import untold
from inspector.duties.recall_words import notice_words
from inspector.gear.falls_due import Due, DueLine
from inspector.language import show_day, tr, tr_n
from inspector.register.page import Page


def recall_lines(office: Office, page: Page) -> Iterator[DueLine]:
    """A line for each open recall, one for each reader of it who has not answered, and those of withdrawn ones."""
    names = {one.id: one.name for one in page.people()}
    yield from _withdrawn_lines(page)
    for recall in page.open_recalls():
        told = recall.facts
        pieces = under_recall(page, recall)
        left = sum(1 for one in pieces if one.open_why)
        says = tr_n("{count} piece is not settled", "{count} pieces are not settled", left)
        says = says if left else tr("every piece is settled: close it")
        by = names.get(told.by)
        key = f"{Due.RECALL}:{recall.id}"
        yield DueLine(Due.RECALL, key, None, recall.ref, notice_words(told), says, (by,) if by else (), since=told.on)
        for one in waiting(office, page, recall, pieces):
            key = f"{Due.ANSWER}:{recall.id}:{one.person or one.name}"
            says = tr("no answer to the letter {number} of {day} about {tags}: remind", number=one.number,
                      day=show_day(one.since), tags=", ".join(one.tags))  # fmt: skip
            yield DueLine(Due.ANSWER, key, one.due, recall.ref, one.name, says, (one.name,), since=one.since)


def _withdrawn_lines(page: Page) -> Iterator[DueLine]:
    """A line for each withdrawn recall of which somebody who was written to does not know it."""
    for recall in page.withdrawn_recalls():
        if left := untold(page, recall):
            who = ", ".join(one.reader[1] for one in left)
            says = tr("withdrawn, and {names} must be told: write to them", names=who)
            key, told = f"{Due.RECALL}:{recall.id}", recall.facts
            yield DueLine(Due.RECALL, key, None, recall.ref, notice_words(told), says, (), since=told.on)
