import json
import subprocess
import sys
from zipfile import ZipFile

import pytest
import yaml
from pydantic import ValidationError

from scripts.records.animal import Animal
from scripts.records.claim import COMMON_PRACTICE, Claim
from scripts.records.export_animals import RECORDS, ROOT, TABLE, table_text

PATHS = sorted(RECORDS.glob("*.yml"))


def read(path):
    return yaml.safe_load(path.read_text(encoding="utf-8"))


def claims(value):
    if isinstance(value, Claim):
        yield value
    if hasattr(value, "model_fields_set"):
        for _, part in value:
            yield from claims(part)
    elif isinstance(value, list):
        for part in value:
            yield from claims(part)


def test_the_committed_table_is_what_the_records_say():
    assert TABLE.read_text(encoding="utf-8") == table_text(), (
        "run python -m scripts.records.export_animals and commit the table"
    )


def test_there_are_animals_of_each_group():
    groups = {read(path)["group"] for path in PATHS}
    assert groups == {"fish", "shrimp", "snail"}
    assert len(PATHS) >= 12


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_record_names_known_sources_and_claims_no_more_than_they_bear(path):
    sources = yaml.safe_load((ROOT / "species" / "sources.yml").read_text(encoding="utf-8"))
    record = Animal.model_validate(read(path))
    assert path.stem == record.name.lower().replace(" ", "-")
    found = list(claims(record))
    assert len(found) > 8
    for claim in found:
        assert set(claim.sources) <= {*sources, COMMON_PRACTICE}
        if set(claim.sources) == {COMMON_PRACTICE}:
            assert claim.sure != "well-documented"


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"group": "frog"}, "group"),
        ({"colour": "red"}, "colour"),
        ({"needs": {"temperature_c": {"low": 75, "high": 80, "source": "x", "sure": "reported"}}}, "needs"),
    ],
)  # fmt: skip
def test_a_wrong_record_is_refused(change, field):
    with pytest.raises(ValidationError) as wrong:
        Animal.model_validate(read(PATHS[0]) | change)
    assert wrong.value.errors()[0]["loc"][0] == field


def test_the_table_is_read_from_inside_a_zip(tmp_path):
    archive = tmp_path / "calculators.zip"
    with ZipFile(archive, "w") as packed:
        for path in (ROOT / "calculators").rglob("*"):
            if path.suffix in (".py", ".json"):
                packed.write(path, path.relative_to(ROOT))
    program = (
        f"import sys; sys.path.insert(0, {str(archive)!r})\n"
        "import json, calculators\n"
        "from calculators.core.run import run\n"
        "print(json.dumps([calculators.__file__, run('stocking', {})['outputs']]))"
    )
    ran = subprocess.run(
        [sys.executable, "-I", "-c", program],
        capture_output=True,
        text=True,
        check=True,
        cwd=tmp_path,
    )
    place, outputs = json.loads(ran.stdout)
    assert place.startswith(str(archive))
    assert outputs["biomass_g"] > 0
