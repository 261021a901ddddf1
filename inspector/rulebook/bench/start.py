"""The bench begun from a real piece or vehicle: the topics that fit it, with its sizes, readings and rating."""

from collections.abc import Callable, Iterable

from msgspec import Struct, field

from inspector.gear.bench import BenchStart, BenchTopic, Came, Given, Preset
from inspector.gear.dossier import Dossier
from inspector.gear.kind import Basis
from inspector.gear.trip import Vehicle
from inspector.gear.verdict import Verdict, WallForecast
from inspector.language import show_day, tr, within
from inspector.mechanics.rating import ultimate_n
from inspector.refused import Refused
from inspector.rulebook.bench.work import check_dial, topics
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, Figure, System, show

_SAME = 1 + 1e-9
_CHOSEN = {"years", "speed"}  # dials to choose at, of which no piece knows anything


class _Lent(Struct):
    """What a piece lends one topic. out: sentences on figures the bench has no room for."""

    dossier: Dossier
    topic: BenchTopic
    system: System
    given: dict[str, Given] = field(default_factory=dict)
    out: list[str] = field(default_factory=list)

    def put(self, key: str, figure: Figure | None, words: str, came: Came = Came.PIECE) -> None:
        """Take a figure over where there is one and its dial has room for it. words: what is said of it."""
        dial = next((one for one in self.topic.dials if one.key == key), None)
        if figure is None:
            return
        try:
            if dial:
                check_dial(dial, figure.si, self.system)
        except Refused as refusal:
            self.out.append(tr("{what} is not taken over: {why}", what=words, why=refusal.why))
        else:
            self.given[key] = Given(key, figure, came, words)

    def size(self, key: str, size: str) -> None:
        """Take a size as new over."""
        figure = self.dossier.item.size(size)
        self.put(key, figure, self.from_piece(tr("as new"), figure))

    def thinnest(self, key: str, measure: str) -> None:
        """Take the smallest reading of a measure over, else its size as new."""
        read = [
            (one, seen.on) for seen in self.dossier.inspections for one in seen.facts.readings if one.measure == measure
        ]
        if not read:
            self.size(key, measure)
            return
        least, on = min(read, key=lambda pair: pair[0].figure.si)
        words = self.from_piece(tr("{figure} read on {day}"), least.figure, day=show_day(on))
        self.put(key, least.figure, words)

    def from_piece(self, text: str, figure: Figure | None, **more: str) -> str:
        """A sentence's part with the piece's tag before it."""
        said = text.format(figure=figure.as_typed if figure else "", **more)
        return tr("from {tag}: {said}", tag=self.dossier.item.tag, said=said)


_Fill = Callable[[_Lent, Verdict, Rulebook], None]


def start_of_piece(dossier: Dossier, verdict: Verdict, book: Rulebook, system: System) -> BenchStart:
    """The topics that fit a piece, with its figures; of what is not known the usual figures stand, and that is said."""
    tag, by_key = dossier.item.tag, {one.key: one for one in topics(book, system)}
    presets = []
    for topic, fill in _FITS.get(dossier.kind.key, ()):
        lent = _Lent(dossier, by_key[topic], system)
        fill(lent, verdict, book)
        if lent.given or lent.out:
            presets.append(Preset(topic, tuple(lent.given.values()), _said(lent.topic, lent.given, lent.out)))
    why = "" if presets else _why_none(dossier)
    return BenchStart(tag, tuple(presets), why)


def start_of_vehicle(car: Vehicle, book: Rulebook, system: System) -> BenchStart:
    """The strap that suits a vehicle, and the speed it may pull with."""
    by_key = {one.key: one for one in topics(book, system)}
    laden = Given("mass", car.gvm, Came.PIECE, tr("from {tag}: fully laden", tag=car.tag))
    presets = tuple(Preset(topic, (laden,), _said(by_key[topic], {"mass": laden}, ())) for topic in ("strap", "speed"))
    return BenchStart(car.tag, presets)


def _why_none(dossier: Dossier) -> str:
    name = within(dossier.kind.name)
    if dossier.kind.key in _FITS:
        return tr("Nothing is written down of {tag} that a sum here could use.", tag=dossier.item.tag)
    return tr("No topic here is about a {kind} like {tag}.", kind=name, tag=dossier.item.tag)


def _said(topic: BenchTopic, given: dict[str, Given], out: Iterable[str]) -> tuple[str, ...]:
    """What stays assumed, and what was not taken over."""
    left = [dial.name for dial in topic.dials if dial.key not in {*given, *_CHOSEN}]
    assumed = [tr("Not known, so the usual figure is assumed: {names}.", names="; ".join(left))] if left else []
    return (*assumed, *out)


def _fill_pin(lent: _Lent, verdict: Verdict, book: Rulebook) -> None:
    lent.thinnest("pin", "pin_diameter")
    lent.size("between", "jaw")
    if lent.dossier.kind.family == "shackle":
        lent.out.append(tr("Its marked load counts, not this sum: only its maker knows the steel of a shackle."))
    stamped = lent.dossier.item.size("pin_class")
    stops = next(dial.stops for dial in lent.topic.dials if dial.key == "class")
    known = [one for one in stops if stamped and one <= stamped.si * _SAME]
    if stamped and known:
        figure = Figure(known[-1], f"{known[-1]:g}", Dimension.FACTOR)
        lent.put("class", figure, lent.from_piece(tr("class {figure} as stamped"), stamped))


