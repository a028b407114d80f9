"""AttachedNames: what the files of a pack are called inside its PDF.

Viewers and tools save what a PDF carries into one folder, so no name there has a folder in it:
``data/before/steps.csv`` is ``data.before.steps.csv``. Its name in the pack is its description.
"""

from __future__ import annotations

from collections.abc import Collection

from meterlog.model.errors import EvidenceError


def attached_name(name: str) -> str:
    """Give the name inside the PDF of a file that has ``name`` in the pack."""
    return name.replace("/", ".")


def attached_names(names: Collection[str]) -> dict[str, str]:
    """Give the names inside a PDF, by the names in the pack, sorted.

    Raises
    ------
    EvidenceError
        If two files would have one name.
    """
    given = {name: attached_name(name) for name in sorted(names)}
    if len({one.casefold() for one in given.values()}) < len(given):
        raise EvidenceError(
            "two of its files would have one name inside the PDF.",
            subject=", ".join(given),
            remedy="Give one of them another name.",
        )
    return given
