"""LastConditions: the conditions of the last time, in one JSON file of the settings folder."""

from __future__ import annotations

import contextlib
import json
import secrets
from dataclasses import asdict
from pathlib import Path

from meterlog.model import Conditions
from meterlog.model.condition_fields import CONDITION_FIELDS, with_condition
from meterlog.model.errors import UsageError
from meterlog.profile import settings_folder

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
            found = json.loads(self._path.read_text("utf-8"))
        except (OSError, ValueError, RecursionError):
            return Conditions()
        kept = Conditions()
        for field in CONDITION_FIELDS if isinstance(found, dict) else ():
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
        aside = self._path.with_name(f".{_FILE}.{secrets.token_hex(4)}")
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            aside.write_text(json.dumps(asdict(conditions), ensure_ascii=True, indent=1), "utf-8")
            aside.replace(self._path)
        except OSError:
            with contextlib.suppress(OSError):
                aside.unlink(missing_ok=True)
            return False
        return True
