"""Where the packaged type lies; whoever only asks for its files needs nothing that prints."""

from pathlib import Path

FOLDER = Path(__file__).parent / "fonts"
REGULAR, BOLD = "DejaVuSansCondensed", "DejaVuSansCondensed-Bold"


def font_files() -> tuple[Path, Path]:
    """The type's files, regular and bold; the window may register the same ones."""
    return FOLDER / f"{REGULAR}.ttf", FOLDER / f"{BOLD}.ttf"
