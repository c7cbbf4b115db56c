"""The shelf out to a file and in from one: nothing is changed unseen, and a bad file changes nothing."""

import copy
import csv
import io
import json
from itertools import product

import pytest

from tests.browser.conftest import new_context
from tests.browser.shelf_page import at_book, open_page, with_shelf
from tests.effort import long_run, share_of

PLANTS = [{"plant": "rotala", "wet_g": 5}]
TANK = {"id": "t1", "name": "Foyer", "ph": 7, "tap": {"ph": 7.5}, "plants": PLANTS}
READING = {"kind": "reading", "what": "nitrate_mg_l", "value": 10, "step": 5}
ENTRY = {"id": "e1", "tank": "t1", "at": "2026-06-01T08:00:00+01:00", **READING}
HEAD = {"format": "mulmbook-tanks", "version": 1, "saved": "2026-06-02T08:00:00Z"}
FILE = {**HEAD, "tanks": [TANK], "entries": [ENTRY]}
READ = """
const { readShelfFile } = await import(at("file"));
const read = async (text, name = "tanks.json") => readShelfFile(new File([text], name), await shelf.tanks());
"""
TAKE = f"{READ} const difference = await shelf.merge(await read(given));"


@pytest.fixture
def page(page):
    return at_book(page)


def file_with(**parts):
    return json.dumps({**FILE, **parts})


def bare(rows):
    """Rows without the time of their last change."""
    return [{key: row[key] for key in row if key != "changed"} for row in rows]


def test_a_file_is_compared_then_taken_in_and_written_again_with_all_it_had(page):
    text = file_with(beside={"by": "a script"}, settings={"place": "gb"})
    seen = with_shelf(
        page,
        f"""{READ} const file = await read(given);
        const before = shelf.compare(file);
        const unchanged = await shelf.tanks();
        await shelf.merge(file);
        return {{ before, unchanged, after: shelf.compare(file), file: shelf.toFile() }};""",
        text,
    )
    assert (seen["before"]["added"], seen["before"]["same"]) == (2, 0)
    assert seen["before"]["tanks"][0]["entries"]["added"] == 1
    assert seen["before"]["settings"] == ["place"]
    assert seen["unchanged"] == []
    assert (seen["after"]["added"], seen["after"]["same"], seen["after"]["settings"]) == (0, 2, [])
    again = seen["file"]
    assert bare(again["tanks"]) == [TANK]
    assert bare(again["entries"]) == [ENTRY]
    assert (again["format"], again["version"]) == ("mulmbook-tanks", 1)
    assert (again["beside"], again["settings"]) == ({"by": "a script"}, {"place": "gb"})
    assert with_shelf(page, "await shelf.undo(); return shelf.tanks();") == []


def test_the_later_change_stays_and_what_a_file_lacks_stays(page):
    with_shelf(page, TAKE, file_with())
    old = with_shelf(page, "return shelf.toFile();")
    with_shelf(page, "await shelf.saveTank({ ...(await shelf.tank('t1')), ph: 7.4 });")
    older = with_shelf(
        page, f"{TAKE} return [difference, await shelf.tank('t1')];", json.dumps(old)
    )
    assert (older[0]["older"], older[0]["changed"]) == (1, 0)
    assert older[0]["tanks"][0]["keys"] == ["ph"]
    assert older[1]["ph"] == 7.4
    edited = file_with(tanks=[{"id": "t1", "name": "Foyer", "gh_dh": 6}], entries=[])
    newer = with_shelf(page, f"{TAKE} return [difference, await shelf.tank('t1')];", edited)
    assert newer[0]["changed"] == 1
    assert newer[0]["tanks"][0]["keys"] == ["gh_dh"]
    assert (newer[1]["gh_dh"], newer[1]["ph"], newer[1]["plants"]) == (6, 7.4, TANK["plants"])


