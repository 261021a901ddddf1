"""Files of tables and of the whole register: rows to bytes for other programs, and back."""
