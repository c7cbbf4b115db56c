"""The letters of names and headings: a serif under the Open Font License, cut down to what they need."""

from io import BytesIO
from pathlib import Path

from scripts.setup.node import browser_parts
from scripts.setup.say import Missing

FAMILY = "@fontsource/crimson-pro"
LICENCE = "headings-licence.txt"
# All that a plain keyboard has, and what names, units and places in headings bring along.
CHARACTERS = (
    "".join(map(chr, range(0x20, 0x7F)))
    + "\u00a0°µ×–—‘’“”…ÀÁÂÄÅÇÈÉÊËÍÑÓÖØÜßàáâäåæçèéêëìíîïñòóôöøùúûüœ"
)

NAME_CHARACTERS = "".join(map(chr, (*range(0x41, 0x5B), *range(0x61, 0x7B)))) + " .-()×"
# File served: file of the package, characters. Names of plants are set in true italics.
FONTS = {
    "headings.woff2": ("files/crimson-pro-latin-600-normal.woff2", CHARACTERS),
    "names.woff2": ("files/crimson-pro-latin-600-italic.woff2", NAME_CHARACTERS),
}


def write_fonts(folder: Path) -> None:
    """Write the fonts and their licence into ``folder``.

    Raises ``Missing`` where the package has other files than we know.
    """
    package = browser_parts() / FAMILY
    folder.mkdir(parents=True, exist_ok=True)
    for served, (name, characters) in FONTS.items():
        (folder / served).write_bytes(cut_down(known(package / name), characters))
    (folder / LICENCE).write_bytes(known(package / "LICENSE").read_bytes())


def known(path: Path) -> Path:
    """The path of a file of the package. Raises ``Missing`` where there is none."""
    if not path.is_file():
        raise Missing(f"{FAMILY} has no {path.name}: look at the package's files")
    return path


def cut_down(source: Path, characters: str) -> bytes:
    """The font with these characters alone, and without kerning pairs, a quarter of its weight."""
    from fontTools import subset

    options = subset.Options(flavor="woff2", layout_features=[], hinting=False, with_zopfli=False)
    font = subset.load_font(str(source), options)
    cut = subset.Subsetter(options)
    cut.populate(text=characters)
    cut.subset(font)
    made = BytesIO()
    subset.save_font(font, made, options)
    return made.getvalue()
