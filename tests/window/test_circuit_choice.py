"""The titles of the circuits: read once each, and again where a file has changed."""

import os

import pytest

from meterlog.profile.folders import OWN_FOLDER
from meterlog.window import circuit_choice
from meterlog.window.circuit_choice import circuit_titles


@pytest.fixture
def own(monkeypatch, tmp_path):
    folder = tmp_path / "profiles" / "circuits"
    folder.mkdir(parents=True)
    monkeypatch.setenv(OWN_FOLDER, str(tmp_path / "profiles"))
    return folder / "bench.toml"


def test_the_nominal_voltage_comes_first(own):
    own.write_text('title = "Bench fan, 24 V"\nnominal_v = 24\n[part]\n', "utf-8")
    assert dict(circuit_titles())["bench"] == "24 V: Bench fan"


def test_a_file_is_read_once_and_again_once_it_changes(own, monkeypatch):
    own.write_text('title = "First"\n', "utf-8")
    assert dict(circuit_titles())["bench"] == "First"
    read = []
    monkeypatch.setattr(
        circuit_choice, "read_plain", lambda file: read.append(file) or file.read_bytes()
    )
    assert dict(circuit_titles())["bench"] == "First"
    assert read == []
    own.write_text('title = "Later"\n', "utf-8")
    os.utime(own, ns=(1, 1))
    assert dict(circuit_titles())["bench"] == "Later"
    assert read == [own]


@pytest.mark.parametrize("text", [b"title = 1\n", b"title = \n", b"\xff\xfe", b""])
def test_one_whose_head_is_no_good_is_offered_by_its_name(own, text):
    own.write_bytes(text)
    assert dict(circuit_titles())["bench"] == "bench"
