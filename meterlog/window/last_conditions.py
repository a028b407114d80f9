"""LastConditions: the conditions of the last time, in one JSON file of the settings folder."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path

from meterlog.model import Conditions
from meterlog.model.condition_fields import CONDITION_FIELDS, with_condition
from meterlog.model.errors import UsageError
from meterlog.profile import settings_folder
from meterlog.window.kept_file import keep, read_kept

_FILE = "last-conditions.json"


class LastConditions:
    """What was entered the last time. Where the file fails, only the convenience is lost.

    Parameters
    ----------
    folder : Path or None
        None: the user's settings folder. It need not exist.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._path = (settings_folder() if folder is None else folder) / _FILE

    def load(self) -> Conditions:
        """Give what is kept; what can't be read is left out."""
        try:
            found = read_kept(self._path)
        except (OSError, ValueError):
            return Conditions()
        kept = Conditions()
        for field in CONDITION_FIELDS:
            value = found.get(field.name)
            if not isinstance(value, str | int | float) or (
                not field.is_number and value not in field.choices
            ):
                continue
            try:
                kept = with_condition(kept, field, str(value))
            except UsageError:
                continue
        return kept

    def keep(self, conditions: Conditions) -> bool:
        """Keep conditions in the place of those before; False when the disk does not take them."""
        return keep(self._path, asdict(conditions))
