"""The shelf keeps what was entered: over a season, in two tabs, and through undo, moves and settings."""

from datetime import datetime
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo

import pytest

from tests.browser.conftest import new_context
from tests.browser.shelf_page import at_book, open_page, with_shelf
from tests.effort import long_run, share_of, thorough

TANKS, WEEKS, ENTRIES = 10, 26, 2_000 if thorough() else 200


@pytest.fixture
def page(page):
    return at_book(page)


def reopened(page):
    """The same page, loaded anew."""
    page.reload()
    return page


@long_run()
def test_a_season_is_written_and_read_and_nothing_leaves(page, address):
    asked = []
    page.context.on("request", lambda request: asked.append(request))
    with_shelf(
        page,
        """
        const tanks = [];
        for (let index = 0; index < given.tanks; index += 1) {
          tanks.push(await shelf.saveTank({ name: `Tank ${index}`, net_l: 50 + index }));
        }
        const start = Date.parse("2026-05-01T08:00:00Z");
        const step = given.weeks * 7 * 86_400_000 / given.entries;
        for (let index = 0; index < given.entries; index += 1) {
          const at = new Date(start + index * step).toISOString();
          const reading = { kind: "reading", what: "nitrate_mg_l", value: index % 40 };
          await shelf.log({ ...reading, tank: tanks[index % given.tanks].id, at });
        }
        """,
        {"tanks": TANKS, "weeks": WEEKS, "entries": ENTRIES},
    )
    seen = with_shelf(
        reopened(page),
        """const [first] = await shelf.tanks();
        return {
          names: (await shelf.tanks()).map((tank) => tank.name),
          entries: await shelf.entries(),
          ofFirst: await shelf.entries({ tank: first.id }),
          late: await shelf.entries({ since: "2026-10-01T00:00:00Z" }),
          feeds: await shelf.entries({ kind: "feed" }),
          last: await shelf.lastValues(first.id, "reading", "nitrate_mg_l"),
          troubles: shelf.troubles(),
        };""",
    )
    assert seen["names"] == [f"Tank {index}" for index in range(TANKS)]
    assert [one["value"] for one in seen["entries"]] == [index % 40 for index in range(ENTRIES)]
    assert [one["value"] for one in seen["ofFirst"]] == [
        index % 40 for index in range(0, ENTRIES, TANKS)
    ]
    assert seen["late"] == [one for one in seen["entries"] if one["at"] >= "2026-10-01"] != []
    assert (seen["feeds"], seen["troubles"]) == ([], [])
    assert seen["last"] == [30, 20, 10, 0]  # each once, the latest first
    own = urlsplit(address).netloc
    for request in asked:
        parts = urlsplit(request.url)
        assert (request.method, parts.netloc, parts.query) == ("GET", own, "")
        assert request.post_data is None


def test_what_a_form_read_earlier_does_not_undo_what_another_tab_saved(context, page):
    tank = with_shelf(page, "return shelf.saveTank({ name: 'Foyer', ph: 7, gh_dh: 6 });")
    other = open_page(context)
    with_shelf(other, "await shelf.saveTank({ ...given, ph: 7.4 });", tank)
    with_shelf(page, "await shelf.saveTank({ ...given, gh_dh: 8, kh_dh: 3 });", tank)
    for one in (page, other):
        seen = with_shelf(
            one,
            """return until(async () => {
              const tank = await shelf.tank(given);
              return tank.ph === 7.4 && tank.gh_dh === 8 && tank.kh_dh === 3;
            });""",
            tank["id"],
        )
        assert seen is True
    cleared = with_shelf(
        page,
        "const { kh_dh, ...rest } = await shelf.tank(given); return shelf.saveTank(rest);",
        tank["id"],
    )
    assert (cleared["kh_dh"], cleared["ph"], cleared["gh_dh"]) == (None, 7.4, 8)


@long_run()
def test_two_tabs_that_write_at_once_keep_everything(context, page):
    tank = with_shelf(page, "return shelf.saveTank({ name: 'Foyer' });")
    tabs = [page, open_page(context)]
    for one in tabs:
        start = """window.writing = (async () => {
          for (let value = 0; value < 60; value += 1) {
            await shelf.log({ tank: given, kind: "feed", value });
          }
        })();"""
        with_shelf(one, start, tank["id"])
    for one in tabs:
        one.evaluate("() => window.writing")
    for one in tabs:
        everything = "return until(async () => (await shelf.entries()).length === 120);"
        assert with_shelf(one, everything) is True
    values = with_shelf(reopened(page), "return (await shelf.entries()).map((one) => one.value);")
    assert sorted(values) == sorted([*range(60)] * 2)


