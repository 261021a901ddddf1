"""The gear list answers every question as one would who went through the whole register by hand."""

import sqlite3
from collections.abc import Callable
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import event

from inspector.duties import gear_list
from inspector.duties.change_item import retag
from inspector.duties.gear_list import answers, choices, first_rows, rows_of
from inspector.duties.lend import lend
from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import put_in_store, report_missing, sell
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import InspectionKind
from inspector.gear.lists import Due, Exposed, Held, Order, Owned, Wanted
from inspector.gear.outcome import Outcome
from inspector.gear.use import Weather
from inspector.gear.verdict import Verdict
from inspector.gear.whereabouts import Where
from inspector.register.book import open_book
from inspector.register.lists import first_due
from tests.register.test_upgrade import RECALLS, with_own_names, without_listing

PAGE = 16
LATE = date.max
QUIET = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


class Piece(Struct, frozen=True):
    """All that the oracle knows of a piece."""

    dossier: Dossier
    verdict: Verdict
    where: Where
    search: str

    @property
    def tag(self) -> str:
        return self.dossier.item.tag


def lived(office: Office) -> Office:
    """The sample with pieces lent, sold, missed, moved and relabelled."""
    fit = [row.tag for row in list_gear(office, outcome=Outcome.FIT).rows]
    lend(office, ["SH-04"], "Nell Hobbery", office.today)
    free = [one for one in fit if one != "SH-04" and Held.IN_STORE in held_of(office, one)]
    ours = [row.tag for row in rows_of(office, free) if row.owner.casefold() == "club"]
    sell(office, ours[0], "a dealer")
    report_missing(office, ours[1], "the beach", "not in its box")
    put_in_store(office, ours[2], "the very top shelf")
    retag(office, ours[3], "ZZ-99", "the label was torn")
    return office


def held_of(office: Office, tag: str) -> set[Held]:
    """By which whereabouts the list finds a piece."""
    return {one for one in Held if tag in answers(office, Wanted(held=one)).tags}


def pieces(office: Office) -> dict[str, Piece]:
    """Every piece, read one by one."""
    found = {}
    with office.book.reading() as page:
        for item in page.every_item():
            dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
            facts = dossier.item.facts
            words = (*page.tags_ever(item), dossier.kind.name, facts.maker_mark, facts.serial, facts.owner)
            search = " ".join((*words, facts.place, facts.note, facts.fitted_to)).casefold()
            verdict = page.latest_verdict(item.id)[0]
            found[item.tag] = Piece(dossier, verdict, page.whereabouts_of(item).where, search)
    return found


HELD = {
    Held.IN_STORE: {Where.IN_STORE},
    Held.ON_LOAN: {Where.ON_LOAN},
    Held.ON_VEHICLE: {Where.ON_VEHICLE},
    Held.LOST: {Where.MISSING, Where.STOLEN},
    Held.GONE: {Where.SOLD, Where.GIVEN_BACK, Where.DESTROYED},
}


def due_of(piece: Piece) -> date | None:
    return None if piece.verdict.outcome is Outcome.RETIRE else piece.verdict.next_due


def is_due(piece: Piece, due: Due, today: date) -> bool:
    day = due_of(piece)
    if due is Due.NO_DAY or day is None:
        return due is Due.NO_DAY and day is None
    last = {Due.OVERDUE: -1, Due.IN_30_DAYS: 30, Due.IN_90_DAYS: 90}[due]
    return day <= today + timedelta(days=last)


def is_exposed(piece: Piece, exposed: Exposed) -> bool:
    weathers = {one.facts.weather for one in piece.dossier.exposures}
    return {Exposed.SALT: Weather.SALT in weathers, Exposed.ANY: bool(weathers), Exposed.NONE: not weathers}[exposed]


