"""What is not as it was exported is refused, in words, and leaves nothing behind."""

import json
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meterlog.evidence import export_recording
from meterlog.model import Review
from meterlog.model.errors import DiskFailed, MeterlogError, RecordingExists, TraceError
from meterlog.recording import (
    ExportRequest,
    Recording,
    import_export,
)


def _json(change):
    def changed(content):
        told = json.loads(content)
        change(told)
        return json.dumps(told).encode()

    return changed


def _head(old, new):
    def change(told):
        (held,) = told["schema:additionalProperty"]
        assert old in held["schema:value"]
        held["schema:value"] = held["schema:value"].replace(old, new)

    return _json(change)


LOGGER, EVENTS = "readings-logger.csv", "events.csv"
META = LOGGER + "-metadata.json"


@pytest.mark.parametrize(
    ("name", "change", "words"),
    [
        (LOGGER, lambda c: c.replace(b"time_utc", b"time", 1), "column 1 is 'time'"),
        (LOGGER, lambda c: c.replace(b";", b",", 3), "columns"),
        (LOGGER, lambda c: c.replace(b";-0;", b";zero;", 1), "line 2.*motor-feed.*'zero' is no"),
        (LOGGER, lambda c: c.replace(b"-0;", b"nan;", 1), "'nan' is no number"),
        (LOGGER, lambda c: c.replace(b":typed", b":tipped", 1), "no flags of these channels"),
        (LOGGER, lambda c: c.replace(b"2026-", b"1026-", 1), "line 2"),
        (LOGGER, lambda c: c.replace(b"2026-", b"2036-", 1), "time goes backwards"),
        (LOGGER, lambda c: c.replace(b"-0;", b"-0;1;", 1), "line 2: has 11 fields"),
        (LOGGER, lambda c: c + b'"', "quote"),
        (LOGGER, lambda c: c.replace(b"-0;", b"\xff;", 1), "line 2: holds bytes that are no text"),
        (META, lambda c: c[:-20], "not valid JSON"),
        (META, lambda c: b"[]", "no object"),
        (META, lambda c: b"\xff", "not valid JSON"),
        (META, lambda c: b"[" * 100_000, "not valid JSON"),
        (META, _json(lambda t: t.update(url="other.csv")), "of the table 'other.csv'"),
        (META, _json(lambda t: t.pop("dialect")), "no object as dialect"),
        (META, _json(lambda t: t["dialect"].update(delimiter="|")), "no comma, semicolon or tab"),
        (META, _json(lambda t: t["dialect"].update(delimiter=["|"])), "no comma, semicolon or"),
        (META, _json(lambda t: t.pop("tableSchema")), "no object as tableSchema"),
        (META, _json(lambda t: t["tableSchema"].update(columns=3)), "no list as columns"),
        (META, _json(lambda t: t["tableSchema"]["columns"].pop()), "there are"),
        (META, _json(lambda t: t.pop("schema:additionalProperty")), "not of readings"),
        (META, _json(lambda t: t.update({"schema:additionalProperty": 3})), "no list as schema:"),
        (
            META,
            _json(lambda t: t.update({"schema:additionalProperty": [{}]})),
            "no text as schema:",
        ),
        (META, _head("1.0", "0.1"), "does not match its checksum"),
        (META, _head('"key": "logger"', '"key": "../logger"'), "checksum"),
        (META, _head('"format"', '"fromat"'), "checksum"),
        (EVENTS, lambda c: c.replace(b";note;", b";note?;", 1), "'note\\?' is no kind"),
        (EVENTS, lambda c: c.replace(b";speed;2", b";speed;x", 1), "no speed step"),
        (EVENTS, lambda c: c.replace(b";speed;2", b";speed;1000", 1), "no speed step"),
        (EVENTS, lambda c: c.replace(b"2026-", b"2006-", 1), "before"),
        (EVENTS, lambda c: c + b"a;b\r\n", "fields"),
        (EVENTS + "-metadata.json", lambda c: c[:-20], "not valid JSON"),
    ],
)
def test_what_is_not_as_it_was_exported_is_refused_and_nothing_is_left(
    desk, made, tmp_path, name, change, words
):
    folder = desk.spoiled(made, tmp_path, name, change)
    with pytest.raises(TraceError, match=f"(?s){words}") as told:
        desk.again(folder / LOGGER if name == META else folder, tmp_path)
    assert name.removesuffix("-metadata.json") in str(told.value)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["spoiled"]


def test_a_key_that_leads_out_of_the_folder_is_refused(desk, made, tmp_path):
    from meterlog.recording.about_text import about_bytes

    about = Recording.open(made / "run").about
    odd = tuple(replace(one, key=f"../{one.key}") for one in about.instruments)
    text = about_bytes(replace(about, instruments=odd)).decode()
    folder = desk.spoiled(
        made,
        tmp_path,
        META,
        _json(lambda t: t["schema:additionalProperty"][0].update({"schema:value": text})),
    )
    with pytest.raises(TraceError, match="says nothing of the instrument"):
        desk.again(folder / LOGGER, tmp_path)


