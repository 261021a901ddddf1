"""A register that judges four-wheel-drive recovery gear: what each piece is, what is left of it, and why."""

__version__ = "0.1.0"
