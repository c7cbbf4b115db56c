"""A tank fills in forms, the command line and paper: nothing made up, the same at every door."""

import json
import re
from datetime import date, timedelta

import pytest

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.run import run
from calculators.science.shelf.shelf_tank import TANK_FIELDS, ShelfTank
from calculators.science.shelf.tank_verdict import FIRST_HOUR
from calculators.shelf.fills import FILLS, durable
from calculators.shelf.portions import portion_of, spoons
from calculators.shelf.shelf_file import FORMAT
from scripts.pages.shelf.shelf_downloads import DEMO_DAY, demo_json
from scripts.records.load import read_records
from scripts.setup import paths
from tests.command_line import command

TODAY = DEMO_DAY.isoformat()


@pytest.fixture(scope="module")
def demo():
    return json.loads(demo_json(read_records(paths.SPECIES).library))


def ask(message, **more):
    """The reply to one message of the shelf."""
    return json.loads(answer(json.dumps({"message": message, **more})))


def fill(demo, calculator, number=0, today=TODAY):
    """A form filled in from a demo tank."""
    tank = demo["tanks"][number]
    entries = [entry for entry in demo["entries"] if entry["tank"] == tank["id"]]
    return ask("fill", calculator=calculator, tank=tank, entries=entries, today=today)


# --- forms


@pytest.mark.parametrize("calculator", FILLS)
def test_every_fill_names_inputs_and_fields_that_are_there(calculator):
    inputs = {}
    for field in load_all()[calculator].inputs:
        inputs[field.key] = field
        inputs |= {f"{field.key}.{part.key}": part for part in field.row}
    tank = {one.key for one in TANK_FIELDS}
    for key, sources in FILLS[calculator].items():
        assert key in inputs
        for source in sources:
            room, _, path = source.partition(".")
            assert room in ("tank", "reading", "days_since") or source.startswith("=")
            if room == "tank":
                assert path.split(".")[0] in tank
            if source.startswith("="):
                assert source[1:] in inputs[key].choices


@pytest.mark.parametrize("calculator", FILLS)
@pytest.mark.parametrize("number", range(4))
def test_what_is_filled_in_can_be_read_by_the_form(demo, calculator, number):
    reply = fill(demo, calculator, number)
    assert reply["fields"].keys() == reply["from"].keys()
    asked = {"calculator": calculator, "given": reply["fields"], "own": True}
    problems = json.loads(answer(json.dumps(asked))).get("problems", {})
    wrong = {key: why for key, why in problems.items() if key.partition("[")[0] in reply["fields"]}
    lengths = {key for key in wrong if key.endswith("mean_length_mm")}  # the keeper's own to give
    assert not wrong.keys() - lengths


def test_a_form_says_from_which_tank_and_of_when(demo):
    words = fill(demo, "free-ammonia")["from"]
    assert words["ammonia_mg_l"] == "Reading Room, read 2 days ago"
    assert fill(demo, "nitrogen-balance")["from"]["volume_l"] == "from Reading Room"


HOUSE = {"id": "a", "name": "A", "ph": 8.2, "temperature_c": 26, "tap": {"nitrate_mg_l": 12}}


@pytest.mark.parametrize(
    ("readings", "what", "now", "tap"),
    [
        ({"nitrate_mg_l": 80}, "nitrate", 80, 12),
        # Above British Columbia's 0.06 mg N/L (bc-nitrite): nitrite before any nitrate that harms slowly.
        ({"nitrate_mg_l": 80, "nitrite_mg_n_l": 0.5}, "nitrite", 0.5, None),
        ({"nitrite_mg_n_l": 0.01, "nitrate_mg_l": 20}, "nitrate", 20, 12),
        # At pH 8.2 and 26 °C about a twelfth of it is toxic: 0.09 mg N/L, above what kills.
        ({"nitrite_mg_n_l": 0.1, "ammonia_mg_n_l": 1}, "ammonia", 1, None),
        ({"copper_ug_l": 30, "nitrate_mg_l": 60}, "copper", 0.03, None),
        ({"phosphate_mg_l": 5}, None, None, None),
    ],
)
def test_a_water_change_is_worked_out_for_the_reading_that_harms_most(readings, what, now, tap):
    entries = [
        {
            "id": key,
            "tank": "a",
            "at": f"{TODAY}T08:00",
            "kind": "reading",
            "what": key,
            "value": value,
        }
        for key, value in readings.items()
    ]
    reply = ask("fill", calculator="water-change", tank=HOUSE, entries=entries, today=TODAY)
    fields = reply["fields"]
    assert [fields.get(key) for key in ("what", "now_mg_l", "tap_mg_l")] == [what, now, tap]
    assert not what or reply["from"]["now_mg_l"] == "A, read today"