def test_what_was_removed_here_is_told_and_may_stay_away(page):
    with_shelf(page, f"{TAKE} await shelf.removeTank('t1');", file_with())
    seen = with_shelf(
        page,
        f"""{READ} const file = await read(given);
        const counts = shelf.compare(file);
        await shelf.merge(file, {{ returned: false }});
        const away = await shelf.tanks();
        await shelf.merge(file);
        return [counts.returned, away, (await shelf.tanks()).length, (await shelf.entries()).length];""",
        file_with(),
    )
    assert seen == [1, [], 1, 1]


@long_run()
def test_two_phones_that_swap_files_end_alike(chromium, address):
    phones = [new_context(chromium, address) for _ in range(2)]
    pages = [open_page(one) for one in phones]
    for page in pages:
        with_shelf(page, TAKE, file_with())
    log = "await shelf.log({ tank: 't1', kind: 'feed', value: given });"
    for value, page in enumerate(pages):
        with_shelf(page, log, value)
    files = [json.dumps(with_shelf(page, "return shelf.toFile();")) for page in pages]
    for page, other in zip(pages, reversed(files), strict=True):
        with_shelf(page, TAKE, other)
    ends = [with_shelf(page, "return shelf.entries();") for page in pages]
    for one in phones:
        one.close()
    assert sorted(bare(ends[0]), key=str) == sorted(bare(ends[1]), key=str)
    assert len(ends[0]) == 3


def changed(*path, to):
    """The good file with one part changed; ``...`` takes it away."""
    data = copy.deepcopy(FILE)
    part = data
    for key in path[:-1]:
        part = part[key]
    if to is ...:
        del part[path[-1]]
    else:
        part[path[-1]] = to
    return json.dumps(data)


def nested(depth):
    return "[" * depth + "]" * depth


# Each bad file with the reason and a word that says what is wrong with it.
BAD = {
    "empty": ("", "broken", "empty"),
    "blanks": (" \n ", "broken", "empty"),
    "cut off": (file_with()[:-20], "broken", "cut off"),
    "two files in one": (file_with() * 2, "broken", "cut off"),
    "prose": ("Dear book, my tanks are well.", "broken", "lacks"),
    "a page": ("<!doctype html><script>alert(1)</script>", "broken", "lacks"),
    "a number": ("7", "broken", "lacks"),
    "nothing": ("null", "broken", "lacks"),
    "NaN in it": (file_with().replace('"value": 10', '"value": NaN'), "broken", "cut off"),
    "too large a number": (file_with().replace('"value": 10', '"value": 1e999'), "broken", "value"),
    "another format": (changed("format", to="shopping"), "broken", "format"),
    "no format": (changed("format", to=...), "broken", "format"),
    "no version": (changed("version", to=...), "broken", "version"),
    "a version in words": (changed("version", to="1"), "broken", "version"),
    "version nought": (changed("version", to=0), "broken", "version"),
    "half a version": (changed("version", to=1.5), "broken", "version"),
    "a newer version": (changed("version", to=2), "newer", "newer"),
    "no tanks": (changed("tanks", to=...), "broken", "tanks"),
    "tanks as an object": (changed("tanks", to={}), "broken", "tanks"),
    "no entries": (changed("entries", to=...), "broken", "entries"),
    "a tank that is none": (changed("tanks", 0, to=5), "broken", "tanks[1]"),
    "a tank without id": (changed("tanks", 0, "id", to=...), "broken", "tanks[1].id"),
    "a number for an id": (changed("tanks", 0, "id", to=7), "broken", "tanks[1].id"),
    "an endless id": (changed("tanks", 0, "id", to="x" * 81), "broken", "tanks[1].id"),
    "a hostile id": (changed("tanks", 0, "id", to="__proto__"), "broken", "tanks[1].id"),
    "a tank without name": (changed("tanks", 0, "name", to=...), "broken", "name"),
    "a name of blanks": (changed("tanks", 0, "name", to="  "), "broken", "name"),
    "a name that turns the line": (changed("tanks", 0, "name", to="a\u202eb"), "broken", "name"),
    "a name with a nought": (changed("tanks", 0, "name", to="a\0b"), "broken", "name"),
    "half a letter": (changed("tanks", 0, "name", to="a\ud800"), "broken", "name"),
    "two tanks of one id": (changed("tanks", to=[TANK, TANK]), "broken", "twice"),
    "two entries of one id": (changed("entries", to=[ENTRY, ENTRY]), "broken", "twice"),
    "an entry of no tank": (changed("entries", 0, "tank", to="t2"), "broken", "t2"),
    "an entry without time": (changed("entries", 0, "at", to=...), "broken", "at"),
    "an entry of no day": (changed("entries", 0, "at", to="2026-13-01T00:00:00Z"), "broken", "at"),
    "a time in words": (changed("entries", 0, "at", to="Tuesday 5"), "broken", "at"),
    "an entry without kind": (changed("entries", 0, "kind", to=...), "broken", "kind"),
    "a value in words": (changed("entries", 0, "value", to="10"), "broken", "value"),
    "a note that is an object": (changed("entries", 0, "text", to={}), "broken", "text"),
    "a hostile key": (file_with().replace('"ph"', '"__proto__"', 1), "broken", "__proto__"),
    "a hostile key far in": (changed("tanks", 0, "tap", to={"constructor": 1}), "broken", "constructor"),
    "a hostile key on top": (file_with(prototype=1), "broken", "prototype"),
    "nested deep": (file_with().replace("7.5", nested(40)), "broken", "deep"),
    "nested endlessly": (file_with().replace("7.5", nested(20_000)), "broken", ""),
    "an endless text": (changed("entries", 0, "text", to="x" * 10_001), "broken", "10000"),
    "too many tanks": (changed("tanks", to=[{**TANK, "id": str(n)} for n in range(501)]), "broken", "500"),
    "too many parts": (changed("tanks", 0, "plants", to=[1] * 1_001), "broken", "1000"),
    "settings as a list": (file_with(settings=[1]), "broken", "settings"),
    "a calculation in parts": (file_with(kept=[{"id": "k"}]), "broken", "kept[1]"),
    "a list of anything": ("[1, 2]", "broken", "kept[1]"),
}  # fmt: skip
UNCHANGED = f"""{READ} await shelf.merge(await read(given[0]));
const before = JSON.stringify({{ ...shelf.toFile(), saved: null }});
const came = await attempt(async () => shelf.merge(await read(given[1])));
const isSame = before === JSON.stringify({{ ...shelf.toFile(), saved: null }});
const stored = await raw("readonly", (operations) => operations.count());
return {{ ...came, isSame, polluted: ({{}}).ph ?? null, stored }};"""


