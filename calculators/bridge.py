"""The one door between the page and Python: JSON in, JSON out, no proxies to free."""

import json
import re
from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Field, Spec
from calculators.core.nested import gather, scatter
from calculators.core.numbers import read_number, show_plain
from calculators.core.origin import assumed_words, example_words
from calculators.core.paint.answer import downloads, onward
from calculators.core.paint.asked import asked_rows
from calculators.core.paint.cards import lists
from calculators.core.paint.notes import brief, lead, painted, rest
from calculators.core.plot.pictures import plots
from calculators.core.plot.units import in_units
from calculators.core.remarks import remarks
from calculators.core.result import BadInput, StillNeeded
from calculators.core.run import Found, compute, find
from calculators.core.units import System, from_shown, to_shown

COMMAND_ONLY = re.compile(", which --describe names")
MOST_NAMED = 5  # inputs still needed that are named in one line
# Fewer figures on the way back, so that 31.5 cm, shown as 12.4016 in, is 31.5 cm again.
CONVERTED_DIGITS = {"us": 6, "metric": 5}


def answer(request: str) -> str:
    """Answer one message of the page.

    ``{"calculator", "given": {key: text}, "units"}`` gives the answer, painted in those units, and
    the metric inputs for the page's address; bad fields come as ``problems``, and what is worth
    saying beside a good one as ``remarks``. With ``"given_in"`` the given text is first changed from
    those units, and comes back as ``given``. With ``"own"`` the figures are a keeper's: what is
    missing comes as ``needed``, in one line, and nothing is answered. ``"borrowed"`` names the keys
    whose figures are an example's, and its ``source`` in words: the answer says so. With ``"look"``
    the diagnosis comes with its next question, see ``diagnosis/look.py``: there nothing stops the
    answer, words that are unknown come back as ``dropped`` and, in a sentence, as ``left_out``.
    """
    asked = json.loads(request)
    spec = find(asked["calculator"])
    system: System = asked.get("units", "metric")
    given = dict(asked["given"])
    if asked.get("given_in", system) != system:
        given = change_units(spec.inputs, given, asked["given_in"], system)
    if "look" in asked:  # the diagnosis a question at a time; loaded only there
        from calculators.diagnose.questioning_reply import look_reply

        looked = look_reply(spec, given, asked["look"], system, answered, problems_shown)
        return json.dumps(looked, ensure_ascii=False)
    reply: dict[str, Any] = {"given": given, "remarks": remarks(spec.inputs, given, system)}
    try:
        found = compute(spec.name, given, typed=True, system=system, own=asked.get("own", False))
    except StillNeeded as still:
        reply["problems"], reply["needed"] = problems_shown(still), needed(still)
        reply["address"] = address(spec, still.values, system)
    except BadInput as bad:
        reply["problems"] = problems_shown(bad)
    else:
        reply |= answered(spec, found, system)
        if "borrowed" in asked:
            reply["painted"] |= with_borrowed(
                reply["painted"], spec, found, asked["borrowed"], system
            )
    return json.dumps(reply, ensure_ascii=False)


def answered(spec: Spec, found: Found, system: System) -> dict[str, Any]:
    """An answer for the page: as the contract has it, painted, and the address that gives it again."""
    return {
        "answer": found.answer | {"inputs": without_octets(spec, found.answer["inputs"])},
        "painted": paint(spec, found, system),
        "address": address(spec, found.answer["inputs"], system),
    }


def problems_shown(bad: BadInput) -> dict[str, str]:
    """What is wrong by field, without what only a command line can do."""
    return {key: COMMAND_ONLY.sub("", text) for key, text in bad.problems}


def paint(spec: Spec, found: Found, system: System = "metric") -> dict[str, Any]:
    """All that a page shows of an answer, in the order in which it stands there."""
    outputs = found.answer["outputs"]
    return {
        "brief": brief(spec, found, system),
        "assumed": assumed_words(found.stood_in, system),
        "lead": [painted(note) for note in lead(spec, found)],
        "lists": lists(spec, outputs, system),
        "rows": asked_rows(spec, found.answer, system),
        "notes": [painted(note) for note in rest(spec, found)],
        "downloads": downloads(spec, outputs),
        "onward": onward(spec, outputs),
        "plots": plots(in_units(found.series, system)),
    }


