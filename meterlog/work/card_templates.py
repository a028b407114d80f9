"""CardTemplates: named job cards from which the empty fields of others are filled."""

from __future__ import annotations

from pathlib import Path

from meterlog.model.errors import UsageError
from meterlog.model.job_card import JobCard, for_template
from meterlog.profile import settings_folder
from meterlog.work.job_cards import change_card, load_card

_ENDING = ".json"
_LONGEST = 60
_DEVICES = {
    "con",
    "prn",
    "aux",
    "nul",
    *(f"{port}{n}" for port in ("com", "lpt") for n in range(10)),
}
"""Names that one system gives to devices."""


class CardTemplates:
    """The templates of this user, one file each.

    Parameters
    ----------
    folder : Path or None
        None: ``job-templates`` in the user's settings folder. It need not exist.

    Attributes
    ----------
    folder : Path
    """

    def __init__(self, folder: Path | None = None) -> None:
        self.folder = settings_folder() / "job-templates" if folder is None else folder

    def names(self) -> tuple[str, ...]:
        """Give the names of all templates."""
        files = self.folder.glob(f"*{_ENDING}") if self.folder.is_dir() else ()
        return tuple(sorted(file.stem for file in files if not file.name.startswith(".")))

    def load(self, name: str) -> JobCard:
        """Give a template.

        Raises
        ------
        UsageError
            If there is none of this name, or its file is no job card.
        """
        path = self._path(name)
        if not path.is_file():
            known = ", ".join(self.names())
            raise UsageError(
                "there is no such template.",
                subject=name,
                remedy=f"There are: {known}." if known else "Make one with --as-template.",
            )
        return load_card(path)

    def keep(self, name: str, card: JobCard) -> Path:
        """Keep a card as a template, without what belongs to its one job only.

        Raises
        ------
        UsageError
            If the name is none that every system takes, there is such a template already, or
            nothing of the card can be used for another job.
        DiskFailed
            If it can't be written.
        """
        path, template = self._path(name), for_template(card)
        if path.exists():
            raise UsageError(
                "there is such a template already.",
                subject=name,
                remedy=f"Choose another name, or remove {path}.",
            )
        if template == JobCard():
            raise UsageError(
                "would be empty: nothing on this card fits another job.",
                subject=name,
                remedy="State what repeats first, such as fitted_by or new_part.number.",
            )
        change_card(path, lambda _: template)
        return path

    def _path(self, name: str) -> Path:
        plain = all(letter.isalnum() or letter in " -_" for letter in name)
        if (
            not plain
            or name != name.strip()
            or not 0 < len(name) <= _LONGEST
            or (name.lower() in _DEVICES)
        ):
            raise UsageError(
                "is no name for a template.",
                subject=name,
                remedy=f"Use letters, digits, blanks and hyphens, at most {_LONGEST}.",
            )
        return self.folder / f"{name}{_ENDING}"
