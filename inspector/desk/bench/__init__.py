"""The trainer's bench: a page that shows why some attachments kill, by dials, pictures and sums."""
