"""Every key of the schema, missing, of a wrong type or absurd: a named error, never a traceback.

The cases are made from the schema itself, so a key added to it is tried too.
"""

import json
import math
import tomllib
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model.errors import ProfileError
from meterlog.profile import meter_faults, meter_profile, shipped_folder
from meterlog.profile.schema import DEEPEST, dotted

SCHEMA = json.loads((shipped_folder() / "meter.schema.json").read_text(encoding="utf-8"))

ACCURACY = {
    "percent_of_reading": 0.5,
    "digits": 2,
    "resolution": 0.01,
    "floor": 0.1,
    "per_kelvin": 0.1,
    "low_c": 18,
    "high_c": 28,
    "basis": "invented",
}
CHANNEL = {
    "name": "a",
    "quantity": "voltage",
    "scale": 2.0,
    "offset": 0.5,
    "integration_s": 0.1,
    "accuracy": ACCURACY,
    "ranges": [{"top": 6.0, **ACCURACY}],
}
COMMON = {
    "title": "Invented",
    "dialect": "scpi",
    "interval_s": 0.2,
    "integration_s": 0.1,
    "counts": 6000,
    "power_off_s": 900,
    "power_off_cure": "hold a key",
    "link": {
        "baud": 9600,
        "data_bits": 8,
        "parity": "none",
        "stop_bits": 1,
        "dtr": True,
        "rts": False,
        "on_wire": True,
        "hid": {
            "setup": "01 02",
            "in_count_byte": 0,
            "in_count_mask": 7,
            "in_first": 1,
            "out_report": 0,
            "out_size": 8,
            "out_count": True,
        },
    },
    "recognition": {"maker": "INVENTED", "model": "^M", "usb": ["1a2b:3c4d"]},
}
SCPI = {
    "setup": ["CONF:VOLT"],
    "query": "READ?",
    "arm": "INIT",
    "poll_s": 0.2,
    "answer_s": 1,
    "ask_errors": True,
}
WHOLE = {
    "scpi": {**COMMON, "scpi": SCPI, "channels": [CHANNEL]},
    "scpi-blocks": {
        **COMMON,
        "dialect": "scpi-blocks",
        "scpi": SCPI,
        "blocks": {
            "number": "int16",
            "byte_order": "swapped",
            "sample_s": 0.001,
            "rows": 100,
            "overload": [32767],
        },
        "channels": [CHANNEL],
    },
    "ascii-lines": {
        **COMMON,
        "dialect": "ascii-lines",
        "lines": {
            "delimiter": ";",
            "columns": ["time", "a"],
            "time_unit_s": 0.001,
            "comment": "#",
            "header_lines": 1,
            "decimal": ".",
            "overload_texts": ["OL"],
        },
        "channels": [CHANNEL],
    },
    "modbus-rtu": {
        **COMMON,
        "dialect": "modbus-rtu",
        "modbus": {
            "device": 1,
            "function": 3,
            "word_order": "low-first",
            "poll_s": 0.1,
            "answer_s": 0.5,
        },
        "channels": [
            {**CHANNEL, "register": {"address": 0, "number": "float32", "overload": [1e9]}}
        ],
    },
}
"""A profile of each dialect that has a table, with every key there is."""


def schema_keys(schema, place=()):
    """Give every key of the schema with its own schema; items of lists as item 0."""
    for key, inner in schema.get("properties", {}).items():
        yield (*place, key), inner, key in schema.get("required", ())
        yield from schema_keys(inner, (*place, key))
    if "items" in schema:
        yield from schema_keys(schema["items"], (*place, 0))


ALL_KEYS = list(schema_keys(SCHEMA))


def value_at(values, place):
    for part in place:
        values = values[part]
    return values


def home_of(place):
    """Give a whole profile that has this key."""
    for values in WHOLE.values():
        try:
            value_at(values, place)
        except (KeyError, IndexError):
            continue
        return values
    raise AssertionError(f"no example has {place}")


def changed(values, place, value):
    """Give a copy with another value at ``place``; without the key for ``...``."""
    copy = json.loads(json.dumps(values))
    inner = value_at(copy, place[:-1])
    if value is ...:
        del inner[place[-1]]
    else:
        inner[place[-1]] = value
    return copy


