"""Forms of deeds: what is asked as data, and the page that asks it."""
