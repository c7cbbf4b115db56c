"""Figures and links in the guides: calculators take their inputs, and give the figure."""

from collections.abc import Iterator

from calculators.core.result import BadInput
from scripts.records.guide import FOLDER, ProseMark, call, marks
from scripts.records.lines import RecordFault, shown_path
from scripts.records.load import ReadRecords
from scripts.records.with_calculators.trial import Trial


def calls(reading: ReadRecords, trial: Trial) -> Iterator[RecordFault]:
    """What is wrong with the guides' calls of calculators, at file and line."""
    for slug, guide in reading.guides.items():
        for mark in marks(guide):
            for message in wrong(mark, trial) if mark.kind in ("figure", "open") else ():
                yield RecordFault(shown_path(FOLDER / f"{slug}.md"), mark.line, mark.kind, message)


def wrong(mark: ProseMark, trial: Trial) -> Iterator[str]:
    """What is wrong with what a mark asks of a calculator."""
    try:
        asked = call(mark)
    except ValueError as bad:
        yield str(bad)
        return
    if not trial.judges(asked.inputs):
        return
    try:
        outputs = trial.outputs(asked.calculator, asked.inputs, typed=True)
    except BadInput as bad:
        yield from (f"{key}: {text}" if key else text for key, text in bad.problems)
        return
    if mark.kind == "figure" and outputs.get(asked.shown) is None:
        yield f"{asked.calculator} gives no figure {asked.shown} for these inputs"
