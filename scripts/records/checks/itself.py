"""What a record says of itself as if it were another, and what it says twice."""

from collections.abc import Iterator
from typing import Any

from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.written import inside, listed, source_keys, texts


def taken_for_itself(reading: ReadRecords) -> Iterator[RecordFault]:
    """Nothing is told apart from itself: neither by its name nor by its key."""
    others = {"plants": ("look_alikes", "plant"), "problems": ("mistaken_for", "problem")}
    for kind, (rows, key) in others.items():
        for slug, draft in reading.drafts[kind].items():
            own = {"name": inside(draft.value, "name"), key: slug}
            for number, row in enumerate(listed(draft.value, rows)):
                for word, value in own.items():
                    if value is not None and inside(row, word) == value:
                        place = (rows, number, word)
                        message = (
                            f"is this record itself; allowed here is any other of species/{kind}/"
                        )
                        yield reading.finding(draft.path, place, message)


def sources_twice(part: dict[str, Any]) -> Iterator[tuple[str, str]]:
    """A source stands once in the list of a claim."""
    for key in repeated(source_keys(part)):
        yield "source", twice(key)


def trade_names_twice(reading: ReadRecords) -> Iterator[RecordFault]:
    """A trade name stands once in its list."""
    for draft in reading.every_draft():
        for name in repeated([word for _, word in texts(draft.value, "trade_names")]):
            yield reading.finding(draft.path, (*draft.place, "trade_names"), twice(name))


def repeated(words: list[str]) -> list[str]:
    """The words that stand more than once, each once."""
    if len(words) < 2:
        return []
    return sorted({word for word in words if words.count(word) > 1})


def twice(word: str) -> str:
    """What is said of a word that stands twice in a list."""
    return f"{word} stands twice; each stands once"
