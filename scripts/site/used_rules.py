"""The rules of a style sheet that some page can use: the others name a class that stands in no page."""

import re
from collections.abc import Collection, Iterator

CLASS = re.compile(r"\.(-?[_a-zA-Z][\w-]*)")
NOT_NEEDED_TO_MATCH = re.compile(r":(?:not|is|where|has)\([^()]*\)|\[[^\]]*\]")
HOLDS_RULES = ("@media", "@supports", "@layer", "@container")
KEYFRAMES = re.compile(r"@keyframes ([\w-]+)")


def used_rules(sheet: str, classes: Collection[str]) -> str:
    """The sheet without rules that need a class which is none of ``classes``, and without their movements."""
    kept = "".join(rules_of(sheet, classes))
    moving = "".join(text for head, text in blocks(kept) if not KEYFRAMES.match(head))
    return "".join(
        text
        for head, text in blocks(kept)
        if not (named := KEYFRAMES.match(head)) or named[1] in moving
    )


def rules_of(sheet: str, classes: Collection[str]) -> Iterator[str]:
    """Each rule of the sheet that can match, with those of its selectors that can."""
    for head, text in blocks(sheet):
        body = text[len(head) + 1 : -1]
        if head.startswith(HOLDS_RULES):
            inner = "".join(rules_of(body, classes))
            if inner:
                yield f"{head}{{{inner}}}"
        elif head.startswith("@"):
            yield text
        else:
            selectors = [one for one in parts(head) if can_match(one, classes)]
            if selectors:
                yield f"{','.join(selectors)}{{{body}}}"


def blocks(sheet: str) -> Iterator[tuple[str, str]]:
    """What stands before each outer brace, and the whole up to the brace that closes it.

    The sheet has no comments, and no braces in its texts. Raises ``ValueError`` where a brace is open.
    """
    start = 0
    while (brace := sheet.find("{", start)) >= 0:
        depth, end = 1, brace + 1
        while depth:
            found = re.compile("[{}]").search(sheet, end)
            if not found:
                raise ValueError(f"a brace is never closed: {sheet[start : brace + 40]}")
            depth += 1 if found[0] == "{" else -1
            end = found.end()
        yield sheet[start:brace], sheet[start:end]
        start = end


def parts(head: str) -> list[str]:
    """The selectors of a rule, split at the commas outside brackets."""
    return re.split(r",(?![^(]*\))(?![^\[]*\])", head)


def can_match(selector: str, classes: Collection[str]) -> bool:
    """Whether every class that the selector needs stands in some page."""
    needed = NOT_NEEDED_TO_MATCH.sub("", selector)
    return all(one in classes for one in CLASS.findall(needed))
