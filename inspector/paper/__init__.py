"""Documents: bytes in, bytes out. Reads nothing but its packaged fonts; asks no clock."""
