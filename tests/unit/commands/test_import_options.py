"""import: the accuracy that is stated, and warnings about events on another clock."""

import json

import pytest


@pytest.fixture
def imports(run, tmp_path):
    """Import 20 rows, ten a second, beginning at ``start``, with more options."""

    def command(*more, start=0.0, events="", code=0, dated=False):
        times = [
            f"2026-05-04T10:20:{k // 10:02}.{k % 10}Z" if dated else f"{start + k / 10:.1f}"
            for k in range(20)
        ]
        text = "".join(f"{time},12.0,10.0\n" for time in times)
        (tmp_path / "t.csv").write_text(f"t,feed,amps\n{text}")
        (tmp_path / "e.csv").write_text(f"elapsed_s,kind,value\n{events}")
        return run(
            *("import", tmp_path / "t.csv", "--time", "t", "--assign", "motor-feed=feed"),
            *("--assign", "motor-current=amps", "--events", tmp_path / "e.csv", "--json"),
            *("--out", tmp_path / "out", *more),
            code=code,
        )

    return command


@pytest.mark.parametrize(
    ("words", "half_width"),
    [
        ("1.5+0.05", 0.2),  # 1.5 % of 10 A and 0.05 A, by hand
        ("1.5%+0.05", 0.2),
        ("2", 0.2),
        ("0+.2", 0.2),
        ("0.5 + 1", 1.05),
    ],
)
def test_a_stated_accuracy_is_percent_of_the_reading_and_a_fixed_part(
    imports, tmp_path, words, half_width
):
    from meterlog.recording import Recording

    imports("--accuracy", f"motor-current={words}")
    feed, amps = Recording.open(tmp_path / "out").about.instruments[0].channels
    assert amps.accuracy.half_width(-10.0) == pytest.approx(half_width)
    assert "by hand" in amps.accuracy.basis
    assert feed.accuracy is None


@pytest.mark.parametrize(
    ("texts", "words"),
    [
        (["motor-curent=1"], "its role has no column"),
        (["battery=1"], "Assigned are: motor-feed, motor-current"),
        (["1.5+0.05"], "its role has no column"),
        (["motor-current"], "is no accuracy"),
        (["motor-current="], "is no accuracy"),
        (["motor-current=-1"], "is no accuracy"),
        (["motor-current=1.5+"], "is no accuracy"),
        (["motor-current=nan"], "is no accuracy"),
        (["motor-current=1,5"], "is no accuracy"),
        (["motor-current=101"], "is out of range"),
        (["motor-current=1+9999999"], "is out of range"),
        (["motor-current=0+0"], "no meter is without error"),
        (["motor-current=1", "motor-current=2"], "stated twice"),
    ],
)
def test_an_accuracy_that_does_not_read_so_is_refused(imports, tmp_path, texts, words):
    said = imports(*(word for text in texts for word in ("--accuracy", text)), code=2)
    assert words in said.err
    assert not (tmp_path / "out").exists()


def test_with_a_stated_accuracy_the_findings_carry_an_uncertainty(run, imports, tmp_path):
    marks = "0,speed,1\n"
    limits = ["--limits", tmp_path / "limits.toml"]
    limits[1].write_text("inrush_window_s = 0.2\n[speed.1]\nmax_a = 10.1\n")
    imports("--accuracy", "motor-current=1.5+0.05", *limits, events=marks)
    said = json.loads(run("review", tmp_path / "out", "--json").out)
    (finding,) = [one for one in said["findings"] if one["kind"] == "step-current"]
    # Half-width 0.2 A; a rectangle that dominates: 95 % of it (EA-4/02 M:2022, S9).
    # The feed's own column plays no part, and all readings are the same.
    assert finding["expanded_uncertainty"] == pytest.approx(0.95 * 0.2, rel=0.01)
    assert finding["verdict"] != "pass"  # 10.0 +- 0.19 A can't show that it is below 10.1 A


