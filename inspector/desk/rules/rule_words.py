"""A rule and a comparison as parts of a page."""

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.plain import column, facts, said
from inspector.desk.record_parts import section
from inspector.drawings.marks import outcome_word
from inspector.gear.rulebooks import BookFound, Change, Compared, Direction, PieceDiffers, RuleShown, WorkedExample
from inspector.language import show_day, tr, tr_n

_MOST = 40


def rule_part(shown: RuleShown) -> QWidget:
    """One rule in full, with its examples worked by the book in force."""
    line = shown.line
    club = tr("{change}. {why}", change=line.club, why=shown.club_why) if line.club else ""
    lines = [
        (tr("Asks"), tr("{what}: {demand}", what=line.quantity, demand=line.demand)),
        (tr("Else"), tr("{outcome} ({missing})", outcome=line.otherwise, missing=shown.missing)),
        (tr("Uses"), shown.purposes),
        (tr("Speaks of"), ", ".join(shown.kinds)),
        (tr("Loosened by the club") if line.loosened else tr("Stricter by the club"), club),
        (tr("Source"), shown.source),
        (tr("Certainty"), shown.certainty),
        (tr("Since"), show_day(shown.since)),
    ]
    examples = [(one.given, _example(one)) for one in shown.examples]
    parts = [said(line.id, Type.HEAD), said(line.says, bold=True), facts([one for one in lines if one[1]])]
    return column([*parts, section(tr("Examples"), facts(examples))], 2 * GRID)


def _example(one: WorkedExample) -> str:
    """What the book in force says of an example, and the packaged one where that is another answer."""
    told = tr("limit {limit}: {outcome}", limit=one.limit, outcome=one.found) if one.limit else one.found
    if one.expected == one.found:
        return told
    return tr("{told}; packaged rulebook: {outcome}", told=told, outcome=one.expected)


def checked_words(found: BookFound) -> tuple[str, str]:
    """What a check found: a head, and its lines."""
    if found.faults:
        lines = (tr("line {line}: {says}", line=one.line, says=one.says) for one in found.faults)
        head = tr_n("One fault. Nothing can be adopted yet.", "{count} faults. Nothing can be adopted yet.",
                    len(found.faults))  # fmt: skip
        return head, "\n".join(lines)
    lines = (change_words(one) for one in found.changes)
    return tr_n(
        "One change. It can be compared.", "{count} changes. They can be compared.", len(found.changes)
    ), "\n".join(lines)


def change_words(change: Change) -> str:
    """One figure, and whether it is looser or stricter than the packaged one."""
    words = {Direction.LOOSER: tr("LOOSER"), Direction.STRICTER: tr("stricter"), Direction.SAME: tr("the same")}
    return tr("{about}: {club}, packaged {packaged}, {direction}", about=change.about, club=change.club,
              packaged=change.packaged, direction=words[change.direction])  # fmt: skip


def compared_words(found: Compared) -> tuple[str, str]:
    """Which pieces would be judged otherwise, and which would be retired for good."""
    head = tr("{count} of {all} pieces would be judged otherwise.", count=len(found.pieces), all=found.piece_count)
    lines = [_differs(one) for one in found.pieces[:_MOST]]
    if more := len(found.pieces) - _MOST:
        lines += [tr("and {count} more", count=more)] if more > 0 else []
    if found.retires:
        lines.insert(0, tr("RETIRED FOR GOOD at once: {tags}.", tags=", ".join(found.retires)))
    return head, "\n".join(lines)


def _differs(one: PieceDiffers) -> str:
    """The piece in one line, below it each rule that makes the difference."""
    before, after = outcome_word(one.before.outcome), outcome_word(one.after.outcome)
    head = tr("{tag} {kind}: {before}, then {after}", tag=one.tag, kind=one.kind_name, before=before, after=after)
    return "\n".join([head, *(f"    – {why}" for why in (*one.purposes, *one.because))])
