"""The settings by which a copy differs from the register it was taken from."""

COPY_OF = "copy_of"  # names the register that a field copy was taken from
WITHOUT_CONTACTS = "without contacts"  # says that contact details were left out as it was made
FOLLOWS = frozenset({"judged by adoption"})  # what a copy writes by itself, since a day has come
