"""The one refusal: what was wrong, where, and what to do about it."""


class Refused(Exception):  # noqa: N818 - the trade's word, not an error of the program
    """Something typed or asked for that the register will not take.

    field: the name of the field or argument, as the officer knows it.
    why: the reason, one sentence.
    what_to_do: the next step, one sentence.
    """

    def __init__(self, field: str, why: str, what_to_do: str) -> None:
        super().__init__(f"{field}: {why} {what_to_do}")
        self.field = field
        self.why = why
        self.what_to_do = what_to_do
