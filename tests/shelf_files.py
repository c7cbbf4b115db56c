"""Shelf files for the tests: a good one, and a corpus of broken and hostile ones.

``BAD_FILES`` is {name: (text, the field that the complaint names)}. All of it is invented.
"""

import copy
import json

GOOD = {
    "format": "mulmbook-tanks",
    "version": 1,
    "saved": "2026-11-28T18:00:00Z",
    "tanks": [
        {
            "id": "jar", "name": "Jar", "net_l": 20, "ph": 7.2, "tap": {"kh_dh": 4},
            "plants": [{"plant": "rotala-rotundifolia", "wet_g": 30}],
            "animals": [{"animal": "neocaridina-davidi", "count": 12}],
            "a-later-key": {"kept": [1, 2]},
        },
        {"id": "vat", "name": "Vat"},
    ],
    "entries": [
        {"id": "1", "tank": "jar", "at": "2026-11-20T18:00:00Z", "kind": "reading", "what": "ph",
         "value": 7.1},
        {"id": "2", "tank": "jar", "at": "2026-11-21T18:00:00+11:00", "kind": "change", "value": 25},
        {"id": "3", "tank": "vat", "at": "2026-11-22T18:00", "kind": "note", "text": "Two\nlines",
         "hand": 3},
    ],
}  # fmt: skip


def changed(path, value):
    """The good file as text, with one value replaced; a value of ... takes the key away."""
    data = copy.deepcopy(GOOD)
    inside = data
    for part in path[:-1]:
        inside = inside[part]
    if value is ...:
        del inside[path[-1]]
    else:
        inside[path[-1]] = value
    return json.dumps(data)


def with_text(old, new):
    """The good file's text with a piece replaced, for what no dump would write."""
    text = json.dumps(GOOD)
    assert old in text
    return text.replace(old, new, 1)


