"""Words: each text that the window shows, in the language it was opened in.

English is the language the texts are written in; then nothing is loaded and nothing looked up.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

CONTEXT = "window"
"""The one context of the window's texts in the files of languages."""


class _Loaded:
    """Whether a language is loaded: else a text is its own translation."""

    language = False


def look_up_texts(*, loaded: bool) -> None:
    """Say whether a language is loaded, whose texts are to be looked up."""
    _Loaded.language = loaded


def say(text: str, /, meaning: str = "", **values: object) -> str:
    """Give a text in the language of the window, its values put in.

    Parameters
    ----------
    text : str
        In English, with the values' names in braces. Written out where it is called, so that it is
        found when the files of languages are made; or marked with :func:`later`.
    meaning : str
        Tells apart texts that only English writes the same.
    **values
        Numbers as text, see :mod:`meterlog.window.numbers`.

    Returns
    -------
    str
        The text as it is, if the language has none for it.
    """
    if _Loaded.language and text:
        text = QCoreApplication.translate(CONTEXT, text, meaning)
    return text.format(**values) if values else text


def say_many(count: int, one: str, many: str, /, **values: object) -> str:
    """Give a text that counts, in the form that the language has for this number.

    Parameters
    ----------
    count : int
    one, many : str
        In English, for 1 and for any other number. The files of languages hold ``many`` alone,
        with as many forms as the language has.
    **values
        What stands in braces.
    """
    if _Loaded.language:
        text = QCoreApplication.translate(CONTEXT, many, "", count)
        if text == many and count == 1:
            text = one
    else:
        text = one if count == 1 else many
    return text.format(**values) if values else text


def later(text: str, /) -> str:
    """Give the text itself, marked to be found for the files of languages and said later."""
    return text
