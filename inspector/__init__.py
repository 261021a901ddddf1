"""A register that judges four-wheel-drive recovery gear: what each piece is, what is left of it, and why."""

__version__ = "0.1.0"
SELDOM = 50_000  # new objects between two looks for rubbish: what a start imports stays, and a look finds nothing