def changed_for(tank, *read):
    """What a water change is filled with, and its origin, for readings as (what, value, day)."""
    entries = [
        {
            "id": f"{what}-{day}",
            "tank": "a",
            "at": f"{day}T08:00",
            "kind": "reading",
            "what": what,
            "value": value,
        }
        for what, value, day in read
    ]
    reply = ask("fill", calculator="water-change", tank=tank, entries=entries, today=TODAY)
    fields = reply["fields"]
    return fields.get("what"), fields.get("now_mg_l"), reply["from"].get("what")


def test_a_water_change_judges_ammonia_by_the_ph_that_was_read():
    nitrate, ammonia = ("nitrate_mg_l", 60, TODAY), ("ammonia_mg_n_l", 0.3, TODAY)
    tank = {"id": "a", "name": "A", "temperature_c": 24}
    acid = changed_for(tank, nitrate, ammonia, ("ph", 6.5, TODAY))
    assert acid[:2] == ("nitrate", 60)
    # The tank's own figure, of a day that nobody knows, is of acid water; at the pH read it harms.
    alkaline = changed_for({**tank, "ph": 6.5}, nitrate, ammonia, ("ph", 8.5, TODAY))
    assert alkaline[:2] == ("ammonia", 0.3)


@pytest.mark.parametrize("what", ["ammonia", "nitrite"])
def test_a_water_change_does_not_pass_over_an_old_reading_that_kills(what):
    old = (DEMO_DAY - timedelta(days=8)).isoformat()
    nitrate = ("nitrate_mg_l", 60, TODAY)
    name, now, origin = changed_for(HOUSE, (f"{what}_mg_n_l", 3, old), nitrate)
    assert (name, now) == (what, None)
    assert origin == "A, read 8 days ago, the one that harms most: read it again"


def test_a_water_change_puts_ammonia_that_harms_before_nitrite_that_kills():
    tank = {"id": "a", "name": "A", "temperature_c": 24, "ph": 6, "kh_dh": 0}
    filled = changed_for(tank, ("ammonia_mg_n_l", 3, TODAY), ("nitrite_mg_n_l", 0.7, TODAY))
    assert filled == ("ammonia", 3, "A, read today, which a change can turn toxic")


def test_the_nitrate_of_the_tap_is_never_saved_from_a_change_of_something_else():
    saved = durable()["water-change"]
    assert "tap_mg_l" not in saved
    assert "now_mg_l" not in saved
    assert "tank.tap.nitrate_mg_l" not in saved.values()
    assert saved["volume_l"] == "tank.net_l"


def test_no_reading_that_is_too_old_goes_into_a_form(demo):
    later = (DEMO_DAY + timedelta(days=40)).isoformat()
    assert "ammonia_mg_l" not in fill(demo, "free-ammonia", today=later)["fields"]
    assert "reported_as" not in fill(demo, "free-ammonia", today=later)["fields"]
    assert fill(demo, "free-ammonia", today=later)["fields"]["ph"] == 7.2  # the tank's own figure


def test_blank_stays_blank():
    reply = ask("fill", calculator="nitrogen-balance", tank={"id": "a", "name": "A"}, entries=[])
    assert reply == {"fields": {}, "from": {}}


def test_a_tank_that_cannot_be_read_is_said_and_an_unknown_message_too():
    reply = ask("fill", calculator="light", tank={"id": "a", "name": "A", "ph": 99}, entries=[])
    assert reply["complaints"][0]["field"] == "tank.ph"
    with pytest.raises(LookupError, match="known are"):
        ask("sing")


def test_the_demo_tanks_can_be_moved_to_today(demo):
    moved = ask("redate", file=demo, today="2027-03-01")["file"]
    assert ask("check-shelf-file", text=json.dumps(moved)) == {"complaints": []}
    first, then = demo["entries"][0]["at"], moved["entries"][0]["at"]
    by = date(2027, 3, 1) - DEMO_DAY
    assert date.fromisoformat(then[:10]) - date.fromisoformat(first[:10]) == by
    stand = {"tank": moved["tanks"][0], "entries": moved["entries"], "today": "2027-03-01"}
    assert run("standing", stand)["outputs"]["verdict"] == "calm"


