"""ComparisonFiles: a comparison as text to be read and as JSON to be parsed."""

from __future__ import annotations

import json
from pathlib import Path

from meterlog.evidence.comparison_json import comparison_to_dict
from meterlog.evidence.comparison_text import comparison_lines
from meterlog.model import Comparison
from meterlog.model.errors import EvidenceError
from meterlog.model.visible_text import steerless

_WIDTH = 100


def write_comparison(comparison: Comparison, folder: Path) -> tuple[Path, Path]:
    """Write ``comparison.txt`` and ``comparison.json`` into a folder that is there.

    Parameters
    ----------
    comparison : Comparison
    folder : Path

    Returns
    -------
    tuple of Path

    Raises
    ------
    EvidenceError
        If they can't be written.
    """
    words = folder / "comparison.txt"
    numbers = folder / "comparison.json"
    content = json.dumps(
        comparison_to_dict(comparison), indent=2, ensure_ascii=False, allow_nan=False
    )
    try:
        said = "\n".join(comparison_lines(comparison, _WIDTH)) + "\n"
        words.write_text(steerless(said), encoding="utf-8")
        numbers.write_text(content + "\n", encoding="utf-8")
    except OSError as error:
        raise EvidenceError(
            f"the comparison can't be written: {error.strerror}.",
            subject=str(folder),
            remedy="Choose a folder that you may write to, on a disk with room.",
        ) from error
    return words, numbers
