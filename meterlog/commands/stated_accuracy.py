"""What the person states about the accuracy of imported readings."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from meterlog.model import Accuracy

_NUMBER = r"\d+(?:\.\d*)?|\.\d+"
_FORM = re.compile(rf"(?P<percent>{_NUMBER})%?(\+(?P<absolute>{_NUMBER}))?", re.ASCII)
_REMEDY = (
    "Expected ROLE=PERCENT+ABSOLUTE, such as motor-current=1.5+0.05 for 1.5 % of the reading "
    "plus 0.05 A."
)


def accuracies(texts: Sequence[str], roles: Sequence[str]) -> tuple[tuple[str, Accuracy], ...]:
    """Read statements of the form ``ROLE=PERCENT+ABSOLUTE``.

    Parameters
    ----------
    texts : sequence of str
    roles : sequence of str
        Those that columns are assigned to.

    Returns
    -------
    tuple of (role, Accuracy)
        ±(percent of reading + absolute), the absolute part in the channel's unit.

    Raises
    ------
    UsageError
        If a statement does not read so, its role has no column or is stated twice, or the
        percentage is above 100.
    """
    from meterlog.model.errors import UsageError

    found: dict[str, Accuracy] = {}
    for text in texts:
        role, _, words = text.partition("=")
        if role not in roles:
            known = ", ".join(roles)
            raise UsageError(
                "its role has no column.", subject=text, remedy=f"Assigned are: {known}. {_REMEDY}"
            )
        if role in found:
            raise UsageError("is stated twice.", subject=f"--accuracy {role}", remedy="Once only.")
        found[role] = _accuracy(text, words)
    return tuple(found.items())


def _accuracy(text: str, words: str) -> Accuracy:
    from meterlog.model import Accuracy
    from meterlog.model.errors import UsageError

    match = _FORM.fullmatch(words.replace(" ", ""))
    if match is None:
        raise UsageError("is no accuracy.", subject=text, remedy=_REMEDY)
    percent, absolute = float(match["percent"]), float(match["absolute"] or 0.0)
    if percent > 100.0 or absolute > 1e6:
        raise UsageError(
            "is out of range.", subject=text, remedy="At most 100 % and 1000000 V or A. " + _REMEDY
        )
    if percent == absolute == 0.0:
        raise UsageError(
            "no meter is without error.", subject=text, remedy="See its data sheet. " + _REMEDY
        )
    return Accuracy(percent, 0.0, 0.0, absolute, "stated by hand at the import")
