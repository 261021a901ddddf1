"""Tell what would change the verdict of a piece: time, a reading, the limits its club has loosened."""

from inspector.duties.office import Office
from inspector.gear.judged import Judged
from inspector.gear.verdict import Fact
from inspector.rulebook.turn_words import turn_facts


def turns_of(office: Office, judged: Judged) -> tuple[Fact, ...]:
    """Each thing under its name, worked out from the stored verdict; touches no register.

    A verdict of another rulebook than the one in force is left alone: that one's figures would say it wrongly.
    """
    if judged.verdict.rulebook != office.rules.hash:
        return ()
    return turn_facts(judged.dossier, judged.verdict, office.rules, office.system)
