"""What would release a finding, in words."""

from inspector.gear.dossier import Dossier
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Finding, Needed, Release, Status
from inspector.language import tr
from inspector.rulebook.opinions import may_be_answered
from inspector.rulebook.words import must_word, quantity_word
from inspector.units import Dimension, System, show_bound, system_of


def release_words(release: Release, finding: Finding, dossier: Dossier, system: System) -> str:
    """One or two sentences; empty where nothing is held, or nothing releases it."""
    if finding.outcome is not Outcome.HOLD:
        return ""
    if release.needed is Needed.INSPECTION:
        return _inspection(finding.quantity)
    if release.needed is Needed.MARKING:
        return _marking(finding.quantity)
    if finding.quantity.startswith("wall_"):
        return _wall(release, dossier, system)
    what = quantity_word(finding.quantity, dossier.kind)
    if release.needed is Needed.GRADE:
        return _grade(finding, what[:1].lower() + what[1:])
    return _reading(release, finding, dossier, system) if release.needed is Needed.READING else ""


def _inspection(quantity: str) -> str:
    words = {
        "inspection_age": tr("A periodic inspection by a competent person would settle it."),
        "history": tr("A first inspection by a competent person would settle it."),
        "open_events": tr("An inspection after the event by a competent person would settle it."),
        "harmful_exposures": tr("An inspection after the exposure by a competent person would settle it."),
        "frozen_exposures": tr("An inspection after it has thawed and dried, by a competent person, would settle it."),
        "open_doubts": tr("An inspection by a competent person after the doubt was voiced would settle it."),
        "open_strikes": tr("A new inspection by a competent person would settle it."),
    }
    return words[quantity]


def _marking(quantity: str) -> str:
    words = {
        "age": tr("Only a date on its label or its papers would settle it."),
        "ageing_loss": tr("Only a date on its label or its papers would settle it."),
        "rating_stated": tr("Only a marking on the piece or its certificate would settle it."),
        "hottest": tr("Only its maker's written word on that heat would settle it."),
        "core_heat": tr("Only a paper that tells of a steel core would settle it."),
        "design_factor": tr("Only the factor on its certificate would settle it."),
    }
    return words.get(quantity, tr("Only its marking, its papers or the maker's sheet would settle it."))


def _grade(finding: Finding, what: str) -> str:
    if finding.status is Status.UNKNOWN:
        return tr("A competent person has to check: {what}.", what=what)
    settled = tr("A competent person who inspects it and finds it good would settle it: {what}.", what=what)
    if may_be_answered(finding):
        settled += " " + tr("So would a second competent person's opinion that names “{rule}”.", rule=finding.rule)
    return settled


def _wall(release: Release, dossier: Dossier, system: System) -> str:
    if release.limit is None:
        return tr("Nothing releases it: plan its replacement.")
    new = dossier.item.size("wall")
    typed_in = system_of(new.as_typed, system) if new else system
    least = show_bound(release.limit, Dimension.LENGTH, typed_in, least=True)
    return tr(
        "Readings of {least} or more on bare metal, dressed smooth, with a gauge tried on its block that day would "
        "release it, at each of: {points}.",
        least=least,
        points=", ".join(release.points),
    )


def _reading(release: Release, finding: Finding, dossier: Dossier, system: System) -> str:
    measure = dossier.kind.measure(release.observation)
    if measure is None or release.limit is None or release.dimension is None:
        return ""
    size = dossier.item.size(measure.compare_with)
    typed_in = system_of(size.as_typed, system) if size else system
    least = release.must in {"at_least", "above"}
    bound = must_word(release.must, show_bound(release.limit, release.dimension, typed_in, least=least))
    name = measure.name[:1].lower() + measure.name[1:]
    at = tr(" at each of: {points}", points=", ".join(release.points)) if len(release.points) > 1 else ""
    if finding.status is Status.UNKNOWN:
        return tr("A competent person has to measure: {what}{at}; {bound} passes.", what=name, at=at, bound=bound)
    return tr(
        "A competent person's reading of {bound}{at} would release it: {what}. The first one stays in the history.",
        bound=bound,
        at=at,
        what=name,
    )
