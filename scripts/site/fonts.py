"""The letters of names and headings, a serif, and figures, a plain sans; each cut down to what it needs.

Both are under the Open Font License. What is cut down goes by a name of ours, as that licence asks.
"""

import hashlib
from base64 import b64decode, b64encode
from io import BytesIO
from pathlib import Path

from scripts.setup.kept import kept
from scripts.setup.new_folder import NewFolder
from scripts.setup.node import browser_parts
from scripts.setup.say import Missing
from scripts.setup.surroundings import packages

SERIF = "@fontsource/crimson-pro"
SANS = "@fontsource/source-sans-3"
LICENCES = {SERIF: "headings-licence.txt", SANS: "figures-licence.txt"}
# All that a plain keyboard has, and what names, units and places in headings bring along.
CHARACTERS = (
    "".join(map(chr, range(0x20, 0x7F)))
    + "\u00a0°µ×–—‘’“”…ÀÁÂÄÅÇÈÉÊËÍÑÓÖØÜßàáâäåæçèéêëìíîïñòóôöøùúûüœ"
)

NAME_CHARACTERS = "".join(map(chr, (*range(0x41, 0x5B), *range(0x61, 0x7B)))) + " .-()×"
# No letters: words, and units with them, stay in the device's own sans, and none is made of both.
FIGURE_CHARACTERS = "0123456789.,+±×%°<>–−"
# File served: package, its file, characters. Names of plants are set in true italics.
FONTS = {
    "headings.woff2": (SERIF, "files/crimson-pro-latin-600-normal.woff2", CHARACTERS),
    "names.woff2": (SERIF, "files/crimson-pro-latin-600-italic.woff2", NAME_CHARACTERS),
    "figures.woff2": (SANS, "files/source-sans-3-latin-700-normal.woff2", FIGURE_CHARACTERS),
    "columns.woff2": (SANS, "files/source-sans-3-latin-400-normal.woff2", FIGURE_CHARACTERS),
}
OWN_NAME = 1, 4, 16  # what a font is called, in its table of names
OTHER_NAMES = 3, 6, 17, 25


def put_fonts(folder: NewFolder, below: str) -> None:
    """Put the fonts and their licences into ``folder``, to a place ``below``.

    Raises ``Missing`` where a package has other files than we know, and ``FileExistsError`` where one of
    them stands there already.
    """
    parts = browser_parts()
    for served, (package, name, characters) in FONTS.items():
        own_name = served.removesuffix(".woff2").capitalize()
        source = known(parts / package, name)
        made = cut_down_once(source, characters, own_name)
        folder.put(f"{below}/{served}", made)
    for package, licence in LICENCES.items():
        folder.put(f"{below}/{licence}", known(parts / package, "LICENSE").read_bytes())


def known(package: Path, name: str) -> Path:
    """The path of a file of a package. Raises ``Missing`` where there is none."""
    path = package / name
    if not path.is_file():
        raise Missing(f"{package.name} has no {path.name}: look at the package's files")
    return path


def cut_down_once(source: Path, characters: str, own_name: str) -> bytes:
    """As ``cut_down``, done once for a font, the characters, the name, and the packages that do it."""
    font = hashlib.sha256(source.read_bytes()).hexdigest()
    letters = kept(
        "fonts",
        f"{packages()}\0{font}\0{characters}\0{own_name}",
        lambda: b64encode(cut_down(source, characters, own_name)).decode(),
    )
    return b64decode(letters)


def cut_down(source: Path, characters: str, own_name: str) -> bytes:
    """The font with these characters alone, and without kerning pairs, a quarter of its weight.

    It calls itself ``own_name``; whose work it is stays written in it.
    """
    from fontTools import subset

    options = subset.Options(flavor="woff2", layout_features=[], hinting=False, with_zopfli=False)
    font = subset.load_font(str(source), options)
    cut = subset.Subsetter(options)
    cut.populate(text=characters)
    cut.subset(font)
    for record in list(font["name"].names):
        if record.nameID in OWN_NAME:
            record.string = own_name
        elif record.nameID in OTHER_NAMES:
            font["name"].names.remove(record)
    made = BytesIO()
    subset.save_font(font, made, options)
    return made.getvalue()
