"""Schema: checks a profile's TOML against the published JSON Schema, and says what is wrong."""

from __future__ import annotations

import difflib
import json
import math
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from meterlog.model.errors import ProfileError
from meterlog.profile.toml_lines import line_of

if TYPE_CHECKING:
    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import ValidationError

Path_ = tuple[str | int, ...]
_KINDS = {
    "string": "a text in quotes",
    "number": "a number",
    "integer": "a whole number",
    "boolean": "true or false",
    "array": "a list",
    "object": "a table",
}


@cache
def _validator(file: Path) -> Draft202012Validator:
    from jsonschema import Draft202012Validator

    schema = json.loads(file.read_text(encoding="utf-8"))
    return Draft202012Validator(schema, format_checker=Draft202012Validator.FORMAT_CHECKER)


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
    found: dict[tuple[Path_, str], tuple[Path_, str, str]] = {}
    for place in _not_finite(values, ()):
        found[place, "finite"] = (place, "is no finite number", "Expected a number.")
    for error in _validator(schema).iter_errors(values):
        for place, what, remedy in _told(error):
            found.setdefault((place, what), (place, what, remedy))
    told: list[tuple[int, int, ProfileError]] = []
    for place, what, remedy in found.values():
        line = line_of(text, place)
        where = f"{subject}, line {line}" if line else subject
        error = ProfileError(f"{dotted(place)} {what}.", subject=where, remedy=remedy)
        told.append((line or 0, len(told), error))
    return [error for _, _, error in sorted(told, key=lambda item: item[:2])]


def dotted(place: Path_) -> str:
    """Give a key's name as a person writes it, such as ``channels[0].accuracy.digits``."""
    name = ""
    for part in place:
        if isinstance(part, int):
            name += f"[{part}]"
        else:
            name += f".{part}" if name else part
    return name or "the profile"


def _not_finite(value: object, place: Path_) -> Iterator[Path_]:
    """Find what TOML has and JSON has not: nan and infinities."""
    if isinstance(value, float) and not math.isfinite(value):
        yield place
    elif isinstance(value, Mapping):
        for key, item in value.items():
            yield from _not_finite(item, (*place, str(key)))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from _not_finite(item, (*place, index))


def _told(error: ValidationError) -> Iterator[tuple[Path_, str, str]]:
    place: Path_ = tuple(error.absolute_path)
    kind, schema = error.validator, _mapping(error.schema)
    wanted: Any = error.validator_value
    instance: Any = error.instance
    if kind == "required":
        known = _mapping(schema.get("properties"))
        for key in wanted:
            if key not in instance:
                yield (*place, key), "is missing", _expected(_mapping(known.get(key)), key)
    elif kind == "additionalProperties":
        known = _mapping(schema.get("properties"))
        for key in instance:
            if key not in known:
                yield (*place, key), "is not known here", _nearest(key, list(known), "Known")
    elif kind == "enum":
        words = [str(word) for word in wanted]
        yield place, f"is {instance!r}", _nearest(str(instance), words, "Allowed")
    elif kind == "format":
        yield place, f"is {instance!r}", "Expected a regular expression."
    else:
        yield place, f"is {_short(instance)}", _expected(schema, "")


def _mapping(value: object) -> Mapping[str, Any]:
    return value if isinstance(value, Mapping) else {}


def _nearest(word: str, known: Sequence[str], lead: str) -> str:
    near = difflib.get_close_matches(word, known, 1)
    hint = f"Did you mean {near[0]!r}? " if near else ""
    return f"{hint}{lead}: {', '.join(known)}."


def _short(value: object) -> str:
    if isinstance(value, Mapping):
        return "a table"
    text = repr(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _expected(schema: Mapping[str, Any], key: str) -> str:
    """Say in words what a schema wants."""
    if not schema:
        return f"Expected a table [{key}]." if key else ""
    wanted = _KINDS.get(str(schema.get("type", "")), "")
    if "enum" in schema:
        wanted = f"one of {', '.join(str(word) for word in schema['enum'])}"
    bounds = _bounds(schema)
    about = str(schema.get("description", ""))
    words = " ".join(part for part in (wanted, bounds) if part)
    return f"Expected {words}: {about}." if about and words else f"Expected {words or about}."


def _bounds(schema: Mapping[str, Any]) -> str:
    low, high = schema.get("minimum"), schema.get("maximum")
    if low is None and "exclusiveMinimum" in schema:
        above = f"above {schema['exclusiveMinimum']:g}"
        return above if high is None else f"{above}, at most {high:g}"
    if low is not None and high is not None:
        return f"{low:g} to {high:g}"
    if "maxItems" in schema:
        return f"of {schema.get('minItems', 0)} to {schema['maxItems']}"
    return ""
