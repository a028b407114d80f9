"""TomlTable: reads a TOML table key by key, and says exactly what is wrong with it."""

from __future__ import annotations

import difflib
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path

from meterlog.model.errors import ProfileError


class TomlTable:
    """One table of a profile. Every key must be asked for; :meth:`finish` refuses the others.

    Parameters
    ----------
    values : mapping
        As ``tomllib`` gives it.
    subject : str
        The file, for messages.
    path : str
        Dotted name of the table within the file, empty for the top.
    """

    def __init__(self, values: Mapping[str, object], subject: str, path: str = "") -> None:
        self._values = values
        self._asked: set[str] = set()
        self.subject = subject
        self.path = path

    def _name(self, key: str) -> str:
        return f"{self.path}.{key}" if self.path else key

    def error(self, key: str, message: str, remedy: str = "") -> ProfileError:
        """Give an error about ``key`` that names the file and the table."""
        return ProfileError(f"{self._name(key)} {message}", subject=self.subject, remedy=remedy)

    def has(self, key: str) -> bool:
        """Tell whether ``key`` is there."""
        return key in self._values

    def names(self) -> tuple[str, ...]:
        """Give all keys in file order."""
        return tuple(self._values)

    def _get(self, key: str, expected: str) -> object:
        self._asked.add(key)
        if key not in self._values:
            raise self.error(key, "is missing", f"Expected {expected}.")
        return self._values[key]

    def text(self, key: str, default: str | None = None, among: Sequence[str] = ()) -> str:
        """Give a string; ``among`` lists the only ones allowed."""
        if default is not None and key not in self._values:
            self._asked.add(key)
            return default
        value = self._get(key, "a text in quotes")
        if not isinstance(value, str):
            raise self.error(key, f"is {value!r}", "Expected a text in quotes.")
        if among and value not in among:
            near = difflib.get_close_matches(value, among, 1)
            hint = f"Did you mean {near[0]!r}? " if near else ""
            raise self.error(key, f"is {value!r}", f"{hint}Allowed: {', '.join(among)}.")
        return value

    def number(
        self,
        key: str,
        default: float | None = None,
        low: float = -1e12,
        high: float = 1e12,
    ) -> float:
        """Give a finite number within ``low`` to ``high``."""
        if default is not None and key not in self._values:
            self._asked.add(key)
            return default
        value = self._get(key, "a number")
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.error(key, f"is {value!r}", "Expected a number.")
        if not low <= value <= high:  # also refuses nan
            raise self.error(key, f"is {value!r}", f"Expected {low:g} to {high:g}.")
        return float(value)

    def optional_number(self, key: str, low: float = -1e12, high: float = 1e12) -> float | None:
        """Give a number, or None when the key is absent."""
        self._asked.add(key)
        return self.number(key, low=low, high=high) if key in self._values else None

    def whole(self, key: str, default: int | None = None, low: int = 0, high: int = 10**9) -> int:
        """Give a whole number within ``low`` to ``high``."""
        value = self.number(key, None if default is None else float(default), low, high)
        if value != int(value):
            raise self.error(key, f"is {value!r}", "Expected a whole number.")
        return int(value)

    def flag(self, key: str, *, default: bool) -> bool:
        """Give true or false."""
        self._asked.add(key)
        value = self._values.get(key, default)
        if not isinstance(value, bool):
            raise self.error(key, f"is {value!r}", "Expected true or false.")
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        """Give a list of strings; empty when the key is absent."""
        self._asked.add(key)
        value = self._values.get(key, [])
        if not isinstance(value, list) or not all(isinstance(item, str) for item in value):
            raise self.error(key, f"is {value!r}", "Expected a list of texts.")
        return tuple(value)

    def table(self, key: str, *, required: bool = False) -> TomlTable:
        """Give a sub-table; an empty one when it is absent and not required."""
        value = self._get(key, "a table") if required else self._values.get(key, {})
        self._asked.add(key)
        if not isinstance(value, dict):
            raise self.error(key, f"is {value!r}", f"Expected a table [{self._name(key)}].")
        return TomlTable(value, self.subject, self._name(key))

    def tables(self, key: str) -> tuple[TomlTable, ...]:
        """Give an array of tables ``[[key]]``; at least one."""
        value = self._get(key, f"at least one table [[{self._name(key)}]]")
        if not isinstance(value, list) or not value or not all(isinstance(v, dict) for v in value):
            raise self.error(key, "is wrong", f"Expected tables [[{self._name(key)}]].")
        return tuple(
            TomlTable(item, self.subject, f"{self._name(key)}[{index}]")
            for index, item in enumerate(value)
        )

    def finish(self) -> None:
        """Refuse keys that nobody asked for: a misspelt limit must not be ignored."""
        for key in self._values:
            if key not in self._asked:
                near = difflib.get_close_matches(key, self._asked, 1)
                hint = f"Did you mean {near[0]!r}? " if near else ""
                known = ", ".join(sorted(self._asked))
                raise self.error(key, "is not known here", f"{hint}Known: {known}.")


def parse_toml(text: str, subject: str) -> TomlTable:
    """Parse TOML text.

    Parameters
    ----------
    text : str
    subject : str
        The file, for messages.

    Returns
    -------
    TomlTable

    Raises
    ------
    ProfileError
        If the text is no TOML; names the line.
    """
    try:
        return TomlTable(tomllib.loads(text), subject)
    except (ValueError, RecursionError) as error:
        # More than tomllib.TOMLDecodeError: numbers too long and tables too deep for Python.
        raise ProfileError(
            f"is not valid TOML: {error}.", subject=subject, remedy="Correct that line."
        ) from error


def read_text(path: Path) -> str:
    """Read a profile's text.

    Raises
    ------
    ProfileError
        If the file can't be read or is not UTF-8.
    """
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError as error:
        raise ProfileError(
            "is not UTF-8 text.", subject=str(path), remedy="Save it as UTF-8."
        ) from error
    except OSError as error:
        raise ProfileError(
            f"can't be read: {error.strerror}.", subject=str(path), remedy="Check name and rights."
        ) from error
