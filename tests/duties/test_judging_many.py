"""Many pieces judged at once come out as each by itself would, and how far it is is told piece by piece."""

from datetime import timedelta

from msgspec.structs import replace

from inspector.duties.judge_anew import judge_anew
from inspector.duties.judging import judge_and_keep, judge_and_keep_all
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book


def test_many_at_once_are_judged_as_one_by_one(sample: Office) -> None:
    late = sample.at(sample.now + timedelta(days=400))
    told: list[tuple[int, int]] = []
    heard = replace(late, told=lambda done, of: told.append((done, of)))
    with late.book.page() as page:
        due = page.due_for_judging(late.today)
        one_by_one = [judge_and_keep(late, page, item) for item in due]
        at_once = list(judge_and_keep_all(heard, page, due))
        page.enter("judge anew", by=late.officer.id, at=late.now, facts={})
    assert len(due) > 50 and at_once == one_by_one
    assert told == [(done, len(due)) for done in range(1, len(due) + 1)]


def test_after_a_new_day_what_stands_is_what_was_judged_then(sample: Office) -> None:
    late = sample.at(sample.now + timedelta(days=400))
    assert len(judge_anew(late)) > 50
    assert judge_anew(late) == ()
    assert verify_book(late).faults == ()
