"""The one door between the page and Python: JSON in, JSON out, no proxies to free."""

import json
from collections.abc import Mapping
from typing import Any

from calculators.core.address import address, change_units
from calculators.core.declare import Spec
from calculators.core.origin import example_words
from calculators.core.paint.notes import painted
from calculators.core.paint.page import answered, problems_shown
from calculators.core.remarks import remarks
from calculators.core.result import BadInput, Note, StillNeeded
from calculators.core.run import Found, compute, find
from calculators.core.units import System

MOST_NAMED = 5  # inputs still needed that are named in one line


def answer(request: str) -> str:
    """Answer one message of the page.

    ``{"calculator", "given": {key: text}, "units"}`` gives the answer, painted in those units, and
    the metric inputs for the page's address; bad fields come as ``problems``, and what is worth
    saying beside a good one as ``remarks``. With ``"given_in"`` the given text is first changed from
    those units, and comes back as ``given``. With ``"own"`` the figures are a keeper's: what is
    missing comes as ``needed``, in one line, and nothing is answered. ``"borrowed"`` names the keys
    whose figures are an example's, and its ``source`` in words: the answer says so. With ``"look"``
    the diagnosis comes with its next question, see ``diagnose/questioning.py``: there nothing stops the
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
    left_out = ""
    if spec.name == "diagnose":  # the way to help never breaks on a word that was retired
        from calculators.diagnose.known_words import left_out_of

        given, left_out = left_out_of(spec.inputs, given)
    try:
        found = compute(spec.name, given, typed=True, system=system, own=asked.get("own", False))
    except StillNeeded as still:
        reply["problems"], reply["needed"] = problems_shown(still), needed(still)
        reply["address"] = address(spec, still.values, system)
    except BadInput as bad:
        reply["problems"] = problems_shown(bad)
    else:
        reply |= answered(spec, found, system)
        if left_out:
            reply["painted"]["lead"].append(painted(Note("caution", left_out)))
        if not asked.get("own") or "borrowed" in asked:
            reply["painted"]["onward"] = []  # an example's figures lead nowhere else
        if "borrowed" in asked:
            reply["painted"] |= with_borrowed(
                reply["painted"], spec, found, asked["borrowed"], system
            )
    return json.dumps(reply, ensure_ascii=False)


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
