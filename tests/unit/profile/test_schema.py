"""The published schema: valid itself, fit for what is shipped, and proof against odd texts."""

import json

import jsonschema
import pytest

from meterlog.profile import load_meter, meter_faults, names, shipped_folder

SCHEMA = json.loads((shipped_folder() / "meter.schema.json").read_text(encoding="utf-8"))


def test_the_schema_is_itself_valid():
    # JSON Schema draft 2020-12, its published metaschema, as the library carries it.
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("name", names("meters"))
def test_a_shipped_profile_has_no_fault(name):
    profile = load_meter(name)
    assert meter_faults(profile.text, profile.source) == []


@pytest.mark.parametrize(
    "text",
    [
        "a." * 5000 + "a = 1",
        "link." + "a." * 3000 + "a = 1",
        "title." + "a." * 3000 + "a = 1",
        f"title = {'[' * 5000}",
        f"title = {'[' * 200}{']' * 200}",
        f"interval_s = {'9' * 5000}",
        "\x00",
        "",
    ],
)
def test_texts_that_no_person_writes_are_refused_in_words(text):
    said = meter_faults(text, "p.toml")
    assert said
    assert all(error.subject.startswith("p.toml") and len(str(error)) < 900 for error in said)
