"""YAML in one pass over its events: values, or the line of every place and what no record may hold.

Faster than building nodes first, and a bomb of anchors or deep nesting ends at its first line.
"""

import re
from collections.abc import Iterator
from sys import intern
from typing import Any, NamedTuple

import yaml

from scripts.records.characters import unfit

LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)  # by the C library where there is one
A_WORD = 40  # letters; what is no longer is mostly said again and again, and is held once
DEEPEST = 30  # levels; a record has about 6
PLAIN_NUMBER = re.compile(
    r"[-+]?((0|[1-9][0-9]*)(\.[0-9]*)?|\.[0-9]+)([eE][-+]?[0-9]+)?|[-+]?\.\w+"
)
TAG = "tag:yaml.org,2002:"
NUMBERS = (f"{TAG}int", f"{TAG}float")
TYPED = (*NUMBERS, f"{TAG}bool", f"{TAG}null", f"{TAG}timestamp")

Place = tuple[str | int, ...]


class Fault(NamedTuple):
    """What is wrong at a place of a text; ``line`` counts from 1."""

    place: Place
    line: int
    message: str


class NotARecord(ValueError):
    """A text of which nothing can be used. ``line`` counts from 1."""

    def __init__(self, line: int, message: str) -> None:
        super().__init__(message)
        self.line = line


class Parsed(NamedTuple):
    """A text's value; the lines of its places, and its faults, are there only if asked for."""

    value: Any
    lines: dict[Place, int]
    faults: list[Fault]
    sound: bool  # whether a second pass would find no fault


def parse(text: str, *, with_lines: bool = False) -> Parsed:
    """The value of a text, None where it is empty. Raises ``NotARecord``."""
    parser = Parser(text, with_lines)
    try:
        value = parser.document()
    except yaml.YAMLError as wrong:
        raise NotARecord(line_of(wrong, text), f"is not YAML: {reason(wrong, text)}") from None
    finally:
        parser.loader.dispose()
    return Parsed(value, parser.lines, parser.faults, not parser.suspicious)


class Parser:
    """Turns events into values. Places are built only in a pass that notes lines."""

    def __init__(self, text: str, with_lines: bool) -> None:
        try:
            self.loader = LOADER(text)
        except yaml.YAMLError as wrong:  # characters that YAML does not allow
            raise NotARecord(1, f"is not YAML: {reason(wrong, text)}") from None
        self.with_lines = with_lines
        self.lines: dict[Place, int] = {}
        self.faults: list[Fault] = []
        self.suspicious = False

    def document(self) -> Any:
        """The value of the only document. Raises ``NotARecord``."""
        value = None
        events = self.events()
        for number, event in enumerate(events):
            if number:
                raise NotARecord(line(event), "holds more than one document; one file is one")
            value = self.value(self.loader.get_event(), ())
            self.loader.get_event()  # the document's end
        return value

    def events(self) -> Iterator[Any]:
        """The start of every document."""
        while (event := self.loader.get_event()) is not None:
            if isinstance(event, yaml.DocumentStartEvent):
                yield event

    def value(self, event: Any, place: Place, depth: int = 0) -> Any:
        """The value that an event begins.

        Raises ``NotARecord`` for what is more than plain YAML.
        """
        if isinstance(event, yaml.AliasEvent) or event.anchor:
            raise NotARecord(line(event), "holds an anchor or alias (& or *); write the value out")
        if event.tag:
            raise NotARecord(line(event), f"holds a tag ({event.tag}); leave it out")
        if depth > DEEPEST:
            raise NotARecord(line(event), f"is nested deeper than {DEEPEST} levels")
        if self.with_lines:
            self.lines.setdefault(place, line(event))
        if isinstance(event, yaml.ScalarEvent):
            return self.scalar(event, place)
        if isinstance(event, yaml.SequenceStartEvent):
            return self.sequence(place, depth)
        return self.mapping(place, depth)

    def sequence(self, place: Place, depth: int) -> list[Any]:
        """A list."""
        values: list[Any] = []
        while not isinstance(event := self.loader.get_event(), yaml.SequenceEndEvent):
            inside = (*place, len(values)) if self.with_lines else place
            values.append(self.value(event, inside, depth + 1))
        return values

    def mapping(self, place: Place, depth: int) -> dict[str, Any]:
        """A mapping; its keys are texts as they are written.

        Raises ``NotARecord`` for any other key.
        """
        values: dict[str, Any] = {}
        while not isinstance(event := self.loader.get_event(), yaml.MappingEndEvent):
            if not isinstance(event, yaml.ScalarEvent) or event.anchor or event.tag:
                raise NotARecord(line(event), "a key must be a plain word")
            key = intern(event.value)
            inside = (*place, key) if self.with_lines else place
            self.judge(unfit(key), inside, event)
            if key in values:
                first = self.lines.get(inside)
                self.judge(f"stands twice; the first is on line {first}", inside, event)
            elif self.with_lines:
                self.lines[inside] = line(event)
            value = self.value(self.loader.get_event(), inside, depth + 1)
            values.setdefault(key, value)
        return values

    def scalar(self, event: Any, place: Place) -> Any:
        """A text, number, date, truth value or nothing."""
        text = intern(event.value) if len(event.value) <= A_WORD else event.value
        if event.implicit[0]:  # without quotes
            tag = self.loader.resolve(yaml.ScalarNode, text, event.implicit)
            if tag in TYPED:
                return self.typed(tag, event, place)
        self.judge(unfit(text), place, event)
        return text

    def typed(self, tag: str, event: Any, place: Place) -> Any:
        """What a word without quotes stands for."""
        if tag in NUMBERS and not PLAIN_NUMBER.fullmatch(event.value):
            message = f"{event.value} is no plain decimal number; write it without leading zero, colon or _"
            self.judge(message, place, event)
        try:
            return LOADER.yaml_constructors[tag](self.loader, yaml.ScalarNode(tag, event.value))
        except ValueError as wrong:  # a date such as 2026-02-30
            self.judge(f"holds a value that cannot be: {wrong}", place, event)
            return None

    def judge(self, message: str | None, place: Place, event: Any) -> None:
        """Note a fault, if there is one."""
        if message:
            self.suspicious = True
            if self.with_lines:
                self.faults.append(Fault(place, line(event), message))


def line(event: Any) -> int:
    """The line on which an event begins. A number of lines, counted from 1."""
    return int(event.start_mark.line) + 1


def line_of(wrong: yaml.YAMLError, text: str) -> int:
    """The line a parser's complaint points at; the last one where it points behind the end."""
    mark = getattr(wrong, "problem_mark", None)
    return min(mark.line + 1, len(text.splitlines())) if mark else 1


def reason(wrong: yaml.YAMLError, text: str) -> str:
    """A parser's complaint in one line."""
    words = " ".join(str(getattr(wrong, "problem", None) or wrong).split())
    at = text.splitlines()[line_of(wrong, text) - 1]
    tab = "; a tab stands in this line, YAML takes spaces" if "\t" in at else ""
    return f"{words}{tab}"
