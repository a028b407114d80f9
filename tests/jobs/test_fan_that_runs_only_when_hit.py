"""A fan does not start on low until it is hit. The technician records it and files the evidence."""

import csv
import hashlib

import pytest

from meterlog.recording import Recording

pytestmark = [pytest.mark.pty, pytest.mark.slow]

# What the virtual bench will do: off, low at 2 s, not starting; a tap at 3.6 s sets it going.
EVENTS = "elapsed_s,kind,value\n0,speed,0\n2.0,speed,1\n3.6,tap,\n"


def test_from_the_meter_to_the_evidence(shell, fan, tmp_path):
    events = tmp_path / "events.csv"
    events.write_text(EVENTS)
    happened = []
    bench = fan("dead-spot", happened=lambda *what: happened.append(what))
    folder, evidence = tmp_path / "before", tmp_path / "evidence"

    recorder = shell.record(
        bench.address(), folder, "--seconds", "4.5", "--speed-from", events, "--vehicle", "=van"
    )
    out, _ = recorder.communicate(timeout=240)
    assert recorder.returncode == 0
    assert out.startswith("complete: ")
    assert str(folder) in out
    assert "3 marks" in out

    said = shell.json("review", folder)
    assert said["recording"]["state"] == "sealed"
    assert said["recording"]["origin"] == "simulated"
    (dead,) = [finding for finding in said["findings"] if finding["kind"] == "dead"]
    assert dead["verdict"] == "fail"
    assert dead["value"] < dead["limit"] == 0.3
    assert dead["unit"] == "A"
    # The bench did it at its own 2.0 s and 3.6 s, which began within 0.2 s of the recording's 0.
    assert dead["start_s"] == pytest.approx(2.0, abs=0.25)
    assert dead["end_s"] == pytest.approx(3.6, abs=0.25)
    assert said["shortest_visible_dropout_s"] < 0.1
    kinds = [span["kind"] for span in said["spans"]]
    assert kinds[0] == "off"
    assert kinds[kinds.index("dead") + 1] == "running"
    assert {"off": 0, "dead": 1}.items() <= {s["kind"]: s["speed"] for s in said["spans"]}.items()

    assert shell.json("verify", folder) == {
        "folder": str(folder),
        "intact": True,
        "seal_sha256": hashlib.sha256((folder / "manifest-sha256.txt").read_bytes()).hexdigest(),
        "problems": [],
        "remarks": [],
        "edits": [],
        "edits_damage": [],
    }
    files = shell.json("export", folder, "--out", evidence)["files"]
    assert {"findings.csv", "trace.png", "README.txt", "readings-line-logger.csv"} <= set(files)
    assert (evidence / "trace.png").read_bytes().startswith(b"\x89PNG\r\n\x1a\n")
    with (evidence / "findings.csv").open(encoding="utf-8", newline="") as table:
        verdicts = {row["kind"]: row["verdict"] for row in csv.DictReader(table)}
    assert verdicts["dead"] == "fail"

    shell.run("review", folder, "--fail-on-findings", code=1)
    out, _ = shell.run("review", folder)
    assert "dead" in out
    assert "fail" in out


def test_a_changed_byte_is_found(shell, fan, tmp_path):
    folder = tmp_path / "before"
    recorder = shell.record(fan("healthy-new").address(), folder, "--seconds", "1")
    recorder.communicate(timeout=240)
    shell.run("verify", folder)
    readings = folder / "data" / "line-logger.arrows"
    data = bytearray(readings.read_bytes())
    data[len(data) // 2] ^= 4
    readings.write_bytes(data)
    said = shell.json("verify", folder, code=1)
    assert said["intact"] is False
    assert any("line-logger.arrows" in problem for problem in said["problems"])
    out, _ = shell.run("verify", folder, code=1)
    assert "NOT as sealed" in out


def test_events_carry_exactly_the_times_of_their_file(shell, fan, tmp_path):
    events = tmp_path / "events.csv"
    times = [0.0, 0.4, 0.401, 1.25]
    events.write_text(
        "elapsed_s,kind,value\n" + "".join(f"{t},speed,{i}\n" for i, t in enumerate(times))
    )
    folder = tmp_path / "run"
    recorder = shell.record(
        fan("healthy-new").address(), folder, "--seconds", "1.5", "--speed-from", events
    )
    recorder.communicate(timeout=240)
    events = [event for event in Recording.open(folder).events if event.kind == "speed"]
    assert [(event.t_ns / 1e9, event.speed) for event in events] == list(
        zip(times, range(4), strict=True)
    )
    starts = [step["start_s"] for step in shell.json("review", folder)["steps"]]
    assert set(starts) <= set(times)
    assert 0.401 in starts


def test_two_meters_go_into_one_recording(shell, fan, tmp_path):
    logger, volts = fan("healthy-new"), fan("healthy-new", "bench-scpi")
    folder = tmp_path / "run"
    recorder = shell.record(
        logger.address(),
        folder,
        "--meter",
        f"bench-scpi@{volts.address()}",
        "--assign",
        "battery=bench-scpi.volts",
        "--seconds",
        "1.5",
        "--json",
    )
    out, err = recorder.communicate(timeout=240)
    assert recorder.returncode == 0, err
    assert '"line-logger"' in out
    files = shell.json("export", folder, "--out", tmp_path / "evidence")["files"]
    assert {"readings-line-logger.csv", "readings-bench-scpi.csv"} <= set(files)