@pytest.mark.parametrize("year", [1, 9999])
def test_a_year_that_nanoseconds_can_not_tell_is_refused(desk, made, tmp_path, year):
    from meterlog.recording.about_text import about_bytes

    about = Recording.open(made / "run").about
    text = about_bytes(replace(about, started_utc=desk.started.replace(year=year))).decode()
    folder = desk.spoiled(
        made,
        tmp_path,
        META,
        _json(lambda t: t["schema:additionalProperty"][0].update({"schema:value": text})),
    )
    with pytest.raises(TraceError, match=f"in the year {year}"):
        desk.again(folder / LOGGER, tmp_path)


def test_tables_of_two_exports_are_not_mixed(desk, made, tmp_path):
    from meterlog.recording.about_text import about_bytes

    about = Recording.open(made / "run").about
    text = about_bytes(replace(about, recording_id="another")).decode()
    folder = desk.spoiled(
        made,
        tmp_path,
        META,
        _json(lambda t: t["schema:additionalProperty"][0].update({"schema:value": text})),
    )
    with pytest.raises(TraceError, match="of two recordings"):
        desk.again(folder, tmp_path)


@pytest.mark.parametrize("what", ["nothing", "empty", "bare", "events"])
def test_what_was_never_exported_is_refused(desk, made, tmp_path, what):
    place = tmp_path / "x"
    if what == "empty":
        place.mkdir()
    if what == "bare":
        place.write_text("t,u\n0,1\n")
    if what == "events":
        place = made / "comma-point" / "events.csv"
    with pytest.raises(TraceError):
        desk.again(place, tmp_path)
    assert not (tmp_path / "again").exists()


def test_events_of_another_recording_are_refused(desk, made, tmp_path):
    folder = desk.spoiled(
        made, tmp_path, "events.csv-metadata.json", _json(lambda t: t.update({"dc:source": "b"}))
    )
    with pytest.raises(TraceError, match="another recording"):
        desk.again(made / "comma-point", tmp_path, events=folder / "events.csv")
    with pytest.raises(TraceError, match="no metadata"):
        desk.again(made / "comma-point", tmp_path, events=folder / "README.txt")
    # Beside the readings they are passed over, and that is said.
    _, lacking = desk.again(folder, tmp_path)
    assert any("no events" in line for line in lacking)


def test_a_folder_that_holds_anything_or_can_not_be_written_is_refused(desk, made, tmp_path):
    (tmp_path / "again").mkdir()
    (tmp_path / "again" / "x").touch()
    with pytest.raises(RecordingExists):
        desk.again(made / "comma-point", tmp_path)
    (tmp_path / "file").touch()
    with pytest.raises((DiskFailed, TraceError)):
        import_export(ExportRequest(made / "comma-point", tmp_path / "file" / "again"))


def test_a_circuit_that_would_lie_elsewhere_is_refused(desk, tmp_path):
    desk.check(tmp_path / "run")
    run = Recording.open(tmp_path / "run")
    export_recording(run, Review(), tmp_path / "out", lambda _: None)
    path = tmp_path / "out" / (EVENTS + "-metadata.json")
    content = path.read_bytes()
    for odd in (b"data/../mine.toml", b"data/circuits/../../x.toml", b"data/circuits/.toml"):
        path.write_bytes(content.replace(b"data/circuits/mine.toml", odd))
        with pytest.raises(TraceError, match="no place for a circuit"):
            desk.again(tmp_path / "out", tmp_path)
        assert sorted(one.name for one in tmp_path.iterdir()) == ["out", "run"]


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    which=st.integers(0, 3),
    at=st.floats(0, 1, exclude_max=True),
    put=st.binary(max_size=3)
    | st.sampled_from([b",", b"\r\n", b'"', b"9e999", b"null", b"-", b"\0"]),
    cut=st.integers(0, 40),
)
def test_no_byte_of_it_is_a_fault_of_the_program(small, tmp_path_factory, which, at, put, cut):
    folder = tmp_path_factory.mktemp("bytes")
    for k, (name, content) in enumerate(small.items()):
        place = int(at * len(content))
        spoiled = content[:place] + put + content[place + cut :]
        (folder / name).write_bytes(spoiled if k == which else content)
    told = None
    try:
        out, _ = import_export(ExportRequest(folder, folder / "again"))
    except MeterlogError as error:
        told, out = error, None
    if out is None:
        assert told.subject
        assert not (folder / "again").exists()
    else:
        assert Recording.open(out).check() == ()
