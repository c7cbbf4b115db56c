"""Naming a plant at the tank, a question at a time: every piece of the page as HTML."""

from typing import Any

from calculators.core.run import Computed
from calculators.identify.label import read_label
from calculators.identify.paint_question import paint_question
from calculators.identify.paint_result import (
    paint_answers,
    paint_beside,
    paint_notes,
    paint_ranking,
)
from calculators.identify.plant_posterior import plant_chances
from calculators.identify.seen import SeenTraits

ROOT = "../"  # from the page to the site's root


def naming_pieces(computed: Computed) -> dict[str, Any]:
    """The page's pieces by name, the verdict as ``status``, and whether ``anything`` was said."""
    inputs, outputs = computed.answer["inputs"], computed.answer["outputs"]
    seen = SeenTraits(**(inputs["traits"] or {}))
    chances = plant_chances(seen, read_label(inputs["label"]))
    anything = outputs["best"] is not None
    first = [note for note in computed.notes if note.first]
    # the law comes before the verdict, which is the last of the first lines
    rest = [note for note in computed.notes if not note.first]
    return {
        "anything": anything,
        "status": first[-1].text if anything else "",
        "pieces": {
            "ask": paint_question(outputs["ask_next"], seen, chances),
            "first": paint_notes(first[:-1], ROOT),
            "ranking": paint_ranking(outputs, inputs["place"], ROOT) if anything else "",
            "beside": paint_beside(outputs) if anything else "",
            "notes": paint_notes(rest, ROOT) if anything else "",
            "answers": paint_answers(seen, inputs["unseen"] or ()),
        },
    }
