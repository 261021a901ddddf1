"""From what is asked to its field."""

from inspector.desk.form.asked import Asked, Count, Day, Files, Line, Number, OneOf, Prose, Secret, SomeOf, Tags, Tick
from inspector.desk.form.boxes import Box, ChoiceBox, ProseBox, TickBox
from inspector.desk.form.file_box import FileBox
from inspector.desk.form.lines import CountLine, DayLine, NumberLine, SecretLine, TextLine
from inspector.desk.form.some_box import SomeBox
from inspector.desk.look import Look
from inspector.duties.office import Office

_TAG_LINES = 2


def box_for(asked: Asked, office: Office, look: Look) -> Box:
    """The field for what is asked."""
    match asked:
        case Line():
            return TextLine(asked, office, look)
        case Number():
            return NumberLine(asked, office, look)
        case Count():
            return CountLine(asked, office, look)
        case Day():
            return DayLine(asked, office, look)
        case Secret():
            return SecretLine(asked, office, look)
        case Prose():
            return ProseBox(asked, look, asked.stands)
        case OneOf():
            return ChoiceBox(asked, look)
        case SomeOf():
            return SomeBox(asked, look)
        case Tick():
            return TickBox(asked, look)
        case Tags():
            stands = "".join(f"{tag} " for tag in asked.stands)  # what is scanned next must not grow onto the last one
            return ProseBox(asked, look, stands, _TAG_LINES)
        case Files():
            return FileBox(asked, look)
    raise TypeError(f"no field is made for {type(asked).__name__}")
