"""The guides: docs/guides/*.md, prose by people, with marks that the build checks and fills in.

Marks in the prose:

- ``{reported: key key}`` how sure a claim is, and the keys of its sources (or ``common-practice``);
- ``{figure: calculator output input=value ...}`` a figure, worked out by the calculator at every build;
- ``{open: calculator input=value ... | words}`` a link that opens the calculator filled in.
"""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Any, NamedTuple

from pydantic import Field, ValidationError

from scripts.records.claim import Name, Slug, Text
from scripts.records.error_sentences import word
from scripts.records.lines import RecordFault, findings_of, shown_path
from scripts.records.prose import front_matter
from scripts.records.record import Record
from scripts.records.written import texts
from scripts.setup.paths import ROOT

FOLDER = ROOT / "docs" / "guides"
SURE = ("well-documented", "reported", "uncertain")
MARK = re.compile(rf"\{{({'|'.join(SURE)}|figure|open):\s*([^{{}}]*?)\s*\}}")


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


class GuideDraft(NamedTuple):
    """A guide as it was written, right or wrong: what its marks and references can be checked in."""

    first: list[str]
    problems: list[str]
    body: str
    body_line: int


class ProseMark(NamedTuple):
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
    shown: str


def marks(guide: Guide | GuideDraft) -> Iterator[ProseMark]:
    """Every mark of a guide; those of its checklist count as on the first line."""
    for text, start in ((" ".join(guide.first), 1), (guide.body, guide.body_line)):
        for match in MARK.finditer(text):
            line = start + text.count("\n", 0, match.start())
            yield ProseMark(match[1], match[2], line if start > 1 else 1)


def call(mark: ProseMark) -> Call:
    """What a mark asks of a calculator. Raises ``ValueError`` with what is wrong."""
    before, _, words = mark.words.partition("|")
    name, *rest = before.split() or [""]
    output = words.strip()
    if mark.kind == "figure":
        output, rest = (rest[0], rest[1:]) if rest else ("", [])
    if not name or not output or any("=" not in pair for pair in rest):
        raise ValueError(
            f"{{{mark.kind}: {mark.words}}} needs a calculator, input=value, and words"
        )
    return Call(name, dict(pair.split("=", 1) for pair in rest), output)


def read_guides(
    folder: Path = FOLDER,
) -> tuple[dict[str, Guide], dict[str, GuideDraft], list[RecordFault]]:
    """The guides that hold, all of them as written, by slug; and what is wrong with their front matter."""
    guides: dict[str, Guide] = {}
    drafts: dict[str, GuideDraft] = {}
    wrong: list[RecordFault] = []
    for path in sorted(folder.glob("*.md")):
        guide, draft, findings = read_guide(path)
        wrong += findings
        if draft is not None:
            drafts[path.stem] = draft
        if guide is not None:
            guides[path.stem] = guide
    return guides, drafts, wrong


def read_guide(path: Path) -> tuple[Guide | None, GuideDraft | None, list[RecordFault]]:
    """One guide, the same as written, and what is wrong with its front matter."""
    shown = shown_path(path)
    document = front_matter(path)
    if isinstance(document, RecordFault):
        return None, None, [document]
    findings = findings_of(document[0], shown)
    front, body = document[0].value, document[1]
    body_line = document[0].text.count("\n") + 3  # the two fences, and counting from one
    draft = GuideDraft(
        first=[text for _, text in texts(front, "first")],
        problems=[slug for _, slug in texts(front, "problems")],
        body=body,
        body_line=body_line,
    )
    try:
        record: Any = front | {"body": body, "body_line": body_line}
        return Guide.model_validate(record), draft, findings
    except ValidationError as bad:
        for error in bad.errors():
            line = document[0].line(error["loc"])
            key = ".".join(map(str, error["loc"]))
            findings.append(RecordFault(shown, line, key, word(error, Guide)))
        return None, draft, findings
