"""Rigs: which joints hold, how hard the pull may be, where it would break first, and the best rig of a kit."""
