"""The text of a circuit profile: what an editor adds, and what no terminal should get."""

import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.profile import circuit_faults, circuit_profile, load_circuit

SMALL = (Path(__file__).parent / "small_circuit.toml").read_text(encoding="utf-8")


def test_a_byte_order_mark_is_passed_over(tmp_path):
    file = tmp_path / "small.toml"
    file.write_bytes(SMALL.encode("utf-8-sig"))
    assert load_circuit(str(file)).name == "small"


@pytest.mark.parametrize("sign", ["\x9b", "\x7f", "\u202e"])
def test_words_hold_nothing_that_moves_a_terminals_cursor_or_turns_text_round(sign):
    label = next(line for line in SMALL.splitlines() if line.startswith("title"))
    text = SMALL.replace(label, f'title = "small{sign} one"')
    (fault,) = circuit_faults(text, "p.toml")
    assert "title" in fault.message or "TOML" in fault.message  # TOML itself refuses some


LINES = SMALL.splitlines(keepends=True)


@given(
    gone=st.sets(st.integers(0, len(LINES) - 1), min_size=1, max_size=4),
    twice=st.sets(st.integers(0, len(LINES) - 1), max_size=2),
)
@settings(max_examples=60, deadline=None)
def test_no_text_makes_anything_but_a_circuit_or_faults_in_words(gone, twice):
    text = "".join(
        line * (2 if index in twice else 1) for index, line in enumerate(LINES) if index not in gone
    )
    found = circuit_faults(text, "p.toml")
    if not found:
        assert circuit_profile("p", text, "p.toml").text == text
        assert tomllib.loads(text)
    assert all(error.message and error.remedy for error in found)
