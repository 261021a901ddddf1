"""What age, sun and wear take from textiles, as ratios of the marked strength."""

from datetime import date

from inspector.gear.kind import Grade
from inspector.gear.use import Weather
from inspector.gear.verdict import Known
from inspector.language import once_a_language, tr
from inspector.mechanics import fibre
from inspector.rulebook.case import Case
from inspector.rulebook.observed import grade
from inspector.rulebook.quantity import Quantity, number, unknown
from inspector.units import DAYS_PER_YEAR, Dimension


def ageing_loss(case: Case) -> Quantity:
    """The worse of what age and sun have taken; it steps on each birthday of the piece."""
    began = case.dossier.item.born_on
    if began is None:
        return unknown(tr("Nobody knows when it was made or first used."))
    years = max(_full_years(began, case.on), 0)
    by_age = min(years * case.book.setting("age_loss_per_year"), 1.0)
    by_sun, days = _sun_loss(case)
    said = tr("{years} full years, {days} days in the sun", years=years, days=days)
    return number(
        fibre.ageing_loss_ratio([by_age, by_sun]),
        Dimension.RATIO,
        said,
        Known.ESTIMATED,
        changes_on=_birthday(began, years + 1),
        measured_on=case.on,
    )


def _sun_loss(case: Case) -> tuple[float, int]:
    """Loss by sunlight and the days behind it. A fibre without a published figure takes the worse of the two known."""
    days = sum(one.facts.days_count for one in case.dossier.exposures if one.facts.weather is Weather.SUN)
    years = days / DAYS_PER_YEAR
    material = (case.dossier.item.facts.material or case.dossier.kind.material).lower()
    nylon, polyester = fibre.nylon_sun_loss_ratio(years), fibre.polyester_sun_loss_ratio(years)
    if "polyester" in material and "nylon" not in material:
        return polyester, days
    return (nylon if "nylon" in material and "polyester" not in material else max(nylon, polyester)), days


@once_a_language
def _grade_words() -> dict[str, str]:
    return {"good": tr("good"), "slight": tr("slight"), "bad": tr("bad")}


def abrasion_loss(case: Case) -> Quantity:
    """The club's allowance where light abrasion was seen; nothing where none was."""
    seen = grade(case, "abrasion")
    if seen.value is None:
        return seen
    allowance = 0.0 if seen.value.word == Grade.GOOD.value else case.book.setting("abrasion_allowance")
    return number(
        allowance,
        Dimension.RATIO,
        tr("abrasion graded “{grade}”", grade=_grade_words().get(seen.value.word, seen.value.word)),
        Known.ESTIMATED,
        measured_on=seen.measured_on,
        changes_on=seen.changes_on,
        stale=seen.stale,
        observation="abrasion",
        seen_in=seen.seen_in,
    )


def _full_years(began: date, on: date) -> int:
    return on.year - began.year - ((on.month, on.day) < (began.month, began.day))


def _birthday(began: date, years: int) -> date:
    """The day `years` are full; a life begun on 29 February has its birthday on 1 March in common years."""
    try:
        return began.replace(year=began.year + years)
    except ValueError:
        return date(began.year + years, 3, 1)
