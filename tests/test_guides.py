"""The guides: their figures are the calculators', their sources exist, and they are found."""

import json
import re

import pytest

from scripts.pages.guides import figure, guide_page
from scripts.records.checks.guide_marks import mark_faults
from scripts.records.guide import (
    MARK,
    Guide,
    GuideDraft,
    ProseMark,
    call,
    marks,
    read_guide,
    read_guides,
)
from scripts.records.load import read_records
from scripts.records.with_calculators.guide_calls import calls
from scripts.records.with_calculators.trial import Trial
from scripts.setup.paths import ROOT

RECORDS = read_records()
SLUGS = sorted(path.stem for path in (ROOT / "docs" / "guides").glob("*.md"))

# Figures that stand in the guides, from outside the project. The key is the mark as written.
PUBLISHED = {
    # EN 25814, table of oxygen at saturation, fresh water, 1013 hPa (read in an instrument's manual).
    "oxygen saturation_mg_l temperature_c=20": "9.09 mg/L",
    "oxygen saturation_mg_l temperature_c=25": "8.26 mg/L",
    "oxygen saturation_mg_l temperature_c=30": "7.56 mg/L",
    # Share of ammonia at 25 °C and pH 8: 0.0539 by Clegg and Whitfield 1995, as the R package wq
    # quotes them; within 1 % of it.
    "free-ammonia unionised_percent ph=8 temperature_c=25": "5.38 %",
    # Closed form: 1 - 1/4.
    "water-change single_change_percent what=ammonia now_mg_l=4 tap_mg_l=0 target_mg_l=1": "75 %",
    # Closed form: 100 g x 0.08 x 0.025.
    "trimmings n_mg wet_g=100 dry_matter_percent=8 tissue_n_percent=2.5": "200 mg",
    # Closed form: 7 log2(80/33) is 8.94 days; cover judged by eye bears whole days.
    "floaters days_to_high cover_percent=33 high_percent=80 low_percent=30 doubling_days=7": "9 days",
    # Closed forms: 3 g x 0.45 x 0.16 / 7 days; and 0.092 for 0.16 (Timmons and Ebeling, from memory).
    "nitrogen-balance feed_n_mg_day feed_g_week=3 protein_percent=45": "30.9 mg N/day",
    "nitrogen-balance ammonia_n_mg_day feed_g_week=3 protein_percent=45": "17.7 mg N/day",
}


def guide(body="Text.", **changes):
    front = {"title": "T", "description": "D", "order": 1, "first": ["Look."]}
    return Guide(**(front | changes), body=body, body_line=10)


def found(**guides):
    """What the check says of these guides."""
    drafts = {
        slug: GuideDraft(one.first, one.problems, one.body, one.body_line)
        for slug, one in guides.items()
    }
    reading = RECORDS._replace(guides=drafts)
    return [*mark_faults(reading), *calls(reading, Trial(reading, settled=True))]


def test_there_are_eight_guides_in_an_order_of_their_own(library):
    assert set(library.guides) == {
        "setting-up", "feeding", "moving-plants", "holidays", "heat-waves", "power-cuts", "cuttings",
        "law-elsewhere",
    }  # fmt: skip
    assert sorted(one.order for one in library.guides.values()) == list(range(1, 9))


@pytest.mark.parametrize("words", PUBLISHED)
def test_a_figure_agrees_with_what_is_published(words, library):
    assert any(words in one.body for one in library.guides.values()), "no guide says this any more"
    shown = figure(call(ProseMark("figure", words, 1)))
    assert shown.replace("\u00a0", " ") == PUBLISHED[words]


@pytest.mark.parametrize("slug", SLUGS)
def test_no_mark_is_left_in_a_page_and_every_citation_has_its_source(slug, library):
    page = guide_page(slug, library)
    assert not MARK.search(page)
    cited = set(re.findall(r'href="#source-([a-z0-9-]+)"', page))
    listed = set(re.findall(r'id="source-([a-z0-9-]+)"', page))
    assert cited == listed
    keys = {key for mark in marks(library.guides[slug]) for key in mark.source_keys()}
    assert listed == keys - {"common-practice"}


@pytest.mark.parametrize("slug", SLUGS)
def test_a_guide_starts_with_its_checklist(slug, site, library):
    page = (site / "guides" / slug / "index.html").read_text(encoding="utf-8")
    head = page[page.index("<h1") : page.index("<h2")]
    assert head.count("<li>") == len(library.guides[slug].first)
    assert 3 <= head.count("<li>") <= 5


def test_a_slip_is_told_at_its_line():
    lines = ["One.", "", "{reported: no-such-source}", "{figure: oxygen no_such}"]
    body = "\n".join([*lines, "{well-documented: common-practice}", ""])
    said = {(one.line, one.message) for one in found(slip=guide(body))}
    assert any(line == 12 and "no-such-source is no key" in text for line, text in said)
    assert any(line == 13 and "gives no figure no_such" in text for line, text in said)
    assert any(line == 14 and "needs a named source" in text for line, text in said)