@pytest.mark.parametrize("name", share_of([*BAD], 8))
def test_a_bad_file_is_refused_with_the_reason_and_changes_nothing(page, name):
    text, reason, word = BAD[name]
    escaped = text.replace("\ud800", "\\ud800")
    seen = with_shelf(page, UNCHANGED, [file_with(), escaped])
    assert seen.get("reason") == reason, seen
    assert word in seen["message"]
    assert len(seen["message"]) < 1_200
    assert (seen["isSame"], seen["polluted"], seen["stored"]) == (True, None, 2)


def test_all_faults_are_told_at_once(page):
    spoilt = file_with(tanks=[{**TANK, "name": ""}], entries=[{**ENTRY, "value": "x"}], settings=5)
    message = with_shelf(page, UNCHANGED, [file_with(), spoilt])["message"]
    assert all(word in message for word in ("tanks[1].name", "entries[1].value", "settings"))


def test_a_huge_file_is_refused_by_its_size_and_never_read(page):
    seen = with_shelf(
        page,
        f"""{READ} const huge = new File([new Uint8Array(50_000_000)], "huge.json");
        let reads = 0;
        for (const name of ["arrayBuffer", "text", "stream"]) huge[name] = () => {{ reads += 1; }};
        const {{ readShelfFile: whole }} = await import(at("file"));
        return {{ ...(await attempt(() => whole(huge, []))), reads }};""",
    )
    assert (seen["reason"], seen["reads"]) == ("broken", 0)
    assert "50 MB" in seen["message"]
    assert "20 MB" in seen["message"]


