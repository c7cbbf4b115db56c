"""With ready HTML taken aside, a page is what Markdown alone makes of it."""

import markdown
from hypothesis import given
from hypothesis import strategies as st

from scripts.site.page_content import extension, extensions
from scripts.site.ready_blocks import AFTER_FENCED_CODE, ReadyBlocks
from tests.effort import examples

BLOCK = '<div class="cards">\n<p>As <b>it</b> is.</p>\n\n<div><a href="x.md">x</a></div>\n</div>'
# Whole blocks, and what makes it hard to tell where one begins or ends.
PIECES = (
    BLOCK,
    "<ul>\n<li>one</li>\n</ul>",
    "  <p>two</p>",
    "<table><tr><td>&amp; *this* is no emphasis</td></tr></table>",
    '<svg viewBox="0 0 1 1"><title>t</title><path d="M0 0"/></svg>',
    '<p title="</p> > <p>">hidden</p>',
    "<p title='<p>'>hidden</p>",
    '<div markdown="1">\n*read*\n</div>',
    '<div><p markdown="1">*not read*</p></div>',
    '<p markdown="1">\n*read*\n<div>closes it</div>\n</p>',
    '<details markdown="1"><summary>s</summary>\n\n<p>as it is</p>\n\n*read*\n\n</details>',
    "<details markdown>\n<p>as it is</p>",
    "</details>",
    "<div>",
    "</div>",
    "<p>never closed",
    "<DIV>loud</DIV>",
    "<div>loud once</DIV>",
    "<pre>*as it is*</pre>",
    "<hr>",
    "<p>closed</p> and more",
    "<p>one</p><p>two</p>",
    "<script>let a = '</p>' < 1</script>",
    "<!-- a comment -->",
    "<!-- half",
    "-->",
    "<?php no ?>",
    "`<p>`",
    "`` half a code",
    "```\n<p>code</p>\n```",
    "    <p>indented code</p>",
    "    <p>",
    "- an entry\n- another <b>one</b>",
    "    more of the entry",
    "> <p>said</p>",
    "A line with <small>small</small> *words*.",
    "# A heading <small>x</small> { #place }",
    "{ .class }",
    "| a | b |\n|---|---|\n| <p>c</p> | d |",
    "!!! note\n    <p>noted</p>",
    "&nbsp;",
    "[a link](one.md)",
)
pages = st.lists(
    st.tuples(st.sampled_from(PIECES), st.sampled_from(("\n\n", "\n", "\n \n", "\n\n\n", " "))),
    min_size=1,
    max_size=8,
).map(lambda parts: "".join(f"{piece}{end}" for piece, end in parts))


def reader() -> markdown.Markdown:
    """Markdown as the site has it."""
    return markdown.Markdown(extensions=[extension(*one) for one in extensions().items()])


def with_blocks_aside(text: str) -> str:
    """The page as the site reads it."""
    aside = reader()
    aside.preprocessors.register(ReadyBlocks(aside), "ready_blocks", AFTER_FENCED_CODE)
    return aside.convert(text)


@examples(2000)
@given(pages)
def test_a_page_is_what_markdown_alone_makes_of_it(page):
    assert with_blocks_aside(page) == reader().convert(page)


def test_a_block_is_taken_aside_and_what_markdown_reads_is_not():
    page = f"A *line*.\n\n{BLOCK}\n\n- an entry\n\n<div markdown='1'>\n*read*\n</div>\n"
    blocks = list(ReadyBlocks(reader()).blocks(f"\n{page}\n\n"))
    assert [f"\n{page}"[start:stop] for start, stop in blocks] == [BLOCK]
