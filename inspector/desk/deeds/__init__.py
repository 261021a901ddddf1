"""The deeds of the window, as data: what each is called, asks and does. A module a subject."""
