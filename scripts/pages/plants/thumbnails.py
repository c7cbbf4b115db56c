"""The small pictures of all plants, in one file that every list draws from."""

from scripts.drawings.thumbnail import thumbnail
from scripts.records.load import Library


def thumbnails(library: Library) -> str:
    """One SVG with a symbol for each plant, its id the plant's slug."""
    symbols = "".join(thumbnail(slug, plant) for slug, plant in library.plants.items())
    return f'<svg xmlns="http://www.w3.org/2000/svg">{symbols}</svg>\n'
