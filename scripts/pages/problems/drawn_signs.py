"""Which drawings stand for a problem: of the findings that speak for it, those that tell most."""

from typing import NamedTuple

from markupsafe import Markup

from scripts.drawings.signs.sign_symbols import sign_drawings, sign_symbols
from scripts.records.load import Library
from scripts.records.problem import Evidence, Problem

SHOWN = 3  # drawings on a problem's page, at most
SPEAKS_FOR = ("strong-for", "for")
COATED = ("old-leaves", "whole-plant", "surface", "roots")


class SignPicture(NamedTuple):
    """A drawing in a problem's page: what it shows in words, and what stands in its ``<svg>``."""

    label: str
    body: Markup


def signs_file(_: Library) -> str:
    """One SVG with a symbol for each finding that can be drawn, its id the finding's key."""
    return f'<svg xmlns="http://www.w3.org/2000/svg">{sign_symbols()}</svg>\n'


def drawn(problem: Problem, library: Library) -> list[str]:
    """Its drawn findings, those first that tell most.

    A hallmark comes before the rest, and what one sees before what a test or a memory says.
    """
    speaking = [
        row
        for row in problem.evidence
        if row.finding in sign_drawings() and row.strength in SPEAKS_FOR
    ]
    return [row.finding for row in sorted(speaking, key=lambda row: weight(row, library))]


def weight(row: Evidence, library: Library) -> tuple[bool, int, bool]:
    """The less, the sooner it is shown."""
    unseen = library.findings[row.finding].where in ("recently", "readings")
    return not row.hallmark, SPEAKS_FOR.index(row.strength), unseen


def drawn_at(problem: Problem, where: str, library: Library) -> str:
    """The finding to show where one looks at a place: one of that place, else its first."""
    keys = drawn(problem, library)
    own = (key for key in keys if stands_at(library.findings[key].where, where))
    return next(own, keys[0])


def stands_at(found: str, where: str) -> bool:
    """Whether a finding is seen at a place: a coat on whatever it covers, a test in the water."""
    return (
        found == where
        or (found == "coating" and where in COATED)
        or (found == "readings" and where == "water")
    )


def pictures(problem: Problem, library: Library) -> list[SignPicture]:
    """What its page shows, the most telling first."""
    return [
        SignPicture(library.findings[key].label, Markup(sign_drawings()[key]))
        for key in drawn(problem, library)[:SHOWN]
    ]