def _fill_insert(lent: _Lent, verdict: Verdict, book: Rulebook) -> None:
    lent.size("between", "block_side")


def _fill_ball(lent: _Lent, verdict: Verdict, book: Rulebook) -> None:
    lent.size("shank", "shank_diameter")
    lent.size("height", "lever")


def _fill_weld(lent: _Lent, verdict: Verdict, book: Rulebook) -> None:
    lent.size("side", "outside")
    lent.size("throat", "weld_throat")
    lent.size("off", "lever")
    wall = verdict.wall
    if wall and wall.history and wall.nominal_m >= wall.wall_now_m:
        least = min(wall.history, key=lambda point: point.read_m)
        lost_m = max(wall.nominal_m - least.read_m, 0.0)
        figure = Figure(lost_m, show(lost_m, Dimension.LENGTH, lent.system), Dimension.LENGTH)
        words = lent.from_piece(
            tr("{figure}, as its wall lost by the reading of {day}"), figure, day=show_day(least.on)
        )
        lent.put("rust", figure, words)


def _fill_wall(lent: _Lent, verdict: Verdict, book: Rulebook) -> None:
    lent.size("outside", "outside")
    lent.size("new", "wall")
    new, wall = lent.given.get("new"), verdict.wall
    if new is None:
        return
    if wall is None:
        words = tr("assumed as new, since nobody read it")
        lent.put("now", new.figure, words, Came.ASSUMED)
        return
    _fill_now(lent, wall, new.figure)
    rate = Figure(wall.rate_m_per_year, show(wall.rate_m_per_year, Dimension.RATE, lent.system), Dimension.RATE)
    lent.put("rate", rate, lent.from_piece("{why}", rate, why=wall.rate_because))
    must = Figure(wall.required_m, show(wall.required_m, Dimension.LENGTH, lent.system), Dimension.LENGTH)
    lent.put("must", must, lent.from_piece("{why}", must, why=wall.required_because))


def _fill_now(lent: _Lent, wall: WallForecast, new: Figure) -> None:
    """The wall its record reckons with, so that the bench is never milder; the thinnest reading is said beside it."""
    now_m = min(wall.wall_now_m, new.si)
    figure = Figure(now_m, show(now_m, Dimension.LENGTH, lent.system), Dimension.LENGTH)
    if not wall.history:
        lent.put("now", figure, lent.from_piece(tr("{figure}, an estimate: nobody read it"), figure))
        return
    least = min(wall.history, key=lambda point: point.read_m)
    text = tr("wall {read} read on {day}, {figure} to reckon with today")
    lent.put("now", figure, lent.from_piece(text, figure, read=least.as_typed, day=show_day(least.on)))


def _fill_strap(lent: _Lent, verdict: Verdict, book: Rulebook) -> None:
    _fill_strength(lent, verdict, book)
    lent.size("length", "length")


def _fill_strength(lent: _Lent, verdict: Verdict, book: Rulebook) -> None:
    """The breaking strength it is marked with, or that follows from its working load limit."""
    rating = lent.dossier.item.rating
    if rating.figure is None or rating.stated_on == "memory":
        return
    if rating.basis is Basis.MBS:
        lent.put("strength", rating.figure, lent.from_piece(tr("{figure} as marked"), rating.figure))
    elif rating.basis is Basis.WLL and rating.design_factor:
        breaks_n = ultimate_n(rating.figure.si, rating.design_factor)
        figure = Figure(breaks_n, show(breaks_n, Dimension.FORCE, lent.system), Dimension.FORCE)
        text = tr("{figure}, its working load limit times its factor")
        lent.put("strength", figure, lent.from_piece(text, figure))


def _fill_soft(lent: _Lent, verdict: Verdict, book: Rulebook) -> None:
    """No piece says what it weighs: a generic one of its kind stands, and that is said."""
    kg = book.roles[lent.dossier.kind.key].weighs_kg
    figure = next(dial for dial in lent.topic.dials if dial.key == "part").shown(kg, lent.system)
    lent.put("part", figure, tr("{figure}, what a generic one weighs, assumed", figure=figure.as_typed), Came.ASSUMED)


_FITS: dict[str, tuple[tuple[str, _Fill], ...]] = {
    "hitch_pin": (("pin", _fill_pin),),
    "bow_shackle": (("pin", _fill_pin),),
    "dee_shackle": (("pin", _fill_pin),),
    "receiver_insert": (("pin", _fill_insert),),
    "tow_ball": (("ball", _fill_ball),),
    "ball_mount": (("weld", _fill_weld), ("wall", _fill_wall)),
    "hitch_receiver": (("wall", _fill_wall),),
    "tow_bar": (("wall", _fill_wall),),
    "kinetic_strap": (("strap", _fill_strap), ("speed", _fill_strength)),
    "kinetic_rope": (("strap", _fill_strap), ("speed", _fill_strength)),
    "soft_shackle": (("speed", _fill_soft),),
}
