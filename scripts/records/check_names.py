"""Checks of the ambiguous trade names that need more than one record."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from scripts.records.lines import Finding

if TYPE_CHECKING:
    from scripts.records.check import Checker


def trade_names(checker: "Checker") -> Iterator[Finding]:
    """A candidate stands once and, where it has a record, by its record; a name has one page."""
    accepted = {plant.name.lower(): slug for slug, plant in checker.library.plants.items()}
    pages: dict[str, str] = {}
    for slug, one in checker.library.names.items():
        path = checker.folder / "names" / f"{slug}.yml"
        seen: set[str] = set()
        for number, candidate in enumerate(one.may_be):
            key = "plant" if candidate.plant else "name"
            place = ("may_be", number, key)
            what = candidate.plant or str(candidate.name).lower()
            if what in seen:
                yield checker.finding(path, place, f"{what} stands twice")
            seen.add(what)
            if what in accepted:
                message = f"has a record: write plant: {accepted[what]}"
                yield checker.finding(path, place, message)
        if not any(candidate.plant for candidate in one.may_be):
            yield checker.finding(path, ("may_be",), "names no plant that has a record")
        for name in (one.name, *one.other_names):
            other = pages.setdefault(name.lower(), slug)
            if other != slug:
                yield checker.finding(path, ("name",), f"{name} has a page already: {other}.yml")
