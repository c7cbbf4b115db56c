"""What the build says of a copy of the records that a test has spoiled."""

import pytest

from scripts.records.load import BadRecords
from scripts.site.build import checked
from scripts.site.nothing_new import sources
from scripts.tables.make import make_tables


def record_faults(folder):
    """The findings that need no calculator."""
    with pytest.raises(BadRecords) as bad:
        make_tables(folder, folder.with_name("tables"))
    return bad.value.findings


def all_faults(folder):
    """Every finding, the calculators' too."""
    tables = folder.with_name("tables")
    rest = sources(folder, tables).rest
    with pytest.raises(BadRecords) as bad:
        checked(folder, tables, rest)
    return bad.value.findings


def lines(findings):
    """Findings as 'file:line: key: message'."""
    return [f"{one.path.name}:{one.line}: {one.key}: {one.message}" for one in findings]
