"""What counts as an overload: below, at and above each limit, and whatever nobody knows."""

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.item import Rating
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis
from inspector.gear.verdict import Verdict
from inspector.rulebook.club_book import with_club
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook, packaged
from inspector.rulebook.overloads import is_overloaded
from inspector.rulebook.wording import explain
from inspector.units import Dimension, System, read
from tests.each import each
from tests.rulebook.dossiers import KINDS, dossiers
from tests.rulebook.sound import sound

BOOK = packaged()


def judged(dossier: Dossier, book: Rulebook = BOOK) -> Judged:
    verdict = judge(dossier, book, "test")
    return Judged(dossier, verdict, explain(dossier, verdict, book, System.METRIC))


def piece(key: str, basis: Basis, typed: str = "", factor: float | None = None, stated_on: str = "piece") -> Judged:
    """A sound piece of the kind, so rated."""
    kind = BOOK.kinds[key]
    figure = read(typed, Dimension.FORCE, field="r") if typed else None
    known = sound(kind)
    facts = replace(known.item.facts, rating=Rating(basis, figure, factor, stated_on))
    return judged(replace(known, item=replace(known.item, facts=facts)))


def over(found: Judged, force_n: float) -> bool:
    return is_overloaded(found, force_n, BOOK).is_over


LIMITS = [
    ("a shackle: its working load limit", piece("bow_shackle", Basis.WLL, "40 kN", 5.0), 40e3),
    ("a shackle rated by its strength: half of it", piece("bow_shackle", Basis.MBS, "200 kN"), 100e3),
    ("a kinetic strap: 35 % of its strength", piece("kinetic_strap", Basis.MBS, "80 kN"), 28e3),
    ("a soft shackle by its strength: 35 %", piece("soft_shackle", Basis.MBS, "100 kN"), 35e3),
    ("a sling by its limit: the limit, far below 35 %", piece("tree_strap", Basis.WLL, "20 kN", 7.0), 20e3),
    ("a sling with a low factor: 35 % before the limit", piece("tree_strap", Basis.WLL, "20 kN", 2.0), 14e3),
    ("a wire rope: half its strength", piece("wire_winch_rope", Basis.MBS, "60 kN"), 30e3),
    ("a winch: its rated pull", piece("winch", Basis.LINE_PULL, "40 kN"), 40e3),
]


@each(("found", "limit_n"), [one[1:] for one in LIMITS], ids=[one[0] for one in LIMITS])
def test_below_and_at_its_limit_a_pull_is_none_and_above_it_is(found: Judged, limit_n: float) -> None:
    assert not over(found, 0.999 * limit_n)
    assert not over(found, limit_n)
    assert over(found, 1.001 * limit_n)


@each(
    "found",
    [
        piece("bow_shackle", Basis.MBS, "200 kN", stated_on="memory"),
        piece("kinetic_strap", Basis.MBS),
        piece("bow_shackle", Basis.WLL, "40 kN"),
        piece("winch", Basis.LINE_PULL),
        piece("winch", Basis.LINE_PULL, "40 kN", stated_on="memory"),
        piece("recovery_point", Basis.WLL),
    ],
    ids=["from memory", "no rating", "no factor", "no pull", "a pull from memory", "a point without rating"],
)
def test_what_nobody_knows_counts_as_overloaded_by_any_pull(found: Judged) -> None:
    assert over(found, 1.0)
    assert is_overloaded(found, 1.0, BOOK).why.startswith("Nobody knows")


def test_a_damper_bears_no_pull() -> None:
    assert not over(piece("damper", Basis.UNRATED), 1e6)


def test_what_is_left_counts_and_not_what_is_marked() -> None:
    sound = piece("kinetic_strap", Basis.MBS, "80 kN")
    tired = replace(sound, verdict=with_strength(sound, 60e3))
    assert not over(sound, 25e3) and over(tired, 25e3)
    shackle = piece("bow_shackle", Basis.WLL, "40 kN", 5.0)
    worn = replace(shackle, verdict=with_strength(shackle, 180e3))
    assert not over(shackle, 38e3) and over(worn, 38e3) and not over(worn, 36e3)
    nothing = replace(sound, verdict=with_strength(sound, 0.0))
    assert over(nothing, 1.0)


def with_strength(found: Judged, now_n: float) -> Verdict:
    return replace(found.verdict, capacity=replace(found.verdict.capacity, now_n=now_n))


def test_steel_that_would_bend_for_good_is_overloaded_before_half_its_strength() -> None:
    found = piece("hitch_pin", Basis.UNRATED)
    capacity = found.verdict.capacity
    assert capacity.now_n is not None
    bends_n = 0.2 * capacity.now_n
    soft_ones = tuple(replace(one, set_n=bends_n) for one in capacity.strengths)
    soft = replace(found, verdict=replace(found.verdict, capacity=replace(capacity, strengths=soft_ones)))
    said = is_overloaded(soft, 0.3 * capacity.now_n, BOOK)
    assert said.is_over and "bends it for good" in said.why
    assert not over(soft, bends_n) and not over(found, 0.2 * capacity.now_n)


def test_the_reason_names_force_limit_and_source() -> None:
    said = is_overloaded(piece("kinetic_strap", Basis.MBS, "80 kN"), 40e3, BOOK).why
    assert said.startswith("40 kN is more than") and "35 %" in said and "(second-hand)" in said
    said = is_overloaded(piece("bow_shackle", Basis.MBS, "200 kN"), 120e3, BOOK).why
    assert "50 %" in said and "100 kN" in said and "club setting" in said
    said = is_overloaded(piece("bow_shackle", Basis.WLL, "40 kN", 5.0), 30e3, BOOK).why
    assert said.startswith("30 kN is within its working load limit, 40 kN")
    imperial = is_overloaded(piece("bow_shackle", Basis.WLL, "40 kN", 5.0), 50e3, BOOK, System.IMPERIAL).why
    assert "lbf" in imperial and "kN" not in imperial


def test_a_club_may_ask_for_more_distance() -> None:
    head = 'club = "C"\ntitle = "T"\nfrom = 2026-12-01\nwhy = "W"\n[[setting]]\nkey = "overload_share_steel"\n'
    strict = with_club(BOOK, head + 'value = "40 %"')
    assert strict.faults == ()
    found = piece("bow_shackle", Basis.MBS, "200 kN")
    assert is_overloaded(found, 90e3, strict.book).is_over and not over(found, 90e3)


@given(dossiers(KINDS), st.floats(0, 5e5), st.floats(1, 3))
def test_a_harder_pull_is_never_less_of_an_overload_and_a_weaker_piece_never_bears_more(
    dossier: Dossier, force_n: float, times: float
) -> None:
    found = judged(dossier)
    said = is_overloaded(found, force_n, BOOK)
    assert said.why
    if said.is_over:
        assert over(found, force_n * times)
    now_n = found.verdict.capacity.now_n
    if now_n is not None and said.is_over:
        assert over(replace(found, verdict=with_strength(found, now_n / times)), force_n)
    if now_n is None and dossier.item.rating.basis is not Basis.LINE_PULL and dossier.kind.key != "damper":
        assert said.is_over
