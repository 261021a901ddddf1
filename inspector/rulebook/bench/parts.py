"""What the topics of the bench share: dials with their usual figures, sums worked in turn, figures with sources."""

from collections.abc import Callable, Mapping
from typing import Any

from msgspec import Struct, field

from inspector.gear.bench import BenchFigure, BenchLine, BenchTopic, Came, Dial, Given
from inspector.language import tr
from inspector.mechanics.fasteners import BoltClass
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from inspector.rulebook.steel_parts import CLASS_PA
from inspector.rulebook.sum_texts import dimension_of
from inspector.rulebook.sums import reckon
from inspector.units import Dimension, Figure, System, read, show, show_typed, system_of

COMMON = "common_practice"
_SMALL_KG = 20.0  # below it tenths count


class Told(Struct, frozen=True):
    """What a topic tells once its sums are worked. Amounts in SI."""

    means: str
    left_out: tuple[str, ...]
    amounts: dict[str, float]


class Topic(Struct, frozen=True):
    """A topic with its sums. check: refuses figures that do not go together; work: works the sums in turn."""

    shown: BenchTopic
    work: "Callable[[Working], Told]"
    check: "Callable[[Working], None]"


class Working(Struct):
    """The sums of one topic as they are worked. The figures are given by key; of the others the usual ones stand."""

    topic: BenchTopic
    given: Mapping[str, Given]
    book: Rulebook
    system: System
    lines: list[BenchLine] = field(default_factory=list)
    fixed: list[BenchFigure] = field(default_factory=list)
    sources: dict[str, None] = field(default_factory=dict)

    def at(self, key: str) -> float:
        """What a dial stands at, in SI."""
        return self.given[key].figure.si if key in self.given else self._dial(key).usual.si

    def text(self, key: str) -> str:
        """What a dial stands at, as typed."""
        return show_typed((self.given[key].figure if key in self.given else self._dial(key).usual).as_typed)

    def setting(self, key: str, label: str) -> float:
        """A figure of the rulebook that no dial turns; told among the figures. In SI."""
        figure = self.book.settings[key]
        self.tell(label, show_typed(in_system(figure, self.system).as_typed), self.book.setting_texts[key].source)
        return figure.si

    def stress(self, key: str, label: str) -> float:
        """A strength that the rulebook holds in megapascals; told among the figures. In pascals."""
        stress_pa = self.book.settings[key].si * 1e6
        self.tell(label, self.show(stress_pa, Dimension.STRESS), self.book.setting_texts[key].source)
        return stress_pa

    def length(self, text: str, label: str) -> float:
        """A length by common practice that no dial turns; told among the figures. In metres."""
        figure = read(text, Dimension.LENGTH, field=label)
        self.tell(label, show_typed(in_system(figure, self.system).as_typed), COMMON)
        return figure.si

    def tell_given(self, label: str, given: Given) -> None:
        """Tell a figure that no dial turns and a piece lent."""
        self.fixed.append(BenchFigure(label, show_typed(given.figure.as_typed), came_words(given), ""))

    def tell(self, label: str, text: str, source: str) -> None:
        """Tell a fixed figure that went into the sums; source: its key."""
        self.fixed.append(BenchFigure(label, text, tr("fixed here"), self.book.source_text(source)))

    def sum(self, says: str, name: str, symbols: Mapping[str, str], **values: Any) -> Any:
        """Work a sum of the catalogue and tell it. symbols: each sign of its formula and the input it stands for."""
        result, shown = reckon(name, values, self.book, self.system)
        filled = ", ".join(f"{sign} = {self._value(key, values[key])}" for sign, key in symbols.items())
        self.lines.append(BenchLine(says, name, shown.formula, filled, self._value(name, result), shown.valid))
        self.sources.update(dict.fromkeys(shown.sources))
        return result

    def show(self, value: float, dimension: Dimension) -> str:
        """A value as it prints."""
        return show(value, dimension, self.system)

    def about(self, length_m: float) -> str:
        """A length of a stride or more as it is said, to the centimetre; of a throw, to the metre."""
        return show(round(length_m, 2 if length_m < 10 else 0), Dimension.LENGTH, self.system)

    def show_mass(self, mass_kg: float) -> str:
        """The mass of a small part as it prints."""
        return show(mass_kg, Dimension.MASS, self.system, 1)

    def refuse(self, key: str, why: str, what_to_do: str) -> Refused:
        """A refusal at the field of a dial."""
        return Refused(self._dial(key).name, why, what_to_do)

    def _value(self, name: str, value: Any) -> str:
        dimension = dimension_of(name) or Dimension.FACTOR
        if dimension is Dimension.MASS and value < _SMALL_KG:
            return self.show_mass(value)
        if dimension is Dimension.RATIO and value > 1:
            return tr("{times} times", times=show(float(value), Dimension.FACTOR))
        return show(float(value), dimension, self.system)

    def _dial(self, key: str) -> Dial:
        return next(dial for dial in self.topic.dials if dial.key == key)