def test_undo_takes_back_the_last_tap_and_the_next_undo_the_one_before(page):
    seen = with_shelf(
        page,
        """
        const tank = await shelf.saveTank({ name: "Foyer", ph: 7 });
        const entry = await shelf.log({ tank: tank.id, kind: "feed", value: 1 });
        await shelf.edit(entry.id, { value: 2 });
        await shelf.remove(entry.id);
        const states = [];
        for (let turn = 0; turn < 5; turn += 1) {
          const undone = await shelf.undo();
          const values = (await shelf.entries()).map((one) => one.value);
          states.push([undone?.op ?? null, values, (await shelf.tanks()).length]);
        }
        return states;""",
    )
    assert seen == [
        ["drop", [2], 1],
        ["entry", [1], 1],
        ["entry", [], 1],
        ["tank", [], 0],
        [None, [], 0],
    ]
    assert with_shelf(reopened(page), "return shelf.tanks();") == []


@long_run()
def test_after_each_undo_the_page_shows_what_a_fresh_one_reads(page):
    """Undo derives anew only what it touched; a page that is loaded derives all."""
    shown = "const { saved, ...file } = shelf.toFile(); return file;"
    with_shelf(
        page,
        """const foyer = await shelf.saveTank({ name: "Foyer", ph: 7 });
        const jar = await shelf.saveTank({ name: "Jar" });
        const first = await shelf.log({ tank: foyer.id, kind: "feed", value: 1 });
        await shelf.edit(first.id, { value: 2 });
        const tap = { action: "both" };
        await shelf.log({ tank: foyer.id, kind: "plant", what: "anubias-barteri", value: -5 }, tap);
        await shelf.log({ tank: jar.id, kind: "plant", what: "anubias-barteri", value: 5 }, tap);
        await shelf.edit(first.id, { value: 3 });
        await shelf.saveTank({ ...foyer, ph: 6.5 });
        await shelf.remove(first.id);
        await shelf.orderTanks([jar.id, foyer.id]);
        await shelf.removeTank(jar.id);
        await shelf.undo("both");""",
    )
    for _ in range(11):
        before = with_shelf(page, shown)
        page.reload()
        assert with_shelf(page, shown) == before
        with_shelf(page, "await shelf.undo();")
    assert with_shelf(page, "return shelf.tanks();") == []


def test_a_tank_taken_off_the_shelf_comes_back_with_its_log(page):
    seen = with_shelf(
        page,
        """
        const foyer = await shelf.saveTank({ name: "Foyer" });
        const jar = await shelf.saveTank({ name: "Jar" });
        await shelf.log({ tank: foyer.id, kind: "feed", value: 1 });
        await shelf.orderTanks([jar.id, foyer.id]);
        await shelf.choose(foyer.id);
        const names = async () => (await shelf.tanks()).map((tank) => tank.name);
        const before = await names();
        await shelf.removeTank(foyer.id);
        const without = [await names(), await shelf.entries(), await shelf.chosen()];
        const refused = await attempt(() => shelf.log({ tank: foyer.id, kind: "feed", value: 2 }));
        await shelf.undo();
        const after = [await names(), (await shelf.entries()).length, await shelf.chosen()];
        return { before, without, refused, after, foyer: foyer.id };""",
    )
    assert seen["before"] == ["Jar", "Foyer"]
    assert seen["without"] == [["Jar"], [], None]
    assert seen["refused"]["reason"] == "broken"
    assert seen["refused"]["unsaved"]["value"] == 2
    assert seen["after"] == [["Jar", "Foyer"], 1, seen["foyer"]]


def test_settings_standings_and_calculations_outlive_the_page(page):
    with_shelf(
        page,
        """
        const tank = await shelf.saveTank({ name: "Foyer" });
        await shelf.saveSetting("place", "gb");
        await shelf.keepStanding(tank.id, { verdict: "calm" });
        await shelf.choose(tank.id);
        const calculation = { tank: "Foyer", calculator: "units", title: "Units", address: "", lines: ["1"] };
        await shelf.keep(calculation);
        const second = await shelf.keep({ ...calculation, title: "Second" });
        await shelf.unkeep(second.id);""",
    )
    seen = with_shelf(
        reopened(page),
        """const [tank] = await shelf.tanks();
        const titles = (await shelf.kept()).map((one) => one.title);
        const own = [await shelf.standing(tank.id), (await shelf.chosen()) === tank.id];
        return [await shelf.setting("place"), await shelf.setting("kits"), ...own, titles];""",
    )
    assert seen == ["gb", None, {"verdict": "calm"}, True, ["Units"]]


