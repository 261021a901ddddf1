"""Tell what is known of a piece today: where it is, whose, what it is worth, what keeps it, and what was put in."""

from inspector.duties.look_up import told_where
from inspector.duties.office import Office
from inspector.duties.recall_words import recall_words
from inspector.duties.tags_left_on import tag_left
from inspector.duties.tell_whereabouts import evidence_words
from inspector.duties.tell_work import work_word
from inspector.duties.value_gear import show_money
from inspector.duties.words_of_then import booked_facts, words_of_then
from inspector.gear.dossier import Dossier
from inspector.gear.item import Worth
from inspector.gear.judged import Judged
from inspector.gear.repair import NewRepair
from inspector.gear.verdict import Fact
from inspector.gear.whereabouts import Where
from inspector.language import show_day, tr


def piece_today(office: Office, judged: Judged) -> tuple[Fact, ...]:
    """Facts that move first, then those of the booking as the verdict told them; what nobody wrote is left out.

    The place of the booking is left out where the piece lies at another one since.
    """
    item = judged.dossier.item
    with office.book.reading() as page:
        kept, found = page.open_quarantines(item), page.whereabouts_of(item)
        called_in, where = recall_words(page, judged.dossier), told_where(office, page, item, found)
        left = tag_left(page, judged)
    moved = found.where is Where.IN_STORE and found.since is not None
    booked = (one for one in booked_facts(judged) if not (moved and one.label == tr("Place")))
    facts = (
        Fact(tr("Where it is"), where),
        Fact(tr("Evidence"), evidence_words(kept)),
        Fact(tr("Called in"), called_in),
        Fact(tr("Hold tag"), left),
        *booked,
        Fact(tr("Wording"), words_of_then(judged)),
        Fact(tr("Value"), _worth(office, item.facts.worth)),
        Fact(tr("Work done"), _work(judged.dossier)),
    )
    return tuple(one for one in facts if one.text)


def _worth(office: Office, worth: Worth | None) -> str:
    return show_money(worth.hundredths, worth.currency, office.decimal) if worth else tr("not written down")


def _work(dossier: Dossier) -> str:
    """Every repair and part put in, the oldest first."""
    return "; ".join(_done(one.facts) for one in dossier.repairs)


def _done(done: NewRepair) -> str:
    what = tr("{work}, {part}", work=work_word(done.work), part=done.part) if done.part else work_word(done.work)
    return tr("{what} ({day})", what=what, day=show_day(done.on))
