"""The letters of names and headings: a serif under the Open Font License, cut down to what they need."""

from pathlib import Path

from scripts.setup.node import browser_parts
from scripts.setup.say import Missing

FAMILY = "@fontsource/crimson-pro"
FILE = "files/crimson-pro-latin-600-normal.woff2"
SERVED = "headings.woff2"
LICENCE = "headings-licence.txt"
# All that a plain keyboard has, and what names, units and places in headings bring along.
CHARACTERS = (
    "".join(map(chr, range(0x20, 0x7F)))
    + "\u00a0°µ×–—‘’“”…ÀÁÂÄÅÇÈÉÊËÍÑÓÖØÜßàáâäåæçèéêëìíîïñòóôöøùúûüœ"
)


def write_fonts(folder: Path) -> None:
    """Write the font and its licence into ``folder``.

    Without kerning pairs, which would be a quarter of its weight. Raises ``Missing`` where the package
    has other files than we know.
    """
    from fontTools import subset

    package = browser_parts() / FAMILY
    source, licence = package / FILE, package / "LICENSE"
    if not source.is_file() or not licence.is_file():
        raise Missing(f"{FAMILY} has no {FILE} or no LICENSE: look at the package's files")
    options = subset.Options(flavor="woff2", layout_features=[], hinting=False, with_zopfli=False)
    font = subset.load_font(str(source), options)
    cut = subset.Subsetter(options)
    cut.populate(text=CHARACTERS)
    cut.subset(font)
    folder.mkdir(parents=True, exist_ok=True)
    subset.save_font(font, str(folder / SERVED), options)
    (folder / LICENCE).write_bytes(licence.read_bytes())
