"""What reads files: for each a valid file, how its form is edited, and who reads it."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import calls
import edits
import forms
import numpy as np
import tables
from edits import Form

from meterlog.recording import layout

Read = Callable[[Path], object]
SHIPPED = Path(__file__).resolve().parents[2] / "profiles"


@dataclass(frozen=True)
class Reader:
    """One reader.

    ``folder`` within the samples is given to ``read`` after ``file`` in it was changed by
    ``form``; it must answer or refuse within ``seconds``.
    """

    name: str
    folder: str
    file: str
    form: Form
    read: Read
    seconds: float = 10.0


def readers(place: Path) -> list[Reader]:
    """Give all readers, with samples that lie in ``place``."""
    run, key = place / "run", "imported"
    stream = layout.arrows(key)
    table = next(one.name for one in (place / "export").glob("readings-*.csv"))
    about = layout.ABOUT
    for kind, name in (("meters", "line-logger"), ("limits", "linear-12v")):
        shutil.copy(SHIPPED / kind / f"{name}.toml", place / f"{kind}.toml")
    for name in ("bench-scpi", "block-daq", "panel-meter"):
        shutil.copy(SHIPPED / "meters" / f"{name}.toml", place)
    shutil.copy(SHIPPED / "circuits" / "low-side-linear-12v.toml", place / "circuits.toml")
    (place / "templates").mkdir(exist_ok=True)
    shutil.copy(place / "job" / "job-card.json", place / "templates" / "usual.json")
    _for_index(place)
    _for_window(place / "window")
    tables.make_tables(place / "screening")
    top = next((place / "unpacked").iterdir())
    unpacked = top.relative_to(place).as_posix()
    checks = [
        one.relative_to(top).as_posix() for one in (top / "row-checks").rglob("*") if one.is_file()
    ][:1]
    edited = next(place.glob("run.amendments.jsonl"))
    kept = ("zeros.json", "meters.json", "skews.json", "watched-folders.json")
    wide = f"{table}-metadata.json"
    found = [
        _of_file("meter profile", ".", "meters.toml", edits.as_toml, calls.meter),
        _of_file("meter profile, scpi", ".", "bench-scpi.toml", edits.as_toml, calls.meter),
        _of_file("meter profile, blocks", ".", "block-daq.toml", edits.as_toml, calls.meter),
        _of_file("meter profile, panel", ".", "panel-meter.toml", edits.as_toml, calls.meter),
        _of_file("limits", ".", "limits.toml", edits.as_toml, calls.limits),
        _of_file("circuit profile", ".", "circuits.toml", edits.as_toml, calls.circuit),
        Reader("about.json", "run", about, forms.as_about, calls.opened),
        Reader("about.json, reviewed", "run", about, forms.as_about, calls.reviewed),
        Reader("about.json, listed", "run", about, forms.as_about, calls.listed),
        Reader("events", "run", layout.EVENTS, forms.as_lines(run), calls.opened),
        Reader("events, reviewed", "run", layout.EVENTS, forms.as_lines(run), calls.reviewed),
        Reader("events, exported", "run", layout.EVENTS, forms.as_lines(run), calls.exported),
        Reader(
            "circuit entries",
            "check",
            layout.EVENTS,
            forms.as_lines(place / "check"),
            calls.circuit_check,
        ),
        Reader("readings", "run", stream, forms.as_readings(run), calls.opened),
        Reader("readings, reviewed", "run", stream, forms.as_readings(run), calls.reviewed),
        Reader("readings, exported", "run", stream, forms.as_readings(run), calls.exported),
        Reader("bytes kept raw", "bench", layout.raw("bench"), edits.as_bytes, calls.opened),
        Reader("amendments", ".", edited.name, forms.as_lines(run), calls.amended),
        Reader("seal: bag-info", "run", layout.BAG_INFO, edits.as_bytes, calls.verified),
        Reader("seal: manifest", "run", layout.MANIFEST, edits.as_bytes, calls.verified),
        Reader("seal: tag manifest", "run", layout.TAG_MANIFEST, edits.as_bytes, calls.verified),
        Reader("trace to import", ".", "trace.csv", edits.as_table, calls.trace_imported),
        Reader("events to import", ".", "marks.csv", edits.as_table, calls.trace_imported),
        Reader("export: table", "export", table, edits.as_table, calls.export_imported),
        Reader("export: metadata", "export", wide, edits.as_json, calls.export_imported),
        Reader("export: events", "export", "events.csv", edits.as_table, calls.export_imported),
        Reader(
            "export: marks",
            "export",
            "events.csv-metadata.json",
            edits.as_json,
            calls.export_imported,
        ),
        _of_file("pack: zip", "pack", "claim.zip", edits.as_zip, calls.pack, 30.0),
        _of_file("pack: pdf", "pack", "claim.pdf", forms.as_pdf, calls.pack, 30.0),
        Reader("pack: signature.json", unpacked, "signature.json", edits.as_json, calls.pack, 30.0),
        _of_file("job card", "job", "job-card.json", edits.as_json, calls.card),
        Reader("job's list", "job", "work.json", edits.as_json, calls.job_list),
        Reader("template", "templates", "usual.json", edits.as_json, calls.templates),
        Reader("index of recordings", "library", "index.sqlite3", edits.as_bytes, calls.index),
        _of_file("photo, JPEG", ".", "photo.jpg", edits.as_bytes, calls.photo),
        _of_file("photo, PNG", ".", "photo.png", edits.as_bytes, calls.photo),
        Reader("signing key", "keys", "signing-key.pem", edits.as_bytes, calls.key),
        Reader("public key", "keys", "signing-key.pub.pem", edits.as_bytes, calls.key),
    ]
    found += [
        Reader(f"screening: {name}", "screening", f"{name}.parquet", tables.as_rows(schema), read)
        for name, schema, read in (
            ("baselines", tables.BASELINES, tables.held),
            ("findings", tables.FINDINGS, tables.gathered),
        )
    ]
    found += [
        Reader(f"pack: {name}", unpacked, name, edits.as_bytes, calls.pack, 30.0)
        for name in (layout.BAG_INFO, layout.TAG_MANIFEST, "pdf-pages.txt", *checks)
    ]
    found += [
        Reader(f"settings: {one}", "settings", one, edits.as_json, calls.settings) for one in kept
    ]
    lists = sorted(one.name for one in (place / "window").iterdir())
    found += [Reader(f"window: {one}", "window", one, edits.as_json, calls.window) for one in lists]
    return found


def _of_file(
    name: str, folder: str, file: str, form: Form, read: Read, seconds: float = 10.0
) -> Reader:
    """Give a reader that is given the file itself."""
    return Reader(name, folder, file, form, lambda place: read(place / file), seconds)


def _for_index(place: Path) -> None:
    from meterlog.evidence.signing import Signer

    folder = place / "library"
    folder.mkdir(exist_ok=True)
    shelf = folder / "shelf"
    shelf.mkdir(exist_ok=True)
    shutil.copytree(place / "run", shelf / "run", dirs_exist_ok=True)
    calls.index(folder)
    Signer.load_or_make(folder=place / "keys")
    _live(place / "bench")


def _live(folder: Path) -> None:
    """Record as from a port: with the bytes as they came, and without a seal."""
    from datetime import UTC, datetime

    from meterlog.model import (
        About,
        Block,
        Channel,
        Identity,
        Instrument,
        Job,
        Limits,
        Origin,
        Quantity,
        RawBytes,
        Role,
    )
    from meterlog.recording import Recorder

    channel = Channel("a", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.1)
    one = Instrument("bench", "invented", "socket://localhost:1", (channel,), Identity())
    now = datetime(2026, 1, 2, tzinfo=UTC)
    about = About("x", now, 0, 0, "fuzz", Origin.MEASURED, (one,), Limits(), Job())
    recorder = Recorder.create(folder, about)
    for k in range(20):
        t_ns = k * 100_000_000
        recorder.take(RawBytes("bench", t_ns, b"12.5\r\n"))
        values, flags = np.array([[12.5]]), np.zeros((1, 1), np.uint8)
        recorder.take(Block("bench", np.array([t_ns]), values, flags))
    recorder.close()


def _for_window(folder: Path) -> None:
    from meterlog.window.last_setup import ChannelSetup, LastSetup, MeterSetup, Setup

    folder.mkdir(exist_ok=True)
    channel = ChannelSetup("volts", "battery", "", 1, False, "")
    LastSetup(folder).keep(Setup((MeterSetup("m", "COM3", "A1", (channel,)),), "linear-12v"))
    (folder / "keys.json").write_text(json.dumps({"elsewhere": {}, "circuit": {}}))
