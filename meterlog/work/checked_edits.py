"""CheckedEdits: a check of a recording that names the edits on top of it, which no seal holds."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from meterlog.evidence.check_progress import Tell, nobody
from meterlog.evidence.checked import Checked, check
from meterlog.evidence.shown_text import shown
from meterlog.model.amendment import amendment_words
from meterlog.model.errors import MeterlogError
from meterlog.model.visible_text import one_line
from meterlog.work.amendments import amendments_of


def check_all(path: Path, key: str = "", tell: Tell = nobody) -> Checked:
    """Check a recording's folder with its edits, or a pack.

    Parameters
    ----------
    path : Path
    key : str
    tell : callable
        As of :func:`~meterlog.evidence.checked.check`.

    Returns
    -------
    Checked
        Of a recording with edits on top: how many, each in words. Not intact where they are
        damaged or end too early, though the recording itself may be.

    Raises
    ------
    UsageError, EvidenceError
        As of that.
    """
    checked = check(path, key, tell)
    if "folder" not in checked.facts:
        return checked
    try:
        edits, damage = amendments_of(path)
    except MeterlogError as error:
        edits, damage = (), (str(error),)
    facts = {
        **checked.facts,
        "edits": [amendment_words(one) for one in edits],
        "edits_damage": list(damage),
    }
    if not edits and not damage:
        return replace(checked, facts=facts)
    many = "1 edit" if len(edits) == 1 else f"{len(edits)} edits"
    lines = [*checked.lines]
    if damage:
        lines[:0] = [f"EDITS NOT WHOLE: {shown(one)}" for one in damage]
    if edits:
        lines.append(
            f"known: on top of it, where its seal does not reach: {many}. Review, compare, export"
            f" and claim judge with that:"
        )
        lines += [f"edit: {shown(amendment_words(one))}" for one in edits]
    head = checked.head
    if damage and checked.intact:
        head = f"{one_line(path)}: as sealed, but the edits on top of it are NOT WHOLE."
    facts["intact"] = intact = checked.intact and not damage
    return Checked(intact, head, tuple(lines), facts)