def needed(still: StillNeeded) -> dict[str, Any]:
    """What a keeper has yet to give: the paths of the fields, and one line that names the first."""
    labels = list(dict.fromkeys(label for _, label in still.needed))
    more = len(labels) - MOST_NAMED
    end = f" and {more} more" if more > 0 else ""
    text = f"Still needed: {', '.join(labels[:MOST_NAMED])}{end}"
    return {"paths": [path for path, _ in still.needed], "text": text}


def with_borrowed(
    painted_answer: Mapping[str, Any],
    spec: Spec,
    found: Found,
    asked: Mapping[str, Any],
    system: System,
) -> dict[str, Any]:
    """What a page shows otherwise where figures are an example's; the one line says so before its answer."""
    said = borrowed(spec, found, asked, system)
    line = dict(painted_answer["brief"])
    if said["text"]:
        line["text"] = (
            f"{'Not your figures' if said['all'] else 'Not all your figures'}: {line['text']}"
        )
    return {"borrowed": said, "brief": line}


def borrowed(spec: Spec, found: Found, asked: Mapping[str, Any], system: System) -> dict[str, Any]:
    """Which figures of an answer are an example's, in words, and whether all are."""
    values = {
        key: value for key, value in found.answer["inputs"].items() if value not in (None, [])
    }
    keys = {key.partition(".")[0] for key in asked["keys"]}
    fields = [(one, values[one.key]) for one in spec.inputs if one.key in keys & values.keys()]
    others = values.keys() - keys - found.stood_in.assumed.keys()
    own = [one for one in spec.inputs if one.key in others and not one.is_date]
    return {"text": example_words(fields, asked["source"], system), "all": not own}


def without_octets(spec: Spec, values: Mapping[str, Any]) -> dict[str, Any]:
    """The inputs without pictures, which the page has already and which are long."""
    long = {field.key for field in spec.inputs if field.octets}
    return {key: value for key, value in values.items() if key not in long}


def change_units(
    fields: tuple[Field, ...], given: Mapping[str, Any], before: System, after: System
) -> dict[str, Any]:
    """Change the text of each field that is a number; anything else stays as the person typed it."""
    changed = gather(fields, given)
    for field in fields:
        value = changed.get(field.key)
        if field.kind == "object" and isinstance(value, dict):
            changed[field.key] = change_units(field.row, value, before, after)
        elif field.kind == "list" and isinstance(value, list):
            changed[field.key] = [change_units(field.row, row, before, after) for row in value]
        elif isinstance(value, str) and field.quantity and field.quantity.us:
            changed[field.key] = change_text(field, value, before, after)
    return scatter(fields, changed)


def change_text(field: Field, text: str, before: System, after: System) -> str:
    """One number's text in the other unit; text that is no number stays."""
    try:
        metric = from_shown(field, read_number(text), before)
    except ValueError:
        return text
    return show_plain(to_shown(field, metric, after), CONVERTED_DIGITS[after])


def address(spec: Spec, values: Mapping[str, Any], system: System) -> dict[str, str]:
    """Every input that the answer used, as text in metric units, for the page's address.

    All but private ones, and those at their default too: an address that is opened fills in what it
    has and nothing else, so that a later change of a default cannot change a kept answer.
    """
    digits = 12 if system == "metric" else CONVERTED_DIGITS["metric"]
    changed = {
        field.key: ",".join(values[field.key] or ()) if field.kind == "keys" else values[field.key]
        for field in spec.inputs
        if values.get(field.key) not in (None, []) and not field.private
    }
    flat = scatter(spec.inputs, changed)
    return {key: write(value, digits) for key, value in flat.items() if value is not None}


def write(value: Any, digits: int) -> str:
    """One input as text for an address."""
    if isinstance(value, float):
        return show_plain(value, digits)
    return value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
