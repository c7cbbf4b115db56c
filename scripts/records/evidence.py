"""Checks of the findings, and of the evidence that the problem records make of them."""

from collections import defaultdict
from collections.abc import Iterator
from typing import TYPE_CHECKING

from calculators.diagnosis.likelihood import USUAL
from scripts.records.finding import Finding as Sign
from scripts.records.lines import Finding

if TYPE_CHECKING:
    from scripts.records.check import Checker


def findings(checker: "Checker") -> Iterator[Finding]:
    """Findings that name others must name known ones; answers to one question must not overlap."""
    known, path = checker.library.findings, checker.folder / "findings.yml"
    by_input: dict[str, list[str]] = defaultdict(list)
    for key, sign in known.items():
        for field in ("implies", "excludes"):
            for number, other in enumerate(getattr(sign, field)):
                if other not in known or other == key:
                    message = f"{other} is no other key of findings.yml"
                    yield checker.finding(path, (key, field, number), message)
        if sign.derived_from:
            by_input[sign.derived_from.input].append(key)
    for keys in by_input.values():
        total = sum(USUAL[known[key].usual] for key in keys)
        if total > 1:
            message = f"the answers to its question are there {total:.2f} of the time; at most 1"
            yield checker.finding(path, (keys[0], "usual"), message)
        for key in keys:
            for other in keys:
                if key < other and overlap(known[key], known[other]):
                    yield checker.finding(path, (key, "derived_from"), f"overlaps {other}")


def overlap(one: Sign, other: Sign) -> bool:
    """Whether a figure could be in two bands."""
    a, b = one.derived_from, other.derived_from
    assert a is not None
    assert b is not None
    if a.equals is not None or b.equals is not None:
        return a.equals == b.equals
    low = max(edge if (edge := band.above) is not None else -1e9 for band in (a, b))
    high = min(edge if (edge := band.up_to) is not None else 1e9 for band in (a, b))
    return low < high


def rows(checker: "Checker") -> Iterator[Finding]:
    """Evidence must name a known finding, once, and a hallmark must speak strongly for it."""
    for slug, problem in checker.library.problems.items():
        path = checker.folder / "problems" / f"{slug}.yml"
        seen: set[str] = set()
        for number, row in enumerate(problem.evidence):
            place = ("evidence", number)
            if row.finding not in checker.library.findings:
                message = f"{row.finding} is no key of findings.yml"
                yield checker.finding(path, (*place, "finding"), message)
            if row.finding in seen:
                message = f"{row.finding} stands twice"
                yield checker.finding(path, (*place, "finding"), message)
            seen.add(row.finding)
            if row.hallmark and row.strength != "strong-for":
                message = "a hallmark speaks strongly for its problem: strong-for"
                yield checker.finding(path, (*place, "hallmark"), message)
