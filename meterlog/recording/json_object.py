"""JsonObject: reads a JSON object key by key, and names what is missing or wrong."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import TypeVar

from meterlog.model.errors import RecordingUnreadable

Word = TypeVar("Word", bound=StrEnum)

_LARGEST = 1e12


class JsonObject:
    """One object of a file that a recorder wrote. Keys that nobody asks for are passed over.

    Parameters
    ----------
    values : object
        As ``json`` gives it.
    subject : str
        The file, for messages.
    path : str
        Dotted name of the object within the file, empty for the top.

    Raises
    ------
    RecordingUnreadable
        If ``values`` is no object; every method raises it for a key that is missing or of the
        wrong type.
    """

    def __init__(self, values: object, subject: str, path: str = "") -> None:
        self.subject = subject
        self._path = path
        if not isinstance(values, Mapping):
            raise self.error("is no object")
        self._values = values

    def error(self, what: str, key: str = "") -> RecordingUnreadable:
        """Give an error about ``key`` that names file and object."""
        name = ".".join(part for part in (self._path, key) if part) or "the file"
        return RecordingUnreadable(
            f"{name} {what}.",
            subject=self.subject,
            remedy="The recording can't be read without it; use a copy of the folder.",
        )

    def has(self, key: str) -> bool:
        """Tell whether there is ``key``: earlier versions did not write all."""
        return key in self._values

    def get(self, key: str) -> object:
        """Give whatever stands at ``key``."""
        if key not in self._values:
            raise self.error("is missing", key)
        return self._values[key]

    def text(self, key: str) -> str:
        """Give a text."""
        value = self.get(key)
        if not isinstance(value, str):
            raise self.error(f"is {value!r}, not a text", key)
        if any("\ud800" <= letter <= "\udfff" for letter in value):
            raise self.error("is no Unicode text", key)
        return value

    def word(self, key: str, words: type[Word]) -> Word:
        """Give one of a fixed set of words."""
        value = self.text(key)
        try:
            return words(value)
        except ValueError as error:
            known = ", ".join(words)
            raise self.error(f"is {value!r}, not one of {known}", key) from error

    def number(self, key: str) -> float:
        """Give a number."""
        value = self.get(key)
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.error(f"is {value!r}, not a number", key)
        if not abs(value) <= _LARGEST:  # also refuses nan
            raise self.error("is beyond anything that can be meant", key)
        return float(value)

    def least_nought(self, key: str) -> float:
        """Give a number that can't be less than nought, such as an uncertainty."""
        value = self.number(key)
        if value < 0.0:
            raise self.error(f"is {value:g}, less than nought", key)
        return value

    def optional_least_nought(self, key: str) -> float | None:
        """Give a number that can't be less than nought, or None where the file has null."""
        return None if self.get(key) is None else self.least_nought(key)

    def optional_number(self, key: str) -> float | None:
        """Give a number, or None where the file has null."""
        return None if self.get(key) is None else self.number(key)

    def whole(self, key: str) -> int:
        """Give a whole number, of any size."""
        value = self.get(key)
        if isinstance(value, bool) or not isinstance(value, int):
            raise self.error(f"is {value!r}, not a whole number", key)
        return value

    def flag(self, key: str) -> bool:
        """Give true or false."""
        value = self.get(key)
        if not isinstance(value, bool):
            raise self.error(f"is {value!r}, not true or false", key)
        return value

    def object(self, key: str) -> JsonObject:
        """Give an object within."""
        name = ".".join(part for part in (self._path, key) if part)
        return JsonObject(self.get(key), self.subject, name)

    def objects(self, key: str) -> tuple[JsonObject, ...]:
        """Give a list of objects."""
        value = self.get(key)
        if not isinstance(value, list):
            raise self.error(f"is {value!r}, not a list", key)
        name = ".".join(part for part in (self._path, key) if part)
        return tuple(
            JsonObject(item, self.subject, f"{name}[{index}]") for index, item in enumerate(value)
        )

    def keys(self) -> tuple[str, ...]:
        """Give all keys."""
        return tuple(str(key) for key in self._values)
