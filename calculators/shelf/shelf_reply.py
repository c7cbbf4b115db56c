"""What the shelf's pages ask beside calculators: JSON in, JSON out, as the bridge passes it on.

- ``{"message": "fill", "calculator", "tank", "entries", "today", "again"}`` gives ``{"fields":
  {input: value}, "from": {input: words}}``: what of a tank goes into a calculator's form, metric;
  ``again`` are the inputs that were chosen there for this tank the last time.
- ``{"message": "check-shelf-file", "text"}`` gives ``{"complaints": [{"field", "why"}]}``; none where
  the file may be read.
- ``{"message": "redate", "file", "today"}`` gives ``{"file"}``: a shelf file with every day moved so that
  it was saved today. For the demo tanks alone.
- ``{"message": "paper", "kind": "card" | "holiday", "tank", "entries", "from", "to", ...}`` gives
  ``{"html", "title"}``; see ``paper.py``.

A tank or entry that cannot be read gives ``{"complaints"}`` in place of an answer.
"""

from collections.abc import Callable, Mapping
from typing import Any

from calculators.core.result import BadInput
from calculators.shelf.form_filling import fill
from calculators.shelf.paper import paper_reply
from calculators.shelf.redate import redated
from calculators.shelf.shelf_file import check_shelf_text

Reply = dict[str, Any]


def shelf_reply(asked: Mapping[str, Any]) -> Reply:
    """The reply to one message. Raises ``LookupError`` for one that is not known."""
    reply = REPLIES.get(asked["message"])
    if reply is None:
        known = ", ".join(REPLIES)
        raise LookupError(f"no message is called {asked['message']!r:.40}; known are {known}")
    try:
        return reply(asked)
    except BadInput as bad:
        return {"complaints": [{"field": field, "why": why} for field, why in bad.problems]}


def fill_reply(asked: Mapping[str, Any]) -> Reply:
    """What of a tank goes into a form. Raises ``BadInput``."""
    given = (asked.get("entries", []), asked.get("today"), asked.get("again"))
    return fill(asked["calculator"], asked["tank"], *given)


def check_reply(asked: Mapping[str, Any]) -> Reply:
    """The complaints about a file's text."""
    return {"complaints": [one._asdict() for one in check_shelf_text(asked["text"])]}


def redate_reply(asked: Mapping[str, Any]) -> Reply:
    """A file moved to another day. Raises ``ValueError`` for a day that is none."""
    return {"file": redated(asked["file"], asked["today"])}


REPLIES: dict[str, Callable[[Mapping[str, Any]], Reply]] = {
    "fill": fill_reply,
    "check-shelf-file": check_reply,
    "redate": redate_reply,
    "paper": paper_reply,
}
