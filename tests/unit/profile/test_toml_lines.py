"""Where a key stands: told by going over the text, since tomllib does not tell."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.profile import toml_lines
from meterlog.profile.toml_lines import line_of

TEXT = '''# a note with """ in it
title = "a # b [c]"  # a note
when = 1979-05-27 07:32:00
note = """
x = 3
[y] \\" "" """
link.baud = 9600
[scpi]
setup = [ # ]
  "a = [b",
  'c',
]
"odd key" = { a = 1, b = [1,
  2] }
[deep.er]
k = 1
[[channels]]
name = "a"
[channels.accuracy]
digits = 1
[[channels]]
name = "b"
  [[channels.ranges]]
  top = 1
  [[channels.ranges]]
  top = 2
'''


@pytest.mark.parametrize(
    ("place", "line"),
    [
        (("title",), 2),
        (("when",), 3),
        (("note",), 4),
        (("x",), None),
        (("y",), None),
        (("link",), 7),
        (("link", "baud"), 7),
        (("scpi",), 8),
        (("scpi", "setup"), 9),
        (("scpi", "setup", 0), 10),
        (("scpi", "setup", 1), 11),
        (("scpi", "a"), 8),
        (("scpi", "odd key", "a"), 13),
        (("scpi", "odd key", "b", 1), 14),
        (("deep",), 15),
        (("deep", "er", "k"), 16),
        (("channels", 0, "name"), 18),
        (("channels", 0, "accuracy", "digits"), 20),
        (("channels", 1, "name"), 22),
        (("channels", 1, "ranges", 0, "top"), 24),
        (("channels", 1, "ranges", 1, "top"), 26),
        (("channels", 1, "quantity"), 21),
        (("channels", 0, "accuracy", "basis"), 19),
        (("absent",), None),
    ],
)
def test_a_key_is_found_on_its_line_and_a_missing_one_at_its_table(place, line):
    tomllib.loads(TEXT)
    assert line_of(TEXT, place) == line


words = st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=12)
keys = st.text("abcXYZ019-_", min_size=1, max_size=6)
scalars = st.one_of(
    words.map(lambda word: '"' + word.replace("\\", "\\\\").replace('"', '\\"') + '"'),
    st.sampled_from(["'''\n[a]\nb = 1'''", '"""\n"x" = 2\n"""', "'it = [3]'", "[]", "{}"]),
    st.integers().map(str),
    st.sampled_from(["1.5e3", "true", "2030-01-02", "2030-01-02 03:04:05Z", "[1, [2,\n 3]]"]),
)


@given(st.lists(st.tuples(keys, scalars), min_size=1, max_size=8, unique_by=lambda pair: pair[0]))
def test_each_key_of_any_text_is_found_on_the_line_it_was_written_to(pairs):
    text, lines = "# begin\n[t]\n", {}
    for key, value in pairs:
        lines[key] = text.count("\n") + 1
        text += f"{key} = {value}  # {key} = [\n"
    assert set(tomllib.loads(text)["t"]) == set(lines)
    assert {key: line_of(text, ("t", key)) for key in lines} == lines


def test_a_text_is_gone_through_once_however_often_it_is_asked(monkeypatch):
    made = []

    class Counted(toml_lines._Scan):
        def __init__(self, text):
            made.append(text)
            super().__init__(text)

    monkeypatch.setattr(toml_lines, "_Scan", Counted)
    text = "# asked for once only\n" + "".join(f"[[many]]\nname = {at}\n" for at in range(50))
    assert [line_of(text, ("many", at, "name")) for at in range(50)] == list(range(3, 103, 2))
    assert made == [text]
