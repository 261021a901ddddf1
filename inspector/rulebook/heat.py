"""Heat that was logged with its temperature. Where nobody knows how hot it was, an inspection has to answer it."""

import re

from inspector.gear.kind import kind_word
from inspector.gear.verdict import Known, Value
from inspector.language import tr
from inspector.mechanics.fibre import Fibre
from inspector.mechanics.temperature import fibre_most_c
from inspector.mechanics.wire_rope import is_fibre_core_spoilt
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, word
from inspector.units import Dimension

COOL, FIBRE_CORE, UNKNOWN_CORE = "not too hot", "fibre core too hot", "core unknown, too hot"
_FIBRE_CORES = ("fibre core", "fiber core")
_STEEL_CORES = ("steel core", "wire core", "iwrc")
_STEEL_MOST_C = 204.0  # 400 °F, where ASME B30.26 sends to the maker
_ALUMINIUM_MOST_C = 80.0  # common practice: its hardening goes far sooner than that of steel
_HOW_MADE = frozenset(  # words beside a fibre's name that name no fibre themselves
    [
        "webbing",
        "rope",
        "strap",
        "sling",
        "line",
        "core",
        "cover",
        "sheath",
        "jacket",
        "sleeve",
        "braid",
        "braided",
        "plaited",
        "woven",
        "laid",
        "twisted",
        "sewn",
        "coated",
        "single",
        "double",
        "strand",
        "strands",
        "ply",
        "layer",
        "layers",
        "flat",
        "round",
        "tubular",
        "kinetic",
        "static",
        "and",
        "with",
        "of",
        "in",
    ]
)


def hottest(case: Case) -> Quantity:
    """The greatest heat ever logged; no inspection takes it back."""
    logged = [(one.facts.hottest, one.facts.on) for one in case.dossier.exposures if one.facts.hottest]
    if not logged:
        return NOT_APPLICABLE
    figure, on = max(logged, key=lambda pair: pair[0].si)
    return Quantity(
        Value(number=figure.si, dimension=figure.dimension, as_typed=figure.as_typed),
        came_from=tr("exposures logged"),
        measured_on=on,
        known=Known.STATED,
    )


def fibre_heat_limit(case: Case) -> Quantity:
    """The strictest published limit of the fibres in it: those named in its material, and that of its kind.

    A word that is neither a fibre of the table nor a plain word of how it is made may be a fibre that the table does
    not know, so the strictest limit of all stands then; and also where no fibre is named.
    """
    own = case.dossier.kind.material
    material = (case.dossier.item.facts.material.strip() or own).lower()
    named = fibres_named(material)
    known = bool(named) and not _words(material) - set(Fibre) - _HOW_MADE
    most_c = min(fibre_most_c(fibre) for fibre in (named | fibres_named(own) if known else Fibre))
    return number(most_c, Dimension.TEMPERATURE, _told(case) if known else tr("fibre not known"), Known.STATED)


def _told(case: Case) -> str:
    """Its material as it is told: as somebody wrote it down, else that of its kind."""
    return case.dossier.item.facts.material.strip().lower() or kind_word(case.dossier.kind.material).lower()


def _words(text: str) -> set[str]:
    return set(re.findall(r"[^\W\d_]+", text.lower()))


def fibres_named(text: str) -> set[Fibre]:
    """The fibres that a material names."""
    return {fibre for fibre in Fibre if fibre.value in _words(text)}


def metal_heat_limit(case: Case) -> Quantity:
    """What its metal bears for sure: that of steel where it is known to be of steel alone, else that of aluminium."""
    material = (case.dossier.item.facts.material.strip() or case.dossier.kind.material).lower()
    is_steel = "steel" in material and "alumin" not in material
    said = _told(case) if is_steel or "alumin" in material else tr("metal not known")
    return number(_STEEL_MOST_C if is_steel else _ALUMINIUM_MOST_C, Dimension.TEMPERATURE, said, Known.STATED)


def core_heat(case: Case) -> Quantity:
    """Whether a wire rope was ever hot enough to spoil a fibre core; a steel core does not mind that heat."""
    found = hottest(case)
    material = (case.dossier.item.facts.material or case.dossier.kind.material).lower()
    if found.value is None or found.value.number is None or any(core in material for core in _STEEL_CORES):
        return NOT_APPLICABLE
    said = tr("{heat} logged", heat=found.value.as_typed)
    if not is_fibre_core_spoilt(found.value.number):
        return word(COOL, said, Known.STATED, found.measured_on)
    has_fibre = any(core in material for core in _FIBRE_CORES)
    return word(FIBRE_CORE if has_fibre else UNKNOWN_CORE, said, Known.STATED, found.measured_on)
