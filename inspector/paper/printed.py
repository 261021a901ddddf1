"""What comes out of the press."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Printed:
    """A finished PDF. missing_glyphs: the signs the packaged type lacks, each once, printed as an empty square."""

    pdf: bytes
    page_count: int
    missing_glyphs: tuple[str, ...]
