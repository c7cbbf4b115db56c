"""The one door between the page and Python: JSON in, JSON out, no proxies to free."""

import json
from importlib import import_module
from typing import Any

from calculators.core.address import address, change_units
from calculators.core.declare import Spec
from calculators.core.messages import (
    Borrowed,
    BorrowedKeys,
    Needed,
    Painted,
    Reply,
    Request,
)
from calculators.core.origin import example_words
from calculators.core.paint.answer_for_page import answered, problems_shown
from calculators.core.remarks import remarks
from calculators.core.result import BadInput, Note, StillNeeded
from calculators.core.run import Computed, compute, find
from calculators.core.shown_units import System
from calculators.core.unknown_words import (
    choices_sentence,
    too_long,
    unknown_choices,
    unknown_sentence,
    unknown_words,
)

MOST_NAMED = 5  # inputs still needed that are named in one line


def answer(request: str) -> str:
    """Answer one message of the page.

    ``{"calculator", "given": {key: text}, "units"}`` gives the answer, painted in those units, and
    the metric inputs for the page's address; bad fields come as ``problems``, and what is worth
    saying beside a good one as ``remarks``. With ``"given_in"`` the given text is first changed from
    those units, and comes back as ``given``. With ``"own"`` the figures are a keeper's: what is
    missing comes as ``needed``, in one line, and nothing is answered. ``"borrowed"`` names the keys
    whose figures are an example's, and its ``source`` in words: the answer says so. ``"address"``
    holds what the page's address gave: words in it that are unknown come back in a sentence, as
    ``left_out``. With ``"questioning"`` the answer comes with its next question, see
    ``diagnose/questioning.py`` and ``identify/questioning.py``: there nothing stops the answer, and words
    that are unknown come back as ``dropped`` and, in a sentence, as ``left_out``. With ``"message"`` the
    shelf asks, see ``shelf/shelf_reply.py``.
    """
    asked: Request = json.loads(request)
    if "message" in asked:  # of the shelf; loaded only there
        from calculators.shelf.shelf_reply import shelf_reply

        return json.dumps(shelf_reply(asked), ensure_ascii=False)
    spec = find(asked["calculator"])
    system = asked.get("units", "metric")
    given = dict(asked["given"])
    before = asked.get("given_in", system)
    if before != system:
        given = change_units(spec.inputs, given, before, system)
    if "questioning" in asked:  # a question at a time; loaded only there
        reply = question_at_a_time(spec, given, asked["questioning"], system)
    else:
        reply = plain_reply(spec, given, asked, system)
    return json.dumps(reply, ensure_ascii=False)


def import_all() -> None:
    """Import what a message of any kind may need, before an image is made of Python's memory."""
    from calculators.core.listing import load_all
    from calculators.diagnose import diagnosis_reply  # noqa: F401
    from calculators.identify import naming_reply as naming  # noqa: F401
    from calculators.shelf import shelf_reply  # noqa: F401

    load_all()
    import_painting()


def import_painting() -> None:
    """Import what paints an answer, by painting a small one: modules come as an answer asks for them."""
    answer_examples(["units"])


def import_ahead(module: str) -> None:
    """Import one module of those that a calculator will need, while nobody waits for an answer."""
    import_module(module)


def answer_examples(names: list[str]) -> None:
    """Answer each calculator's worked example, so that all that an answer of theirs needs is imported."""
    for name in names:
        answer(json.dumps({"calculator": name, "given": {}}))


def question_at_a_time(
    spec: Spec, given: dict[str, Any], asked: dict[str, Any], system: System
) -> Reply:
    """The reply of a calculator that asks: what a plant is, or what is wrong."""
    if spec.name == "identify":
        from calculators.identify.naming_reply import naming_reply

        return naming_reply(spec, given, system)
    from calculators.diagnose.diagnosis_reply import questioning_reply

    return questioning_reply(spec, given, asked, system)


def plain_reply(spec: Spec, given: dict[str, Any], asked: Request, system: System) -> Reply:
    """The reply to a calculator's form."""
    own = asked.get("own", False)
    reply: Reply = {"given": given, "remarks": remarks(spec.inputs, given, system)}
    left_out = ""
    if spec.name == "diagnose":  # the way to help never breaks on a word that was retired
        from calculators.diagnose.readable_findings import left_out_of

        given, left_out = left_out_of(spec.inputs, given)
    if "address" in asked:
        unknown = [] if left_out else unknown_words(spec.inputs, asked["address"])
        told = [] if left_out else unknown_choices(spec.inputs, asked["address"])
        long = too_long(spec.inputs, asked["address"])
        sentences = (unknown_sentence(unknown), choices_sentence(told), long)
        reply["left_out"] = " ".join(filter(None, sentences))
    try:
        computed = compute(spec.name, given, typed=True, system=system, own=own)
    except StillNeeded as still:
        reply["problems"], reply["needed"] = problems_shown(still), needed(still)
        reply["address"] = address(spec, still.values, system)
    except BadInput as bad:
        reply["problems"] = problems_shown(bad)
    else:
        if left_out:
            computed = computed._replace(
                notes=(*computed.notes, Note("caution", left_out, first=True))
            )
        # An example's figures lead nowhere else.
        made = answered(spec, computed, system, leads_on=own and "borrowed" not in asked)
        reply["answer"], reply["address"] = made["answer"], made["address"]
        reply["painted"] = made["painted"]
        if "borrowed" in asked:
            which = borrowed(spec, computed, asked["borrowed"], system)
            reply["painted"] = with_borrowed(made["painted"], which)
    return reply


def needed(still: StillNeeded) -> Needed:
    """What a keeper has yet to give: the paths of the fields, and one line that names the first."""
    labels = list(dict.fromkeys(label for _, label in still.needed))
    more = len(labels) - MOST_NAMED
    end = f" and {more} more" if more > 0 else ""
    text = f"Still needed: {', '.join(labels[:MOST_NAMED])}{end}"
    return {"paths": [path for path, _ in still.needed], "text": text}


def with_borrowed(painted: Painted, which: Borrowed) -> Painted:
    """The answer with what is an example's; its one line, and what is kept of it, say so first."""
    made = painted.copy()
    made["borrowed"] = which
    if which["text"]:
        whose = "Not your figures" if which["all"] else "Not all your figures"
        made["brief"] = {
            "level": painted["brief"]["level"],
            "text": f"{whose}: {painted['brief']['text']}",
        }
        made["lines"] = [which["text"], *painted["lines"]]
    return made


def borrowed(spec: Spec, computed: Computed, asked: BorrowedKeys, system: System) -> Borrowed:
    """Which figures of an answer are an example's, in words, and whether all are."""
    values = {
        key: value for key, value in computed.answer["inputs"].items() if value not in (None, [])
    }
    keys = {key.partition(".")[0] for key in asked["keys"]}
    fields = [
        (field, values[field.key]) for field in spec.inputs if field.key in keys & values.keys()
    ]
    others = values.keys() - keys - computed.stood_in.assumed.keys()
    own = [field for field in spec.inputs if field.key in others and not field.is_date]
    return {"text": example_words(fields, asked["source"], system), "all": not own}
