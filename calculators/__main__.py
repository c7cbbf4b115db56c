"""The command line: ``python -m calculators``, ``… NAME key=value``, ``… NAME --describe``."""

import argparse
import json
import os
import sys
from typing import Any

from calculators.core.data import MissingTable
from calculators.core.declare import Spec
from calculators.core.describe import describe
from calculators.core.fields import InputField
from calculators.core.left_empty import paths_of, stand_ins
from calculators.core.limits import allowed
from calculators.core.listing import load_all
from calculators.core.messages import Answer, Origin
from calculators.core.nested import gather
from calculators.core.origin import before_all_but_danger, origin_notes
from calculators.core.paint.text_table import table
from calculators.core.read import read_inputs
from calculators.core.refusals import contradictory
from calculators.core.remarks import remarks
from calculators.core.result import BadInput, Note, StillNeeded
from calculators.core.run import UnknownCalculator, find, run

BAD_INPUT = 2
CLOSED_PIPE = 1
NO_TABLE = 1
LONGEST_WHOLE = 400  # figures: more than a float can hold


def parser() -> argparse.ArgumentParser:
    """The few options there are; the inputs themselves are ``key=value``."""
    options = argparse.ArgumentParser(prog="python -m calculators", description=__doc__)
    options.add_argument("name", nargs="?", help="a calculator; none lists them all")
    options.add_argument("inputs", nargs="*", metavar="key=value", help="inputs, in metric units")
    options.add_argument(
        "--describe", action="store_true", help="print its inputs and outputs as JSON"
    )
    options.add_argument("--json", action="store_true", help="print the answer as JSON")
    options.add_argument(
        "--input",
        metavar="FILE",
        help="read inputs as a JSON object, or a file of the shelf; - is standard input",
    )
    return options


def main(arguments: list[str] | None = None) -> int:
    """Run one command; the exit status is 2 for bad input."""
    asked = parser().parse_intermixed_args(arguments)
    try:
        if not asked.name:
            print_list()
        elif asked.describe:
            print(json.dumps(describe(find(asked.name)), ensure_ascii=False, indent=2))
        else:
            print_answer(find(asked.name), asked)
    except BadInput as bad:
        for key, message in bad.problems:
            print(f"{key}: {message}", file=sys.stderr)
        return BAD_INPUT
    except UnknownCalculator as unknown:
        print(unknown, file=sys.stderr)
        return BAD_INPUT
    except MissingTable as missing:
        print(missing, file=sys.stderr)
        return NO_TABLE
    return 0


def print_list() -> None:
    """One line a calculator."""
    catalogue = load_all()
    width = max(map(len, catalogue))
    for name, spec in catalogue.items():
        print(f"{name:{width}}  {spec.purpose}")


def print_answer(spec: Spec, asked: argparse.Namespace) -> None:
    """Read the inputs, run, and print as asked.

    Raises ``BadInput`` with what is wrong in the file and in the words, all at once.
    """
    # Here, not above: it reads tables, and one that is missing is told in a plain line.
    from calculators.shelf.file_inputs import inputs_from_file, is_shelf_file

    given = read_file(asked.input) if asked.input else {}
    # Text and JSON values follow different rules, so the words of the command line are read first.
    worded = read_words(asked.inputs)
    is_tank = is_shelf_file(given)  # a keeper's own: no example's figure stands in beside them
    if is_tank:
        given = inputs_from_file(spec.name, given, worded.pop("tank", None))
    problems: list[tuple[str, str]] = []
    values: dict[str, Any] = {}
    for source, typed in ((given, False), (worded, True)):
        try:
            read = read_inputs(spec.inputs, source, typed=typed)
            values |= {key: read[key] for key in gather(spec.inputs, source)}
        except BadInput as bad:
            problems.extend(bad.problems)
    if problems:
        raise BadInput(*problems, *contradictory(spec, {**given, **worded}))
    try:
        run_answer = run(spec.name, values, own=is_tank)
    except StillNeeded as still:
        raise BadInput(*not_in_tank(spec, still), *still.problems) from None
    # Rows that were read have their defaults in them, so the words as they came are looked at.
    stood_in = stand_ins(spec.inputs, {**given, **worded}, own=is_tank)
    first = origin_notes(values, stood_in)
    first += [Note("caution", text) for text in remarks(spec.inputs, values, "metric").values()]
    origin: Origin = paths_of(stood_in) if values else {}
    answer: Answer = {**run_answer, **origin}
    answer["notes"] = before_all_but_danger(run_answer["notes"], first)
    print(json.dumps(answer, ensure_ascii=False) if asked.json else table(spec, answer))


def not_in_tank(spec: Spec, still: StillNeeded) -> list[tuple[str, str]]:
    """What neither a tank's file nor the command line gave, by key, with what is allowed."""
    fields = {field.key: field for field in spec.inputs}
    return [
        (key, f"the tank's file does not say it ({label}); {hint(fields.get(key), key)}")
        for key, label in still.needed
    ]


def hint(field: InputField | None, key: str) -> str:
    """How to say an input that is missing: on the command line where it is one of the fields."""
    return f"add {key}=…, {allowed(field)}" if field else "log it on the tank"


def read_words(words: list[str]) -> dict[str, str]:
    """Split ``key=value`` words. Raises ``BadInput`` for one without "=" or given twice."""
    given: dict[str, str] = {}
    problems = []
    for word in words:
        key, equals, value = word.partition("=")
        if not equals:
            problems.append((word, "is not key=value"))
        elif key in given:
            problems.append((key, "is given twice; once is allowed"))
        given[key] = value
    if problems:
        raise BadInput(*problems)
    return given


def read_file(path: str) -> dict[str, Any]:
    """Read a JSON object from a file, or from standard input for ``-``.

    Raises ``BadInput`` where it cannot be read or holds no object.
    """
    try:
        if path == "-":
            text = sys.stdin.read()
        else:
            with open(path, encoding="utf-8") as file:
                text = file.read()
        # Python reads no whole number of thousands of figures; as a float it is only too large.
        given = json.loads(text, object_pairs_hook=once, parse_int=whole)
    except OSError as wrong:
        raise BadInput(("--input", f"cannot read {path}: {wrong.strerror}")) from None
    except (ValueError, RecursionError) as wrong:
        if isinstance(wrong, BadInput):
            raise
        raise BadInput(("--input", f"is not JSON: {wrong}")) from None
    if not isinstance(given, dict):
        raise BadInput(("--input", "must hold a JSON object of inputs by key"))
    return given


def whole(digits: str) -> int:
    """A whole number of JSON; one longer than a float can hold is cut, and is still too large."""
    return int(digits[:LONGEST_WHOLE])


def once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """Refuse a key that a JSON object gives twice. Raises ``BadInput`` with the key."""
    seen: dict[str, Any] = {}
    for key, value in pairs:
        if key in seen:
            raise BadInput((key, "is given twice; once is allowed"))
        seen[key] = value
    return seen


def until_closed() -> int:
    """Run the command; a reader that has seen enough, such as ``head``, ends it with no traceback.

    Returns the exit status.
    """
    try:
        status = main()
        sys.stdout.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # Python flushes once more
        return CLOSED_PIPE
    return status


if __name__ == "__main__":
    sys.exit(until_closed())
