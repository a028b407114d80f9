"""The whole window in another language: German, and one in which every text can be told apart."""

import re
import subprocess
import sys
import xml.etree.ElementTree as Xml
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QCheckBox,
    QComboBox,
    QLabel,
    QLineEdit,
    QListWidget,
    QPlainTextEdit,
    QPushButton,
    QTableView,
)

from meterlog.cli import build_parser
from meterlog.model.errors import UsageError
from meterlog.window.application import open_window
from meterlog.window.language import FOLDER, languages, speak, speak_english, use_translations
from meterlog.window.main_window import MainWindow
from meterlog.window.pages import Page
from meterlog.window.sentences import sentence
from meterlog.window.words import say, say_many

_WORD = re.compile(r"[A-Za-z]{2,}")
_HOLE = re.compile(r"(\{[^{}]*\}|&[a-z]+;|<[^>]*>|\n)")
PLAIN = re.compile(
    r"meterlog|A4|V|A|km|°C|min|"  # the program's name, a size of paper, units
    r"/\S+.*|socket://\S+|"  # ports and folders
    r"(feed|return|current|volts|amps|battery)( \([VA]\))?|"  # channels of a profile
    r"[a-z0-9]+(-[a-z0-9]+)*|"  # names of profiles and of recordings
    r".*\(generic\)|12 V: .*|24 V: .*|"  # titles of profiles
    r"WO 1 \(invented\) · invented"  # what the person called a job
)
"""What comes from profiles, from files or from the person, and is shown as it is."""


@pytest.fixture
def pseudo(tmp_path):
    """A language of which each text stands in brackets and is two fifths longer."""
    tree = Xml.parse(FOLDER / "de.ts")
    for message in tree.getroot().iter("message"):
        source, said = message.findtext("source"), message.find("translation")
        longer = f"⟦{source}{'·' * round(0.4 * len(_HOLE.sub('', source)))}⟧"
        forms = list(said)
        for form in forms:
            form.text = longer
        said.text = None if forms else longer
    file = tmp_path / "xx.ts"
    tree.write(file, "utf-8", xml_declaration=True)
    tool = Path(sys.executable).parent / "pyside6-lrelease"
    subprocess.run([tool, "-silent", file, "-qm", file.with_suffix(".qm")], check=True)
    use_translations(file.with_suffix(".qm"))
    yield
    speak_english()


@pytest.fixture
def german():
    """German, as ``--language de`` loads it."""
    assert speak("de") == "de"
    yield
    speak_english()


@pytest.fixture
def small(qtbot, monkeypatch, tmp_path):
    """Make a window of the smallest size, filled."""

    def make():
        monkeypatch.setattr("meterlog.window.meters_page.recordings_folder", lambda: tmp_path)
        window = MainWindow()
        qtbot.addWidget(window)
        window.resize(1024, 600)
        window.show()
        qtbot.waitExposed(window)
        window.fill()
        return window

    return make


def texts(window):
    """Give (widget, text) of all that can be read in labels, buttons, heads and fields."""
    for widget in window.findChildren(QLabel) + window.findChildren(QAbstractButton):
        if widget.isVisible() and widget.text():
            yield widget, widget.text()
    for field in window.findChildren(QLineEdit) + window.findChildren(QPlainTextEdit):
        if field.isVisible() and field.placeholderText():
            yield field, field.placeholderText()
    for box in window.findChildren(QComboBox):
        if box.isVisible():
            yield from ((box, box.itemText(at)) for at in range(box.count()))
    for listed in window.findChildren(QListWidget):
        if listed.isVisible():
            yield from ((listed, listed.item(at).text()) for at in range(listed.count()))
    for table in window.findChildren(QTableView):
        if table.isVisible():
            model = table.model()
            for column in range(model.columnCount()):
                yield table, str(model.headerData(column, Qt.Orientation.Horizontal) or "")


def on_each_page(window, qtbot):
    for page in Page:
        window.show_page(page)
        qtbot.wait(60)
        yield page


def cut_off(widget):
    """Tell whether a text does not fit where it stands."""
    if isinstance(widget, (QPushButton, QCheckBox)):
        return widget.sizeHint().width() > widget.width() + 1
    if isinstance(widget, QLabel) and widget.wordWrap():
        return widget.heightForWidth(widget.width()) > widget.height() + 1
    return False


def test_what_is_cut_off_is_seen(qtbot):
    button, label = QPushButton("Anschlüsse neu suchen"), QLabel("Noch nichts gefunden. " * 9)
    label.setWordWrap(True)
    for widget in (button, label):
        qtbot.addWidget(widget)
        widget.resize(900, 200)
        assert not cut_off(widget)
        widget.resize(60, 20)
        assert cut_off(widget)


def test_every_text_of_every_page_is_translated(pseudo, small, show, qtbot):
    window = small()
    show(window)
    bare = {
        (page.name, text)
        for page in on_each_page(window, qtbot)
        for _, text in texts(window)
        if "⟦" not in text and _WORD.search(_HOLE.sub("", text)) and not PLAIN.fullmatch(text)
    }
    assert bare == set()


