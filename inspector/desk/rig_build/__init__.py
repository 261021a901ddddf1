"""The bench: a rig built part by part, by drag or by keys."""
