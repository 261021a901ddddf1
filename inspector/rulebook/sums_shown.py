"""The figures behind a verdict, as labelled lines."""

from inspector.gear.kind import kind_word
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact, Status, Verdict, WallForecast
from inspector.language import show_day, tr
from inspector.rulebook.strength_words import strength_lines
from inspector.rulebook.wall_sums import band_lines, doubts
from inspector.rulebook.words import named_quantity, service_word
from inspector.units import Dimension, System, show

_AGEING = "ageing_loss"
_LONGEST_YEARS = 100  # a forecast beyond this tells nothing


def sums_of(verdict: Verdict, system: System) -> tuple[Fact, ...]:
    """Strength, wall and dates of a verdict."""
    lines = _in_force(strength_lines(verdict.capacity, system), verdict) + _not_taken(verdict, system)
    if verdict.wall:
        lines += _wall(verdict.wall, system, forecast=verdict.outcome is not Outcome.RETIRE)
        if verdict.wall.next_reading_due and verdict.outcome is not Outcome.RETIRE:
            lines.append(Fact(tr("Next wall reading due"), show_day(verdict.wall.next_reading_due)))
    if verdict.next_inspection_due:
        asked = next((one.limit_came_from for one in verdict.findings if one.quantity == "inspection_age"), "")
        service = asked or service_word(verdict.service)
        due = show_day(verdict.next_inspection_due)
        lines.append(Fact(tr("Next inspection due"), tr("{day} ({service})", day=due, service=service)))
    return tuple(lines)


def _not_taken(verdict: Verdict, system: System) -> list[Fact]:
    """What age and sun have taken where it is less than the rule takes off, and that it is not in the strength."""
    found = [one for one in verdict.findings if one.quantity == _AGEING and one.status is Status.PASSES]
    known = [(one.value, one.limit) for one in found if one.value and one.value.number and one.limit]
    return [
        Fact(
            named_quantity(_AGEING),
            tr(
                "{lost}, not taken off: the rule takes it only above {limit}, and then all of it",
                lost=show(value.number or 0.0, Dimension.RATIO, system),
                limit=show(limit.number or 0.0, Dimension.RATIO, system),
            ),
        )
        for value, limit in known
    ]


def _in_force(lines: list[Fact], verdict: Verdict) -> list[Fact]:
    """Nobody reckons with the strength of a retired piece, nor yet with that of one on hold."""
    strength, limit = tr("Strength now"), tr("Working load limit now")
    instead: dict[str, str] = {}
    if verdict.outcome is Outcome.RETIRE:
        instead = {strength: tr("none to reckon with: it is retired"), limit: ""}
    elif verdict.capacity.now_n is not None and all(one.outcome is Outcome.HOLD for one in verdict.by_purpose):
        instead = {
            one.label: tr("{now}, not to be reckoned with until it is released", now=one.text)
            for one in lines
            if one.label in {strength, limit}
        }
    told = [Fact(one.label, instead.get(one.label, one.text)) for one in lines]
    return [one for one in told if one.text]


def _wall(wall: WallForecast, system: System, *, forecast: bool) -> list[Fact]:
    lines = [Fact(tr("Wall as new"), show(wall.nominal_m, Dimension.LENGTH, system))]
    if wall.history:
        last = min(wall.history, key=lambda point: point.relied_m)
        where = tr(" at “{point}”", point=kind_word(last.point)) if last.point else ""
        read = tr("{value}{where}, {day}", value=last.as_typed, where=where, day=show_day(last.on)) + doubts(last)
        lines.append(Fact(tr("Thinnest reading"), read))
        lost = max(1 - last.read_m / wall.nominal_m, 0.0)
        lines.append(Fact(tr("Wall lost"), show(lost, Dimension.RATIO, system)))
    if wall.unread_points and wall.history:
        lines.append(Fact(tr("Never read"), ", ".join(wall.unread_points)))
    today = show(wall.wall_now_m, Dimension.LENGTH, system)
    how = tr("estimated, no reading") if wall.estimated else tr("after the gauge's allowance and the loss since")
    lines.append(Fact(tr("Wall to reckon with"), f"{today} ({how})"))
    required = show(wall.required_m, Dimension.LENGTH, system)
    lines.append(Fact(tr("Wall that must be left"), f"{required} ({wall.required_because})"))
    return lines + _wall_time(wall, system, forecast=forecast)


def _wall_time(wall: WallForecast, system: System, *, forecast: bool) -> list[Fact]:
    rate = tr("{loss} a year", loss=show(wall.rate_m_per_year, Dimension.LENGTH, system))
    lines = [Fact(tr("Rate of loss"), f"{rate} ({wall.rate_because})")]
    if not forecast:
        return lines
    if wall.estimated:
        lines.append(Fact(tr("Remaining life"), tr("not known, no reading")))
    elif wall.life_years is not None and wall.life_years < _LONGEST_YEARS:
        left = tr("{years} years", years=f"{wall.life_years:.1f}") if wall.life_years else tr("none")
        until = f", {show_day(wall.reaches_required_on)}" if wall.reaches_required_on and wall.life_years else ""
        lines.append(Fact(tr("Remaining life"), left + until))
    return lines + band_lines(wall, system)