DEEP = "[" * 30 + "]" * 30
BAD_FILES = {
    "empty": ("", "file"),
    "cut in the middle": (json.dumps(GOOD)[:200], "file"),
    "no JSON": ("<html></html>", "file"),
    "a list": ("[]", "file"),
    "a number": ("7", "file"),
    "null": ("null", "file"),
    "another format": (changed(["format"], "something-else"), "format"),
    "no format": (changed(["format"], ...), "format"),
    "a format that is a list": (changed(["format"], ["mulmbook-tanks"]), "format"),
    "newer version": (changed(["version"], 2), "version"),
    "version as text": (changed(["version"], "1"), "version"),
    "version true": (changed(["version"], True), "version"),
    "version 0": (changed(["version"], 0), "version"),
    "saved in the year 0": (changed(["saved"], "0000-01-01T00:00:00Z"), "saved"),
    "saved missing": (changed(["saved"], ...), "saved"),
    "tanks no list": (changed(["tanks"], {"0": {}}), "tanks"),
    "entries missing": (changed(["entries"], ...), "entries"),
    "too many tanks": (changed(["tanks"], [{"id": str(n), "name": "T"} for n in range(501)]), "tanks"),
    "a tank that is a text": (changed(["tanks", 0], "jar"), "tanks[1]"),
    "a tank with no id": (changed(["tanks", 0, "id"], ...), "tanks[1].id"),
    "a tank with no name": (changed(["tanks", 1, "name"], None), "tanks[2].name"),
    "a name that is a number": (changed(["tanks", 1, "name"], 7), "tanks[2].name"),
    "two tanks of one id": (changed(["tanks", 1, "id"], "jar"), "tanks[2].id"),
    "an id that browsers know": (changed(["tanks", 1, "id"], "__proto__"), "tanks[2].id"),
    "litres as text": (changed(["tanks", 0, "net_l"], "20 L"), "tanks[1].net_l"),
    "litres below zero": (changed(["tanks", 0, "net_l"], -5), "tanks[1].net_l"),
    "pH true": (changed(["tanks", 0, "ph"], True), "tanks[1].ph"),
    "pH a list": (changed(["tanks", 0, "ph"], [7]), "tanks[1].ph"),
    "an unknown place": (changed(["tanks", 0, "place"], "moon"), "tanks[1].place"),
    "flooded in the year 0": (changed(["tanks", 0, "flooded_on"], "0000-05-01"), "tanks[1].flooded_on"),
    "flooded on no day": (changed(["tanks", 0, "flooded_on"], "2026-02-30"), "tanks[1].flooded_on"),
    "tap a number": (changed(["tanks", 0, "tap"], 4), "tanks[1].tap"),
    "KH of the tap as text": (changed(["tanks", 0, "tap", "kh_dh"], "4"), "tanks[1].tap.kh_dh"),
    "plants an object": (changed(["tanks", 0, "plants"], {}), "tanks[1].plants"),
    "a plant that is a path": (
        changed(["tanks", 0, "plants", 0, "plant"], "../../etc"), "tanks[1].plants[1].plant",
    ),
    "half an animal": (
        changed(["tanks", 0, "animals", 0, "count"], 0.5), "tanks[1].animals[1].count",
    ),
    "an entry that is null": (changed(["entries", 0], None), "entries[1]"),
    "an entry with no id": (changed(["entries", 1, "id"], None), "entries[2].id"),
    "an entry with no tank": (changed(["entries", 1, "tank"], None), "entries[2].tank"),
    "two entries of one id": (changed(["entries", 1, "id"], "1"), "entries[2].id"),
    "an entry of no tank": (changed(["entries", 1, "tank"], "bowl"), "entries[2].tank"),
    "an entry of an unknown kind": (changed(["entries", 1, "kind"], "eval"), "entries[2].kind"),
    "an entry in the year 0": (changed(["entries", 1, "at"], "0000-01-01T00:00:00Z"), "entries[2].at"),
    "an entry of no moment": (changed(["entries", 1, "at"], "yesterday"), "entries[2].at"),
    "a moment that is a number": (changed(["entries", 1, "at"], 1700000000), "entries[2].at"),
    "an unknown reading": (changed(["entries", 0, "what"], "mood"), "entries[1].what"),
    "a reading of nothing": (changed(["entries", 0, "what"], None), "entries[1].what"),
    "a reading with no value": (changed(["entries", 0, "value"], None), "entries[1].value"),
    "pH of 70": (changed(["entries", 0, "value"], 70), "entries[1].value"),
    "a value as text": (changed(["entries", 0, "value"], "7.1"), "entries[1].value"),
    "a change of 250 %": (changed(["entries", 1, "value"], 250), "entries[2].value"),
    "a note with no text": (changed(["entries", 2, "text"], ...), "entries[3].text"),
    "a note of a megabyte": (changed(["entries", 2, "text"], "x" * 1_000_000), "entries[3].text"),
    "a note of 3,000 letters": (changed(["entries", 2, "text"], "x" * 3_000), "entries[3].text"),
    "a note with a control character": (changed(["entries", 2, "text"], "a\u0000b"), "entries[3].text"),
    "a name with a line break": (changed(["tanks", 0, "name"], "a\nb"), "tanks[1].name"),
    "half a character": (changed(["tanks", 0, "name"], "\ud800"), "tanks[1].name"),
    "an infinite number": (with_text('"net_l": 20', '"net_l": 1e999'), "tanks[1].net_l"),
    "NaN": (with_text('"net_l": 20', '"net_l": NaN'), "file"),
    "Infinity": (with_text('"net_l": 20', '"net_l": -Infinity'), "file"),
    "a number of 400 digits": (with_text('"net_l": 20', f'"net_l": {"9" * 400}'), "tanks[1].net_l"),
    "a key of a browser's objects": (
        with_text('"a-later-key"', '"__proto__"'), "tanks[1]",
    ),
    "a constructor deep inside": (with_text('"kept"', '"constructor"'), "tanks[1].a-later-key"),
    "a key twice": (with_text('"name": "Vat"', '"name": "Vat", "name": "Tub"'), "file"),
    "nested 30 deep": (with_text("[1, 2]", DEEP), "tanks[1].a-later-key.kept" + "[1]" * 16),
    "nested 100,000 deep": ("[" * 100_000, "file"),
    "an unknown key with a megabyte": (
        with_text("[1, 2]", json.dumps("x" * 1_000_000)), "tanks[1].a-later-key.kept",
    ),
    "50 MB": (" " * 50_000_000, "file"),
}  # fmt: skip
