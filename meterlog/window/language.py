"""Language: which one the window speaks, and which decimal sign goes with it."""

from __future__ import annotations

import json
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from meterlog.window.numbers import set_decimal_sign
from meterlog.window.sentences import know_texts
from meterlog.window.words import look_up_texts

FOLDER = Path(__file__).parent / "languages"
ENGLISH = "en"
_loaded: list[QTranslator] = []


def languages() -> tuple[str, ...]:
    """Give the languages that the window speaks, such as ``de``; English first."""
    return (ENGLISH, *sorted(file.stem for file in FOLDER.glob("*.qm")))


def speak(asked: str | None = None) -> str:
    """Let the window speak a language; before any widget is made.

    Parameters
    ----------
    asked : str or None
        Such as ``de``; None: the system's, or English where there are no words for it.

    Returns
    -------
    str
        The language spoken.

    Raises
    ------
    UsageError
        If the window does not speak the language asked for.
    """
    known = languages()
    locale = QLocale(asked) if asked else QLocale.system()
    if asked and asked not in known:
        from meterlog.model.errors import UsageError  # brings numpy: only where it is needed

        raise UsageError(
            "the window does not speak this language.",
            subject=asked,
            remedy=f"It speaks: {', '.join(known)}.",
        )
    wanted = [asked] if asked else [one.partition("-")[0] for one in locale.uiLanguages()]
    # The system's first that is known: who has German first and English next reads German.
    language = next((one for one in wanted if one in known), ENGLISH)
    set_decimal_sign(locale.decimalPoint())
    if language != ENGLISH:
        use_translations(FOLDER / f"{language}.qm", QLocale(language))
    return language


def use_translations(file: Path, locale: QLocale | None = None) -> None:
    """Load the words of a language, its templates, and Qt's own words beside them.

    Raises
    ------
    UsageError
        If the file can't be loaded.
    """
    application = QCoreApplication.instance()
    words = QTranslator(application)
    if not words.load(str(file)):
        from meterlog.model.errors import UsageError

        raise UsageError(
            "can't be read as words of a language.",
            subject=str(file),
            remedy="Install the program anew, or ask for English: --language en.",
        )
    QCoreApplication.installTranslator(words)
    if locale is not None:
        own = QTranslator(application)
        folder = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
        if own.load(locale, "qtbase", "_", folder):
            QCoreApplication.installTranslator(own)
            _loaded.append(own)
    _loaded.append(words)
    look_up_texts(loaded=True)
    texts = file.with_suffix(".json")
    know_texts(json.loads(texts.read_text("utf-8")) if texts.is_file() else ())


def speak_english() -> None:
    """Let the words of the language go again; what is on screen stays as it is."""
    while _loaded:
        QCoreApplication.removeTranslator(_loaded.pop())
    look_up_texts(loaded=False)
    know_texts(())
    set_decimal_sign(".")
