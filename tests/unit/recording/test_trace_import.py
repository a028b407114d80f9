"""Importing traces: what is taken, and what is said when a file is wrong. All names invented."""

import numpy as np
import pytest

from meterlog.model import Accuracy, EventKind, Flag, Origin, Quantity, Role, join
from meterlog.model.errors import RecordingExists, TraceError
from meterlog.recording import UNDATED, ImportRequest, Recording, import_trace

ASSIGN = (("motor-feed", "feed"), ("motor-current", "amps"))
GOOD = "t,feed,amps,junk\n0,12.5,3.25,x\n0.1,12.25,-1e-3,y\n0.2,,OL,z\n0.3,+9.75,.5,\n"


class Desk:
    """Writes trace files and imports them."""

    def __init__(self, folder):
        self.folder = folder
        self.count = 0

    def imports(self, content, *, time="t", assign=ASSIGN, events=None, **more):
        if isinstance(content, str):
            content = content.encode()
        (self.folder / "trace.csv").write_bytes(content)
        path = None
        if events is not None:
            path = self.folder / "events.csv"
            path.write_bytes(events.encode())
        self.count += 1
        out = self.folder / f"out-{self.count}"
        request = ImportRequest(self.folder / "trace.csv", time, assign, out, path, **more)
        assert import_trace(request) == out
        return Recording.open(out)

    def refuses(self, content, **more):
        with pytest.raises(TraceError) as caught:
            self.imports(content, **more)
        left = {path.name for path in self.folder.iterdir()}
        assert left <= {"trace.csv", "events.csv"}  # nothing half made stays behind
        assert str(caught.value).startswith(str(self.folder))
        return str(caught.value)


@pytest.fixture
def desk(tmp_path):
    return Desk(tmp_path)


def rows(recording):
    return join(list(recording.blocks("imported")))


def test_a_plain_trace_becomes_a_sealed_recording_with_the_file_kept_in_it(desk):
    recording = desk.imports(GOOD)
    block = rows(recording)
    assert block.t_ns.tolist() == [0, 100_000_000, 200_000_000, 300_000_000]
    np.testing.assert_array_equal(
        block.values, [[12.5, 3.25], [12.25, -1e-3], [np.nan, np.nan], [9.75, 0.5]]
    )
    assert block.flags.tolist() == [[0, 0], [0, 0], [Flag.NO_DATA, Flag.OVERLOAD], [0, 0]]
    assert (recording.state, recording.damage) == ("sealed", ())
    about = recording.about
    assert (about.origin, about.started_utc) == (Origin.IMPORTED, UNDATED)
    (instrument,) = about.instruments
    assert (instrument.key, instrument.profile, instrument.url) == (
        "imported",
        "imported",
        "trace.csv",
    )
    assert [channel.role for channel in instrument.channels] == [
        Role.MOTOR_FEED,
        Role.MOTOR_CURRENT,
    ]
    assert [channel.quantity for channel in instrument.channels] == [
        Quantity.VOLTAGE,
        Quantity.CURRENT,
    ]
    for channel in instrument.channels:
        assert channel.interval_s == pytest.approx(0.1)
        assert (channel.integration_s, channel.accuracy) == (0.0, None)
    kept = recording.folder / "data/original/trace.csv"
    assert kept.read_bytes() == GOOD.encode()


@pytest.mark.parametrize(
    "content",
    [
        GOOD.replace("\n", "\r\n"),
        GOOD.encode("utf-8-sig"),
        GOOD.replace(",", "\t"),
        GOOD.replace(",", ";").replace(".", ","),
        GOOD.replace(",", ";"),
        GOOD.encode("utf-16"),
        GOOD.replace("junk", "Wärme °C").encode("cp1252"),
        "\n" + GOOD.replace("\n", "\n\n"),
        GOOD.replace("t,feed", '"t","feed"').replace("12.5", '" 12.5 "'),
        GOOD.rstrip("\n"),
        GOOD.replace(",x", ',"x,\n\ny"'),
    ],
    ids=[
        "crlf", "bom", "tab", "semicolon-comma", "semicolon-point", "utf-16", "cp1252",
        "blank-lines", "quoted", "no-last-line-end", "line-end-in-quotes",
    ],
)  # fmt: skip
def test_the_usual_forms_of_the_same_trace_give_the_same_rows(desk, same, content):
    same(rows(desk.imports(content)), rows(desk.imports(GOOD)))