def toml_of(values):
    def told(value):
        if isinstance(value, bool):
            return str(value).lower()
        if isinstance(value, dict):
            return "{" + ", ".join(f"{key} = {told(item)}" for key, item in value.items()) + "}"
        if isinstance(value, list):
            return "[" + ", ".join(map(told, value)) + "]"
        return json.dumps(value) if isinstance(value, str) else str(value)

    return "".join(f"{key} = {told(value)}\n" for key, value in values.items())


def toml_with(place, value):
    """Give a whole profile with this value at ``place``; not finite ones as TOML writes them."""
    words = toml_of({"k": value}).partition(" = ")[2].rstrip("\n")
    text = toml_of(changed(home_of(place), place, "A-MARK"))
    return text.replace('"A-MARK"', words)


def wrong(values):
    return [str(error) for error in meter_faults(toml_of(values), "p.toml")]


def of_another_type(schema):
    """Give values of every type but those the schema takes."""
    kinds = {
        "string": "x",
        "number": 1.5,
        "boolean": True,
        "array": [["x"]],
        "object": {"x": 1},
    }
    mine = schema.get("type") or "number"
    mine = "number" if mine == "integer" else mine
    yield from (value for kind, value in kinds.items() if kind != mine)
    yield date(2030, 1, 2)


def absurd(schema):
    """Give values of the right type beyond what the schema takes."""
    kind = schema.get("type")
    if "enum" in schema:
        yield "nonsense" if kind == "string" else 17
    elif kind in {"number", "integer"}:
        low, high = schema.get("minimum", schema.get("exclusiveMinimum")), schema["maximum"]
        yield from (low - abs(low) - 1, high * 2 + 1, 10**400, -(10**400))
        yield from (math.nan, math.inf, -math.inf)
        if kind == "integer":
            yield low + 0.5
    elif kind == "string":
        if "maxLength" in schema:
            yield "a" * (schema["maxLength"] + 1)
        if "minLength" in schema:
            yield ""
        if "pattern" in schema:
            yield from ("é", "\u00a0\n")
        if schema.get("format") == "regex":
            yield from ("(", "a{99999999999999999999}")
    elif kind == "array":
        if "minItems" in schema:
            yield []
        if schema["items"]["type"] in {"string", "number"}:
            yield [{}]
        if "maxItems" in schema and schema["items"]["type"] == "string":
            yield [f"c{n}" for n in range(schema["maxItems"] + 1)]


def test_every_key_and_table_of_the_schema_says_what_it_means_and_no_other_is_let_in():
    for place, schema, _ in ALL_KEYS:
        assert schema.get("description"), place
        assert schema.get("type") or "enum" in schema, place
        if schema.get("type") == "object":
            assert schema["additionalProperties"] is False, place
        if schema.get("type") in {"number", "integer"}:
            assert "maximum" in schema, place


def test_every_default_of_the_schema_is_what_is_used_when_the_key_is_left_out():
    defaults = {place: schema["default"] for place, schema, _ in ALL_KEYS if "default" in schema}
    assert len(defaults) > 30
    for place, default in defaults.items():
        values = home_of(place)
        left_out = changed(values, place, ...)
        stated = changed(values, place, default)
        profile = meter_profile("p", toml_of(left_out), "p.toml")
        same = meter_profile("p", toml_of(stated), "p.toml")
        for part in ("link", "scpi", "blocks", "lines", "modbus", "recognition", "channels"):
            assert getattr(profile, part) == getattr(same, part), place
        for part in ("integration_s", "counts", "power_off_s", "power_off_cure"):
            assert getattr(profile, part) == getattr(same, part), place


@pytest.mark.parametrize("dialect", WHOLE)
def test_a_profile_with_every_key_is_taken(dialect):
    assert wrong(WHOLE[dialect]) == []


@pytest.mark.parametrize(
    "place", [place for place, _, required in ALL_KEYS if required], ids=dotted
)
def test_a_missing_key_is_named(place):
    said = wrong(changed(home_of(place), place, ...))
    assert any(f"{dotted(place)} is missing. Expected" in words for words in said), said


