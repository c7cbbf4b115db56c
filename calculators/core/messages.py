"""What crosses the bridge, and what a program gets: the shapes of the JSON, by their keys."""

from typing import Any, NotRequired, TypedDict

from calculators.core.result import Level
from calculators.core.shown_units import System


class NoteData(TypedDict):
    """A note without its links."""

    level: Level
    text: str


class LeadData(TypedDict):
    """A way on: another calculator, and its inputs by key, metric."""

    calculator: str
    label: str
    inputs: dict[str, Any]


class SeriesData(TypedDict):
    """A curve; a point that is not finite is null."""

    label: str
    unit: str
    x_label: str
    x_unit: str
    x: list[float | None]
    y: list[float | None]


class Origin(TypedDict):
    """The paths of inputs that nobody gave: the worked example's, and assumed ones."""

    from_example: NotRequired[list[str]]
    assumed: NotRequired[list[str]]


class Answer(Origin):
    """The answer of a calculator as the contract has it; keys with their unit, all metric."""

    calculator: str
    inputs: dict[str, Any]
    outputs: dict[str, Any]
    notes: list[NoteData]
    leads: NotRequired[list[LeadData]]
    series: NotRequired[dict[str, SeriesData]]


class FigureRow(TypedDict):
    """One figure as a person reads it."""

    key: str
    label: str
    value: str
    unit: str
    help: str


class File(TypedDict):
    """A text that the page offers to save."""

    label: str
    file_name: str
    media_type: str
    text: str


class Brief(TypedDict):
    """The answer in one line."""

    level: Level
    text: str


class Borrowed(TypedDict):
    """Which figures are an example's, in words, and whether all are."""

    text: str
    all: bool


class Painted(TypedDict):
    """An answer for the page: its HTML, its one line, its figures as lines to keep."""

    html: str
    brief: Brief
    lines: list[str]
    borrowed: NotRequired[Borrowed]


class Needed(TypedDict):
    """What a keeper has yet to give: the paths of the fields, and one line."""

    paths: list[str]
    text: str


class BorrowedKeys(TypedDict):
    """The inputs whose figures are an example's, and its name in words."""

    keys: list[str]
    source: str


class Request(TypedDict):
    """What the page asks; see ``bridge.answer``."""

    calculator: str
    given: dict[str, Any]
    units: NotRequired[System]
    given_in: NotRequired[System]
    own: NotRequired[bool]
    borrowed: NotRequired[BorrowedKeys]
    address: NotRequired[dict[str, str]]
    questioning: NotRequired[dict[str, Any]]
    message: NotRequired[str]


class Reply(TypedDict):
    """What the page gets: an answer, or what is wrong or still needed."""

    given: dict[str, Any]
    remarks: NotRequired[dict[str, str]]
    problems: NotRequired[dict[str, str]]
    needed: NotRequired[Needed]
    answer: NotRequired[Answer]
    painted: NotRequired[Painted]
    address: NotRequired[dict[str, str]]
    left_out: NotRequired[str]
    dropped: NotRequired[list[str]]
    questioning: NotRequired[dict[str, Any]]