# --- the command line


def test_the_command_line_gives_the_pages_answer_for_the_same_file(demo, tmp_path):
    file = tmp_path / "tanks.json"
    file.write_text(json.dumps(demo), encoding="utf-8")
    done = command("standing", "--input", str(file), "tank=foyer", f"today={TODAY}", "--json")
    entries = [entry for entry in demo["entries"] if entry["tank"] == "foyer"]
    given = {"tank": demo["tanks"][1], "entries": entries, "today": TODAY}
    page = json.loads(answer(json.dumps({"calculator": "standing", "given": given, "own": True})))
    assert json.loads(done.stdout)["outputs"] == page["answer"]["outputs"]
    whole = command("round", "--input", str(file), f"today={TODAY}", "--json")
    assert len(json.loads(whole.stdout)["outputs"]["order"]) == 4


def of_tank(tmp_path, calculator, *words, entries=(), **fields):
    """What the command line says with a file of one tank."""
    tank = {"id": "jar", "name": "Jar", "net_l": 60, **fields}
    saved = {"format": FORMAT, "version": 1, "saved": f"{TODAY}T08:00:00Z"}
    file = tmp_path / "tanks.json"
    file.write_text(
        json.dumps({**saved, "tanks": [tank], "entries": list(entries)}), encoding="utf-8"
    )
    return command(calculator, "--input", str(file), *words)


def test_beside_a_tank_no_figure_of_the_example_stands_in(tmp_path):
    done = of_tank(tmp_path, "free-ammonia", "--json", temperature_c=24)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.splitlines() == [
        "ammonia_mg_l: the tank's file does not say it (Ammonia reading); add ammonia_mg_l=…, allowed is 0 "
        "to 50 mg/L",
        "ph: the tank's file does not say it (pH); add ph=…, allowed is 4 to 11",
    ]
    answered = of_tank(
        tmp_path, "free-ammonia", "ph=7", "ammonia_mg_l=1", "--json", temperature_c=24
    )
    found = json.loads(answered.stdout)
    assert "from_example" not in found
    assert found["inputs"]["temperature_c"] == 24
    assert not any("worked example" in note["text"] for note in found["notes"])


def test_what_a_tank_leaves_open_is_computed_without(tmp_path):
    found = json.loads(of_tank(tmp_path, "oxygen", "--json", temperature_c=24).stdout)
    assert found["inputs"]["oxygen_mg_l"] is None
    assert found["outputs"]["saturation_percent"] is None
    bad = of_tank(tmp_path, "oxygen", "oxygen_mg_l=900")
    assert bad.stderr.splitlines()[0].startswith("oxygen_mg_l: 900 is out of range")


def test_the_command_line_asks_which_tank_and_refuses_a_bad_file(demo, tmp_path):
    file = tmp_path / "tanks.json"
    file.write_text(json.dumps(demo), encoding="utf-8")
    done = command("standing", "--input", str(file))
    assert done.returncode == 2
    assert "allowed are reading-room, foyer" in done.stderr
    file.write_text(json.dumps({**demo, "version": 9}), encoding="utf-8")
    done = command("round", "--input", str(file))
    assert done.returncode == 2
    assert done.stderr.startswith("version: 9 is newer")


# --- paper


def paper(demo, **more):
    """A sheet for the first demo tank."""
    tank = demo["tanks"][0]
    asked = {"kind": "holiday", "from": "2026-12-20", "to": "2027-01-02", "spoon_g": 0.4, **more}
    return ask("paper", tank=tank, entries=[], today=TODAY, **asked)


def test_the_holiday_sheet_feeds_less_and_says_what_never_to_do(demo):
    sheet = paper(demo, call="Ada, 555 0100")
    text = json.dumps(sheet["parts"], ensure_ascii=False)
    for words in ("less rather than more", "Never pour in a week's food", "hot tap", "Ada, 555 0100",
                  "vet", *FIRST_HOUR):  # fmt: skip
        assert words in text
    days = next(part["lines"] for part in sheet["parts"] if part["heading"] == "Days")
    assert len(days) == 7  # every second day of 14
    portion = next(part["lines"][0] for part in sheet["parts"] if part["heading"] == "One portion")
    assert portion.startswith("1¼ level spoons (about 0.57 g)")
    # 7 portions of 0.5 g of the 8 g that two weeks usually bring
    assert 7 * 1.25 * 0.4 < 8 / 2
    assert sheet["html"].index("less rather than more") < sheet["html"].index(
        "If something is wrong"
    )


