"""The settings by which a field copy differs from the register it was taken from."""

COPY_OF = "copy_of"  # names the register that a field copy was taken from
FOLLOWS = frozenset({"judged by adoption"})  # what a copy writes by itself, since a day has come