@pytest.mark.parametrize(
    ("cell", "flag"),
    [
        ("9.9E37", Flag.OVERLOAD),
        ("-9.9E+37", Flag.OVERLOAD),
        ("inf", Flag.OVERLOAD),
        ("-INF", Flag.OVERLOAD),
        ("OL", Flag.OVERLOAD),
        ("-ol", Flag.OVERLOAD),
        ("1e999", Flag.OVERLOAD),
        ("", Flag.NO_DATA),
        ("  ", Flag.NO_DATA),
        ("NaN", Flag.NO_DATA),
        ("9.91E37", Flag.NO_DATA),
        ("8.9E37", Flag.OK),
        ("9.8999995E37", Flag.OVERLOAD),  # 9.9E37 in 32 bits
    ],
)
def test_cells_without_a_value_are_flagged_with_the_reason(desk, cell, flag):
    block = rows(desk.imports(f"t,feed,amps\n0,1,{cell}\n1,2,5\n"))
    assert block.flags[:, 1].tolist() == [flag, 0]
    assert np.isnan(block.values[0, 1]) == (flag != Flag.OK)


def test_dates_count_from_the_first_row_and_keep_wall_time_and_offset(desk):
    recording = desk.imports(
        "t,feed,amps\n2026-05-04T12:20:30.5+02:00,1,1\n2026-05-04T10:20:31.750001Z,2,2\n"
    )
    assert rows(recording).t_ns.tolist() == [0, 1_250_001_000]
    assert recording.about.started_utc.isoformat() == "2026-05-04T10:20:30.500000+00:00"
    assert recording.about.local_offset_s == 7200


def test_the_interval_is_the_median_and_pauses_do_not_bend_it(desk):
    times = [0, 0.02, 0.04, 0.04, 5.0, 5.02]
    recording = desk.imports("t,feed,amps\n" + "".join(f"{t},1,1\n" for t in times))
    assert recording.about.instruments[0].channels[0].interval_s == pytest.approx(0.02)


def test_the_interval_is_told_from_the_whole_file_not_from_its_first_lot(desk, monkeypatch):
    monkeypatch.setattr("meterlog.recording.trace_lots._LOT_BYTES", 4096)
    times = [k / 100 for k in range(2000)] + [20 + k / 5 for k in range(200)]
    recording = desk.imports("t,feed,amps\n" + "".join(f"{t:.2f},1,1\n" for t in times))
    for channel in recording.about.instruments[0].channels:
        assert channel.interval_s == pytest.approx(0.2)
    assert recording.check() == ()


def test_times_need_not_begin_at_zero_and_events_count_on_the_same_scale(desk):
    recording = desk.imports(
        "t,feed,amps\n5,1,1\n6,1,1\n",
        events="elapsed_s,kind,value\n5.5,speed,2\n0,note,before\n7,tap\n",
    )
    assert rows(recording).t_ns.tolist() == [5_000_000_000, 6_000_000_000]
    marks = [(event.t_ns, event.kind, event.value) for event in recording.events]
    assert marks[:3] == [
        (0, EventKind.NOTE, "before"),
        (5_500_000_000, EventKind.SPEED, "2"),
        (7_000_000_000, EventKind.TAP, ""),
    ]
    assert marks[3][1] is EventKind.END
    assert (recording.folder / "data/original/events.csv").is_file()


def test_a_stated_accuracy_and_a_channel_of_no_role_are_kept(desk):
    accuracy = Accuracy(0.5, 2, 0.01)
    recording = desk.imports(
        "t,heat (A),feed\n0,1,1\n",
        assign=(("other", "heat (A)"), ("motor-feed", "feed")),
        accuracy=(("motor-feed", accuracy),),
    )
    first, second = recording.about.instruments[0].channels
    assert (first.name, first.quantity, first.accuracy) == ("heat (A)", Quantity.CURRENT, None)
    assert (second.name, second.accuracy) == ("motor-feed", accuracy)


def test_a_long_trace_is_read_lot_by_lot_and_names_the_line_far_down(desk, monkeypatch):
    monkeypatch.setattr("meterlog.recording.trace_lots._LOT_BYTES", 4096)
    lines = [f"{k / 100},{k},{-k}\n" for k in range(3000)]
    block = rows(desk.imports("t,feed,amps\n" + "".join(lines)))
    assert block.values[:, 1].tolist() == [-float(k) for k in range(3000)]
    other = Desk(desk.folder / "other")
    other.folder.mkdir()
    lines[2500] = "25.00,oops,1\n"
    said = other.refuses("t,feed,amps\n" + "".join(lines))
    assert "line 2502, column 'feed'" in said