@pytest.mark.parametrize(
    ("start", "events", "outside"),
    [
        (0.0, "0,speed,1\n1.9,tap,\n", 0),
        (0.0, "0,speed,1\n2.15,tap,\n", 0),  # within three intervals of the end
        (0.0, "0,speed,1\n2.5,tap,\n", 1),
        (0.5, "0.25,speed,1\n1,tap,\n", 0),
        (1000.0, "0,speed,1\n1,tap,\n2,speed,0\n", 3),
        (1000.0, "999,speed,1\n1001,tap,\n", 1),
        (0.0, "", 0),
    ],
)
def test_events_beside_the_readings_are_warned_of(imports, start, events, outside):
    said = imports(start=start, events=events)
    answer = json.loads(said.out)
    assert answer["events"] == events.count("\n")
    assert len(answer["warnings"]) == bool(outside)
    for warning in answer["warnings"]:
        assert warning.startswith(f"{outside} of {events.count(chr(10))} events lie outside")
        assert f"warning: {warning}" in said.err
    assert ("warning:" in said.err) == bool(outside)


def test_events_of_a_dated_trace_count_from_its_first_row(imports):
    assert json.loads(imports(events="0,speed,1\n1.5,tap,\n", dated=True).out)["warnings"] == []


def test_help_says_which_zero_the_events_count_from(run):
    words = " ".join(run("import", "--help").out.split())
    assert "from the zero of the time column; where that has dates, from its first row" in words


def test_a_file_whose_rate_changes_has_no_gaps(run, tmp_path):
    times = [k / 100 for k in range(1000)] + [10 + k / 10 for k in range(100)]
    (tmp_path / "two.csv").write_text(
        "t,feed,return,amps\n" + "".join(f"{t:.2f},12,8,4\n" for t in times)
    )
    (tmp_path / "e.csv").write_text("elapsed_s,kind,value\n0,speed,1\n")
    run(
        *("import", tmp_path / "two.csv", "--time", "t", "--events", tmp_path / "e.csv"),
        *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
        *("--assign", "motor-current=amps", "--limits", "linear-12v", "--out", tmp_path / "two"),
    )
    said = json.loads(run("review", tmp_path / "two", "--json").out)
    assert {span["kind"] for span in said["spans"]} == {"running"}
    # And it does not claim to have seen more than the slower part could show.
    assert said["shortest_visible_dropout_s"] > 0.1


def test_a_job_text_that_is_no_text_is_refused_and_a_file_name_that_is_none_is_taken(run, tmp_path):
    import os

    trace = tmp_path / os.fsdecode(b"\xff.csv")
    trace.write_text("t,feed\n0,12\n")
    rest = ["import", trace, "--time", "t", "--assign", "motor-feed=feed"]
    said = run(*rest, "--vehicle", os.fsdecode(b"\xff"), "--out", tmp_path / "out", code=2)
    assert "--vehicle" in said.err
    assert not (tmp_path / "out").exists()
    run(*rest, "--out", tmp_path / "out")
    run("verify", tmp_path / "out")
    assert (tmp_path / "out/data/original/?.csv").read_text() == "t,feed\n0,12\n"


@pytest.mark.parametrize(
    ("hints", "said"),
    [
        (
            ("--time", "zeit"),
            "--assign ROLE=COLUMN is missing; and it has no column 'zeit'. Say with --assign"
            " ROLE=COLUMN which column was measured where. There are: t, feed, amps.",
        ),
        (
            ("--time", "t"),
            "--assign ROLE=COLUMN is missing. Say with --assign ROLE=COLUMN which column was"
            " measured where. There are: t, feed, amps.",
        ),
        (
            ("--assign", "motor-feed=fed", "--assign", "motor-current=amps"),
            "--time COLUMN is missing; and it has no column 'fed'. Say with --time COLUMN which"
            " column is the time. There are: t, feed, amps.",
        ),
    ],
)
def test_of_half_the_hints_what_is_missing_is_named_alone(run, tmp_path, hints, said):
    (tmp_path / "t.csv").write_text("t,feed,amps\n0.0,12.0,4.0\n0.1,12.0,4.0\n")
    told = run("import", tmp_path / "t.csv", *hints, "--out", tmp_path / "out", code=2).err
    assert told == f"meterlog: {tmp_path / 't.csv'}: {said}\n"
    assert not (tmp_path / "out").exists()
