"""Checks of the guides' marks: sources exist, calculators take their inputs, problems have records."""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from calculators.core.listing import load_all
from calculators.core.result import BadInput
from calculators.core.run import run
from scripts.records.claim import COMMON_PRACTICE
from scripts.records.guide import FOLDER, MARK, Guide, Mark, call, marks
from scripts.records.lines import Finding, shown_path

if TYPE_CHECKING:
    from scripts.records.load import Library


def keys_used(library: "Library") -> set[str]:
    """Every source key that a guide names."""
    return {
        key
        for guide in library.guides.values()
        for mark in marks(guide)
        for key in mark.source_keys()
    }


def findings(library: "Library", folder: Path, *, judge_sources: bool) -> Iterator[Finding]:
    """What is wrong with the guides, at file and line."""
    for slug, guide in library.guides.items():
        path = shown_path(FOLDER / f"{slug}.md")
        for problem in guide.problems:
            if not (folder / "problems" / f"{problem}.yml").exists():
                message = f"{problem} has no record in species/problems/"
                yield Finding(path, 1, "problems", message)
        for mark in marks(guide):
            known = set(library.sources) if judge_sources else set(mark.source_keys())
            for message in wrong(mark, known):
                yield Finding(path, mark.line, mark.kind, message)
        yield from unread(path, guide)


def unread(path: Path, guide: Guide) -> Iterator[Finding]:
    """A brace that opens a word and a colon, but no mark that we know, is a slip of the pen."""
    for number, line in enumerate(MARK.sub("", guide.body).split("\n")):
        if "{" in line and ":" in line.split("{", 1)[1]:
            yield Finding(path, guide.body_line + number, "", "has a mark that nobody knows")


def wrong(mark: Mark, sources: set[str]) -> Iterator[str]:
    """What is wrong with one mark."""
    keys = mark.source_keys()
    for key in keys:
        if key != COMMON_PRACTICE and key not in sources:
            yield f"{key} is no key of sources.yml; add the source there, or write {COMMON_PRACTICE}"
    if mark.kind in ("figure", "open"):
        yield from wrong_call(mark)
    elif not keys:
        yield "names no source"
    elif mark.kind == "well-documented" and set(keys) == {COMMON_PRACTICE}:
        yield "well-documented needs a named source; allowed here: reported, uncertain"


def wrong_call(mark: Mark) -> Iterator[str]:
    """What is wrong with what a mark asks of a calculator."""
    try:
        asked = call(mark)
    except ValueError as bad:
        yield str(bad)
        return
    if asked.calculator not in load_all():
        yield f"there is no calculator {asked.calculator}; there are {', '.join(load_all())}"
        return
    try:
        outputs = run(asked.calculator, asked.inputs, typed=True)["outputs"]
    except BadInput as bad:
        yield from (f"{key}: {message}" for key, message in bad.problems)
        return
    if mark.kind == "figure" and outputs.get(asked.wanted) is None:
        yield f"{asked.calculator} gives no figure {asked.wanted} for these inputs"