def test_a_holiday_from_a_tank_that_kills_today_begins_with_that():
    ammonia = {
        "id": "1",
        "tank": "a",
        "at": f"{TODAY}T08:00",
        "kind": "reading",
        "what": "ammonia_mg_n_l",
    }
    days = {"from": TODAY, "to": TODAY}
    sheet = ask(
        "paper", kind="holiday", tank=HOUSE, entries=[{**ammonia, "value": 2}], today=TODAY, **days
    )
    last = next(part for part in sheet["parts"] if part["heading"].startswith("Before leaving"))
    assert last["lines"][0].startswith("First of all: Ammonia of 2 mg N/L, read today, can kill")
    calm = ask(
        "paper", kind="holiday", tank=HOUSE, entries=[{**ammonia, "value": 0}], today=TODAY, **days
    )
    assert "First of all" not in json.dumps(calm["parts"])


@pytest.mark.parametrize(
    ("number", "words"),
    [(0.1, "less than ¼ level spoon, a pinch"), (0.25, "¼ level spoon"), (0.99, "¾ level spoon"),
     (1.0, "1 level spoon"), (1.6, "1½ level spoons"), (2.0, "2 level spoons")],
)  # fmt: skip
def test_spoons_are_rounded_down(number, words):
    assert spoons(number) == words


def test_no_portion_is_made_up():
    start, end = date(2026, 12, 20), date(2026, 12, 30)
    assert "______" in portion_of(ShelfTank(), start, end, 0.4).words
    assert portion_of(ShelfTank(feed_g_week=0), start, end, 0.4).days == []
    assert portion_of(ShelfTank(animals=[], feed_g_week=3), start, end, 0.4).days == []
    assert "weigh" in portion_of(ShelfTank(feed_g_week=3), start, end, None).words


def test_a_card_has_animals_plants_feed_limits_and_is_escaped(demo):
    tank = {"id": "a", "name": "<img src=x onerror=alert(1)>", "feed_g_week": 3}
    sheet = ask("paper", kind="card", tank=tank, entries=[], today=TODAY)
    assert "<img" not in sheet["html"]
    headings = [part["heading"] for part in paper(demo, kind="card")["parts"]]
    assert headings == ["In danger", "Animals", "Plants", "Feed", "Change of water", "Act at"]
    assert re.search(r"nitrite: 0\.06\smg\sN/L or more", sheet["html"])


@pytest.mark.parametrize(
    ("more", "field"),
    [({"to": "2026-12-01"}, "to"), ({"to": "2027-12-01"}, "to"), ({"from": "x"}, "from"),
     ({"spoon_g": 0}, "spoon_g"), ({"spoon_g": "1"}, "spoon_g"), ({"kind": "poster"}, "kind"),
     ({"call": "x" * 500}, "call")],
)  # fmt: skip
def test_a_sheet_that_cannot_be_made_says_which_field_and_what_is_allowed(demo, more, field):
    [complaint] = paper(demo, **more)["complaints"]
    assert complaint["field"] == field
    assert "allowed is" in complaint["why"] or "allowed are" in complaint["why"]


def test_the_balance_takes_what_floats_and_what_was_cut_from_the_log(demo):
    tank = {"id": "t", "name": "T", "length_cm": 50, "width_cm": 40}
    logged = [("reading", "cover_percent", 30, "2026-11-20"), ("trim", None, 60, "2026-11-01"),
              ("trim", None, 24, "2026-11-20"), ("trim", None, 500, "2026-01-20")]  # fmt: skip
    entries = [
        {"id": str(at), "tank": "t", "at": f"{day}T12:00:00Z", "kind": kind, "what": what, "value": value}
        for at, (kind, what, value, day) in enumerate(logged)
    ]  # fmt: skip

    def fields(**more):
        return ask("fill", calculator="nitrogen-balance", today=TODAY, **more)["fields"]

    found = fields(tank=tank, entries=entries)
    assert found["floater_area_cm2"] == 600  # 30 % of 50 x 40 cm
    assert found["trimmings_g_week"] == 14  # 84 g in six weeks
    assert "trimmings_g_week" not in fields(tank=tank, entries=[])
    assert "floater_area_cm2" not in fields(tank=tank, entries=[])
    rooted = {**tank, "plants": [{"plant": "anubias-barteri"}]}
    assert fields(tank=rooted, entries=[])["floater_area_cm2"] == 0
