"""The window: a list of gear, a piece with its verdict and reasons, and the form of an inspection."""

import builtins

import PySide6.QtCore  # noqa: F401 - with it comes an import of its own in the place of Python's

# That one reads the text of every module imported from then on, to see whether it spells Qt's names in another way.
# None here does, and it took a seventh of the time until the list was there.
builtins.__import__ = getattr(builtins, "__orig_import__", builtins.__import__)
