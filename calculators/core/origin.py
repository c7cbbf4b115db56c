"""Says whose figures an answer stands on: the keeper's, assumed ones, or the worked example's."""

from collections.abc import Iterable, Mapping
from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.left_empty import StandIns
from calculators.core.messages import NoteData
from calculators.core.paint.answer import show_value
from calculators.core.result import Note
from calculators.core.shown_units import System, unit_shown
from calculators.core.wording import counted

ALL_EXAMPLE = "This is the worked example. None of its figures are yours."


def input_in_words(field: InputField, value: Any, system: System = "metric") -> str:
    """An input with its value and unit in words, such as "Water volume 120 L"."""
    if field.kind == Kind.LIST:
        return f"{field.label} ({counted(len(value), 'row')})"
    shown = show_value(field, value, system)
    return f"{field.label} {shown} {unit_shown(field, system)}".rstrip()


def listed(inputs: Iterable[tuple[InputField, Any]], system: System = "metric") -> str:
    """Several inputs with their values, each once."""
    return "; ".join(dict.fromkeys(input_in_words(field, value, system) for field, value in inputs))


def assumed_words(stood_in: StandIns, system: System = "metric") -> str:
    """What was assumed, in one line; empty where nothing was."""
    words = listed(stood_in.assumed.values(), system)
    return f"Assumed, since you left them empty: {words}." if words else ""


def example_words(inputs: Iterable[tuple[InputField, Any]], source: str, system: System) -> str:
    """Which figures are not the keeper's, in one line; empty where all are."""
    words = listed(inputs, system)
    return f"From {source}, not yours: {words}." if words else ""


def origin_notes(given: Mapping[str, Any], stood_in: StandIns) -> list[Note]:
    """The same as notes of an answer that took its missing inputs from the worked example."""
    if not given:
        return [Note("info", ALL_EXAMPLE)]
    assumed = listed(stood_in.assumed.values())
    texts = [
        example_words(stood_in.example.values(), "the worked example", "metric"),
        f"Assumed: {assumed}." if assumed else "",
    ]
    return [Note("info", text) for text in texts if text]


def before_all_but_danger(notes: list[NoteData], first: list[Note]) -> list[NoteData]:
    """Put notes before the others of an answer; only what speaks of danger goes before them."""
    made: list[NoteData] = [{"level": note.level, "text": note.text} for note in first]
    dangers = [note for note in notes if note["level"] == "danger"]
    return [*dangers, *made, *(note for note in notes if note["level"] != "danger")]