@pytest.mark.parametrize(
    "octets", [file_with().encode("utf-16"), b"\xff\xfe\x00{", b"\x89PNG\r\n\x1a\n\x00\x01"]
)
def test_a_file_that_is_not_utf_8_is_refused(page, octets):
    read = f"{READ} return attempt(() => read(new Uint8Array(given)));"
    seen = with_shelf(page, read, list(octets))
    assert (seen["reason"], "UTF-8" in seen["message"]) == ("broken", True)


def test_a_file_with_a_mark_of_its_order_of_octets_is_read(page):
    read = f"{READ} return (await read(new Uint8Array(given))).tanks.length;"
    assert with_shelf(page, read, list(file_with().encode("utf-8-sig"))) == 1


def test_what_an_older_version_saved_is_read(page):
    old = {"id": "k", "tank": "Foyer", "calculator": "units", "title": "Units", "address": "",
           "when": "2026-01-01T00:00:00Z", "lines": ["1"]}  # fmt: skip
    kept = with_shelf(page, f"{TAKE} return shelf.kept();", json.dumps([old]))
    assert bare(kept) == [old]


AWKWARD = [
    "Foyer",
    'The "big" one',
    "a, b; c",
    "two\nlines",
    "'quoted",
    "=1+1",
    "@home",
    "Ünïçødé 水",
]
CSV_OUT = "const { csvOf } = await import(at('csv')); return csvOf(shelf);"


def test_readings_go_out_as_a_table_that_a_usual_reader_takes(page):
    """Read by Python's csv module, which follows RFC 4180."""
    tanks = [{"id": f"t{number}", "name": name} for number, name in enumerate(AWKWARD)]
    entries = [
        {
            **ENTRY,
            "id": f"e{number}",
            "tank": tank["id"],
            "value": number + 0.5,
            "text": tank["name"],
        }
        for number, tank in enumerate(tanks)
    ]
    feed = {**ENTRY, "id": "f", "tank": "t0", "kind": "feed"}
    with_shelf(page, TAKE, file_with(tanks=tanks, entries=[*entries, feed]))
    text = with_shelf(page, CSV_OUT)
    rows = list(csv.DictReader(io.StringIO(text, newline=""), strict=True))
    guarded = ["'" + name if name.lstrip("'")[0] in "=@" else name for name in AWKWARD]
    assert [row["tank"] for row in rows] == guarded == [row["text"] for row in rows]
    assert [float(row["value"]) for row in rows] == [number + 0.5 for number in range(len(AWKWARD))]
    assert {row["at"] for row in rows} == {ENTRY["at"]}
    again = with_shelf(page, f"{READ} return shelf.compare(await read(given));", text)
    assert (again["same"], again["added"], again["changed"]) == (2 * len(AWKWARD), 0, 0)


@pytest.mark.parametrize(
    ("ends", "quoting"),
    share_of(
        list(product(("\r\n", "\n"), (csv.QUOTE_MINIMAL, csv.QUOTE_ALL, csv.QUOTE_NONNUMERIC))),
        4,
    ),
)
def test_a_table_that_a_usual_writer_made_is_read(page, ends, quoting):
    """Written by Python's csv module."""
    made = io.StringIO(newline="")
    writer = csv.writer(made, quoting=quoting, lineterminator=ends)
    writer.writerow(["what", "tank", "value", "at", "text", "colour"])
    for number, name in enumerate(name for name in AWKWARD if name[0] not in "'=@"):
        writer.writerow(["nitrate_mg_l", name, number, "2026-06-01", f'"{name}"', "red"])
    take = f"{TAKE} return [await shelf.tanks(), await shelf.entries(), shelf.compare(await read(given))];"
    tanks, entries, again = with_shelf(page, take, made.getvalue())
    names = [tank["name"] for tank in tanks]
    assert names == [name for name in AWKWARD if name[0] not in "'=@"]
    assert [entry["value"] for entry in entries] == list(range(len(names)))
    assert [entry["text"] for entry in entries] == [f'"{name}"' for name in names]
    assert {entry["at"][:16] for entry in entries} == {"2026-06-01T12:00"}
    assert (again["added"], again["same"]) == (0, 2 * len(names))  # the same table adds nothing


