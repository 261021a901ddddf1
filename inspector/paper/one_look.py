"""A canvas on which tick boxes that look alike share their looks; reportlab by itself draws six for each box anew."""

from typing import Any

from reportlab.pdfbase.acroform import AcroForm
from reportlab.pdfgen.canvas import Canvas


class PressCanvas(Canvas):  # type: ignore[misc]  # reportlab carries no types
    """Reportlab's canvas with such a form."""

    @property
    def acroForm(self) -> AcroForm:  # noqa: N802  # reportlab's own name
        """The form of the document in hand, begun with its first field."""
        if "AcroForm" not in vars(self):
            self._doc._catalog.AcroForm = self.AcroForm = _OneLook(self)
        return self.AcroForm


class _OneLook(AcroForm):  # type: ignore[misc]
    def __init__(self, canvas: Canvas) -> None:
        super().__init__(canvas)
        self._looks: dict[object, Any] = {}

    def checkboxAP(self, key: str, value: str, **how: Any) -> Any:  # noqa: N802  # reportlab's own name
        """The look of a box in one state, drawn once."""
        known = (key, value, *how.items())
        if known not in self._looks:
            self._looks[known] = super().checkboxAP(key, value, **how)
        return self._looks[known]