def answers_to(piece: Piece, wanted: Wanted, today: date) -> bool:
    """Whether a piece answers to all but the outcome and what is gone."""
    owner, facts = piece.dossier.item.facts.owner.casefold(), piece.dossier.item.facts
    is_clubs = owner in {"", "club", "pellick spit touring club"}
    return (
        all(word.casefold() in piece.search for word in wanted.search.split())
        and wanted.kind in {"", facts.kind}
        and (not wanted.owner or owner == wanted.owner.casefold())
        and (wanted.owned is None or is_clubs == (wanted.owned is Owned.CLUB))
        and (wanted.due is None or is_due(piece, wanted.due, today))
        and (wanted.exposed is None or is_exposed(piece, wanted.exposed))
        and (wanted.held is None or piece.where in HELD[wanted.held])
    )


def looked_at(piece: Piece) -> date | None:
    days = [one.on for one in piece.dossier.inspections if one.facts.kind is not InspectionKind.BEFORE_USE]
    return max(days, default=None)


KEYS: dict[Order, Callable[[Piece], Any]] = {
    Order.TAG: lambda one: "",
    Order.DUE: lambda one: due_of(one),
    Order.WORST: lambda one: -one.verdict.outcome.severity,
    Order.KIND: lambda one: one.dossier.kind.name,
    Order.OWNER: lambda one: one.dossier.item.facts.owner or None,
    Order.MAKER: lambda one: one.dossier.item.facts.maker_mark or None,
    Order.SERIAL: lambda one: one.dossier.item.facts.serial or None,
    Order.INSPECTED: looked_at,
}


def in_order(found: list[Piece], wanted: Wanted) -> list[str]:
    """Their tags sorted; what nobody wrote down comes last, whichever end comes first."""
    key = KEYS[wanted.order]
    told = sorted((one for one in found if key(one) is not None), key=lambda one: (key(one), one.tag))
    untold = sorted(one.tag for one in found if key(one) is None)
    tags = [one.tag for one in told]
    return [*reversed(tags), *reversed(untold)] if wanted.falling else [*tags, *untold]


WANTED = st.builds(
    Wanted,
    search=st.sampled_from(["", "", "sh", "bow SHACKLE", "club", "hook", "V-06", "50%_", "zzzz"]),
    outcome=st.sampled_from([None, *Outcome]),
    kind=st.sampled_from(["", "", "bow_shackle", "hitch_receiver"]),
    owned=st.sampled_from([None, None, *Owned]),
    due=st.sampled_from([None, None, *Due]),
    exposed=st.sampled_from([None, None, *Exposed]),
    held=st.sampled_from([None, None, *Held]),
    gone_too=st.booleans(),
    order=st.sampled_from(list(KEYS)),
    falling=st.booleans(),
)


def test_any_question_is_answered_as_by_hand_and_its_pages_put_together_are_the_whole_list(sample: Office) -> None:
    office = lived(sample)
    known = pieces(office)
    assert {one.where for one in known.values()} >= {Where.SOLD, Where.MISSING, Where.ON_LOAN, Where.ON_VEHICLE}

    @QUIET
    @given(WANTED)
    def check(wanted: Wanted) -> None:
        found = answers(office, wanted)
        every = [one for one in known.values() if answers_to(one, wanted, office.today)]
        here = [one for one in every if one.where not in HELD[Held.GONE]]
        kept = every if wanted.gone_too or wanted.held is Held.GONE else here
        assert found.gone_count == len(every) - len(here)
        assert {o: n for o, n in found.counts.items() if n} == {
            o: n for o in Outcome if (n := sum(one.verdict.outcome is o for one in kept))
        }
        listed = [one for one in kept if wanted.outcome in {None, one.verdict.outcome}]
        assert list(found.tags) == in_order(listed, wanted)
        pages = [rows_of(office, found.tags[at : at + PAGE]) for at in range(0, len(found.tags), PAGE)]
        assert [row.tag for page in pages for row in page] == list(found.tags)

    check()


def test_each_piece_is_somewhere_and_nowhere_twice(sample: Office) -> None:
    office = lived(sample)
    for tag in answers(office, Wanted(gone_too=True)).tags:
        assert len(held_of(office, tag)) == 1


