"""The browser's bytecode is made once for its code; a table that changes takes its place in it."""

import io
import json
import zipfile

import pytest

from scripts.runtime import bytecode
from scripts.runtime.bytecode import TABLES_THERE, code_state, with_tables
from scripts.runtime.slim import stored
from scripts.setup.paths import TABLES

MODULE, TABLE = "calculators/bridge.pyc", f"{TABLES_THERE}animals.json"


@pytest.fixture
def tables(tmp_path, monkeypatch):
    """A folder of tables, one of which is in the archive of calculators."""
    monkeypatch.setattr(bytecode, "TABLES", tmp_path)
    (tmp_path / "animals.json").write_bytes(b'{"new": 1}')
    (tmp_path / "plants.json").write_bytes(b'{"beside": 1}')
    return tmp_path


def archive(table):
    return stored({MODULE: b"code", TABLE: table})


def test_a_table_takes_its_place_and_all_else_stays(tables):
    assert with_tables(archive(b'{"old": 1}')) == archive(b'{"new": 1}')


def test_what_has_not_changed_is_the_same_octet_by_octet(site):
    made = (bytecode.MADE / bytecode.CALCULATORS).read_bytes()
    assert with_tables(with_tables(made)) == with_tables(made)
    with zipfile.ZipFile(io.BytesIO(with_tables(made))) as calculators:
        there = [name for name in calculators.namelist() if name.startswith(TABLES_THERE)]
        assert len(there) > 3
        for name in there:
            assert calculators.read(name) == (TABLES / name.removeprefix(TABLES_THERE)).read_bytes()


def test_a_changed_table_needs_no_new_bytecode_and_a_new_one_does(monkeypatch, tmp_path):
    before = code_state()
    copied = tmp_path / "calculators" / "data"
    copied.mkdir(parents=True)
    for path in TABLES.glob("*.json"):
        (copied / path.name).write_bytes(path.read_bytes())
    listed = [path for path in bytecode.sources() if not path.startswith(str(TABLES))]
    (copied / "animals.json").write_text(json.dumps({"other": 1}), encoding="utf-8")
    monkeypatch.setattr(bytecode, "TABLES", copied)
    monkeypatch.setattr(bytecode, "sources", lambda: [*listed, *map(str, copied.glob("*.json"))])
    assert code_state() == before
    (copied / "one-more.json").write_text("{}", encoding="utf-8")
    assert code_state() != before


def test_changed_code_needs_new_bytecode(monkeypatch):
    before = code_state()
    monkeypatch.setattr(bytecode, "sources", lambda: [bytecode.ROOT / "pyproject.toml"])
    assert code_state() != before
