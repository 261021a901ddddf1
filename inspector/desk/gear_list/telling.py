"""What the gear list says of itself: how much of the register is shown and why, and what to do where nothing is."""

from collections.abc import Sequence

from inspector.desk.gear_list.listed import Listed
from inspector.drawings.marks import outcome_word
from inspector.gear.lists import Held
from inspector.gear.outcome import Outcome
from inspector.language import tr, tr_n


def shown_words(found: Listed, filters: Sequence[str]) -> str:
    """How many pieces of how many are listed, and by what. filters: the choices beside the outcome, in words."""
    narrowed = narrowing(found, filters)
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


def narrowing(found: Listed, filters: Sequence[str]) -> tuple[str, ...]:
    """By what the list is narrowed, in words."""
    wanted = found.wanted
    words = [tr("“{search}”", search=wanted.search)] if wanted.search else []
    words += [outcome_word(wanted.outcome)] if wanted.outcome else []
    return (*words, *filters)


def nothing_words(found: Listed, filters: Sequence[str]) -> tuple[str, str]:
    """Why there is no row to show, and what to do."""
    wanted, register = found.wanted, found.register
    if not register.piece_count:
        return tr("The register holds no gear yet."), tr(
            "Book the first piece in with the command “inspector book”. Then press F5, and it stands here."
        )
    if not narrowing(found, filters):
        return tr("Every piece is gone."), tr("Choose “Gone” above the list to see what was sold or destroyed.")
    if found.gone_count and wanted.held is not Held.GONE and not found.counts.get(None):
        why = tr_n("Only {count} piece that is gone answers.", "Only {count} pieces that are gone answer.",
                   found.gone_count)  # fmt: skip
        return why, tr("Choose “Gone” above the list to see what was sold, given back or destroyed.")
    if wanted.outcome and found.counts.get(None):
        return _no_outcome(wanted.outcome), tr("Choose “All” to see the others.")
    if filters:
        why = tr("No piece answers to: {filters}.", filters=", ".join(narrowing(found, filters)))
        return why, tr("Choose less above the list, or press Esc to see all of it.")
    everything = tr_n("the one piece", "all {count} pieces", register.piece_count)
    why = tr("No piece answers to “{search}”.", search=wanted.search)
    return why, tr("Look at the label again, or press Esc to see {everything}.", everything=everything)


def _no_outcome(outcome: Outcome) -> str:
    return {
        Outcome.FIT: tr("No piece here is fit."),
        Outcome.DERATE: tr("No piece here is derated."),
        Outcome.HOLD: tr("No piece here is on hold."),
        Outcome.RETIRE: tr("No piece here is retired."),
    }[outcome]
