"""``meterlog ports``: the list, the answers, and what a broken profile does to them: nothing."""

import json

import pytest

from meterlog.acquire import Fit, LiveValue, Outcome, PortAnswer
from meterlog.instruments import PortInfo
from meterlog.model import Identity
from meterlog.profile.folders import OWN_FOLDER

PORTS = (
    PortInfo("/dev/ttyUSB0", "an invented adapter", "1a2b", "3c4d", "SN7"),
    PortInfo("/dev/ttyUSB1", usable=False, reason="you may not open it; run this"),
    PortInfo("COM 9", "another"),
)
FOUND = PortAnswer(
    "/dev/ttyUSB0",
    Outcome.FITS,
    (
        Fit("mine", "Mine", "lines of 1 column", (LiveValue("a", 12.431, "V", "12.431 V"),)),
        Fit("other", "Other", "answers *IDN?", (), "does not answer READ? as it is set now"),
    ),
    Identity("INVENTED", "MODEL 1", "SN7"),
    simulated=True,
    tried=("9600 8N1",),
    took_s=0.4,
)
OWN = 'title = "Mine"\ndialect = "typed"\ninterval_s = 1\n[[channels]]\nname = "a"\n'


@pytest.fixture
def ports(monkeypatch, tmp_path):
    """Invented ports, and a folder of profiles of one's own with one good and one broken."""
    monkeypatch.setattr("meterlog.instruments.list_ports", lambda: PORTS)
    monkeypatch.setenv(OWN_FOLDER, str(tmp_path))
    (tmp_path / "meters").mkdir()
    (tmp_path / "limits").mkdir()
    (tmp_path / "meters" / "bench-scpi.toml").write_text(OWN + 'quantity = "voltage"\n')
    (tmp_path / "meters" / "broken.toml").write_text(OWN)
    (tmp_path / "limits" / "wrong.toml").write_text("nominal_v = 'x'\n")
    return tmp_path


@pytest.fixture
def asked(monkeypatch):
    """Note which ports are asked, and answer for them."""
    heard = []

    def ask(ports, profiles, on_progress):
        heard.append([port.device for port in ports])
        on_progress(())
        return tuple(
            FOUND
            if port.device == "/dev/ttyUSB0"
            else PortAnswer(port.device, Outcome.SILENT, reason="nothing was heard.")
            for port in ports
        )

    monkeypatch.setattr("meterlog.acquire.ask_ports", ask)
    return heard


def test_the_list_shows_ports_profiles_and_their_faults_and_asks_nothing(ports, asked, run):
    said = run("ports").out
    lines = said.splitlines()
    assert any(
        all(word in line for word in ("/dev/ttyUSB0", "1a2b:3c4d", "an invented adapter", "SN7"))
        for line in lines
    )
    assert any("/dev/ttyUSB1" in line and "you may not open it; run this" in line for line in lines)
    (mine,) = [line for line in lines if line.startswith("bench-scpi ")]
    assert "own, instead of the shipped one" in mine
    (shipped,) = [line for line in lines if line.startswith("line-logger ")]
    assert "shipped" in shipped
    assert said.index("bench-scpi ") < said.index("line-logger ")
    assert "broken.toml, line 4: channels[0].quantity is missing" in said
    assert "wrong.toml: nominal_v" in said
    assert str(ports / "meters") in said
    assert asked == []


def test_the_list_as_json_holds_the_same(ports, asked, run):
    listed = json.loads(run("ports", "--json").out)
    assert listed["ports"][0]["vendor"] == "1a2b"
    assert listed["meters"][0]["name"] == "bench-scpi"
    assert listed["meters"][0]["own"] is True
    assert {fault["subject"].split("/")[-1] for fault in listed["faults"]} == {
        "broken.toml, line 4",
        "wrong.toml",
    }
    assert asked == []


def test_only_what_was_named_is_asked_and_an_address_stands_for_itself(ports, asked, run):
    said = run("ports", "--ask", "/dev/ttyUSB0", "--ask", "socket://192.0.2.1:5025").out
    assert asked == [["/dev/ttyUSB0", "socket://192.0.2.1:5025"]]
    assert "answers as mine · a 12.431 V  (lines of 1 column)" in said
    assert "meterlog record --meter mine@/dev/ttyUSB0" in said
    assert "and what each channel is on, such as --assign motor-feed=mine.a" in said
    assert "INVENTED MODEL 1 SN7; a virtual meter: nothing is measured" in said
    assert "2 profiles fit, choose one" in said
    assert "Note: does not answer READ? as it is set now." in said
    assert "socket://192.0.2.1:5025  nothing was heard." in said


def test_all_means_all_that_may_be_opened(ports, asked, run):
    run("ports", "--ask-all")
    assert asked == [["/dev/ttyUSB0", "COM 9"]]


def test_nothing_found_is_1_and_a_port_with_a_blank_is_quoted(ports, asked, run, monkeypatch):
    run("ports", "--ask", "COM 9", code=1)
    monkeypatch.setattr(
        "meterlog.acquire.ask_ports",
        lambda *_: (PortAnswer("COM 9", Outcome.FITS, FOUND.fits[:1]),),
    )
    assert "meterlog record --meter 'mine@COM 9'" in run("ports", "--ask", "COM 9").out


def test_no_port_at_all_is_said_and_1(asked, run, monkeypatch):
    monkeypatch.setattr("meterlog.instruments.list_ports", lambda: ())
    assert "No serial port is plugged in" in run("ports", "--ask-all", code=1).out
    assert "No serial port is plugged in" in run("ports").out


def test_the_answers_as_json_hold_numbers_and_the_words_for_record(ports, asked, run):
    answers = json.loads(run("ports", "--json", "--ask-all").out)["answers"]
    assert [one["outcome"] for one in answers] == ["fits", "silent"]
    fit = answers[0]["fits"][0]
    assert fit["values"] == [{"channel": "a", "value": 12.431, "unit": "V", "words": "12.431 V"}]
    assert fit["meter"] == "mine@/dev/ttyUSB0"
    assert answers[0]["simulated"] is True
    assert answers[0]["identity"]["serial"] == "SN7"
    assert answers[1]["reason"] == "nothing was heard."


def test_a_real_port_that_is_none_is_told_in_words(run):
    said = run("ports", "--ask", "/dev/null", "--ask", "socket://127.0.0.1:1", code=1).out
    assert "/dev/null  is there, but is no serial port" in said
    assert "socket://127.0.0.1:1  nobody listens there" in said
