"""How one case of many is refused: one test goes through all of them and names each that is not."""

from collections.abc import Callable

from inspector.refused import Refused


def wrongly_refused(does: Callable[[], object], field: str, says: str) -> str:
    """What is wrong where this is not refused at this field, in these words, with what to do; empty where it is."""
    try:
        does()
    except Refused as refusal:
        right = refusal.field == field and says in f"{refusal.why} {refusal.what_to_do}" and refusal.what_to_do
        return "" if right else f"refused with “{refusal}”, not with “{says}” at {field}"
    except Exception as error:
        return f"not refused: {error!r}"
    return "not refused"
