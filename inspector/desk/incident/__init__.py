"""The bad day: reports, what is kept as found, and who lets it go."""