def test_every_control_is_named_in_the_language(pseudo, small, qtbot):
    window = small()
    bare = {
        (page.name, widget.accessibleName())
        for page in on_each_page(window, qtbot)
        for widget in [
            *window.findChildren(QAbstractButton),
            *window.findChildren(QAbstractItemView),
        ]
        if widget.isVisible()
        and _WORD.search(widget.accessibleName())
        and "⟦" not in widget.accessibleName()
    }
    assert bare == set()


@pytest.mark.parametrize("language", ["pseudo", "german"])
def test_nothing_is_cut_off_in_the_smallest_window(request, language, small, qtbot):
    request.getfixturevalue(language)
    window = small()
    cut = {
        (page.name, text)
        for page in on_each_page(window, qtbot)
        for widget, text in texts(window)
        if cut_off(widget)
    }
    assert cut == set()


def test_german_is_on_every_page_and_numbers_have_a_comma(german, small, show, qtbot):
    window = small()
    show(window)
    assert [one.text() for one in window.header.pages.values()] == [
        "Auftrag", "Messgeräte", "Stromlauf", "Kurve", "Vorher/nachher", "Antrag", "Archiv",
    ]  # fmt: skip
    page = window.desk.run_page
    assert page.volts.text == "4,25"
    assert page.steps.table.item(0, 3).text() == "3,81"
    assert "Stufen, eingeschwungen" in page.steps.title.text()
    assert "NICHT BESTANDEN" in page.findings.list.item(0).text()


def test_sentences_of_the_engine_are_said_with_their_values(german):
    assert sentence("Speed 3 draws 8.51 ± 0.30 A when running; allowed 6.5 to 12.5 A: pass.") == (
        "Stufe 3 zieht 8,51 ± 0,30 A im Lauf; erlaubt 6,5 bis 12,5 A: bestanden."
    )
    assert sentence("Nothing was found wrong. Not tried: speed 4.") == (
        "Nichts Falsches wurde gefunden. Nicht versucht: Stufe 4."
    )


@pytest.mark.parametrize(
    ("engine", "said"),
    [
        (
            "This is proven by the trace: 4 times dead between 19.5 s and 40.2 s, 4.25 s together.",
            "Das ist durch die Kurve bewiesen: 4-mal tot zwischen 19,5 s und 40,2 s, zusammen"
            " 4,25 s.",
        ),
        (
            "No zero of motor-current was taken: 0.5 A is no zero (at most 0.3 A): a current is"
            " flowing. Take the clamp off the wire and shut it, then take the zero again.",
            "Kein Nullpunkt genommen (Motorstrom): 0,5 A sind kein Nullpunkt (höchstens 0,3 A): es"
            " fließt ein Strom. Die Zange von der Leitung nehmen und schließen, dann den Nullpunkt"
            " neu nehmen.",
        ),
        (
            "Not stated: fan housing was 'open'; say what it is now.",
            "Nicht angegeben: Gebläsegehäuse war 'offen'; angeben, was es jetzt ist.",
        ),
        (
            "/media/stick 1/claim.zip: intact. 54 files agree with the lists of the pack.",
            "/media/stick 1/claim.zip: unverändert. 54 Dateien stimmen mit den Listen des Pakets"
            " überein.",
        ),
    ],
)
def test_values_that_are_words_figures_or_files_go_into_their_sentences(german, engine, said):
    assert sentence(engine) == said


def test_a_sentence_that_is_not_known_stays_whole(german):
    words = "A new kind of sentence: 12.5 V of it, nobody translated that."
    assert sentence(words) == words


def test_without_a_language_nothing_is_looked_up():
    assert say("Add a meter") == "Add a meter"
    assert say("at speed {speeds}", speeds="3") == "at speed 3"
    assert (say_many(1, "1 port", "{many} ports", many=1)) == "1 port"
    assert (say_many(2, "1 port", "{many} ports", many=2)) == "2 ports"
    assert sentence("Nothing was found wrong.") == "Nothing was found wrong."


def test_a_text_that_counts_has_the_forms_of_the_language(german):
    assert say_many(1, "1 port", "{many} ports", many=1) == "1 Anschluss"
    assert say_many(3, "1 port", "{many} ports", many=3) == "3 Anschlüsse"


def test_a_word_with_two_meanings(german):
    assert (say("free"), say("free", "sign")) == ("lösen", "frei")
    assert say("open", "condition") == "offen"


def test_a_language_nobody_translated_is_refused():
    with pytest.raises(UsageError, match="does not speak") as refused:
        speak("tlh")
    assert "de" in refused.value.remedy
    assert languages()[0] == "en"


def test_english_loads_no_words(qapp):
    assert speak("en") == "en"
    assert QApplication.translate("window", "Add a meter") == "Add a meter"
    assert say("Add a meter") == "Add a meter"


def test_the_language_is_chosen_on_the_command_line():
    for command in ("window", "demo"):
        parser = build_parser(command)
        assert parser.parse_args([command, "--language", "de"]).language == "de"
        assert parser.parse_args([command]).language is None, "that of the system"


def test_a_window_in_a_language_nobody_translated_does_not_open(qtbot):
    with pytest.raises(UsageError, match="does not speak"):
        open_window(language="tlh")
