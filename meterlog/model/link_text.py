"""LinkText: how ``link`` events begin that say why nothing comes. The judgement reads them."""

from __future__ import annotations

LOST = "lost: "
"""The port went away; then the system's words."""
NOT_OPEN = "not open: "
"""It can't be opened again; then why."""
OPEN_AGAIN = "open again"
SILENT = "silent since "
"""No reading any more; then the time of the last one, and perhaps what is likely."""
SWITCHED_OFF = "(switched itself off?"
BACK = "back after "
"""A reading has come; then how long it was silent."""
WRONG_SPEED = "bytes come, none is understood"
OTHER_TEXT = "text comes, but not as the profile says"
OTHER_FRAMES = "frames of display segments come, not what the profile says"


def silent_since(heard_s: float) -> str:
    """Give what is told when nothing has come since ``heard_s``, seconds."""
    return f"silent since {heard_s:.3f} s"


def back_after(silent_s: float) -> str:
    """Give what is told when a reading comes after ``silent_s``, seconds."""
    return f"back after {silent_s:.3f} s"
