"""YAML with line numbers: what stands where, and keys that stand twice."""

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from scripts.setup.paths import ROOT

Place = tuple[str | int, ...]


class Finding(NamedTuple):
    """Something wrong in a file, at a line, at a key."""

    path: Path
    line: int
    key: str
    message: str

    def __str__(self) -> str:
        key = f" {self.key}:" if self.key else ""
        return f"{self.path.as_posix()}:{self.line}:{key} {self.message}"


class Document(NamedTuple):
    """A parsed file: its value, and the line of each place in it."""

    value: Any
    lines: dict[Place, int]

    def line(self, place: Sequence[str | int]) -> int:
        """The line of a place, or of the nearest place around it that the file has."""
        known = tuple(place)
        while known and known not in self.lines:
            known = known[:-1]
        return self.lines.get(known, 1)


def finding_at(
    documents: Mapping[Path, Document], path: Path, place: Place, message: str
) -> Finding:
    """A finding at a place in a file, at the line where the file has it."""
    document = documents.get(path)
    line = document.line(place) if document else 1
    return Finding(shown_path(path), line, ".".join(map(str, place)), message)


def shown_path(path: Path) -> Path:
    """A file's path as the person knows it, from the project's folder."""
    return path.relative_to(ROOT) if path.is_relative_to(ROOT) else path


def read(path: Path, shown: Path) -> tuple[Document | None, list[Finding]]:
    """Parse one file. Returns no document where it is no YAML; duplicate keys are findings."""
    try:
        text = path.read_text(encoding="utf-8")
    except UnicodeDecodeError as wrong:
        return None, [Finding(shown, 1, "", f"is not UTF-8 text (byte {wrong.start})")]
    try:
        loader = yaml.SafeLoader(text)
        node = loader.get_single_node()
        value = loader.construct_document(node) if node else None
        loader.dispose()
    except yaml.YAMLError as wrong:
        return None, [Finding(shown, line_of(wrong), "", f"is not YAML: {reason(wrong)}")]
    except ValueError as wrong:  # a date such as 2026-02-30
        return None, [Finding(shown, 1, "", f"holds a value that cannot be: {wrong}")]
    lines: dict[Place, int] = {}
    findings = list(walk(node, (), lines, shown)) if node else []
    return Document(value, lines), findings


def walk(node: yaml.Node, place: Place, lines: dict[Place, int], path: Path) -> Iterator[Finding]:
    """Note the line of every place under a node; yield a finding for each key that stands twice."""
    lines.setdefault(place, node.start_mark.line + 1)
    if isinstance(node, yaml.SequenceNode):
        for number, part in enumerate(node.value):
            yield from walk(part, (*place, number), lines, path)
    if isinstance(node, yaml.MappingNode):
        seen: dict[str, int] = {}
        for key, part in node.value:
            line = key.start_mark.line + 1
            name = str(key.value)
            if name in seen:
                where = ".".join(map(str, (*place, name)))
                first = seen[name]
                yield Finding(path, line, where, f"stands twice; the first is on line {first}")
            seen.setdefault(name, line)
            lines[(*place, name)] = line
            yield from walk(part, (*place, name), lines, path)


def line_of(wrong: yaml.YAMLError) -> int:
    """The line a parser's complaint points at."""
    mark = getattr(wrong, "problem_mark", None)
    return mark.line + 1 if mark else 1


def reason(wrong: yaml.YAMLError) -> str:
    """A parser's complaint in one line."""
    return " ".join(str(getattr(wrong, "problem", None) or wrong).split())
