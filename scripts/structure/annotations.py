"""What an annotation says of numbers, read from the source."""

import ast
import re

NUMBERS = frozenset({"float", "int"})
SEQUENCES = frozenset({"list", "tuple", "set", "Sequence", "Iterable", "Iterator"})
TABLES = frozenset({"dict", "Mapping"})


def names_in(annotation: ast.expr) -> set[str]:
    """The words of an annotation."""
    return set(re.findall(r"\w+", ast.unparse(annotation)))


def is_numeric(annotation: ast.expr | None) -> bool:
    """Whether an annotation is a number, one that may be missing, or a sequence of such."""
    names = names_in(annotation) if annotation is not None else set()
    return bool(names & NUMBERS) and names <= NUMBERS | SEQUENCES | {"None"}


def is_whole(annotation: ast.expr | None) -> bool:
    """Whether a number is a whole one."""
    return annotation is not None and "float" not in names_in(annotation)


def holds_many(annotation: ast.expr | None) -> bool:
    """Whether an annotation is a sequence or a table that holds numbers."""
    names = names_in(annotation) if annotation is not None else set()
    return bool(names & NUMBERS) and bool(names & (SEQUENCES | TABLES))


def has_fixed_parts(annotation: ast.expr) -> bool:
    """Whether an annotation is a tuple with a place for each of its parts."""
    text = ast.unparse(annotation)
    many = names_in(annotation) & (SEQUENCES | TABLES) - {"tuple"}
    return text.startswith("tuple[") and "..." not in text and not many