def in_system(figure: Figure, system: System) -> Figure:
    """The same figure as the club writes it; as it was typed where that is the club's system already."""
    if system_of(figure.as_typed, system) is system:
        return figure
    finer = int(figure.dimension is Dimension.MASS and figure.si < _SMALL_KG)
    return Figure(figure.si, show(figure.si, figure.dimension, system, finer), figure.dimension)


class Maker(Struct, frozen=True):
    """Makes the dials of a topic from the rulebook and the club's units."""

    book: Rulebook
    system: System

    def of_setting(self, key: str, name: str, setting: str, ends: tuple[str, str], steps: tuple[str, str]) -> Dial:
        """A dial whose usual figure is a setting of the rulebook."""
        figure = self.book.settings[setting]
        usual = in_system(figure, self.system)
        return self._dial(key, name, usual, self.book.setting_texts[setting].source, ends, steps)

    def of_practice(self, key: str, name: str, usual: str, ends: tuple[str, str], steps: tuple[str, str],
                    dimension: Dimension = Dimension.LENGTH, source: str = COMMON) -> Dial:  # fmt: skip
        """A dial whose usual figure is typed here: common practice unless another source is named."""
        figure = in_system(read(usual, dimension, field=name), self.system)
        return self._dial(key, name, figure, source, ends, steps)

    def steel_class(self) -> Dial:
        """The class stamped on a pin or bolt; while nobody knows it, the weakest."""
        stops = tuple(float(one) for one in BoltClass)
        usual = Figure(stops[0], BoltClass.C4_6.value, Dimension.FACTOR)
        source = self.book.source_text(COMMON)
        name = tr("Class of the steel")
        return Dial("class", name, Dimension.FACTOR, stops[0], stops[-1], ("0.1", "0.1"), usual, source, stops)

    def _dial(
        self, key: str, name: str, usual: Figure, source: str, ends: tuple[str, str], steps: tuple[str, str]
    ) -> Dial:
        least, most = (read(end, usual.dimension, field=name).si for end in ends)
        finer = int(usual.dimension is Dimension.MASS and usual.si < _SMALL_KG)
        told = self.book.source_text(source)
        return Dial(key, name, usual.dimension, least, most, steps, usual, told, finer_places=finer)


def steel_of(working: Working) -> tuple[float, float]:
    """Yield and ultimate strength in pascals of the class that the dial stands at; told among the figures."""
    grade = next(one for one in BoltClass if float(one) == working.at("class"))
    yield_pa, ultimate_pa = CLASS_PA[grade]
    text = tr("{weak} and {strong}", weak=working.show(yield_pa, Dimension.STRESS),
              strong=working.show(ultimate_pa, Dimension.STRESS))  # fmt: skip
    working.tell(tr("Yield and ultimate strength of that class"), text, "iso_898_1_loads")
    return yield_pa, ultimate_pa


def came_words(given: Given | None) -> str:
    """How a figure came to its dial."""
    if given is None or given.came is Came.ASSUMED:
        return tr("usual figure, assumed")
    return given.said if given.came is Came.PIECE else tr("set here")
