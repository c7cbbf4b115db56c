"""Outputs that are lists of rows: cards, a table, a list that opens; and boxes to tap in the form."""

import json
from typing import Annotated, NamedTuple

from calculators.bridge import answer
from calculators.core.declare import read_spec
from calculators.core.paint.answer import rows, show_value
from calculators.core.paint.cards import lists
from calculators.core.quantities import Length, Percent
from calculators.core.quantity import AsRows, Keys, Label, RowsPlace, RowsStyle
from calculators.core.run import run
from scripts.pages.calculators.form import form
from scripts.pages.calculators.form_fields import MOST_TICKS


class Row(NamedTuple):
    key: Annotated[str, Label("Key")]
    name: Annotated[str, Label("Name")]
    fit: Percent
    reach: Length
    why: Annotated[list[str], Label("Why")]


class Answer(NamedTuple):
    good: Annotated[
        list[Row], Label("Good"), AsRows(RowsStyle.CARDS, "name", "", "things/{key}/", "fit", "why")
    ]
    bad: Annotated[list[Row], Label("Bad"), AsRows(RowsStyle.CLOSED, "name", lines="why")]
    sizes: Annotated[
        list[Row] | None, Label("Sizes"), AsRows(RowsStyle.TABLE, "name", columns=("reach",))
    ]


COLOURS = Annotated[list[str] | None, Label("Colours"), Keys(("red", "blue"), ("Red <1>", "Blue"))]
MANY = Keys(
    tuple(f"k{n}" for n in range(MOST_TICKS + 1)), tuple(f"k{n}" for n in range(MOST_TICKS + 1))
)


def show(
    colours: COLOURS = ["blue"],  # noqa: B006
    many: Annotated[list[str] | None, Label("Many"), MANY] = None,
) -> Answer:
    """Show rows."""
    return Answer([], [], None)


SPEC = read_spec(show, "Show", ())
ROW = {"key": "a", "name": "<A & co>", "fit": 41.26, "reach": 2.54, "why": ["x < y", "second"]}


def test_cards_carry_link_bar_and_sentences_with_texts_escaped():
    painted = lists(SPEC, {"good": [ROW], "bad": [], "sizes": None}, "metric", "../../")
    (made,) = painted[RowsPlace.AFTER]
    assert '<a href="../../things/a/"><b>&lt;A &amp; co&gt;</b></a>' in made
    assert (
        '<meter min="0" max="100" value="41.3" aria-label="&lt;A &amp; co&gt;: 41.3 of 100">'
        in made
    )
    assert "<li>x &lt; y</li><li>second</li>" in made


def test_a_closed_list_counts_and_a_table_follows_the_units():
    painted = lists(SPEC, {"good": [], "bad": [ROW, ROW], "sizes": [ROW]}, "us", "../")
    closed, table = painted[RowsPlace.AFTER]
    assert closed.startswith('<details id="list-bad"><summary>Bad: 2</summary>')
    assert '<th scope="col">Length, in</th>' in table
    assert "<td>1</td>" in table


def test_such_outputs_are_no_rows_of_the_plain_table():
    assert rows(SPEC, {"good": [ROW], "bad": [], "sizes": None}) == []


def test_keys_are_boxes_to_tap_where_they_are_few():
    made = form(SPEC)
    assert '<input type="checkbox" value="red"> Red &lt;1&gt;' in made
    assert '<input type="checkbox" value="blue"> Blue' in made  # the example's is not the keeper's
    assert 'role="group" aria-labelledby="label-colours"' in made
    assert '<input id="in-many"' in made


def test_keys_read_as_words():
    field = SPEC.inputs[0]
    assert show_value(field, ["blue", "red"]) == "Blue, Red <1>"
    assert show_value(field, []) == "–"


def test_a_diagnosis_names_its_causes_with_what_speaks_for_and_against_each():
    """On the page of its own: a card a cause with a link, no key of a record and no bare figure."""
    given = {"findings": ["growth-slow-all"], "absent": ["new-leaves-small"]}
    question = json.dumps({"calculator": "diagnose", "given": given})
    html = json.loads(answer(question))["painted"]["html"]
    ranked = run("diagnose", given)["outputs"]["ranked"]
    assert any(one["against"] for one in ranked)
    for one in ranked:
        assert f'problems/{one["problem"]}/"' in html
        assert one["name"] in html
        for text in one["against"]:
            assert f"Against it: {text}"[:30] in html
    assert "diatoms, " not in html
    assert html.index("Do first") < html.index("Look at this next") < html.index("Possible causes")
