"""The window: a list of gear, a piece with its verdict and reasons, and the form of an inspection."""