def test_a_table_with_semicolons_and_decimal_commas_joins_the_tanks_that_are_there(page):
    with_shelf(page, TAKE, file_with(entries=[]))
    table = "\ufefftank;at;what;value\r\nfoyer;2026-06-01 18:30;ph;7,25\r\nJar;2026-06-02;ph;6,5\r\n\r\n"
    tanks, entries = with_shelf(
        page, f"{TAKE} return [await shelf.tanks(), await shelf.entries()];", table
    )
    assert [tank["name"] for tank in tanks] == ["Foyer", "Jar"]
    assert tanks[0]["ph"] == 7  # the table says nothing of it
    assert [entry["value"] for entry in entries] == [7.25, 6.5]
    assert entries[0]["tank"] == "t1"


def test_every_bad_row_of_a_table_is_named(page):
    rows = [
        "Foyer,2026-02-30,ph,7",
        "Foyer,2026-01-01,ph,seven",
        ",2026-01-01,ph,7",
        "Foyer,2026-01-01,my pH,7",
        "Foyer,2026-01-01,ph,7,x",
    ]
    table = "\n".join(["tank,at,what,value", *rows, "Foyer,2026-01-01,ph,7"])
    seen = with_shelf(page, UNCHANGED, [file_with(), table])
    assert (seen["reason"], seen["isSame"]) == ("broken", True)
    for words in ("row 2: at", "row 3: value", "row 4: tank", "row 5: what", "row 6: more cells"):
        assert words in seen["message"]
    assert "row 7" not in seen["message"]


def test_digests_are_those_that_were_published(page):
    """FNV-1a, 64 bits: test vectors of its authors (Fowler, Noll, Vo), from memory."""
    digests = with_shelf(
        page, "const { digest } = await import(at('digest')); return given.map(digest);", ["", "a", "foobar"]
    )  # fmt: skip
    assert digests == ["cbf29ce484222325", "af63dc4c8601ec8c", "85944171f73967e8"]


DUE = """
const { copyDue, saveCopy } = await import(at("copies"));
const day = 86_400_000;
const now = Date.now();
const states = [await copyDue(shelf, now + 40 * day)];
await shelf.saveTank({ name: "Demo", demo: true });
states.push(await copyDue(shelf, now + 40 * day));
await shelf.saveTank({ name: "Foyer" });
states.push(await copyDue(shelf, now + 29 * day), await copyDue(shelf, now + 31 * day));
"""


def test_a_copy_is_asked_for_after_a_month_and_only_where_there_is_something_new(page):
    with page.expect_download() as download:
        states = with_shelf(
            page,
            f"""{DUE} states.push(await saveCopy(shelf), await copyDue(shelf, now + 31 * day));
            await shelf.saveTank({{ name: "Jar" }});
            states.push(await copyDue(shelf, now + 31 * day));
            return states;""",
        )
    assert states == [False, False, False, True, "saved", False, True]
    saved = json.loads(download.value.path().read_text(encoding="utf-8"))
    assert [tank["name"] for tank in saved["tanks"]] == ["Demo", "Foyer"]
    assert download.value.suggested_filename.startswith("mulmbook-tanks-")
    assert "copy" not in saved["settings"]


SHEETS = {
    "takes JSON": ("() => true", "resolve", "shared", "application/json"),
    "takes text alone": ("({ files }) => files[0].type === 'text/plain'", "resolve", "shared", "text/plain"),
    "closed by the keeper": ("() => true", "reject", "cancelled", "application/json"),
}  # fmt: skip


@pytest.mark.parametrize("name", share_of([*SHEETS], 3))
def test_the_share_sheet_gets_the_file(page, name):
    takes, end, came, kind = SHEETS[name]
    seen = with_shelf(
        page,
        f"""const {{ shareOrSave }} = await import(at("share"));
        const given_files = [];
        navigator.canShare = {takes};
        navigator.share = ({{ files }}) => {{
          given_files.push(...files);
          return Promise.{end}(new DOMException("", "AbortError"));
        }};
        const came = await shareOrSave("tanks.json", "application/json", "{{}}");
        return [came, given_files[0].type, await given_files[0].text()];""",
    )
    assert seen == [came, kind, "{}"]
