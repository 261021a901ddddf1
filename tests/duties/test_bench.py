"""The bench begun from pieces of the sample register, and its handout kept and told."""

import pytest
from msgspec.structs import replace

from inspector.duties.bench import HandoutAsked, begin_bench, bench_topics, turned, work_bench
from inspector.duties.look_up import list_gear, open_item, vehicles
from inspector.duties.office import Office
from inspector.duties.print_handout import print_handout
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.gear.bench import Came, Given, Preset
from inspector.gear.papers import Handout
from inspector.language import show_day
from inspector.refused import Refused
from inspector.register.rows import from_body


def preset(office: Office, tag: str, topic: str) -> Preset:
    """What a piece lends a topic."""
    return next(one for one in begin_bench(office, tag).presets if one.topic == topic)


def lent(office: Office, tag: str, topic: str) -> dict[str, Given]:
    """The same by dial."""
    return {one.key: one for one in preset(office, tag, topic).given}


def test_a_receiver_brings_its_wall_with_the_thinnest_reading_its_rate_and_its_limit(sample: Office) -> None:
    wall = open_item(sample, "HR-01").verdict.wall
    assert wall and wall.history
    least = min(wall.history, key=lambda point: point.read_m)
    given = lent(sample, "HR-01", "wall")
    assert given["now"].figure.si == wall.wall_now_m
    assert f"from HR-01: wall {least.as_typed} read on {show_day(least.on)}" in given["now"].said
    assert given["rate"].figure.si == wall.rate_m_per_year
    assert given["must"].figure.si == wall.required_m
    assert work_bench(sample, "wall", given.values()).amount("must_m") >= wall.required_m * (1 - 1e-9)


@pytest.mark.parametrize("tag", ["HR-01", "BM-01", "TW-01"])
def test_the_bench_is_never_milder_than_the_record_of_the_piece(sample: Office, tag: str) -> None:
    wall = open_item(sample, tag).verdict.wall
    found = work_bench(sample, "wall", preset(sample, tag, "wall").given)
    assert wall
    left_m = found.amount("now_m") - found.amount("must_m")
    years = max(left_m, 0.0) / found.amount("rate_m_per_year")
    record = (wall.wall_now_m - wall.required_m) / wall.rate_m_per_year
    assert years <= max(record, 0.0) * (1 + 1e-6) + 1e-9


def test_a_ball_mount_fits_the_weld_first_and_the_wall_besides(sample: Office) -> None:
    assert [one.topic for one in begin_bench(sample, "BM-01").presets] == ["weld", "wall"]


def test_what_is_not_known_stays_at_the_usual_figure_and_is_said(sample: Office) -> None:
    said = " ".join(preset(sample, "BM-01", "weld").said)
    assert "the usual figure is assumed" in said and "Throat of the weld as new" in said
    figures = {one.label: one.came for one in work_bench(sample, "weld", preset(sample, "BM-01", "weld").given).figures}
    assert figures["Throat of the weld as new"] == "usual figure, assumed"
    assert figures["Outer side of the shank"] == "from BM-01: as new"


def test_a_shackle_says_that_its_marking_counts_and_not_this_sum(sample: Office) -> None:
    assert "Its marked load counts" in " ".join(preset(sample, "SH-01", "pin").said)


def test_a_strap_brings_its_marked_strength_and_a_vehicle_its_mass(sample: Office) -> None:
    rating = open_item(sample, "KS-01").dossier.item.rating.figure
    assert rating and lent(sample, "KS-01", "strap")["strength"].figure == rating
    car = vehicles(sample)[0]
    assert lent(sample, car.tag.lower(), "strap")["mass"].figure == car.gvm


def test_every_piece_of_the_sample_either_fits_and_works_or_says_why_not(sample: Office) -> None:
    for row in list_gear(sample).rows:
        begun = begin_bench(sample, row.tag)
        assert bool(begun.presets) != bool(begun.why_none), row.tag
        for one in begun.presets:
            assert work_bench(sample, one.topic, one.given).means, row.tag
            came = {given.came for given in one.given if given.came is not Came.PIECE}
            assert came <= {Came.ASSUMED}


def test_an_item_with_nothing_usable_says_so(sample: Office) -> None:
    assert "No topic here is about a damper like DM-01" in begin_bench(sample, "DM-01").why_none


def test_a_tag_that_nobody_knows_is_refused(sample: Office) -> None:
    with pytest.raises(Refused):
        begin_bench(sample, "XX-99")


def test_the_dials_of_a_club_in_inches_are_in_inches(sample: Office) -> None:
    office = replace(sample, system=sample.system.IMPERIAL)
    pin = bench_topics(office)[0].dials[0]
    assert pin.usual.as_typed == "5/8 in"
    assert turned(office, pin, "3/4 in").figure.si == pytest.approx(0.01905)


def test_a_decimal_comma_is_read_where_the_club_writes_one(sample: Office) -> None:
    pin = bench_topics(sample)[0].dials[0]
    assert turned(replace(sample, decimal=","), pin, "16,5 mm").figure.si == pytest.approx(0.0165)


def test_a_handout_is_numbered_kept_printed_and_told(sample: Office) -> None:
    given = preset(sample, "HR-01", "wall").given
    paper = print_handout(sample, HandoutAsked("wall", given, "HR-01"))
    assert paper.path.name.startswith("T-") and paper.path.read_bytes().startswith(b"%PDF") and not paper.missing
    with sample.book.page() as page:
        found = page.latest_document("handout", "A wall that thins from inside")
    assert found
    kept = from_body(found[1], Handout)
    assert paper.path.stem == found[0] == kept.imprint.number
    assert kept.worked == work_bench(sample, "wall", given)
    assert kept.from_piece[0] == "Begun from HR-01."
    assert "Never recover from a tow ball" in " ".join(kept.imprint.cautions)
    told = told_ledger(sample, last=1)[0]
    assert (
        f"printed the handout {paper.path.stem}, A wall that thins from inside, with figures of HR-01" in told.sentence
    )
    assert verify_book(sample).faults == ()


def test_two_handouts_have_two_numbers(sample: Office) -> None:
    one, other = (print_handout(sample, HandoutAsked("pin")).path for _ in range(2))
    assert one != other and one.exists() and other.exists()


def test_a_refused_figure_keeps_nothing(sample: Office) -> None:
    pin = bench_topics(sample)[0].dials[0]
    with sample.book.reading() as page:
        before = page.head()
    with pytest.raises(Refused):
        print_handout(sample, HandoutAsked("pin", (Given("pin", pin.shown(0.5, sample.system)),)))
    with sample.book.reading() as page:
        assert page.head() == before