@pytest.mark.parametrize(
    ("body", "part"),
    [
        ("{open: oxygen temperature_c=300 | Oxygen}", "out of range"),
        ("{open: oxygenn | Oxygen}", "there is no calculator"),
        ("{open: oxygen temperature_c=20}", "needs a calculator, input=value, and words"),
        ("{figure: oxygen}", "needs a calculator"),
        ("{reportd: common-practice}", "nobody knows"),
        ("{reported: }", "names no source"),
    ],
)
def test_each_kind_of_slip_is_told(body, part):
    said = found(slip=guide(body))
    assert len(said) == 1, said
    assert part in said[0].message


def test_a_problem_that_has_no_record_is_told():
    said = found(slip=guide(problems=["no-such-problem"]))
    assert "no-such-problem has no record" in said[0].message


def test_bad_front_matter_is_told_not_thrown(tmp_path):
    path = tmp_path / "bad.md"
    for text in ("no front matter", "---\ntitle: [\n---\nx", "---\ntitle: T\n---\nx"):
        path.write_text(text, encoding="utf-8")
        guide, _, findings = read_guide(path)
        assert guide is None
        assert findings
    guides, _, wrong = read_guides(tmp_path)
    assert not guides
    assert {"description", "order", "first"} <= {one.key for one in wrong}


def test_guides_are_reached_from_home_by_search_and_offline(site, library):
    home = (site / "index.html").read_text(encoding="utf-8")
    assert home.index('class="doors"') < home.rindex('href="guides/"')
    rows = json.loads((site / "assets" / "search.json").read_text(encoding="utf-8"))
    by_address = {row[0]: row for row in rows}
    offline = json.loads((site / "offline-list.json").read_text(encoding="utf-8"))
    index = (site / "guides" / "index.html").read_text(encoding="utf-8")
    for slug, one in library.guides.items():
        assert f'href="{slug}/"' in index
        assert f"guides/{slug}/" in offline
        _, kind, title, names, *_ = by_address[f"guides/{slug}/"]
        assert (kind, title) == ("guide", one.title)
        assert names == one.also


def test_problems_and_guides_link_both_ways(site, library):
    pairs = [(slug, problem) for slug, one in library.guides.items() for problem in one.problems]
    assert len(pairs) > 20
    for slug, problem in pairs:
        page = (site / "problems" / problem / "index.html").read_text(encoding="utf-8")
        assert f'href="../../guides/{slug}/"' in page
        page = (site / "guides" / slug / "index.html").read_text(encoding="utf-8")
        assert f'href="../../problems/{problem}/"' in page


def test_cautions_stand_where_work_can_harm(library):
    text = {slug: f"{one.first} {one.body}".lower() for slug, one in library.guides.items()}
    for slug in ("setting-up", "heat-waves", "power-cuts", "cuttings", "moving-plants"):
        assert "plug" in text[slug], slug
    assert "structural engineer" in text["setting-up"]
    assert "three days within a week" in text["setting-up"], "when animals may come"
    assert "never mix two chemicals" in text["moving-plants"]
    for word in ("mosses", "vallisneria"):
        assert word in text["moving-plants"].split("bleach** (hypochlorite)")[1]
    for slug in ("cuttings", "setting-up", "moving-plants"):
        assert "never" in text[slug]
    assert not re.search(
        r"floor[^.]{0,40}\bsafe\b|\bsafe\b[^.]{0,40}floor", " ".join(text.values())
    )


def test_the_first_animals_of_a_new_tank_are_no_fewer_than_their_records_ask_for():
    animals = list(RECORDS.library.animals.values())
    least = sorted(
        animal.group_of.least
        for animal in animals
        if animal.group == "fish" and animal.group_of.least >= 5  # the kinds that live in groups
    )
    tenth = len(least) // 10
    assert (least[2 * tenth], least[-tenth - 1]) == (6, 10)  # most of them lie between
    snails = min(one.needs.gh_dh.low for one in animals if one.group == "snail")
    text = (ROOT / "docs" / "guides" / "setting-up.md").read_text(encoding="utf-8")
    assert "in sixes to tens" in text
    assert f"small snails where GH is {snails:g} or more" in text
    assert "small fish if" not in text


def said_in(slug):
    """A guide as it is written."""
    return (ROOT / "docs" / "guides" / f"{slug}.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("slug", SLUGS)
def test_who_turns_the_filter_off_is_told_to_turn_it_on_again(slug):
    for found in re.finditer(r"[Ff]ilter (?:and air )?off,", said_in(slug)):
        assert "on again" in said_in(slug)[found.start() : found.start() + 260]


def test_no_lid_is_lifted_without_a_net_where_all_is_hot():
    lifted = [
        line for line in said_in("heat-waves").splitlines() if re.search("lid (?:up|open)", line)
    ]
    assert lifted
    assert all("net" in line for line in lifted)


def test_the_change_before_a_holiday_waits_for_the_test_of_ammonia():
    line = next(one for one in said_in("holidays").splitlines() if "change a quarter" in one)
    assert line.index("test ammonia") < line.index("change a quarter")
