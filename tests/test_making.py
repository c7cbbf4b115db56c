"""Who makes a site: another process where records alone have changed, and little of the site with them."""

import os
from functools import partial

import pytest

from scripts.setup.cores import FEW
from scripts.site import making
from scripts.site.making import making_begun
from scripts.site.nothing_new import Sources

NOW = Sources("records", "rest", "tables")
HERE = str(os.getpid())


@pytest.fixture
def site(tmp_path, monkeypatch):
    """A place for a site, made by a stand-in that writes down what it was told, and by which process."""

    def made_in(folder, wait):
        told = [wait() for _ in range(3)]
        (folder.path / "made.txt").write_text(f"{os.getpid()} {told}")

    monkeypatch.setattr(making, "made_in", made_in)
    monkeypatch.setattr(making, "SITE_BEFORE", tmp_path / "before")
    return tmp_path / "site"


@pytest.fixture
def records_differ(two_cores, monkeypatch):
    monkeypatch.setattr(making, "only_records_differ", lambda _site, _now: True)


def made(site, new_count, *, otherwise=False):
    """Who made a site, and what it was told."""
    with making_begun(site, NOW) as begun:
        if otherwise:
            begun.take_over()
        begun.source_is_there("the source")
        begun.pages_stand(new_count)
        begun.finish()
        return (begun.folder.path / "made.txt").read_text().split(" ", 1)


def test_where_more_than_records_may_have_changed_this_process_makes_it(site):
    assert made(site, 1) == [HERE, "['the source', None, None]"]


def test_where_records_alone_have_changed_another_process_makes_it(site, records_differ):
    process, told = made(site, FEW)
    assert process != HERE
    assert told == "['the source', None, None]"


@pytest.mark.parametrize(
    "how", [partial(made, new_count=FEW + 1), partial(made, new_count=1, otherwise=True)]
)
def test_what_is_too_much_for_one_or_to_be_done_otherwise_is_taken_over(site, records_differ, how):
    assert how(site) == [HERE, "['the source', None, None]"]


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
