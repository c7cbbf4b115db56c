"""Frames are asked of the site builder once, for the pages that lack one; and anew where anything changed."""

import pytest

from scripts.setup import kept
from scripts.site import frames as room
from scripts.site.addresses import address_of
from scripts.site.frames import BEGIN, END, Frames, files_in
from scripts.site.ready_pages import read_one

NAVIGATION = ("index.md", "plants/index.md")
TEXTS = {"index.md": "home", "plants/index.md": "plants", "one.md": "one", "two.md": "two"}


@pytest.fixture
def builder(tmp_path, monkeypatch):
    """A builder that notes which pages it is given, and frames each in its own text."""
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")
    theme = tmp_path / "docs" / "theme"
    theme.mkdir(parents=True)
    (theme / "main.html").write_text("template")
    for name in ("HEADINGS", "FRAMED", "BUILDERS_SETTINGS"):
        monkeypatch.setattr(room, name, tmp_path / name.lower())
    monkeypatch.setattr(room, "DOCS", tmp_path / "docs")
    monkeypatch.setattr(room, "pages_of_navigation", lambda: list(NAVIGATION))
    given = []

    def run(_settings, target):
        pages = {
            path.relative_to(room.HEADINGS).as_posix(): path.read_text()
            for path in room.HEADINGS.rglob("*.md")
        }
        given.append(set(pages))
        for name, text in pages.items():
            page = target / address_of(name) / "index.html"
            page.parent.mkdir(parents=True, exist_ok=True)
            page.write_text(f"<{text}>{BEGIN}headings{END}</{text}>")
        (target / "404.html").write_text("not found")

    return run, given


def test_each_page_gets_its_own_frame_and_the_rest_comes_along(builder, tmp_path):
    run, _ = builder
    frames = Frames(TEXTS)
    frames.make(run)
    assert frames.filled("one.md", "CONTENT") == "<one>CONTENT</one>"
    assert frames.filled("two.md", "") == "<two></two>"
    frames.write_beside(tmp_path / "site")
    assert [path.name for path in (tmp_path / "site").iterdir()] == ["404.html"]


def test_a_description_is_put_into_the_frame_that_is_there(builder):
    run, given = builder
    for words, written in (
        ("A plant.", "A plant."),
        ('\\"So\\" & more', "&#34;So&#34; &amp; more"),
    ):
        frames = Frames(TEXTS | {"one.md": f'title: One\ndescription: "{words}"\n# One'})
        frames.make(run)
        text = f"title: One\ndescription: {written}\n# One"
        assert frames.filled("one.md", room.MARK) == f"<{text}>{room.MARK}</{text}>"
    assert len(given) == 1


def test_the_builder_is_not_started_where_every_frame_is_there(builder):
    run, given = builder
    Frames(TEXTS).make(run)
    Frames(TEXTS).make(run)
    Frames({name: text for name, text in TEXTS.items() if name != "two.md"}).make(run)
    assert given == [set(TEXTS)]


def test_a_page_whose_headings_changed_is_framed_anew_beside_those_of_the_navigation(builder):
    run, given = builder
    Frames(TEXTS).make(run)
    frames = Frames({**TEXTS, "one.md": "another", "three.md": "three"})
    frames.make(run)
    assert given[1:] == [{*NAVIGATION, "one.md", "three.md"}]
    assert frames.filled("one.md", "") == "<another></another>"
    assert frames.filled("two.md", "") == "<two></two>"


def test_a_template_the_settings_the_packages_or_the_navigation_change_every_frame(
    builder, tmp_path, monkeypatch
):
    run, given = builder
    texts = dict(TEXTS)
    Frames(texts).make(run)
    template = tmp_path / "docs" / "theme" / "main.html"
    template.write_text("changed")
    Frames(texts).make(run)
    template.rename(template.with_name("other.html"))
    Frames(texts).make(run)
    monkeypatch.setattr(room, "settings_text", lambda: "changed")
    Frames(texts).make(run)
    monkeypatch.setattr(room, "surroundings", lambda: "another package, another day")
    Frames(texts).make(run)
    texts["index.md"] = "changed"
    Frames(texts).make(run)
    monkeypatch.setattr(kept, "code", lambda: "changed")
    Frames(texts).make(run)
    assert given == [set(TEXTS)] * 7


def test_a_builder_that_refuses_leaves_nothing_behind(builder):
    run, given = builder

    def refuse(_settings, _target):
        raise ValueError("refused")

    with pytest.raises(ValueError, match="refused"):
        Frames(TEXTS).make(refuse)
    Frames(TEXTS).make(run)
    assert given == [set(TEXTS)]


@pytest.mark.parametrize("made", [f"<main>{BEGIN}<h1>T</h1>", f"<h1>T</h1>{END}", "<h1>T</h1>"])
def test_a_page_without_the_place_for_its_content_stops_the_build(made):
    with pytest.raises(ValueError, match=r"one\.md"):
        room.without_inside("one.md", made)


def test_the_builder_gets_front_matter_and_headings_between_the_marks(builder, tmp_path):
    (tmp_path / "one.md").write_text("---\ntitle: T\n---\n# T { #top }\n\nText.\n")
    headings = read_one(tmp_path, "one.md").headings
    assert headings.startswith(f"---\ntitle: T\n---\n{BEGIN}\n")
    assert headings.endswith(f"{END}\n")
    assert "Text." not in headings


def test_the_pages_of_a_navigation_are_found_in_sections_too():
    given = ["index.md", {"Plants": "plants/index.md"}, {"More": ["a.md", {"B": "b.md"}]}]
    assert list(files_in(given)) == ["index.md", "plants/index.md", "a.md", "b.md"]
