"""The form of an inspection, and a run of it through many pieces."""
