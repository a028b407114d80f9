"""ShownText: words with names from a stranger's file, safe to print.

A name can hold marks that turn the reading direction or move the cursor, and so show another name
or another verdict than there is; and it can be longer than any page.
"""

from __future__ import annotations

_MOST = 4000


def shown(text: str, most: int = _MOST) -> str:
    r"""Give ``text`` with every character that is not printed as ``\\u`` and its number.

    Parameters
    ----------
    text : str
    most : int
        Longer texts lose their middle.

    Returns
    -------
    str
    """
    if len(text) > most:
        half = most // 2
        text = f"{text[:half]} [...] {text[-half:]}"
    return "".join(one if one.isprintable() else f"\\u{ord(one):04x}" for one in text)
