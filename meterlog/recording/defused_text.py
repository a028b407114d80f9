"""DefusedText: text that no spreadsheet runs as a formula, and the text back."""

from __future__ import annotations

import re

_WOULD_RUN = re.compile("'*[=+\\-@\t\r\n\uff1d\uff0b\uff0d\uff20]")
_DEFUSED = re.compile(f"'{_WOULD_RUN.pattern}")


def defused(text: str) -> str:
    """Give text that no spreadsheet runs as a formula.

    Parameters
    ----------
    text : str

    Returns
    -------
    str
        With an apostrophe in front where the first character would start a formula; with one more
        where a text begins so already, so that :func:`as_written` always gives the text back.

    Source
    ------
    OWASP, "CSV Injection": cells that begin with ``=``, ``+``, ``-``, ``@`` (also in full width),
    tab, carriage return or line feed.
    """
    return f"'{text}" if _WOULD_RUN.match(text) else text


def as_written(text: str) -> str:
    """Give the text that :func:`defused` was given."""
    return text[1:] if _DEFUSED.match(text) else text
