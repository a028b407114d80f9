"""An export with everything odd in it, and what it was made of. All of it is invented."""

import json
from datetime import UTC, datetime

import numpy as np
import pytest

from meterlog.evidence import export_recording
from meterlog.evidence.table_form import table_form
from meterlog.model import (
    About,
    Accuracy,
    Block,
    Channel,
    Conditions,
    Event,
    EventKind,
    Flag,
    Identity,
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Range,
    Review,
    Role,
    Sensor,
    SensorKind,
    Zero,
)
from meterlog.recording import ExportRequest, Recorder, Recording, import_export, keep_circuit, seal

FORMS = [("comma", "point"), ("semicolon", "comma"), ("tab", "comma"), ("semicolon", "point")]
GOOD = Accuracy(1.0, 3.0, 0.01, 0.02, "invented sheet", 0.1, 18.0, 28.0)
NOTES = ["=1+1", "'=1+1", "''@x", "\ttab", "\r\nlines\n", " blanks ", 'quo"te; and, all', "", "'"]
STARTED = datetime(2026, 5, 4, 10, 20, 30, 5000, tzinfo=UTC)


def _instruments():
    clamp = Sensor(SensorKind.CLAMP, 0.1, 2, inverted=True, words="invented clamp")
    return (
        Instrument(
            "logger",
            "invented",
            "port",
            (
                Channel(
                    "u", Quantity.VOLTAGE, Role.MOTOR_FEED, 2.0, 0.01, 0.02, 0.01, GOOD,
                    (Range(6.0, GOOD), Range(60.0, GOOD)),
                ),
                Channel(
                    "i", Quantity.CURRENT, Role.MOTOR_CURRENT, -10.0, 0.5, 0.02, 0.0, GOOD, (),
                    clamp, Zero(0.5, 0.001, 20, STARTED, 40.0),
                ),
                Channel("a:no-data b", Quantity.VOLTAGE, interval_s=0.02),
                Channel("a", Quantity.VOLTAGE, interval_s=0.02),
            ),
            Identity("nobody", "none", "007", "1", "2026-01-01"),
            simulated=True,
            time_u_s=0.001,
            skew_s=0.1,
        ),
        Instrument(
            "bench-2",
            "typed-volts",
            "x",
            (Channel("=u", Quantity.VOLTAGE, Role.MOTOR_RETURN, accuracy=GOOD),),
            typed=True,
        ),
    )  # fmt: skip


def _blocks():
    rng = np.random.default_rng(7)
    flags = rng.integers(0, 32, (500, 4)).astype(np.uint8)
    values = rng.normal(0, 1, flags.shape) * 10.0 ** rng.integers(-12, 12, flags.shape)
    values[0] = [-0.0, 5e-324, 9.9e37, 1.7976931348623157e308]
    flags[0] = 0
    values[(flags & np.uint8(Flag.OVERLOAD | Flag.NO_DATA)) != 0] = np.nan
    # Nanoseconds that seconds as a floating number can't hold.
    t_ns = np.cumsum(rng.integers(0, 3 * 10**13, 500))
    typed = np.full((3, 1), Flag.TYPED, np.uint8)
    return (
        Block("logger", t_ns, values, flags),
        Block("bench-2", np.array([0, 5, 5]), np.array([[1.5], [-2.5], [0.1]]), typed),
    )


def _events():
    kinds = [kind for kind in EventKind if kind not in {EventKind.SPEED, EventKind.END}]
    notes = [Event(10 + k, EventKind.NOTE, note, "") for k, note in enumerate(NOTES)]
    others = [Event(10**17 + k, kind, f"+{kind}", "logger") for k, kind in enumerate(kinds)]
    return [Event(1, EventKind.SPEED, "2"), *notes, *others]


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    folder = tmp_path_factory.mktemp("tables")
    job = Job(
        "4711", "van", "1 km", "it stops", "123", "me", "hot", Conditions("off", ambient_c=21)
    )
    about = About(
        "an id", STARTED, 7200, 5, "meterlog test", Origin.MEASURED, _instruments(),
        Limits(name="mine", open_current_a=0.25, text="open_current_a = 0.25\n"), job,
    )  # fmt: skip
    recorder = Recorder.create(folder / "run", about)
    for item in (*_blocks(), *_events()):
        recorder.take(item)
    recorder.close("interrupted")
    seal(folder / "run")
    for form in FORMS:
        export_recording(
            Recording.open(folder / "run"), Review(), folder / "-".join(form), lambda _: None,
            form=table_form(*form),
        )  # fmt: skip
    return folder


@pytest.fixture(scope="module")
def small(tmp_path_factory):
    """Give the files of a small export, by name."""
    folder = tmp_path_factory.mktemp("small")
    about = About("id", STARTED, 0, 0, "t", Origin.MEASURED, _instruments()[1:], Limits(text="x"))
    recorder = Recorder.create(folder / "run", about)
    recorder.take(_blocks()[1])
    recorder.take(Event(1, EventKind.SPEED, "2"))
    recorder.close()
    export_recording(Recording.open(folder / "run"), Review(), folder / "out", lambda _: None)
    names = ("readings-bench-2.csv", "events.csv")
    return {
        name + ending: (folder / "out" / (name + ending)).read_bytes()
        for name in names
        for ending in ("", "-metadata.json")
    }


class Desk:
    """What the tests make and look at."""

    started = STARTED
    instruments = staticmethod(_instruments)
    blocks = staticmethod(_blocks)
    events = staticmethod(_events)

    @staticmethod
    def again(source, tmp_path, **more):
        """Import; give the recording and what is lacking."""
        out, lacking = import_export(ExportRequest(source, tmp_path / "again", **more))
        return Recording.open(out), lacking

    @staticmethod
    def spoiled(made, tmp_path, name, change):
        """Copy an export with one file changed."""
        folder = tmp_path / "spoiled"
        folder.mkdir()
        for path in (made / "semicolon-comma").iterdir():
            (folder / path.name).write_bytes(path.read_bytes())
        before = (folder / name).read_bytes()
        after = change(before)
        assert after != before
        (folder / name).write_bytes(after)
        return folder

    @staticmethod
    def check(folder):
        """Make a recording of a circuit check alone, by profiles that are not ours."""
        recorder = Recorder.create(folder, About("c", STARTED, 0, 0, "t", Origin.MEASURED, ()))
        names = [keep_circuit(folder, "mine", text) for text in ("a = 1\n", "a = 2\n")]
        for k, name in enumerate(names):
            recorder.take(Event(k, EventKind.CIRCUIT, json.dumps({"file": name})))
        recorder.close()
        seal(folder)
        return names


@pytest.fixture
def desk():
    return Desk()
