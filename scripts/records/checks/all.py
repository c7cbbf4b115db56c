"""Checks that need more than one record, and no calculator: references, sureness, names."""

from collections import defaultdict
from collections.abc import Collection, Iterator
from functools import partial
from typing import Any

from scripts.records.checks import bands, guide_marks, itself
from scripts.records.checks.shop_names import trade_names
from scripts.records.claim import COMMON_PRACTICE, SLUG
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.mentions import NAMED_RECORDS, drafts_of_files, mentions, named
from scripts.records.parse import Place
from scripts.records.prose import read_prose
from scripts.records.reader import Draft
from scripts.records.written import every_mapping, inside, listed, mappings, source_keys, texts


def record_faults(reading: ReadRecords) -> list[RecordFault]:
    """What is wrong with how the records hang together.

    Records are looked at as they were written, so that a slip in one key hides no other. What refers
    to a file of which nothing could be read is not judged.
    """
    return [
        *of_every_mapping(reading),
        *lists_of_plants(reading),
        *grazers(reading),
        *bands.findings(reading),
        *bands.rows(reading),
        *guide_marks.mark_faults(reading),
        *read_prose()[1],
        *double_names(reading),
        *trade_names(reading),
        *itself.taken_for_itself(reading),
        *itself.trade_names_twice(reading),
    ]


def of_every_mapping(reading: ReadRecords) -> Iterator[RecordFault]:
    """What is wrong with a mapping of any record by itself, or with a record that it names.

    A file in which nothing can be wrong is not walked through, which takes longer than what is looked for.
    """
    known = reading.keys("sources")
    for path, drafts in drafts_of_files(reading):
        found = mentions(reading, path, drafts)
        sound = reading.documents[path].fact(named("sound", drafts), partial(are_sound, drafts))
        if (
            sound
            and (not known or known.issuperset(set(found.sources) - {COMMON_PRACTICE}))
            and all(is_there(reading, kind, slug) for kind, slug in found.records)
        ):
            continue
        for draft in drafts:
            for place, part in mappings(draft.value, draft.place):
                for key, message in (
                    *(unknown_sources(part, known) if known else ()),
                    *wrong_by_itself(part),
                    *unknown_records(reading, part),
                ):
                    yield reading.finding(path, (*place, key), message)


def are_sound(drafts: list[Draft]) -> bool:
    """Whether nothing is wrong with any mapping by itself."""
    return not any(
        wrong
        for draft in drafts
        for part in every_mapping(draft.value)
        for wrong in wrong_by_itself(part)
    )


def wrong_by_itself(part: dict[str, Any]) -> list[tuple[str, str]]:
    """What is wrong with a mapping whatever other records there are."""
    return [*too_sure(part), *itself.sources_twice(part)]


def unknown_sources(part: dict[str, Any], known: Collection[str]) -> Iterator[tuple[str, str]]:
    """Every source key must stand in sources.yml."""
    for key in source_keys(part):
        if SLUG.fullmatch(key) and key != COMMON_PRACTICE and key not in known:
            yield "source", no_source(key)


def no_source(key: str) -> str:
    """What is said of a source key that stands for nothing."""
    return f"{key} is no key of sources.yml; add the source there, or write {COMMON_PRACTICE}"


def too_sure(part: dict[str, Any]) -> Iterator[tuple[str, str]]:
    """What rests on common practice alone cannot be well documented."""
    if part.get("sure") == "well-documented" and set(source_keys(part)) == {COMMON_PRACTICE}:
        yield "sure", "well-documented needs a named source; allowed here: reported, uncertain"


def unknown_records(reading: ReadRecords, part: dict[str, Any]) -> Iterator[tuple[str, str]]:
    """Every slug that names another record must have that record's file."""
    for key, kind in NAMED_RECORDS.items():
        slug = part.get(key)
        if isinstance(slug, str) and SLUG.fullmatch(slug) and not is_there(reading, kind, slug):
            yield key, no_record(kind, slug)


def is_there(reading: ReadRecords, kind: str, slug: str) -> bool:
    """Whether a record has a file, right or wrong."""
    return slug in reading.drafts[kind] or (reading.folder / kind / f"{slug}.yml").exists()


def no_record(kind: str, slug: str) -> str:
    """What is said of a slug that stands for nothing."""
    return f"{slug} has no record in species/{kind}/"


def lists_of_plants(reading: ReadRecords) -> Iterator[RecordFault]:
    """Every plant that an animal eats or suits must have a record, and stand once in its list."""
    for draft in reading.drafts["animals"].values():
        lists: list[tuple[Place, Any]] = [(("suits", "plants"), inside(draft.value, "suits"))]
        lists += [
            (("harms", n, "plants"), harm) for n, harm in enumerate(listed(draft.value, "harms"))
        ]
        for place, holder in lists:
            seen: set[str] = set()
            for number, plant in texts(holder, "plants"):
                if SLUG.fullmatch(plant) and not is_there(reading, "plants", plant):
                    message = no_record("plants", plant)
                    yield reading.finding(draft.path, (*place, number), message)
                if plant in seen:
                    yield reading.finding(draft.path, (*place, number), f"{plant} stands twice")
                seen.add(plant)


def grazers(reading: ReadRecords) -> Iterator[RecordFault]:
    """Who eats a plant is said in keys of the vocabulary."""
    known = inside(reading.library.vocabulary, "grazer")
    for draft in reading.drafts["plants"].values() if isinstance(known, dict) else ():
        for number, eaten in enumerate(listed(draft.value, "eaten_by")):
            for key in ("eaters", "nibblers"):
                for _, word in texts(eaten, key):
                    if word not in known:
                        message = f"{word} is no grazer; allowed here: {', '.join(known)}"
                        yield reading.finding(draft.path, ("eaten_by", number, key), message)


def double_names(reading: ReadRecords) -> Iterator[RecordFault]:
    """Two records of a kind may not have the same accepted name."""
    for kind in ("plants", "animals"):
        by_name: dict[str, list[str]] = defaultdict(list)
        for slug, draft in reading.drafts[kind].items():
            name = inside(draft.value, "name")
            if isinstance(name, str):
                by_name[name].append(slug)
        for slugs in by_name.values():
            for slug in slugs[1:]:
                path = reading.drafts[kind][slug].path
                yield reading.finding(path, ("name",), f"is the name of {slugs[0]}.yml too")
