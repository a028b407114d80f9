"""Schema: checks a profile's TOML against the published JSON Schema, and says what is wrong."""

from __future__ import annotations

import difflib
import json
import math
import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, time
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from meterlog.model.errors import ProfileError
from meterlog.profile.toml_lines import Place, line_of

if TYPE_CHECKING:
    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import ValidationError

_KINDS = {
    "string": "a text in quotes",
    "number": "a number",
    "integer": "a whole number",
    "boolean": "true or false",
    "array": "a list",
    "object": "a table",
}
DEEPEST = 16
"""Tables and lists within each other; no profile needs half as many."""


@cache
def _validator(file: Path) -> Draft202012Validator:
    from jsonschema import Draft202012Validator, FormatChecker

    schema = json.loads(file.read_text(encoding="utf-8"))
    formats = FormatChecker(formats=())
    # Python refuses some expressions by other errors than its own: a{99999999999999999999}.
    formats.checks("regex", raises=(re.error, OverflowError, RecursionError))(_compiles)
    return Draft202012Validator(schema, format_checker=formats)


def _compiles(expression: object) -> bool:
    if isinstance(expression, str):
        re.compile(expression)
    return True


def faults(
    values: Mapping[str, object], schema: Path, text: str, subject: str
) -> list[ProfileError]:
    """Give everything in which a profile differs from its schema.

    Parameters
    ----------
    values : mapping
        The TOML as ``tomllib`` gives it.
    schema : Path
        A JSON Schema (draft 2020-12).
    text : str
        The TOML, for line numbers.
    subject : str
        The file, for messages.

    Returns
    -------
    list of ProfileError
        In the order of their lines; each names file, line where it can be told, key, and what was
        expected. Empty when there is nothing wrong.
    """
    deep = _too_deep(values)
    if deep is not None:
        what = f"{deep} holds tables within tables within tables"
        remedy = f"No key stands deeper than {DEEPEST} levels."
        return [ProfileError(f"{what}.", subject=subject, remedy=remedy)]
    endless = dict(_not_finite(values, ()))
    found: dict[tuple[Place, str], str] = {}
    for error in _validator(schema).iter_errors(values):
        for place, what, remedy in _told(error):
            if place not in endless:
                found.setdefault((place, what), remedy)
    for place, number in endless.items():
        found[place, f"is {number}"] = "Expected a finite number."
    told = [(line_of(text, place) or 0, place, what, found[place, what]) for place, what in found]
    told.sort(key=lambda item: item[0])
    return [fault_at(text, subject, place, what, remedy) for _, place, what, remedy in told]


def fault_at(text: str, subject: str, place: Place, what: str, remedy: str) -> ProfileError:
    """Give the error about one place of a profile, with its line where that can be told.

    Parameters
    ----------
    text : str
        The TOML.
    subject : str
        The file.
    place : Place
    what : str
        What is wrong, after the key's name and without a full stop.
    remedy : str
        What was expected.
    """
    line = line_of(text, place)
    where = f"{subject}, line {line}" if line else subject
    return ProfileError(f"{dotted(place)} {what}.", subject=where, remedy=remedy)


def _too_deep(values: Mapping[str, object]) -> str | None:
    """Give the top key under which tables are nested too deep; without recursion."""
    waiting: list[tuple[str, object, int]] = [(key, item, 1) for key, item in values.items()]
    while waiting:
        key, value, depth = waiting.pop()
        if depth > DEEPEST:
            return key
        if isinstance(value, Mapping):
            value = list(value.values())
        if isinstance(value, list):
            waiting.extend((key, item, depth + 1) for item in value)
    return None


def dotted(place: Place) -> str:
    """Give a key's name as a person writes it, such as ``channels[0].accuracy.digits``."""
    name = ""
    for part in place:
        if isinstance(part, int):
            name += f"[{part}]"
        else:
            name += f".{part}" if name else part
    return name or "the profile"


def _not_finite(value: object, place: Place) -> Iterator[tuple[Place, float]]:
    """Find what TOML has and JSON has not: nan and infinities."""
    if isinstance(value, float) and not math.isfinite(value):
        yield place, value
    elif isinstance(value, Mapping):
        for key, item in value.items():
            yield from _not_finite(item, (*place, str(key)))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from _not_finite(item, (*place, index))


def _told(error: ValidationError) -> Iterator[tuple[Place, str, str]]:
    place: Place = tuple(error.absolute_path)
    kind, schema = error.validator, _mapping(error.schema)
    wanted: Any = error.validator_value
    instance: Any = error.instance
    if kind == "required":
        known = _mapping(schema.get("properties"))
        for key in wanted:
            if key not in instance:
                yield (*place, key), "is missing", _expected(known.get(key), (*place, key))
    elif kind == "additionalProperties":
        known = _mapping(schema.get("properties"))
        for key in instance:
            if key not in known:
                yield (*place, key), "is not known here", _nearest(key, list(known), "Known")
    elif kind == "enum":
        words = [str(word) for word in wanted]
        yield place, f"is {_short(instance)}", _nearest(str(instance), words, "Allowed")
    elif kind == "format":
        yield place, f"is {_short(instance)}", "Expected a regular expression."
    elif kind in {"minItems", "maxItems"}:
        bound = f"Expected at {'least' if kind == 'minItems' else 'most'} {wanted}."
        yield place, f"has {len(instance)} of them", bound
    else:
        yield place, f"is {_short(instance)}", _expected(schema, place)


def _mapping(value: object) -> Mapping[str, Any]:
    return value if isinstance(value, Mapping) else {}


def _nearest(word: str, known: Sequence[str], lead: str) -> str:
    near = difflib.get_close_matches(word, known, 1)
    hint = f"Did you mean {near[0]!r}? " if near else ""
    return f"{hint}{lead}: {', '.join(known)}."


def _short(value: object) -> str:
    if isinstance(value, Mapping):
        return "a table"
    if isinstance(value, (date, time)):
        return f"the date or time {value.isoformat()}"
    if isinstance(value, bool):
        return str(value).lower()
    text = repr(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _expected(schema: object, place: Place) -> str:
    """Say in words what a schema wants."""
    known = _mapping(schema)
    if not known:
        return f"Expected a table [{'.'.join(part for part in place if isinstance(part, str))}]."
    wanted = _KINDS.get(str(known.get("type", "")), "")
    if "enum" in known:
        wanted = f"one of {', '.join(str(word) for word in known['enum'])}"
    words = " ".join(part for part in (wanted, _bounds(known)) if part)
    about = str(known.get("description", ""))
    if not words:
        return f"Expected {about}." if about else ""
    return f"Expected {words}: {about}." if about else f"Expected {words}."


def _bounds(schema: Mapping[str, Any]) -> str:
    low, high = schema.get("minimum"), schema.get("maximum")
    if "exclusiveMinimum" in schema:
        return f"above {schema['exclusiveMinimum']:g}, at most {high:g}"
    if low is not None and high is not None:
        return f"{low:g} to {high:g}"
    if "minItems" in schema or "maxItems" in schema:
        return _range(schema.get("minItems", 0), schema.get("maxItems"), "")
    if "minLength" in schema or "maxLength" in schema:
        return _range(schema.get("minLength", 0), schema.get("maxLength"), " characters")
    return ""


def _range(low: int, high: int | None, unit: str) -> str:
    if high is None:
        return f"of at least {low}{unit}"
    return f"of {high}{unit.rstrip('s')}" if low == high else f"of {low} to {high}{unit}"
