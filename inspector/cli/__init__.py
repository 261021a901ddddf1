"""The same duties without a window."""
