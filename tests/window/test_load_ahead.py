"""What is loaded beside the window, and what happens when it can't be."""

import threading

import pytest
from PySide6.QtCore import QObject

from meterlog.profile import catalogue
from meterlog.window.last_setup import LastSetup, Setup
from meterlog.window.load_ahead import LoadAhead, read_circuits


@pytest.fixture
def parent(qtbot):
    return QObject()


def test_what_waits_is_called_in_its_own_thread_when_all_is_there(parent, qtbot):
    called = []
    LoadAhead(
        parent,
        ("json", "calendar"),
        lambda: called.append(("then", threading.get_ident())),
        lambda: called.append(("also", threading.get_ident())),
    )
    qtbot.waitUntil(lambda: len(called) == 2)
    (first, beside), (last, here) = called
    assert (first, last) == ("also", "then")
    assert here == threading.get_ident() != beside


def test_what_can_not_be_loaded_is_left_to_who_needs_it(parent, qtbot):
    called = []
    LoadAhead(parent, ("meterlog.no_such_module",), lambda: called.append(1))
    qtbot.waitUntil(lambda: called == [1])


def test_the_circuit_of_last_time_is_read_once(monkeypatch):
    LastSetup().keep(Setup(circuit="low-side-linear-12v"))
    read_circuits()
    monkeypatch.setattr(catalogue, "circuit_profile", lambda *_: pytest.fail("read again"))
    assert catalogue.load_circuit("low-side-linear-12v").name == "low-side-linear-12v"


def test_a_changed_circuit_is_read_again(tmp_path):
    path = catalogue.profile_file("circuits", "low-side-linear-12v")
    own = tmp_path / "own.toml"
    text = path.read_text("utf-8")
    own.write_text(text, "utf-8")
    before = catalogue.load_circuit(str(own))
    assert catalogue.load_circuit(str(own)) is before
    own.write_text(text + "\n# changed\n", "utf-8")
    assert catalogue.load_circuit(str(own)).text != before.text
