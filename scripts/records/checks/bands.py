"""Checks of the findings, and of the evidence that the problem records make of them."""

from collections.abc import Iterator

from scripts.records.claim import SLUG
from scripts.records.finding import DerivedFrom
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.written import inside, listed, texts


def findings(reading: ReadRecords) -> Iterator[RecordFault]:
    """Findings that name others must name known ones; answers to one question must not overlap."""
    known = reading.drafts["findings"]
    for key, draft in known.items():
        for field in ("implies", "excludes"):
            for number, other in texts(draft.value, field):
                if other not in known or other == key:
                    message = f"{other} is no other key of findings.yml"
                    yield reading.finding(draft.path, (key, field, number), message)
    bands = {key: sign.derived_from for key, sign in reading.library.findings.items()}
    for key, band in bands.items():
        for other, beside in bands.items():
            if key < other and band and beside and overlap(band, beside):
                place = (key, "derived_from")
                yield reading.finding(known[key].path, place, f"overlaps {other}")


def overlap(band: DerivedFrom, other: DerivedFrom) -> bool:
    """Whether a figure could be in two bands of one input."""
    if band.input != other.input:
        return False
    if band.equals is not None or other.equals is not None:
        return band.equals == other.equals
    low = max(edge if (edge := derived.above) is not None else -1e9 for derived in (band, other))
    high = min(edge if (edge := derived.up_to) is not None else 1e9 for derived in (band, other))
    return low < high


def rows(reading: ReadRecords) -> Iterator[RecordFault]:
    """Evidence must name a known finding, once, and a hallmark must speak strongly for it."""
    known = reading.keys("findings")
    for draft in reading.drafts["problems"].values():
        seen: set[str] = set()
        for number, row in enumerate(listed(draft.value, "evidence")):
            place = ("evidence", number)
            sign = inside(row, "finding")
            if isinstance(sign, str):
                if known and SLUG.fullmatch(sign) and sign not in known:
                    message = f"{sign} is no key of findings.yml"
                    yield reading.finding(draft.path, (*place, "finding"), message)
                if sign in seen:
                    message = f"{sign} stands twice"
                    yield reading.finding(draft.path, (*place, "finding"), message)
                seen.add(sign)
            if inside(row, "hallmark") is True and inside(row, "strength") != "strong-for":
                message = "a hallmark speaks strongly for its problem: strong-for"
                yield reading.finding(draft.path, (*place, "hallmark"), message)
