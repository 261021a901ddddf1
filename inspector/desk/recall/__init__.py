"""Recalls: what a notice means, what is held for it, who was written to, and what came back."""
