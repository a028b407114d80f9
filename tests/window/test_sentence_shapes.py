"""Sentences with other figures are said as if they were read anew."""

import re
import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.window.language import speak, speak_english
from meterlog.window.sentence_shapes import SentenceShapes
from meterlog.window.sentences import english_left, know_names, sentence
from tests.window.test_engine_in_german import review_of, texts_of

NUMBER = re.compile(r"[0-9](?:[0-9.,]*[0-9])?")


@pytest.fixture(autouse=True)
def german():
    assert speak("de") == "de"
    yield
    speak_english()


def with_figures(text, draw):
    """Put other figures of the same kind in a text."""

    def other(found):
        decimals = len(found[0].rpartition(".")[2]) if "." in found[0] else 0
        return f"{draw(st.integers(1, 99_999)) / 10**decimals:.{decimals}f}"

    return NUMBER.sub(other, text)


@pytest.fixture(scope="module")
def texts():
    """All that the window says of two runs, with a figure in it."""
    found = [text for name in ("dead-spot", "worn") for text in texts_of(review_of(name))]
    return [text for text in found if NUMBER.search(text)]


@given(st.data())
def test_other_figures_are_said_like_a_sentence_that_is_read_anew(texts, data):
    text = data.draw(st.sampled_from(texts))
    other = with_figures(text, data.draw)
    know_names((), of="test")
    sentence(text)
    by_shape = sentence(other)
    know_names((data.draw(st.sampled_from(("a", "b", "c"))),), of="test")  # forgets all
    if english_left(other) == 0:
        assert by_shape == sentence(other)
    assert sorted(map(german_figure, NUMBER.findall(other))) == sorted(NUMBER.findall(by_shape))


def german_figure(figure):
    return figure.replace(".", ",")


def test_a_run_with_other_figures_costs_next_to_nothing(texts):
    for text in texts:
        sentence(text)
    others = [NUMBER.sub(lambda found: found[0][:-1] + "7", text) for text in texts]
    begun_s = time.thread_time()
    said = [sentence(text) for text in others]
    shapes_s = time.thread_time() - begun_s
    know_names(("forget all",), of="test")
    begun_s = time.thread_time()
    for text in others:
        sentence(text)
    assert shapes_s < (time.thread_time() - begun_s) / 5
    assert said
    know_names((), of="test")


@pytest.mark.parametrize(
    ("text", "said", "other", "expected"),
    [
        ("speed 1: 6.02 A", "Stufe 1: 6,02 A", "speed 4: 19.1 A", "Stufe 4: 19,1 A"),
        ("3 of 4 within 2 s", "in 2 s 3 von 4", "5 of 6 within 7 s", "in 7 s 5 von 6"),
        ("1 of 1 at 2 s", "1 von 1 nach 2 s", "1 of 3 at 2 s", "1 von 3 nach 2 s"),
    ],
)  # fmt: skip
def test_figures_stand_where_the_translation_has_them(text, said, other, expected):
    shapes = SentenceShapes()
    shapes.learn(text, said)
    assert shapes.say(other) == expected


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1 of 1 within 2 s", "in 2 s 1 von 1"),  # which of the two ones is which?
        ("speed 1 draws 6 A", "Stufe 1 zieht nichts"),
        ("no figure", "keine Zahl"),
        ("in /tmp/run-1.5: damaged", "in /tmp/run-1.5: beschädigt"),  # a name keeps its point
    ],
)
def test_what_is_not_plain_is_not_kept(text, said):
    shapes = SentenceShapes()
    shapes.learn(text, said)
    assert shapes.say(text) is None


def test_whole_numbers_and_others_are_told_apart():
    shapes = SentenceShapes()
    shapes.learn("run 15 is open", "Lauf 15 ist offen")
    assert shapes.say("run 1.5 is open") is None
    assert shapes.say("run 16 is open") == "Lauf 16 ist offen"
