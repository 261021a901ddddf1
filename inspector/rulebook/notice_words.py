"""The sentences of a retirement notice that depend on the kind: what never again, how to destroy, what replaces it."""

from collections.abc import Sequence

from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.item import Rating
from inspector.gear.kind import Basis, Kind
from inspector.gear.verdict import Reason, Verdict
from inspector.language import tr, within
from inspector.rulebook.words import listed, marked_words, purpose_word
from inspector.units import System


def never_again_words(kind: Kind) -> str:
    """What the piece must not be used for any more: everything it served, and the uses people think up afterwards."""
    uses = [purpose_word(purpose) for purpose in kind.purposes]
    never = tr("Never again for {uses}.", uses=listed(uses))
    after = {
        "strap": tr("Nor as a tie-down, a lifting sling or a tow strap."),
        "rope": tr("Nor as a tie-down, a lifting sling or a tow rope."),
        "shackle": tr("Nor for a safety chain, an anchor or a swing."),
        "tube": tr("Nor for a trailer, a carrier, a step or a shackle."),
        "ball": tr("Nor for a trailer of any mass."),
    }
    return f"{never} {after.get(kind.family, tr('Nor for any other load.'))}"


def destroy_words(kind: Kind) -> str:
    """How to make it unusable so that nobody takes it from the bin."""
    ways = {
        "strap": tr("Cut it through every metre and cut off both eyes and the label."),
        "rope": tr("Cut it through every metre and cut off both eyes and the label."),
        "shackle": tr("Cut the bow through with a disc and deface the marking; throw pin and bow away apart."),
        "tube": tr("Cut the tube through across the pin hole and deface the rating plate."),
        "pin": tr("Cut the pin in two."),
        "ball": tr("Cut the shank through."),
    }
    return ways.get(kind.family, tr("Cut it through so that it cannot be put together again, and deface its marking."))


def replace_words(dossier: Dossier, system: System) -> str:
    """Advice on the replacement, by rating, never by maker."""
    rating = dossier.item.rating
    if _tells(rating):
        kind, marked = within(dossier.kind.name), marked_words(dossier.item)
        return tr("Replace it by a {kind} marked at least {marked}, with its certificate.", kind=kind, marked=marked)
    return tr("Replace it by a {kind} with a legible rating and a certificate.", kind=within(dossier.kind.name))


def _tells(rating: Rating) -> bool:
    return rating.figure is not None and rating.basis is not Basis.UNRATED and rating.stated_on != "memory"


def with_names_as_stated(reasons: Sequence[Reason], verdict: Verdict, dossier: Dossier) -> tuple[Reason, ...]:
    """The reasons, each saying beside the inspector's name that nobody knows it but from what was typed."""
    return tuple(replace(one, value=_as_stated(one, verdict, dossier)) for one in reasons)


def _as_stated(reason: Reason, verdict: Verdict, dossier: Dossier) -> str:
    vouched = {one.id for one in dossier.inspections if one.facts.vouched}
    names = dict(dossier.names)
    for finding in verdict.findings:
        if finding.rule == reason.rule and finding.by in names and finding.rests_on not in vouched:
            name = tr("by {name}", name=names[finding.by])
            return reason.value.replace(name, tr("{name} (name as stated)", name=name))
    return reason.value
