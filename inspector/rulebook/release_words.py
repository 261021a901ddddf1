"""What would release a finding, in words."""

from inspector.gear.dossier import Dossier
from inspector.gear.kind import kind_word
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Finding, Needed, Release, Status
from inspector.language import once_a_language, tr, within
from inspector.rulebook.load import Rulebook
from inspector.rulebook.opinions import may_be_answered
from inspector.rulebook.words import must_word, quantity_word
from inspector.units import Dimension, System, show_bound, system_of


def release_words(release: Release, finding: Finding, dossier: Dossier, book: Rulebook, system: System) -> str:
    """What it takes, to stand in a sentence; empty where nothing is held, or nothing releases it."""
    if finding.outcome is not Outcome.HOLD:
        return ""
    if release.needed is Needed.INSPECTION:
        return _inspection(finding.quantity)
    if release.needed is Needed.TWO_NAMES and finding.quantity == "open_breaks":
        return tr("two competent persons who answer the break by name, then an inspection of all of it; else retire it")
    if release.needed is Needed.TWO_NAMES:
        return tr("two competent persons who release it from the evidence, then an inspection of all of it")
    if release.needed is Needed.RECALL:
        return tr("either a competent person who reads the notice and finds that this piece is not meant, or the step "
                  "that the recall asks for and then an inspection")  # fmt: skip
    if release.needed is Needed.MARKING:
        return _marking(finding.quantity)
    if release.needed is Needed.STRIKE and (renewed := _renewed(finding, dossier)):
        return tr(
            "{renewed}, then an inspection of all of it; or, if that reading was wrong, two competent persons who "
            "strike it",
            renewed=renewed,
        )
    if release.needed is Needed.STRIKE:
        return tr("two competent persons who strike that reading, if it was wrong; what is worn does not come back")
    if finding.quantity.startswith("wall_"):
        return _wall(release, dossier, system)
    what = quantity_word(finding.quantity, dossier.kind)
    if release.needed is Needed.GRADE:
        return _grade(finding, book, within(what))
    return _reading(release, finding, dossier, system) if release.needed is Needed.READING else ""


def _renewed(finding: Finding, dossier: Dossier) -> str:
    """Which part may be put in anew so that its old readings speak of another one; empty where none may."""
    measure = finding.quantity.partition(".")[2]
    if measure == "bolts_sound":
        return tr("the bolts renewed and written down as a repair of the bolts")
    if measure == "pin_diameter" and dossier.kind.family == "shackle":
        return tr("another pin of the same maker and size, written down as a repair of pin and bow")
    return ""


def _inspection(quantity: str) -> str:
    return _after_what().get(quantity) or tr("an inspection of all of it by a competent person")


@once_a_language
def _after_what() -> dict[str, str]:
    return {
        "open_events": tr("an inspection of all of it after the event, by a competent person"),
        "harmful_exposures": tr("an inspection of all of it after the exposure, by a competent person"),
        "frozen_exposures": tr("an inspection of all of it by a competent person, thawed and dry"),
        "open_fittings": tr("an inspection of all of it by a competent person where it sits now"),
        "open_finds": tr("an inspection of all of it by a competent person, now that it is here again"),
        "open_repairs": tr("an inspection of all of it by a competent person after the work"),
        "open_labels": tr("an inspection of all of it by a competent person, its new marking beside it"),
        "open_releases": tr("an inspection of all of it by a competent person after its release"),
        "open_remedies": tr("an inspection of all of it by a competent person after what the recall asks for"),
        "open_doubts": tr("an inspection of all of it by a competent person after the doubt was voiced"),
    }


def _marking(quantity: str) -> str:
    return _papers().get(quantity) or tr("its marking, its papers or the maker's sheet")


@once_a_language
def _papers() -> dict[str, str]:
    return {
        "age": tr("a date on its label or its papers"),
        "ageing_loss": tr("a date on its label or its papers"),
        "rating_stated": tr("a marking on the piece or its certificate"),
        "rating_over_sizes": tr("its rating read anew, or, where a size was misread, the piece booked in anew"),
        "weld_throat": tr("another piece, or, where the throat was misread, this one booked in anew"),
        "visit_age": tr("an entry for the trip on which it is to go"),
        "home_made_paper": tr("a certificate of whoever tested it"),
        "hottest": tr("its maker's written word on that heat"),
        "core_heat": tr("a paper that tells of a steel core"),
        "new.wall": tr("the maker's word on its wall or its steel, or to keep it only for what asks less of it"),
        "design_factor": tr("the factor on its certificate"),
    }


def _grade(finding: Finding, book: Rulebook, what: str) -> str:
    if finding.status is Status.UNKNOWN:
        return tr("a competent person's look at: {what}", what=what)
    if may_be_answered(finding, book):
        return tr("a competent person who inspects it and finds it good, or a second one's opinion: {what}", what=what)
    return tr("a competent person who inspects it, mended where need be, and finds it good: {what}", what=what)


def _wall(release: Release, dossier: Dossier, system: System) -> str:
    if release.needed is Needed.NOTHING:
        return ""
    if release.limit is None:
        points = ", ".join(map(kind_word, release.points))
        return tr("fresh readings of the wall, dressed and with a tried gauge, at each of: {points}", points=points)
    new = dossier.item.size("wall")
    typed_in = system_of(new.as_typed, system) if new else system
    least = show_bound(release.limit, Dimension.LENGTH, typed_in, least=True)
    return tr(
        "readings of {least} or more on bare metal, dressed smooth, with a gauge tried on its block that day, at each "
        "of: {points}",
        least=least,
        points=", ".join(map(kind_word, release.points)),
    )


def _reading(release: Release, finding: Finding, dossier: Dossier, system: System) -> str:
    measure = dossier.kind.measure(release.observation)
    if measure is None or release.limit is None or release.dimension is None:
        return ""
    size = dossier.item.size(measure.compare_with)
    typed_in = system_of(size.as_typed, system) if size else system
    least = release.must in {"at_least", "above"}
    bound = must_word(release.must, show_bound(release.limit, release.dimension, typed_in, least=least))
    name = within(measure.name)
    at = (
        tr(" at each of: {points}", points=", ".join(map(kind_word, release.points))) if len(release.points) > 1 else ""
    )
    if finding.status is Status.UNKNOWN:
        return tr("a competent person's measurement of the {what}{at}: {bound} passes", what=name, at=at, bound=bound)
    return tr(
        "a competent person's reading of {bound}{at} ({what}), while the first one stays in the history",
        bound=bound,
        at=at,
        what=name,
    )
