"""Ready values in the pages: figures that others published, and what kills is said in words."""

import re
from functools import cache

import pytest

from calculators.core.listing import load_all
from scripts.pages.calculators.ready.ammonia_table import PH, READINGS_MG_L, TEMPERATURES_C
from scripts.pages.calculators.ready.ready_values import READY, ready_values
from scripts.pages.calculators.ready.table import cell

# Ammonia readings at pH and °C that the acute criterion of the United States (EPA 2013, table 5b of
# acute values, mussels present, as Oregon prints it to two figures) puts above its line.
ABOVE_ACUTE = ((4.0, 8.0, 30.0), (2.0, 8.5, 22.0), (1.0, 9.0, 18.0), (0.5, 9.0, 30.0))
# EN 25814, fresh water, 1013 hPa: as in tests/test_guides.py (read in an instrument's manual).
EN_25814 = {"20 °C": 9.09, "30 °C": 7.56}
# Closed forms: days = doubling x log2(60 / cover).
DOUBLINGS = {("5 days", "30 %"): 5, ("10 days", "30 %"): 10, ("14 days", "10 %"): 36}
# Molar masses of the CIAAW 2021 in full: rise x litres / share, for 100 L.
GRAMS_100_L = {"KNO₃": 0.8153, "KH₂PO₄": 0.07165, "K₂SO₄": 1.1142, "MgSO₄·7H₂O": 2.028}


@cache
def made(name):
    """The ready values of a calculator; they take a while, so they are made when they are looked at."""
    return READY[name]()


def words_of(table):
    """Each cell by the heading of its row and column."""
    return {
        (row.heading, column): text
        for row in table.rows
        for column, text in zip(table.columns, row.cells, strict=True)
    }


@pytest.mark.parametrize("name", READY)
def test_each_table_is_whole_and_says_how_to_read_between(name):
    ready = made(name)
    assert load_all()[name]
    assert len(ready.first) >= 2
    assert any("etween two" in text for text in (*ready.first, *ready.after))
    for table in ready.tables:
        assert len(table.rows) >= 6
        assert all(len(row.cells) == len(table.columns) and all(row.cells) for row in table.rows)


@pytest.mark.parametrize(("reading", "ph", "degrees"), ABOVE_ACUTE)
def test_a_cell_above_the_acute_criterion_says_that_it_is_deadly(reading, ph, degrees):
    assert "DEADLY" in ammonia_words(reading, ph, degrees)


def ammonia_words(reading, ph, degrees):
    table = made("free-ammonia").tables[READINGS_MG_L.index(reading)]
    return table.rows[PH.index(ph)].cells[TEMPERATURES_C.index(degrees)]


def test_ammonia_never_reads_milder_with_more_ammonia_warmth_or_ph():
    order = ("low", "watch", "harmful", "DEADLY")
    grade = {
        (reading, ph, degrees): order.index(
            re.split("[:,]", ammonia_words(reading, ph, degrees))[0]
        )
        for reading in READINGS_MG_L
        for ph in PH
        for degrees in TEMPERATURES_C
    }
    assert set(grade.values()) == {0, 1, 2, 3}
    for (reading, ph, degrees), one in grade.items():
        for other, worse in grade.items():
            if other[0] >= reading and other[1] >= ph and other[2] >= degrees:
                assert worse >= one, (reading, ph, degrees, other)


@pytest.mark.parametrize(
    ("reading", "ph", "degrees"),
    [(0.25, 6.5, 18.0), (0.25, 8.0, 30.0), (0.5, 8.5, 18.0), (1.0, 7.0, 30.0), (1.0, 8.0, 26.0),
     (2.0, 6.5, 22.0), (4.0, 7.5, 18.0), (4.0, 9.0, 30.0)],
)  # fmt: skip
def test_no_cell_is_called_milder_than_the_calculator_rates_it(reading, ph, degrees):
    allowed = {"act": ("harmful", "DEADLY"), "watch": ("watch",), "low": ("low",)}
    given = {"ammonia_mg_l": reading, "ph": ph, "temperature_c": degrees}
    made = cell("free-ammonia", reported_as="nitrogen", **given)
    words = ammonia_words(reading, ph, degrees)
    assert words.startswith(allowed[made.value("rating")])
    assert words.endswith(f", {made.shown('unionised_mg_n_l')}")


def test_oxygen_is_that_of_the_standard():
    (table,) = made("oxygen").tables
    for row in table.rows:
        degrees = row.heading.split(" (")[0]
        if degrees in EN_25814:
            assert float(row.cells[0]) == pytest.approx(EN_25814[degrees], abs=0.005)


def test_floaters_follow_the_closed_form():
    words = words_of(made("floaters").tables[0])
    for (doubling, cover), days in DOUBLINGS.items():
        assert words[doubling, f"covered now {cover}"] == str(days)


def test_salts_follow_their_molar_masses():
    row = next(row for row in made("dosing").tables[0].rows if row.heading.startswith("100 L"))
    salts = [column.split(":")[0] for column in made("dosing").tables[0].columns]
    for salt, grams in GRAMS_100_L.items():
        assert float(row.cells[salts.index(salt)]) == pytest.approx(grams, rel=0.005)


def test_a_bottle_that_does_not_dissolve_says_so():
    words = words_of(made("dosing").tables[1])
    strong = {key for key, text in words.items() if text == "does not dissolve"}
    # 111 g/L of potassium sulfate dissolve at 20 °C: a handbook's figure, from memory.
    assert {key[0].split(" L")[0] for key in strong if key[1].startswith("K₂SO₄")} >= {"180", "300"}
    assert not any(key[1].startswith("KNO₃") for key in strong)


def test_planned_changes_come_to_what_they_promise():
    """Six of 28 % leave 0.72 to the sixth: by hand, for every cell; shares are shown to two figures."""
    for row in made("water-change").tables[0].rows:
        now = float(row.heading.split()[0])
        for tap, text in zip((0, 5, 10, 15), row.cells[1:], strict=True):
            if match := re.fullmatch(r"(\d+) × (\d+) %", text):
                left = tap + (now - tap) * (1 - int(match[2]) / 100) ** int(match[1])
                assert left == pytest.approx(20, abs=2.5), (row.heading, tap)
                assert int(match[2]) <= 30


def test_no_table_of_changes_serves_ammonia_and_deadly_readings_say_so():
    ready = made("water-change")
    assert ready.first[0].startswith("Ammonia is not in these tables")
    deadly = [
        row.heading for table in ready.tables for row in table.rows if "DEADLY" in row.cells[0]
    ]
    # Camargo 2005 and British Columbia's line for nitrite, as in the table of readings.
    assert deadly == ["250 mg/L", "0.6 mg/L", "1 mg/L", "2 mg/L"]


@pytest.mark.parametrize("name", load_all())
def test_the_page_holds_its_tables_folded_under_the_answer(name, site):
    page = (site / "calculators" / name / "index.html").read_text(encoding="utf-8")
    made = ready_values(name)
    assert (name in READY) == bool(made)
    assert page.count('id="ready"') == bool(made)
    if made:
        assert made in page
        assert page.index('id="answer"') < page.index('id="ready"') < page.index('id="how"')
        assert '<details class="fold ready" id="ready"><summary>' in page
