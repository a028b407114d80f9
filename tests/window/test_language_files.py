"""The files of languages: up to the source, complete, compiled, and with the same values in."""

import ast
import json
import re
import subprocess
import sys
import xml.etree.ElementTree as Xml
from pathlib import Path

import pytest
from PySide6.QtCore import QTranslator

LANGUAGES = Path(__file__).parents[1] / "languages"
sys.path.insert(0, str(LANGUAGES))

from collect import (  # noqa: E402 - beside the files that it makes
    NOT_SHOWN,
    PACKAGE,
    engine_files,
    engine_templates,
    profile_words,
    templates_of,
    window_texts,
)
from make import FOLDER, finished_texts  # noqa: E402

GERMAN = FOLDER / "de.ts"
_VALUE = re.compile(r"\{[^{}]*\}")


def messages(file, context):
    """Give (source, meaning, [translations], finished) of each text."""
    for group in Xml.parse(file).getroot().iter("context"):
        if group.findtext("name") == context:
            for one in group.iter("message"):
                said = one.find("translation")
                forms = [form.text or "" for form in said.iter("numerusform")]
                yield (
                    one.findtext("source"),
                    one.findtext("comment") or "",
                    forms or [said.text or ""],
                    said.get("type") is None,
                )


def test_every_text_of_the_window_is_in_the_file_and_no_other():
    source = {(one.words, one.meaning) for one in window_texts()}
    kept = {(words, meaning) for words, meaning, _, _ in messages(GERMAN, "window")}
    assert source - kept == set(), "run make languages, and translate them"
    assert kept - source == set(), "run make languages"


def test_german_lacks_no_text_of_the_window():
    lacking = [one for one in messages(GERMAN, "window") if not (one[3] and all(one[2]))]
    assert lacking == []


def test_german_lacks_no_sentence_of_the_engine():
    window = {words for words, _, _, finished in messages(GERMAN, "window") if finished}
    engine = {words for words, _, said, finished in messages(GERMAN, "engine") if finished and said}
    source = set(engine_templates())
    assert source - window - engine == set(), "run make languages, and translate them"
    assert engine - source == set(), "run make languages"


def test_of_the_engine_only_what_a_reason_is_given_for_is_left_out():
    names = {file.relative_to(PACKAGE).as_posix() for file in PACKAGE.rglob("*.py")}
    shown = {file.relative_to(PACKAGE).as_posix() for file in engine_files()}
    assert all(any(name.startswith(left) for name in names) for left in NOT_SHOWN)
    assert all(NOT_SHOWN.values())
    assert {"circuit/outcomes.py", "analysis/compare/pair.py", "profile/catalogue.py"} <= shown


def test_a_sentence_that_comes_into_the_engine_is_found():
    source = """
def told(where, why):
    \"\"\"Say it.\"\"\"
    raise MeterlogError(f"{where} fell off: {why}.", remedy="Pick it up.")
    raise ValueError("a programmer's mistake")
    return "{}: gone for good".format(where), "SELECT a FROM b", "key-of-it"
"""
    assert set(templates_of(ast.parse(source))) == {
        "{0} fell off: {1}.",
        "Pick it up.",
        "{0}: gone for good",
    }


def test_what_shipped_profiles_call_their_things_is_found():
    assert {"main fuse", "motor plug", "repair the wire"} <= profile_words()


@pytest.mark.parametrize("context", ["window", "engine"])
def test_the_values_of_a_text_are_in_its_translation(context):
    wrong = []
    for source, _, said, finished in messages(GERMAN, context):
        for one in said if finished else ():
            values = set(_VALUE.findall(source))
            if context == "window" and set(_VALUE.findall(one)) != values:
                wrong.append((source, one))
            if context == "engine" and not set(_VALUE.findall(one)) <= values:
                wrong.append((source, one))
    assert wrong == []


def test_the_compiled_file_says_what_the_source_file_says():
    words = QTranslator()
    assert words.load(str(GERMAN.with_suffix(".qm")))
    other = []
    for context in ("window", "engine"):
        for source, meaning, said, finished in messages(GERMAN, context):
            if finished:
                counts = (1, 2) if len(said) > 1 else (-1,)
                if [words.translate(context, source, meaning, n) for n in counts] != said:
                    other.append(source)
    assert other == [], "run make languages"


def test_the_templates_beside_it_are_those_of_the_source_file():
    kept = json.loads(GERMAN.with_suffix(".json").read_text("utf-8"))
    assert kept == finished_texts(GERMAN), "run make languages"


def test_a_text_that_comes_in_is_found_and_waits_for_its_translation(tmp_path):
    from collect import Text
    from make import calls

    source, file = tmp_path / "texts.py", tmp_path / "xx.ts"
    text = [Text('Say "so", or not\nat all: {why}.'), Text("{many} ports", counts=True)]
    source.write_text(calls(text, ["{0} of {1}"]), "utf-8")
    tool = Path(sys.executable).parent / "pyside6-lupdate"
    done = subprocess.run(
        [tool, str(source), "-ts", str(file)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert {one[0] for one in messages(file, "window")} == {one.words for one in text}
    assert not any(one[3] for one in messages(file, "window"))
    assert [one[0] for one in messages(file, "engine")] == ["{0} of {1}"]