def test_places_and_markings_sort_what_is_alike_together(sample: Office) -> None:
    office = lived(sample)
    known = pieces(office)
    by_place = [known[tag].where for tag in answers(office, Wanted(gone_too=True, order=Order.PLACE)).tags]
    ranks = [next(n for n, one in enumerate(Held) if where in HELD[one]) for where in by_place]
    assert ranks == sorted(ranks) and len(set(ranks)) == len(Held)
    rated = [known[tag].dossier.item.rating for tag in answers(office, Wanted(order=Order.MARKED)).tags]
    told = [(one.basis.value, one.figure.si) for one in rated if one.figure]
    assert told == sorted(told) and all(one.figure is None for one in rated[len(told) :])


def test_a_row_tells_what_its_piece_is(sample: Office) -> None:
    (row,) = rows_of(sample, ("SH-04",))
    known = pieces(sample)["SH-04"]
    assert row.serial == known.dossier.item.facts.serial and row.inspected_on == looked_at(known)
    assert row.where.startswith("in store") and "pull" in row.use_line.casefold()
    assert rows_of(sample, ("SH-04", "nothing", "BM-01"))[1].tag == "BM-01", "what is no tag now is left out"


def test_what_may_be_asked_for_is_what_there_is(sample: Office) -> None:
    offered = choices(sample)
    held = {one.dossier.kind.key: one.dossier.kind.name for one in pieces(sample).values()}
    assert dict(offered.kinds) == held and [name for _, name in offered.kinds] == sorted(held.values())
    assert "Joss Ferrabel" in offered.owners and "Club" not in offered.owners
    for owner in offered.owners:
        rows = rows_of(sample, answers(sample, Wanted(owner=owner, gone_too=True)).tags)
        assert rows and {row.owner.strip() for row in rows} == {owner}


def test_a_register_of_the_sixth_revision_comes_to_list_as_if_each_piece_were_judged_anew(sample: Office) -> None:
    office = lived(sample)
    place = office.book.file
    assert place
    office.book.close()
    before = standing(str(place))
    with_own_names(place)
    with sqlite3.connect(place) as connection:
        without_listing(connection)
        connection.execute("UPDATE alembic_version SET version_num = '0006'")
    connection.close()
    opened = replace(office, book=open_book(place))
    assert {one.where for one in verify_book(opened).faults} == set(RECALLS)  # that program knew of no recall
    opened.book.close()
    assert standing(str(place)) == before and len(before) > 100


def standing(place: str) -> dict[str, dict[str, object]]:
    """What the lists show, by piece."""
    with sqlite3.connect(place) as connection:
        connection.row_factory = sqlite3.Row
        rows = {str(row["item_id"]): dict(row) for row in connection.execute("SELECT * FROM standing")}
    connection.close()
    return rows


def test_the_first_rows_are_those_with_which_the_whole_list_begins(
    sample: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    office = lived(sample)
    whole = answers(office, Wanted())
    assert first_rows(office, PAGE) == (), "a register of this size is counted at once"
    monkeypatch.setattr(gear_list, "_SOON_COUNTED", 0)
    assert whole.gone_count and len(whole.tags) > 100
    for count in (1, 2, PAGE, len(whole.tags), 2 * len(whole.tags)):
        assert first_rows(office, count) == rows_of(office, whole.tags[:count])
    assert rows_of(office, whole.tags)[-1].next_due is None, "a piece without a day stands last"


def test_an_index_leads_to_the_first_rows(sample: Office) -> None:
    with sqlite3.connect(str(sample.book.file)) as connection:
        asked: list[tuple[str, tuple[object, ...]]] = []
        with sample.book.own_connection(write=False) as reads:
            event.listen(reads, "before_cursor_execute", lambda *given: asked.append(given[2:4]))
            first_due(reads, 3)
        told = [row[3] for row in connection.execute(f"EXPLAIN QUERY PLAN {asked[0][0]}", asked[0][1])]
    connection.close()
    assert told[0] == "SCAN standing USING INDEX ix_standing_next_due", told
