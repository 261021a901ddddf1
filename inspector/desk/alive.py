"""Results for widgets that may be gone by the time they come: a form that was left waits for nothing any more."""

from collections.abc import Callable
from typing import TypeVar

from PySide6.QtCore import QObject
from shiboken6 import isValid

Value = TypeVar("Value")


def while_alive(owner: QObject, call: Callable[[Value], object]) -> Callable[[Value], object]:
    """The call, made only while its owner is still there."""

    def called(value: Value) -> None:
        if isValid(owner):
            call(value)

    return called
