"""TomlTable: reads a TOML table key by key, and says exactly what is wrong with it."""

from __future__ import annotations

import difflib
from collections.abc import Mapping, Sequence
from pathlib import Path

from meterlog.model.errors import ProfileError
from meterlog.profile.plain_file import open_plain
from meterlog.profile.toml_values import toml_values

LONGEST_BYTES = 256 * 1024
"""Some fifty times the longest that is shipped; a parser takes minutes for what is much longer."""


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

    def names(self) -> tuple[str, ...]:
        """Give all keys in file order."""
        return tuple(self._values)

    def text(self, key: str, default: str) -> str:
        """Give a string; ``default`` when the key is absent."""
        self._asked.add(key)
        value = self._values.get(key, default)
        if not isinstance(value, str):
            raise self.error(key, f"is {value!r}", "Expected a text in quotes.")
        return value

    def number(self, key: str, default: float, low: float, high: float) -> float:
        """Give a finite number within ``low`` to ``high``; ``default`` when the key is absent."""
        self._asked.add(key)
        value = self._values.get(key, default)
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.error(key, f"is {value!r}", "Expected a number.")
        if not low <= value <= high:  # also refuses nan
            raise self.error(key, f"is {value!r}", f"Expected {low:g} to {high:g}.")
        return float(value)

    def optional_number(self, key: str, low: float, high: float) -> float | None:
        """Give a number, or None when the key is absent."""
        self._asked.add(key)
        return self.number(key, low, low, high) if key in self._values else None

    def flag(self, key: str, default: bool) -> bool:  # noqa: FBT001 - the default of a flag
        """Give true or false; ``default`` when the key is absent."""
        self._asked.add(key)
        value = self._values.get(key, default)
        if not isinstance(value, bool):
            raise self.error(key, f"is {value!r}", "Expected true or false.")
        return value

    def choice(self, key: str, default: str, words: Sequence[str]) -> str:
        """Give one of a fixed set of words; ``default`` when the key is absent."""
        text = self.text(key, default)
        if text not in words:
            known = ", ".join(word for word in words if word)
            raise self.error(key, f"is {text!r}", f"Expected one of: {known}.")
        return text

    def table(self, key: str) -> TomlTable:
        """Give a sub-table; an empty one when it is absent."""
        self._asked.add(key)
        value = self._values.get(key, {})
        if not isinstance(value, dict):
            raise self.error(key, f"is {value!r}", f"Expected a table [{self._name(key)}].")
        return TomlTable(value, self.subject, self._name(key))

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
        return TomlTable(toml_values(text), subject)
    except ValueError as error:
        # More than tomllib.TOMLDecodeError: numbers too long and tables too deep for Python.
        raise ProfileError(
            f"is not valid TOML: {error}.", subject=subject, remedy="Correct that line."
        ) from error


def read_text(path: Path) -> str:
    """Read a profile's text.

    Raises
    ------
    ProfileError
        If the file can't be read, is not UTF-8, or is longer than any profile.
    """
    try:
        with open_plain(path) as file:
            data = file.read(LONGEST_BYTES + 1)
        if len(data) > LONGEST_BYTES:
            raise ProfileError(
                f"is longer than {LONGEST_BYTES // 1024} KiB.",
                subject=str(path),
                remedy="Name the file of a profile: a few pages of text.",
            )
        return data.decode("utf-8-sig")  # some editors put a byte order mark first
    except UnicodeDecodeError as error:
        raise ProfileError(
            "is not UTF-8 text.", subject=str(path), remedy="Save it as UTF-8."
        ) from error
    except OSError as error:
        raise ProfileError(
            f"can't be read: {error.strerror}.", subject=str(path), remedy="Check name and rights."
        ) from error
