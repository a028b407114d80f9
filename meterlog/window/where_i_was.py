"""WhereIWas: the page and the recording of the last time, so that work goes on there."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from meterlog.profile import settings_folder
from meterlog.window.kept_file import keep, read_kept
from meterlog.window.pages import Page

_FILE = "where.json"


@dataclass(frozen=True, slots=True)
class Where:
    """A place in the work.

    Attributes
    ----------
    page : Page
    recording : Path or None
        That was on show; None where there was none.
    """

    page: Page = Page.JOB
    recording: Path | None = None


class WhereIWas:
    """Kept in one file; where that fails, only the convenience is lost.

    Parameters
    ----------
    settings : Path or None
        None: the user's settings folder.
    """

    def __init__(self, settings: Path | None = None) -> None:
        self._path = (settings_folder() if settings is None else settings) / _FILE

    def load(self) -> Where | None:
        """Give the place of the last time; None where there is none.

        A recording that is gone, or was never sealed, is left out.
        """
        try:
            found = read_kept(self._path)
            page, told = Page(found["page"]), found["recording"]
            recording = Path(told) if isinstance(told, str) and told else None
        except (OSError, ValueError, TypeError, KeyError):
            return None
        sealed = recording is not None and (recording / "bagit.txt").is_file()
        return Where(page, recording if sealed else None)

    def keep(self, where: Where) -> None:
        """Keep a place."""
        values = {"page": int(where.page), "recording": str(where.recording or "")}
        keep(self._path, values)