@pytest.mark.parametrize(
    ("content", "words"),
    [
        ("", ["is empty"]),
        ("\n\n", ["is empty"]),
        ("t,feed,amps\n", ["has no readings"]),
        ("t,fed,amps\n0,1,1\n", ["line 1", "no column 'feed'", "Did you mean 'fed'?"]),
        ("time,feed,amps\n0,1,1\n", ["no column 't'"]),
        ("t,feed,amps,feed\n0,1,1,1\n", ["line 1, column 'feed'", "2 columns"]),
        (GOOD.replace("12.25", "12..25"), ["line 3, column 'feed'", "'12..25' is no number"]),
        (GOOD.replace("12.25", "0x10"), ["line 3, column 'feed'", "'0x10' is no number"]),
        (GOOD.replace("12.25", "1_000"), ["line 3, column 'feed'", "is no number"]),
        (GOOD.replace("0.2,", "0.05,"), ["line 4, column 't'", "backwards", "'0.05'"]),
        (GOOD.replace("\n0,", "\n-0.5,"), ["line 2, column 't'", "before zero", "Shift"]),
        (GOOD.replace("0.2,", ","), ["line 4, column 't'", "is empty"]),
        (GOOD.replace("0.2,", "nan,"), ["line 4, column 't'"]),
        (GOOD.replace("0.2,", "1e12,"), ["line 4, column 't'"]),
        (GOOD.replace(",y", ",y,y"), ["line 3", "5 fields", "header has 4"]),
        (GOOD.replace(",y", ""), ["line 3", "3 fields", "header has 4"]),
        ("t,feed,amps\n2026-05-04T10:20:30,1,1\n", ["line 2, column 't'", "no UTC offset"]),
        ("t,feed,amps\n2026-05-04 oops,1,1\n", ["line 2, column 't'", "RFC 3339"]),
        ("t,feed,amps\n2026-05-04T10:20:30Z,1,1\n3,1,1\n", ["line 3, column 't'", "RFC 3339"]),
        ("t,feed,amps\n1,1,1\n2026-05-04T10:20:30Z,1,1\n", ["line 3", "the first row has"]),
        (b"PK\x03\x04\0\0\0", ["no text file"]),
    ],
)  # fmt: skip
def test_a_wrong_trace_is_refused_with_the_place_and_the_reason(desk, content, words):
    said = desk.refuses(content)
    assert [word for word in words if word not in said] == []


@pytest.mark.parametrize(
    ("assign", "words"),
    [
        ((("motor-fed", "feed"),), ["'motor-fed' is no role", "Did you mean 'motor-feed'?"]),
        ((("motor-feed", "feed"), ("motor-feed", "amps")), ["given to two columns"]),
        ((("motor-feed", "feed"), ("battery", "feed")), ["two parts"]),
        ((("motor-feed", "t"),), ["two parts"]),
        ((), ["no column is assigned"]),
    ],
)
def test_a_wrong_assignment_is_refused(desk, assign, words):
    said = desk.refuses(GOOD, assign=assign)
    assert [word for word in words if word not in said] == []


@pytest.mark.parametrize(
    ("events", "words"),
    [
        ("", ["is empty"]),
        ("elapsed_s,kind\n0,tap\n", ["no column 'value'"]),
        ("elapsed_s,kind,value\n0,bang,\n", ["line 2, column 'kind'", "'bang'", "tap"]),
        ("elapsed_s,kind,value\n0,tap,\nx,tap,\n", ["line 3, column 'elapsed_s'", "'x'"]),
        ("elapsed_s,kind,value\n-1,tap,\n", ["line 2, column 'elapsed_s'", "'-1'"]),
        ("elapsed_s,kind,value\n1,speed,fast\n", ["line 2, column 'value'", "'fast'"]),
        ("elapsed_s,kind,value\n1,speed,1.5\n", ["line 2, column 'value'"]),
        ("elapsed_s,kind,value\n1,speed,-1\n", ["line 2, column 'value'"]),
        ("elapsed_s,kind,value\n1,speed,\n", ["line 2, column 'value'"]),
        ("elapsed_s,kind,value\n1,note,a,b\n", ["line 2", "4 fields"]),
    ],
)
def test_a_wrong_events_file_is_refused_with_the_place_and_the_reason(desk, events, words):
    said = desk.refuses(GOOD, events=events)
    assert [word for word in words if word not in said] == []
    assert "events.csv" in said


def test_a_missing_file_is_named(tmp_path):
    request = ImportRequest(tmp_path / "none.csv", "t", ASSIGN, tmp_path / "out")
    with pytest.raises(TraceError, match=r"none\.csv: can't be read"):
        import_trace(request)


def test_a_folder_that_holds_anything_is_refused_but_an_empty_one_is_used(desk, tmp_path):
    out = tmp_path / "out-1"
    out.mkdir()
    assert desk.imports(GOOD).folder == out
    desk.count = 0
    with pytest.raises(RecordingExists):
        desk.imports(GOOD)
    assert Recording.open(out).state == "sealed"
