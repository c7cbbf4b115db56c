"""The large files of a site: other hands write them, and hold no records while nobody needs them."""

import weakref

import pytest

from scripts.site import large_files
from scripts.site.large_files import large_files_begun


class Known:
    """Stands for the records of a build and what is kept of their files."""

    def __init__(self, kept):
        self.kept = kept

    def were_made(self, name):
        return self.kept


@pytest.mark.parametrize("kept", [True, False])
def test_the_records_go_once_these_files_are_begun(two_cores, monkeypatch, tmp_path, kept):
    monkeypatch.setattr(
        large_files, "write_large_files", lambda _known, source, _site: source.mkdir()
    )
    known = Known(kept)
    seen = weakref.ref(known)
    with large_files_begun(known, tmp_path / "source", tmp_path / "site") as finished:
        del known
        assert seen() is None
        finished()
        assert (tmp_path / "source").is_dir()
