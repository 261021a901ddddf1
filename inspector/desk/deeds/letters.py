"""Letters to those who have pieces or own them."""

from inspector.desk.deeds.common import person
from inspector.desk.form.asked import Day, Line, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.office import Office
from inspector.duties.print_letters import print_again, print_letters
from inspector.language import tr, tr_n


def letters() -> Deed[None]:
    """To one person, or to everybody of whom anything is asked."""

    def do(office: Office, about: None, given: Values) -> Done:
        name = given.one("person", str)
        if given.tick("again"):
            papers = print_again(office, name)
        else:
            papers = print_letters(office, name, until=given.day("until"), bring_to=given.text("bring_to"),
                                   bring_by=given.day("bring_by"))  # fmt: skip
        return Done(tr_n("One letter is printed.", "{count} letters are printed.", len(papers)), "", papers)

    return Deed(
        "letters", tr("Letters"), tr("Letters to those who have gear"),
        tr("Each letter tells one person what he has, what falls due of it, what must not be used, and what to bring. "
           "An address is looked up as it is printed and is kept nowhere with it."),
        lambda facts, about: (
            person(facts, "person", tr("To"), names=(tr("person"), tr("letter")),
                   nobody=tr("everybody of whom anything is asked")),
            Line(key="bring_to", label=tr("Bring to"), example=tr("for example the shed, hold hook"),
                 names=(tr("bring to"),)),
            Day(key="bring_by", label=tr("Bring by")),
            Day(key="until", label=tr("Look ahead to"), names=(tr("until"),),
                hint=tr("90 days from today, where none is written. What is overdue is always told.")),
            Tick(key="again", label=tr("Print the last letter again as it was kept"),
                 hint=tr("Place and days are those of that letter then.")),
        ),
        do, tr("Print"),
    )  # fmt: skip
