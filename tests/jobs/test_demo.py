"""The demo does the whole job without hardware and without a screen."""

import json
import os
import signal
import sys
from contextlib import suppress
from pathlib import Path

import pytest

pytestmark = [pytest.mark.pty, pytest.mark.slow]


def test_the_old_motor_fails_the_new_one_does_not_and_the_evidence_is_written(shell, tmp_path):
    out = tmp_path / "demo"
    demo = shell.begin("demo", "--headless", "--seconds", "4.5", "--out", out, "--json")
    said, err = demo.communicate(timeout=240)
    assert demo.returncode == 0, err
    told = json.loads(said)
    before, after = told["recordings"]
    assert [f["kind"] for f in before["findings"] if f["verdict"] == "fail"] == ["dead"]
    assert not [f for f in after["findings"] if f["verdict"] == "fail"]
    for name in ("before", "after"):
        shell.run("verify", out / name)
        assert (out / "evidence" / name / "trace.png").stat().st_size > 10_000
        assert (out / "evidence" / name / "findings.csv").exists()
        judged = (out / "evidence" / name / "judgement.txt").read_text(encoding="utf-8")
        assert "SIMULATED" in judged
        assert "Verdict: " in judged
    assert before["verdict"]["outcome"] == "fault found"
    assert before["verdict"]["ranked"][0]["part"] == "motor"
    assert after["verdict"]["outcome"] != "fault found"
    _two_that_were_too_short_to_compare(out / "evidence", told["comparison"])
    words = (out / "evidence" / "findings.txt").read_text(encoding="utf-8")
    assert "SIMULATED" in words
    assert "invented" in words
    assert "dead" in words.lower()
    assert before["verdict"]["paragraph"] in " ".join(words.split())


def _two_that_were_too_short_to_compare(evidence, comparison):
    """Nothing ran long enough to be steady: the comparison is made all the same, and says so."""
    assert (comparison["old"][0]["name"], comparison["new"]["name"]) == ("before", "after")
    assert comparison["refusal"]
    assert comparison["steps"] == []
    assert json.loads((evidence / "comparison.json").read_text(encoding="utf-8")) == comparison
    words = (evidence / "comparison.txt").read_text(encoding="utf-8")
    assert "simulated" in words
    assert comparison["summary"] in " ".join(words.split())


@pytest.mark.skipif(not Path("/proc").is_dir(), reason="looks at processes in /proc")
def test_stopped_by_hand_it_seals_and_judges_what_there_is_and_ends_its_meters(
    shell, grows, tmp_path
):
    out = tmp_path / "demo"
    demo = shell.begin("demo", "--headless", "--seconds", "60", "--seed", "917", "--out", out)
    grows(out / "before")
    assert _virtual_benches(917) == 1
    demo.send_signal(signal.SIGINT)
    said, err = demo.communicate(timeout=240)
    assert demo.returncode == 0, err
    assert "stopped before its time" in err
    assert "BEFORE" in said
    assert "AFTER" not in said
    assert "NEW AGAINST OLD" not in said
    assert not (out / "evidence" / "comparison.txt").exists()
    shell.run("verify", out / "before")
    assert _virtual_benches(917) == 0


@pytest.mark.kill
@pytest.mark.skipif(sys.platform != "linux", reason="only Linux ends children with their parent")
def test_killed_outright_it_leaves_no_virtual_meter_behind(shell, grows, wait_until, tmp_path):
    out = tmp_path / "demo"
    demo = shell.begin("demo", "--headless", "--seconds", "60", "--seed", "918", "--out", out)
    grows(out / "before")
    assert _virtual_benches(918) == 1
    demo.kill()
    wait_until(lambda: _virtual_benches(918) == 0)
    assert shell.json("review", out / "before")["recording"]["state"] == "unsealed"


def _virtual_benches(seed):
    """Count the virtual benches with this seed among all processes; both meters are in one."""
    lines = []
    for process in Path("/proc").glob("[0-9]*/cmdline"):
        with suppress(OSError):  # it has ended meanwhile
            lines.append(process.read_bytes().replace(b"\0", b" ").decode(errors="replace"))
    return sum("meterlog virtual" in line and f"--seed {seed} " in line for line in lines)


def test_an_unknown_scenario_suggests_the_nearest(shell, tmp_path):
    _, err = shell.run("demo", "--headless", "--scenario", "deadspot", "--out", tmp_path, code=2)
    assert "Did you mean 'dead-spot'? There are: healthy-old, worn, dead-spot" in err
    assert "two recordings" not in err, "before anything else is said or begun"
    assert list(tmp_path.iterdir()) == []


def test_a_length_out_of_reason_is_refused(shell):
    _, err = shell.run("demo", "--headless", "--seconds", "0", code=2)
    assert "Expected 1 to 3600" in err


@pytest.mark.skipif(sys.platform != "linux", reason="screens are told by the environment there")
def test_a_platform_without_pixels_is_no_screen(monkeypatch):
    from meterlog.commands.screen import has_screen

    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    assert not has_screen()
    monkeypatch.setitem(os.environ, "DISPLAY", ":9")
    assert has_screen()
    monkeypatch.setitem(os.environ, "QT_QPA_PLATFORM", "offscreen")
    assert not has_screen()
