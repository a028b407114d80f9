"""One valid file of every kind that the program reads. Vehicles, people, readings: all invented."""

from __future__ import annotations

import contextlib
import io
import json
import os
from pathlib import Path

import pikepdf

CIRCUIT = "low-side-linear-12v"


def _run(*words: object) -> None:
    from meterlog import cli

    said = io.StringIO()
    with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said):
        try:
            code = cli.main([str(word) for word in words])
        except SystemExit as leaving:
            code = int(leaving.code or 0)
    assert code == 0, said.getvalue()


def make_samples(place: Path) -> None:
    """Make a recording, its edits, an export, a circuit check, a job, a pack and settings."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    rows = ["t,feed,return,amps"]
    for k in range(400):
        dead = 200 <= k < 250
        rows.append(f"{k / 50:.2f},12.5,{0 if dead else 8.5},{0 if dead else 4.0 + k % 3 / 100}")
    trace, marks = place / "trace.csv", place / "marks.csv"
    trace.write_text("\n".join(rows) + "\n")
    marks.write_text('elapsed_s,kind,value\n0,speed,1\n4.2,tap,\n6,note,"a, b"\n')
    told = ("--assign", "motor-feed=feed", "--assign", "motor-return=return")
    told = (*told, "--assign", "motor-current=amps", "--accuracy", "motor-current=1.5+0.05")
    run = place / "run"
    _run("import", trace, "--time", "t", "--events", marks, *told, "--out", run)
    _run("amend", run, "--move", "tap@4.2=4.1", "--why", "late", "--who", "nobody")
    _run("export", run, "--out", place / "export")
    check = place / "check"
    state = ("--state", "key=on,speed=4", "--sign", "fan=dead", "--reading", "motor-feed=12.4")
    _run("circuit", CIRCUIT, *state, "--save", check)
    job = place / "job"
    job.mkdir()
    card = job / "job-card.json"
    _run("job", card, "--set", "work_order=W-1", "--set", "vehicle=Nomad (invented)")
    _run("claim", card, "--before", run, "--out", place / "pack")
    unpacked = place / "unpacked"
    import zipfile

    with zipfile.ZipFile(place / "pack" / "claim.zip") as archive:
        archive.extractall(unpacked)
    _lists(job, place / "settings")
    _pictures(place)


def _lists(job: Path, settings: Path) -> None:
    from meterlog.work.job_folder import JobWork, Side, keep_work

    keep_work(job, JobWork().taking(job.parent / "run", Side.OLD))
    settings.mkdir()
    zero = {"offset": 0.1, "scatter": 0.01, "count": 60, "taken_utc": "2030-01-02T03:04:05+00:00"}
    kept = {
        "zeros.json": {"meter A1 in1": {**zero, "range_top": 6.0}},
        "meters.json": {'["serial", "0815"]': {"model": "M", "calibration_due": "2031-01-31"}},
        "skews.json": {"[]": {"skew_s": 0.1, "u_s": 0.01, "when": "2030-01-02T03:04:05+00:00"}},
        "watched-folders.json": {"folders": [str(job.parent)]},
    }
    for name, content in kept.items():
        (settings / name).write_text(json.dumps(content))


def _pictures(place: Path) -> None:
    from PIL import Image

    picture = Image.linear_gradient("L").convert("RGB")
    for ending in ("jpg", "png"):
        picture.save(place / f"photo.{ending}")
    with pikepdf.open(place / "pack" / "claim.pdf") as document:
        assert len(document.attachments)
