"""A style sheet without comments, and without blanks that say nothing."""

from collections.abc import Iterable

from tinycss2 import parse_component_value_list, serialize
from tinycss2.ast import Node

AFTER_THESE, BEFORE_THESE = (";", ",", ":"), (";", ",")  # where a blank says nothing


def small(sheet: str) -> str:
    """A sheet without comments, and without blanks that say nothing."""
    return str(serialize(without_blanks(parse_component_value_list(sheet, skip_comments=True))))


def without_blanks(nodes: Iterable[Node]) -> list[Node]:
    """These tokens and blocks with only those blanks that part two of them."""
    kept: list[Node] = []
    waiting: Node | None = None
    for node in nodes:
        if node.type == "whitespace":
            waiting = node
            continue
        if node.type == "comment":
            continue
        if waiting and kept and needs_blank(kept[-1], node):
            waiting.value = " "
            kept.append(waiting)
        waiting = None
        for inside in ("content", "arguments"):
            if getattr(node, inside, None):
                setattr(node, inside, without_blanks(getattr(node, inside)))
        kept.append(node)
    return kept


def needs_blank(before: Node, after: Node) -> bool:
    """Whether a blank between two tokens says anything: between two selectors' parts it does."""
    closed = before.type == "{} block" or after.type == "{} block"
    return not closed and before not in AFTER_THESE and after not in BEFORE_THESE
