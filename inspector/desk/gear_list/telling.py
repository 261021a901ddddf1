"""What the gear list says of itself: how much of the register is shown and why, and what to do where nothing is."""

from inspector.desk.gear_list.listed import Listed
from inspector.gear.lists import Due, Exposed, Held, Owned, Wanted
from inspector.gear.outcome import Outcome
from inspector.language import tr, tr_n


def shown_words(found: Listed, kind_name: str) -> str:
    """How many pieces of how many are listed, and by what. kind_name: of the kind asked for."""
    narrowed = narrowing(found.wanted, kind_name)
    count, total = len(found.tags), found.register.piece_count
    if narrowed:
        said = tr("{count} of {total} pieces – {filters}", count=count, total=total, filters=", ".join(narrowed))
    else:
        said = tr_n("{count} piece", "{count} pieces", count)
    gone = found.gone_count if found.wanted.held is None else 0
    if not gone:
        return said
    left_out = tr_n("{count} that is gone is not listed", "{count} that are gone are not listed", gone)
    return f"{said}   ·   {left_out}"


def first_words(count: int) -> str:
    """That only the first pieces are listed yet."""
    return tr_n("The first piece; all are being counted.", "The first {count} pieces; all are being counted.", count)


def narrowing(wanted: Wanted, kind_name: str) -> tuple[str, ...]:
    """By what the list is narrowed, in words."""
    words = (
        tr("“{search}”", search=wanted.search) if wanted.search else "",
        _standing(wanted.outcome) if wanted.outcome else "",
        kind_name if wanted.kind else "",
        _owner(wanted),
        _due(wanted.due) if wanted.due else "",
        _exposed(wanted.exposed) if wanted.exposed else "",
        _held(wanted.held) if wanted.held else "",
    )
    return tuple(one for one in words if one)


def nothing_words(found: Listed, kind_name: str) -> tuple[str, str]:
    """Why there is no row to show, and what to do."""
    wanted, register = found.wanted, found.register
    narrowed, others = narrowing(wanted, kind_name), found.counts.get(None)
    if not register.piece_count:
        return tr("The register holds no gear yet."), tr("Book the first piece in: press Ctrl+N.")
    if not narrowed:
        return tr("Every piece is gone."), tr("Choose “Gone” above the list to see what was sold or destroyed.")
    if wanted.outcome and others:
        return _no_outcome(wanted.outcome), tr("Choose “All” to see the others.")
    if found.gone_count and wanted.held is None:
        gone = found.gone_count
        why = tr_n("Only {count} piece that is gone answers.", "Only {count} pieces that are gone answer.", gone)
        return why, tr("Choose “Gone” above the list to see what was sold, given back or destroyed.")
    if len(narrowed) > 1 or not wanted.search:
        why = tr("No piece answers to all of this: {filters}.", filters=", ".join(narrowed))
        return why, tr("Choose less above the list, or press Esc to see every piece.")
    everything = tr_n("the one piece", "all {count} pieces", register.piece_count)
    why = tr("No piece answers to “{search}”.", search=wanted.search)
    return why, tr("Look at the label again, or press Esc to see {everything}.", everything=everything)


def _standing(outcome: Outcome) -> str:
    return {
        Outcome.FIT: tr("fit"),
        Outcome.DERATE: tr("derated"),
        Outcome.HOLD: tr("on hold"),
        Outcome.RETIRE: tr("retired"),
    }[outcome]


def _owner(wanted: Wanted) -> str:
    if wanted.owner:
        return tr("owner {name}", name=wanted.owner)
    words = {None: "", Owned.CLUB: tr("owner club"), Owned.OTHERS: tr("owner not the club")}
    return words[wanted.owned]


def _due(due: Due) -> str:
    return {
        Due.OVERDUE: tr("overdue"),
        Due.IN_30_DAYS: tr("due within 30 days or overdue"),
        Due.IN_90_DAYS: tr("due within 90 days or overdue"),
        Due.NO_DAY: tr("no day due"),
    }[due]


def _exposed(exposed: Exposed) -> str:
    return {
        Exposed.SALT: tr("wetted by salt"),
        Exposed.ANY: tr("any exposure logged"),
        Exposed.NONE: tr("no exposure told"),
    }[exposed]


def _held(held: Held) -> str:
    return {
        Held.IN_STORE: tr("in store"),
        Held.ON_LOAN: tr("on loan"),
        Held.ON_VEHICLE: tr("on a vehicle"),
        Held.LOST: tr("missing or stolen"),
        Held.GONE: tr("gone"),
    }[held]


def _no_outcome(outcome: Outcome) -> str:
    return {
        Outcome.FIT: tr("No piece here is fit."),
        Outcome.DERATE: tr("No piece here is derated."),
        Outcome.HOLD: tr("No piece here is on hold."),
        Outcome.RETIRE: tr("No piece here is retired."),
    }[outcome]
