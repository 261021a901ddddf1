"""What the form of an inspection says of itself: what is open, what cannot be taken, what the preview leaves out."""

from inspector.desk.inspect.form_body import FormBody
from inspector.language import tr, tr_n
from inspector.refused import Refused


def nothing_yet(faults: int) -> str:
    """Why there is no verdict yet."""
    if faults:
        return tr("What is written cannot be judged yet; the field says why.")
    return tr("Nothing is written yet. Grade a check with the keys: 1 good, 2 slight, 3 bad, 0 not seen.")


def left_out(body: FormBody, faults: int) -> str:
    """What the verdict shown does not reckon with."""
    if not faults:
        return ""
    told = tr_n("Without one reading that is not clear.", "Without {count} readings that are not clear.", faults)
    names = "; ".join(name for box in body.boxes for name in box.unclear)
    return " ".join([told, tr("Not clear yet: {names}.", names=names)])


def still_open(body: FormBody) -> str:
    """How many checks are open, and whether a field waits for a second look."""
    left = body.open_count
    text = tr_n("One check is open; it counts as not seen.", "{count} checks are open; they count as not seen.", left)
    told = text if left else tr("Every check is graded.")
    wait = tr("A field waits for a second look.") if body.open_caution() else ""
    return f"{told} {wait}".strip()


def not_ready(body: FormBody, faults: int) -> Refused | None:
    """Why the inspection cannot be handed on as it stands; None where it can. faults: readings that are not clear."""
    if faults:
        why = tr_n("One reading cannot be taken as it stands.", "{count} readings cannot be taken.", faults)
        return Refused(tr("readings"), why, tr("Mend it, or empty the field. Nothing else is lost."))
    if body.head.more.fault():
        return Refused(tr("next within"), tr("It is no number of days."), tr("Mend it, or empty the field."))
    if (line := body.open_caution()) and line.caution:
        what = tr("Look again; where it is so, press the button below the field. Nothing else is lost.")
        return Refused(line.caution.name, line.caution.why, what)
    if body.photos.is_busy:
        return Refused(tr("photos"), tr("A photo is still being looked at."), tr("Wait a moment and save again."))
    return None
