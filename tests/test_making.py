"""Who makes a site: another process where records alone have changed, and little of the site with them."""

import os

import pytest

from scripts.setup.cores import FEW
from scripts.setup.new_folder import made_anew
from scripts.setup.say import Missing
from scripts.site import make_site, making
from scripts.site.making import making_begun
from scripts.site.nothing_new import Sources

NOW = Sources("records", "rest", "tables")
HERE = str(os.getpid())


@pytest.fixture
def site(tmp_path, monkeypatch):
    """A place for a site, made by stand-ins that write down what they were told, and by which process."""

    def bring_files(folder, wait):
        source = wait()
        (folder.path / "brought by").write_text(str(os.getpid()))
        return source

    def make_pages(folder, source, pages, wait):
        assert wait() is None
        assert pages.source == source.path
        (folder.path / "made of").write_text((source.path / "page.md").read_text())
        (folder.path / "made by").write_text(str(os.getpid()))

    monkeypatch.setattr(make_site, "bring_files", bring_files)
    monkeypatch.setattr(make_site, "make_pages", make_pages)
    monkeypatch.setattr(making, "SITE_BEFORE", tmp_path / "before")
    return tmp_path / "site"


@pytest.fixture
def records_differ(two_cores, monkeypatch):
    monkeypatch.setattr(making, "only_records_differ", lambda _site, _now: True)


def makers(site, new_count, *, otherwise=False):
    """Who has brought the files of a site, and who has made its pages: this process or the other."""
    above = site.parent
    (above / "kept").write_text("a page as it is kept")
    with making_begun(site, NOW) as begun, made_anew(above / "source", above / "none") as source:
        if otherwise:
            begun.take_over()
        begun.source_is_there(source)
        begun.put_unchanged({"page.md": str(above / "kept")})
        begun.pages_stand(new_count)
        begun.finish()
        found = {path.name: path.read_text() for path in begun.folder.path.iterdir()}
    assert found["made of"] == "a page as it is kept"
    return ["here" if found[by] == HERE else "there" for by in ("brought by", "made by")]


def test_where_more_than_records_may_have_changed_this_process_makes_it(site, two_cores):
    assert makers(site, 1) == ["here", "here"]


def test_where_records_alone_have_changed_another_process_makes_it(site, records_differ):
    assert makers(site, FEW) == ["there", "there"]


def test_many_pages_are_for_the_process_that_can_share_them_out(site, records_differ):
    assert makers(site, FEW + 1) == ["there", "here"]


def test_what_is_to_be_done_otherwise_is_taken_over_as_a_whole(site, records_differ):
    assert makers(site, 1, otherwise=True) == ["here", "here"]


def test_with_one_core_this_process_makes_it(site, records_differ, monkeypatch):
    monkeypatch.setattr(making, "can_share", lambda: False)
    assert makers(site, 1) == ["here", "here"]


def test_what_the_other_has_brought_goes_where_it_is_taken_over(site, records_differ):
    with making_begun(site, NOW) as begun:
        (begun.folder.path / "brought").touch()
        begun.take_over()
        assert list(begun.folder.path.iterdir()) == []


def test_nothing_stays_of_a_site_that_could_not_be_made(site, records_differ):
    def wrong():
        with making_begun(site, NOW) as begun:
            (begun.folder.path / "half").touch()
            raise ValueError("a record does not hold")

    with pytest.raises(ValueError, match="does not hold"):
        wrong()
    assert list(site.parent.iterdir()) == []


@pytest.mark.parametrize("count", [1, FEW + 1])
def test_a_page_that_is_kept_no_longer_is_told(site, records_differ, monkeypatch, count):
    monkeypatch.setattr("scripts.setup.generated_files.octets_at", lambda _place: None)
    with pytest.raises(Missing, match="was emptied while the site was built"):
        makers(site, count)
