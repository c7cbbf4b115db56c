"""Text from records cannot become Markdown or HTML, inside a block of HTML or outside."""

import markdown
import pytest
from hypothesis import given
from hypothesis import strategies as some
from jinja2 import UndefinedError
from markupsafe import Markup

from scripts.pages.escape import escape
from scripts.pages.template import environment


@pytest.mark.parametrize(
    "text",
    [
        "<script>alert(1)</script>", "a *b* _c_ `d`", "[x](https://example.org)",
         "![x](y)", "# Head", "1. one",
        "- item", "> quote", "a | b", "{: .x }", "&amp; &lt;", "\\*", "a\n\n# b", "+ plus", "&copy;", "'\"",
    ],
)  # fmt: skip
@pytest.mark.parametrize("frame", ["{}", "<p>{}</p>", "word {} word", '<p title="{}">x</p>'])
def test_reads_as_it_was_written(text, frame):
    html = markdown.markdown(frame.format(escape(text)), extensions=["attr_list", "tables"])
    from html.parser import HTMLParser

    class Reader(HTMLParser):
        def __init__(self):
            super().__init__()
            self.text, self.tags, self.title = "", [], None

        def handle_starttag(self, tag, attrs):
            self.tags.append(tag)
            self.title = dict(attrs).get("title", self.title)

        def handle_data(self, data):
            self.text += data

    reader = Reader()
    reader.feed(html)
    assert reader.tags == ["p"]
    said = reader.title if "title" in frame else reader.text
    assert " ".join(text.split()) in said


@given(some.text())
def test_nothing_that_is_special_survives(text):
    escaped = str(escape(text))
    assert not set("<>\"'*_`[]{}|\\\n") & set(escaped)


def test_what_is_marked_as_html_stays():
    assert escape(Markup("<b>x</b>")) == "<b>x</b>"
    assert escape(3) == 3


def test_a_misspelt_field_stops_the_build():
    with pytest.raises(UndefinedError, match="plnt"):
        environment().from_string("{{ plnt.name }}").render(plant=1)


def test_a_templates_comma_keeps_its_space():
    made = environment().from_string("{{ 'a' }}{{ ', ' }}{{ 'b' }}").render()
    assert made == "a, b"
