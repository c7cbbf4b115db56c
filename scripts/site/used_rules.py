"""The rules of a style sheet that some page can use: the others name a class that stands in no page."""

from collections.abc import Collection, Iterable, Iterator
from itertools import pairwise

from tinycss2 import parse_rule_list, parse_stylesheet, serialize
from tinycss2.ast import AtRule, IdentToken, LiteralToken, Node, QualifiedRule

HOLDS_RULES = frozenset({"media", "supports", "layer", "container"})
KEYFRAMES = "keyframes"


def used_rules(sheet: str, classes: Collection[str]) -> str:
    """The sheet without rules that need a class which is none of ``classes``, and without their movements.

    Raises ``ValueError``, with the place, where the sheet is no CSS.
    """
    rules = list(usable(parse_stylesheet(sheet, skip_comments=True, skip_whitespace=True), classes))
    words = {word for rule in rules if not is_movement(rule) for word in words_in(rule.content)}
    return "".join(
        written(rule)
        for rule in rules
        if not is_movement(rule) or serialize(rule.prelude).strip() in words
    )


def usable(rules: Iterable[Node], classes: Collection[str]) -> Iterator[AtRule | QualifiedRule]:
    """Each rule that can match, with those of its selectors that can. Raises ``ValueError``."""
    for rule in rules:
        if rule.type == "error":
            raise ValueError(
                f"line {rule.source_line}, column {rule.source_column}: {rule.message}"
            )
        if rule.type == "qualified-rule":
            matching = [part for part in selectors(rule.prelude) if can_match(part, classes)]
            rule.prelude = joined(matching)
            if matching:
                yield rule
        elif rule.content is not None and rule.lower_at_keyword in HOLDS_RULES:
            inner = parse_rule_list(rule.content, skip_comments=True, skip_whitespace=True)
            rule.content = list(usable(inner, classes))
            if rule.content:
                yield rule
        else:
            yield rule


def selectors(prelude: Iterable[Node]) -> Iterator[list[Node]]:
    """The selectors of a rule, each as its tokens: what stands between the commas outside brackets."""
    part: list[Node] = []
    for token in prelude:
        if token == ",":
            yield part
            part = []
        else:
            part.append(token)
    yield part


def joined(parts: Iterable[list[Node]]) -> list[Node]:
    """Selectors as one list of tokens again, a comma between two."""
    tokens: list[Node] = []
    for part in parts:
        if tokens:
            tokens.append(LiteralToken(0, 0, ","))
        tokens.extend(part)
    return tokens


def can_match(selector: list[Node], classes: Collection[str]) -> bool:
    """Whether every class that the selector needs stands in some page.

    What stands in brackets, as in ``:not(.a)`` or ``[data-a]``, is a token of its own and needs none.
    """
    return all(
        name.value in classes
        for dot, name in pairwise(selector)
        if dot == "." and name.type == "ident"
    )


def is_movement(rule: Node) -> bool:
    """Whether a rule is ``@keyframes``."""
    return bool(rule.type == "at-rule" and rule.lower_at_keyword == KEYFRAMES)


def words_in(nodes: Iterable[Node] | None) -> Iterator[str]:
    """Every plain word in these tokens and rules, inside their blocks too."""
    for node in nodes or ():
        if isinstance(node, IdentToken):
            yield node.value
        for inside in ("content", "arguments"):
            yield from words_in(getattr(node, inside, None))


def written(rule: AtRule | QualifiedRule) -> str:
    """A rule as text."""
    return str(rule.serialize())
