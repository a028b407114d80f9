"""silent_between: a short silence within a stretch without current does not make two of it."""

from __future__ import annotations


def silent_between(before_ns: int, silence_ns: int, after_ns: int) -> bool:
    """Tell whether a silence between two stretches of one kind is taken for a part of them.

    Nothing shows that anything else was so meanwhile, and what was seen lasted longer on both
    sides: common practice, no source.

    Parameters
    ----------
    before_ns, silence_ns, after_ns : int, nanoseconds
        Their lengths.
    """
    return silence_ns < min(before_ns, after_ns)
