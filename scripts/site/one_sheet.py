"""The one style sheet that pages load: the base theme's layer, then ours, without comments.

A page waits for its style before it shows anything: one file without comments and needless blanks, a fifth
lighter gzipped, is sooner there than three.
"""

from functools import partial
from pathlib import Path

from scripts.setup.kept import kept
from scripts.setup.paths import DOCS
from scripts.setup.surroundings import packages

SHEET = "assets/style.css"
OURS = ("assets/style.css", "assets/shelf/shelf.css")  # in docs/, in this order


def join_sheets(site: Path, theme: str) -> None:
    """Write the sheet of a built ``site``, whose parts go; ``theme`` is the theme's layer, in one line."""
    for name in OURS:
        (site / name).unlink(missing_ok=True)
    write_sheet(site, theme)


def renew_sheet(site: Path) -> None:
    """Write the sheet anew from what ours are now; the theme's layer stays."""
    write_sheet(site, (site / SHEET).read_text(encoding="utf-8").split("\n", 1)[0])


def write_sheet(site: Path, theme: str) -> None:
    """The theme's layer in the first line, ours in the second."""
    sheets = [(DOCS / name).read_text(encoding="utf-8") for name in OURS]
    ours = "".join(
        kept("sheets", f"{packages()}\0{one}", partial(made_small, one)) for one in sheets
    )
    (site / SHEET).write_text(f"{theme}\n{ours}\n", encoding="utf-8")


def made_small(sheet: str) -> str:
    """As ``small``, by what is imported only where a sheet has to be read."""
    from scripts.site.small_sheet import small

    return small(sheet)