@pytest.mark.parametrize(
    ("place", "schema"), [key[:2] for key in ALL_KEYS], ids=[dotted(key[0]) for key in ALL_KEYS]
)
def test_a_wrong_value_is_named_with_its_key_and_line(place, schema):
    for value in (*of_another_type(schema), *absurd(schema)):
        text = toml_with(place, value)
        faults = meter_faults(text, "p.toml")
        said = [str(error) for error in faults]
        assert any(dotted(place) in words for words in said), (value, said)
        line = 1 + list(tomllib.loads(text)).index(place[0])
        assert any(error.subject == f"p.toml, line {line}" for error in faults), (value, said)
        assert all(len(words) < 600 for words in said), value
    with pytest.raises(ProfileError):
        meter_profile("p", text, "p.toml")


@pytest.mark.parametrize("place", [place for place, _, _ in ALL_KEYS], ids=dotted)
def test_an_unknown_key_beside_any_known_one_is_named(place):
    values = changed(home_of(place), (*place[:-1], "unheard-of"), 1)
    said = wrong(values)
    assert any("unheard-of is not known here. " in words and "Known: " in words for words in said)


def test_a_misspelt_key_gets_a_hint():
    said = wrong(changed(WHOLE["scpi"], ("link", "buad"), 9600))
    assert any("Did you mean 'baud'?" in words for words in said)


def edited(whole, **changes):
    values = WHOLE[whole]
    for place, value in changes.items():
        values = changed(values, tuple(_part(part) for part in place.split("__")), value)
    return values


def _part(text):
    return int(text) if text.isdecimal() else text


@pytest.mark.parametrize(
    ("values", "words"),
    [
        (edited("scpi", lines={"columns": ["a"]}), "lines is not used by the dialect scpi"),
        (edited("scpi", modbus={}), "It belongs to modbus-rtu"),
        (edited("ascii-lines", lines__columns=["time", "time", "a"]), "time more than once"),
        (edited("ascii-lines", lines__delimiter=",", lines__decimal=","), "lines.decimal equals"),
        (edited("ascii-lines", channels__0__name="time"), "channels[0].name is 'time'"),
        (edited("ascii-lines", lines=...), "lines is missing. Expected a table [lines]"),
        (edited("modbus-rtu", channels__0__register=...), "channels[0].register is missing"),
        (edited("modbus-rtu", channels__0__register__address=65535), "goes beyond register 65535"),
        (
            edited("scpi-blocks", blocks__rows=10_000_000, blocks__number="real64"),
            "blocks.rows makes blocks longer than 64 MiB",
        ),
        (edited("scpi", channels__0__ranges=[]), "channels[0].ranges"),
        (
            edited("scpi", channels__0__ranges__0__low_c=40),
            "channels[0].ranges.low_c is above high_c",
        ),
        (
            edited("scpi", channels__0__ranges=[{"top": 6, **ACCURACY}, {"top": 6.0, **ACCURACY}]),
            "repeat a top: 6, 6",
        ),
        (
            edited(
                "scpi",
                channels__0__ranges=...,
                channels__0__accuracy={
                    **ACCURACY,
                    "percent_of_reading": 0,
                    "digits": 0,
                    "floor": 0,
                },
            ),
            "channels[0].accuracy says that the meter is without error",
        ),
        (edited("scpi", dialect="lcd-frames", scpi=..., channels=[CHANNEL, CHANNEL]), "at most 1"),
        (
            edited("scpi", dialect="typed", scpi=..., integration_s=0.1),
            "what is typed is not integrated",
        ),
    ],
)
def test_keys_that_contradict_each_other_are_named(values, words):
    said = wrong(values)
    assert any(words in one for one in said), said


def test_an_empty_list_of_overload_texts_means_that_there_are_none():
    profile = meter_profile("p", toml_of(edited("ascii-lines", lines__overload_texts=[])), "p.toml")
    assert profile.lines.overload_texts == ()


def test_tables_are_let_in_down_to_the_deepest_key_there_is():
    assert max(len(place) for place, _, _ in ALL_KEYS) < DEEPEST


values = st.recursive(
    st.one_of(
        st.booleans(),
        st.integers(),
        st.floats(),
        st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=20),
    ),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from("abc"), inner),
    max_leaves=5,
)


@given(st.sampled_from(ALL_KEYS), values)
def test_any_value_at_any_key_is_taken_or_refused_in_words(key, value):
    place = key[0]
    for error in meter_faults(toml_with(place, value), "p.toml"):
        assert error.subject.startswith("p.toml")
        assert error.message
