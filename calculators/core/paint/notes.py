"""The notes of an answer as a page shows them: danger first, then the answer in plain words, then figures.

``brief`` is the one line that stays in view while the person types.
"""

from calculators.core.declare import Spec
from calculators.core.fields import Kind
from calculators.core.messages import Brief
from calculators.core.paint.answer import show_value
from calculators.core.result import Level, Note
from calculators.core.run import Computed
from calculators.core.shown_units import System, unit_shown

PLAIN_KINDS = (Kind.NUMBER, Kind.INTEGER, Kind.TEXT)
MOST_LETTERS = 90
LEVELS: tuple[Level, ...] = ("info", "caution", "danger")


def lead(spec: Spec, computed: Computed) -> list[Note]:
    """What stands before the figures: danger to animals or people, then the answer in plain words.

    A calculator that words no answer, but has a rating, is given one from the rating's words.
    """
    dangers = [note for note in computed.notes if note.level == "danger"]
    answers = [note for note in computed.notes if note.first and note.level != "danger"]
    if not answers and (words := rating(spec, computed)):
        answers = [Note(rating_level(spec, computed), f"{words}.", first=True)]
    return [*dangers, *answers]


def rest(spec: Spec, computed: Computed) -> list[Note]:
    """The notes that stand after the figures."""
    first = lead(spec, computed)
    return [note for note in computed.notes if note not in first]


def rating(spec: Spec, computed: Computed) -> str:
    """The first verdict or rating among the outputs, with its label; empty where there is none."""
    outputs = computed.answer["outputs"]
    for field in spec.outputs:
        if field.kind == Kind.CHOICE and outputs[field.key] is not None:
            return f"{field.label}: {show_value(field, outputs[field.key])}"
    return ""


def rating_level(spec: Spec, computed: Computed) -> Level:
    """How much that verdict or rating matters, as its choices declare it; info where they do not."""
    outputs = computed.answer["outputs"]
    for field in spec.outputs:
        if field.kind == Kind.CHOICE and outputs[field.key] is not None:
            levels = dict(zip(field.choices, field.levels, strict=False))
            rated = levels.get(outputs[field.key], "info")
            return next(level for level in LEVELS if level == rated)
    return "info"


def brief(spec: Spec, computed: Computed, system: System = "metric") -> Brief:
    """One short line with its level: the first danger, the rating, the answer in words, a first figure.

    Where nothing could be computed it is the first note.
    """
    first = lead(spec, computed)
    if first and first[0].level == "danger":
        return {"level": "danger", "text": cut(first_sentence(first[0].text))}
    level: Level = first[0].level if first else "info"
    if words := rating(spec, computed):
        level = max(level, rating_level(spec, computed), key=LEVELS.index)
        return {"level": level, "text": words}
    if first:
        return {"level": level, "text": cut(first_sentence(first[0].text))}
    if words := first_figure(spec, computed, system):
        return {"level": level, "text": cut(words)}
    note = computed.notes[0] if computed.notes else Note("info", spec.title)
    return {"level": note.level, "text": cut(first_sentence(note.text))}


def first_figure(spec: Spec, computed: Computed, system: System) -> str:
    """The first figure or text among the outputs, with its label and unit; empty where all are blank."""
    for field in spec.outputs:
        value = computed.answer["outputs"][field.key]
        if field.kind in PLAIN_KINDS and field.download is None and value is not None:
            shown = f"{show_value(field, value, system)} {unit_shown(field, system)}"
            return f"{field.label}: {shown.strip()}"
    return ""


def cut(text: str) -> str:
    """A line cut at a word, so that it stays a line or two on a phone."""
    return text if len(text) <= MOST_LETTERS else text[:MOST_LETTERS].rsplit(" ", 1)[0] + "…"


def first_sentence(text: str) -> str:
    """The first sentence of a note; the number of a step is none."""
    end = text.find(". ", len("1. ") if text[:1].isdigit() and text[1:3] == ". " else 0)
    return text if end < 0 else text[: end + 1]
