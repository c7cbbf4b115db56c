"""The one style sheet that pages load: the base theme's layer, then ours, without comments.

A page waits for its style before it shows anything: one file without comments and needless blanks, a fifth
lighter gzipped, is sooner there than three.
"""

from collections.abc import Iterable
from functools import partial
from pathlib import Path

from tinycss2 import parse_component_value_list, serialize
from tinycss2.ast import Node

from scripts.setup.kept import kept
from scripts.setup.paths import DOCS
from scripts.setup.surroundings import packages

SHEET = "assets/style.css"
OURS = ("assets/style.css", "assets/shelf/shelf.css")  # in docs/, in this order
AFTER_THESE, BEFORE_THESE = (";", ",", ":"), (";", ",")  # where a blank says nothing


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
    ours = "".join(kept("sheets", f"{packages()}\0{one}", partial(small, one)) for one in sheets)
    (site / SHEET).write_text(f"{theme}\n{ours}\n", encoding="utf-8")


def small(sheet: str) -> str:
    """A sheet without comments, and without blanks that say nothing."""
    return str(serialize(without_blanks(parse_component_value_list(sheet, skip_comments=True))))


def without_blanks(nodes: Iterable[Node]) -> list[Node]:
    """These tokens and blocks with only those blanks that part two of them."""
    kept: list[Node] = []
    waiting: Node | None = None
    for node in nodes:
        if node.type == "whitespace":
            waiting = node
            continue
        if node.type == "comment":
            continue
        if waiting and kept and needs_blank(kept[-1], node):
            waiting.value = " "
            kept.append(waiting)
        waiting = None
        for inside in ("content", "arguments"):
            if getattr(node, inside, None):
                setattr(node, inside, without_blanks(getattr(node, inside)))
        kept.append(node)
    return kept


def needs_blank(before: Node, after: Node) -> bool:
    """Whether a blank between two tokens says anything: between two selectors' parts it does."""
    closed = before.type == "{} block" or after.type == "{} block"
    return not closed and before not in AFTER_THESE and after not in BEFORE_THESE