KIT = {"unit": "no2", "label": "nitrite, NO₂", "factor": 0.3045, "zero": 0, "step": 0.1}


def test_of_settings_that_came_in_a_file_only_what_can_be_read_is_read(page):
    """A kit without its factor would turn each reading into nothing; a round's ticks are a list."""
    settings = {
        "kits": {"nitrite_mg_n_l": KIT, "ph": {**KIT, "factor": "2"}, "gh_dh": {"step": 0}, "x": 5},
        "handful_g": "much",
        "round ticks": {"day": "2026-11-30", "done": 5},
        "round": {"day": "2026-11-30", "today": [], "order": []},
        "spoon_g": -1,
        "whom to call": ["me"],
        "of a later version": 7,
    }
    seen = with_shelf(
        page,
        """const file = { ...(await shelf.toFile()), settings: given };
        await shelf.merge(file);
        return Promise.all([...Object.keys(given)].map((name) => shelf.setting(name)));""",
        settings,
    )
    assert seen == [{"nitrite_mg_n_l": KIT}, None, None, None, None, None, 7]


@pytest.mark.parametrize(
    ("call", "words"),
    [
        ("shelf.saveTank({ name: ' ', ph: 7 })", "name"),
        ("shelf.saveTank({ name: 'x'.repeat(81) })", "80"),
        ("shelf.log({ tank: tank.id, kind: 'feed', value: NaN })", "value"),
        ("shelf.log({ tank: tank.id, kind: 'feed', value: '5' })", "value"),
        ("shelf.log({ tank: tank.id, kind: 'feed', at: 'yesterday' })", "at"),
        ("shelf.log({ tank: tank.id, value: 1 })", "kind"),
        ("shelf.log({ kind: 'feed', value: 1 })", "tank"),
        ("shelf.edit('nothing', { value: 1 })", "entry"),
        ("shelf.saveSetting('kits', { step: Infinity })", "step"),
        ("shelf.keep({ tank: 'Foyer' })", "calculation"),
    ],
)
def test_what_cannot_be_kept_is_refused_and_given_back(page, call, words):
    seen = with_shelf(
        page,
        f"""const tank = await shelf.saveTank({{ name: "Foyer" }});
        const before = JSON.stringify({{ ...shelf.toFile(), saved: null }});
        const refused = await attempt(() => {call});
        return {{ refused, isSame: before === JSON.stringify({{ ...shelf.toFile(), saved: null }}) }};""",
    )
    assert seen["refused"]["reason"] == "broken"
    assert words in seen["refused"]["message"]
    assert seen["refused"]["unsaved"] is not None
    assert seen["isSame"]


@pytest.mark.parametrize(
    "zone", share_of(["America/St_Johns", "Australia/Sydney", "Europe/London"], 3)
)
def test_the_time_of_an_entry_is_the_keepers_own(chromium, address, zone):
    """Against Python's own table of time zones."""
    context = chromium.new_context(base_url=address, timezone_id=zone)
    at = with_shelf(
        open_page(context),
        """const tank = await shelf.saveTank({ name: "Jar" });
        return (await shelf.log({ tank: tank.id, kind: "feed", value: 1 })).at;""",
    )
    context.close()
    written = datetime.fromisoformat(at)
    assert abs(written.timestamp() - datetime.now(tz=ZoneInfo(zone)).timestamp()) < 600
    assert written.utcoffset() == written.astimezone(ZoneInfo(zone)).utcoffset()


def test_a_host_without_https_gets_ids_too(chromium, address):
    context = new_context(chromium, address)
    context.add_init_script("delete Crypto.prototype.randomUUID")
    ids = with_shelf(
        open_page(context),
        """const [one, other] = [await shelf.saveTank({ name: "A" }), await shelf.saveTank({ name: "B" })];
        return [one.id, other.id, typeof crypto.randomUUID];""",
    )
    context.close()
    assert ids[2] == "undefined"
    assert len({*ids}) == 3
    assert all(len(one) == 32 for one in ids[:2])
