"""The guides: docs/guides/*.md, prose by people, with marks that the build checks and fills in.

Marks in the prose:

- ``{reported: key key}`` how sure a claim is, and the keys of its sources (or ``common-practice``);
- ``{figure: calculator output input=value ...}`` a figure, worked out by the calculator at every build;
- ``{open: calculator input=value ... | words}`` a link that opens the calculator filled in.
"""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, NamedTuple

import yaml
from pydantic import Field, ValidationError

from scripts.records.claim import Name, Record, Slug, Text
from scripts.records.lines import Finding, shown_path
from scripts.records.messages import word
from scripts.setup.paths import ROOT

FOLDER = ROOT / "docs" / "guides"
SURE = ("well-documented", "reported", "uncertain")
MARK = re.compile(rf"\{{({'|'.join(SURE)}|figure|open):\s*([^{{}}]*?)\s*\}}")
FENCE = "---\n"


class Guide(Record):
    """One guide. ``first`` is the short checklist at its top; ``problems`` are linked both ways."""

    title: Name
    description: Text
    order: int
    also: list[Name] = []  # other words under which search finds it
    problems: list[Slug] = []
    first: Annotated[list[Text], Field(min_length=1)]
    body: str
    body_line: int  # the line of the file on which the body starts


class Mark(NamedTuple):
    """A mark in the prose: its kind, what stands behind the colon, and its line in the file."""

    kind: str
    words: str
    line: int

    def source_keys(self) -> list[str]:
        """The source keys, where it says how sure a claim is."""
        return self.words.split() if self.kind in SURE else []


class Call(NamedTuple):
    """A calculator with inputs as text, and an output's key or a link's words."""

    calculator: str
    inputs: dict[str, str]
    wanted: str


def marks(guide: Guide) -> Iterator[Mark]:
    """Every mark of a guide; those of its checklist count as on the first line."""
    for text, start in ((" ".join(guide.first), 1), (guide.body, guide.body_line)):
        for match in MARK.finditer(text):
            line = start + text.count("\n", 0, match.start())
            yield Mark(match[1], match[2], line if start > 1 else 1)


def call(mark: Mark) -> Call:
    """What a mark asks of a calculator. Raises ``ValueError`` with what is wrong."""
    before, _, words = mark.words.partition("|")
    name, *rest = before.split() or [""]
    wanted = words.strip()
    if mark.kind == "figure":
        wanted, rest = (rest[0], rest[1:]) if rest else ("", [])
    if not name or not wanted or any("=" not in pair for pair in rest):
        raise ValueError(
            f"{{{mark.kind}: {mark.words}}} needs a calculator, input=value, and words"
        )
    return Call(name, dict(pair.split("=", 1) for pair in rest), wanted)


def read_guides(folder: Path = FOLDER) -> tuple[dict[str, Guide], list[Finding]]:
    """All guides by slug, and what is wrong with their front matter."""
    guides: dict[str, Guide] = {}
    wrong: list[Finding] = []
    for path in sorted(folder.glob("*.md")):
        found = read_guide(path)
        if isinstance(found, Guide):
            guides[path.stem] = found
        else:
            wrong += found
    return guides, wrong


def read_guide(path: Path) -> Guide | list[Finding]:
    """One guide, or what is wrong with its front matter."""
    parts = path.read_text(encoding="utf-8").split(FENCE, 2)
    try:
        front = yaml.safe_load(parts[1]) if len(parts) == 3 and not parts[0] else None
    except yaml.YAMLError as bad:
        return [Finding(shown_path(path), 1, "", f"front matter is not YAML: {bad}")]
    if not isinstance(front, dict):
        return [Finding(shown_path(path), 1, "", "needs front matter between two lines of ---")]
    start = parts[1].count("\n") + 3  # the two fences, and counting from one
    try:
        return Guide.model_validate(front | {"body": parts[2], "body_line": start})
    except ValidationError as bad:
        return [
            Finding(shown_path(path), 1, ".".join(map(str, one["loc"])), word(one, Guide))
            for one in bad.errors()
        ]
