"""import, review, export and verify on a small trace made by hand."""

import csv
import json

import pytest

RATE = 50
"""Rows a second."""


def trace(path, stretches, delimiter=","):
    """Write a trace: stretches of (seconds, feed, return, amperes), 50 rows a second."""
    lines = [delimiter.join(("t", "feed", "return", "amps"))]
    row = 0
    for seconds, *values in stretches:
        for _ in range(round(seconds * RATE)):
            texts = [f"{row / RATE:.3f}", *(f"{value:.3f}" for value in values)]
            if delimiter == ";":
                texts = [text.replace(".", ",") for text in texts]
            lines.append(delimiter.join(texts))
            row += 1
    path.write_text("\r\n".join(lines) + "\r\n")
    return path


# Speed 1 from 1 s on; dead from 6 s to 7 s with a tap at 7 s; speed 0 at 10 s.
DEAD_SPOT = [
    (1.0, 12.6, 12.6, 0.0),
    (5.0, 12.4, 8.4, 4.0),
    (1.0, 12.6, 0.0, 0.0),
    (3.0, 12.4, 8.4, 4.0),
    (1.0, 12.6, 12.6, 0.0),
]
EVENTS = "elapsed_s,kind,value\n0,speed,0\n1.0,speed,1\n7.0,tap,\n10.0,speed,0\n"
ASSIGN = [
    "--assign",
    "motor-feed=feed",
    "--assign",
    "motor-return=return",
    "--assign",
    "motor-current=amps",
]
LIMITS = """
nominal_v = 12.0
supply_present_v = 9.5
driven_v = 2.0
open_current_a = 0.3
locked_current_a = 40.0
inrush_window_s = 1.0
min_dwell_s = 0.04
[speed.1]
min_a = 2.0
max_a = 5.0
"""


@pytest.fixture
def imported(run, tmp_path):
    trace(tmp_path / "trace.csv", DEAD_SPOT)
    (tmp_path / "events.csv").write_text(EVENTS)
    (tmp_path / "limits.toml").write_text(LIMITS)
    run(
        "import",
        tmp_path / "trace.csv",
        "--time",
        "t",
        *ASSIGN,
        "--events",
        tmp_path / "events.csv",
        "--limits",
        tmp_path / "limits.toml",
        "--out",
        tmp_path / "rec",
    )
    return tmp_path / "rec"


def test_the_dead_stretch_is_found_with_its_edges(run, imported):
    said = json.loads(run("review", imported, "--json").out)
    (dead,) = [finding for finding in said["findings"] if finding["kind"] == "dead"]
    assert dead["verdict"] == "fail"
    assert dead["start_s"] == pytest.approx(6.0, abs=1 / RATE)
    assert dead["end_s"] == pytest.approx(7.0, abs=1 / RATE)
    assert dead["edge_s"] == pytest.approx(1 / RATE, rel=0.1)
    assert dead["limit"] == 0.3
    assert dead["unit"] == "A"
    assert [(span["kind"], span["speed"]) for span in said["spans"]] == [
        ("off", 0),
        ("running", 1),
        ("dead", 1),
        ("running", 1),
        ("off", 0),
    ]


def test_steps_have_the_figures_of_their_readings(run, imported):
    said = json.loads(run("review", imported, "--json").out)
    step = next(step for step in said["steps"] if step["speed"] == 1)
    assert (step["start_s"], step["end_s"]) == (1.0, 10.0)
    assert step["n"] == 9 * RATE
    # By hand: 8 s of 4 A and 1 s of nothing; 8 s of 4 V and 1 s of 12.6 V across the motor.
    assert step["mean_a"] == pytest.approx(8 * 4.0 / 9)
    assert step["mean_v"] == pytest.approx((8 * 4.0 + 12.6) / 9)
    assert (step["min_a"], step["max_a"]) == (0.0, 4.0)
    assert step["steady_mean_a"] == pytest.approx(4.0)


def test_the_shortest_dropout_it_could_have_seen_is_stated(run, imported):
    said = json.loads(run("review", imported, "--json").out)
    assert 1 / RATE <= said["shortest_visible_dropout_s"] <= 4 / RATE


def test_other_limits_give_another_verdict_and_the_export_names_them(run, imported, tmp_path):
    strict = tmp_path / "strict.toml"
    strict.write_text(LIMITS.replace("max_a = 5.0", "max_a = 3.0"))
    kinds = {
        name: [
            (finding["kind"], finding["verdict"])
            for finding in json.loads(run("review", imported, *more, "--json").out)["findings"]
        ]
        for name, more in {"own": [], "strict": ["--limits", strict]}.items()
    }
    assert ("step-current", "pass") in kinds["own"]
    assert ("step-current", "fail") in kinds["strict"]
    run("export", imported, "--out", tmp_path / "out", "--limits", strict)
    readme = (tmp_path / "out" / "README.txt").read_text(encoding="utf-8")
    assert "max_a = 3.0" in readme
    run("verify", imported)


def test_the_exit_code_tells_of_findings_only_when_asked(run, imported):
    run("review", imported)
    run("review", imported, "--fail-on-findings", code=1)


def test_an_imported_trace_is_sealed_and_marked(run, imported, tmp_path):
    said = json.loads(run("review", imported, "--json").out)
    assert said["recording"]["origin"] == "imported"
    assert said["recording"]["state"] == "sealed"
    assert json.loads(run("verify", imported, "--json").out)["intact"] is True
    run("export", imported, "--out", tmp_path / "out")
    with (tmp_path / "out" / "findings.csv").open(encoding="utf-8", newline="") as table:
        assert {row["origin"] for row in csv.DictReader(table)} == {"imported"}


def test_decimal_commas_give_the_same_review(run, imported, tmp_path):
    trace(tmp_path / "german.csv", DEAD_SPOT, ";")
    run(
        "import",
        tmp_path / "german.csv",
        "--time",
        "t",
        *ASSIGN,
        "--events",
        tmp_path / "events.csv",
        "--limits",
        tmp_path / "limits.toml",
        "--out",
        tmp_path / "rec2",
    )
    one, two = (
        json.loads(run("review", folder, "--json").out) for folder in (imported, tmp_path / "rec2")
    )
    for name in ("spans", "steps", "findings", "shortest_visible_dropout_s"):
        assert one[name] == two[name]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (["--time", "seconds"], "seconds"),
        (["--assign", "motor-feed=volts"], "volts"),
        (["--assign", "motor-fed=feed"], "motor-feed"),
        (["--assign", "motor-feed"], "Expected ROLE=COLUMN"),
        (["--limits", "linear-12"], "Did you mean 'linear-12v'"),
        (["--events", "absent.csv"], "absent.csv"),
    ],
)
def test_a_bad_import_is_2_names_the_matter_and_leaves_nothing(run, tmp_path, change, words):
    trace(tmp_path / "trace.csv", DEAD_SPOT[:1])
    options = {"--time": "t", "--assign": "motor-feed=feed", **dict([change])}
    said = run(
        "import",
        tmp_path / "trace.csv",
        *(word for pair in options.items() for word in pair),
        "--out",
        tmp_path / "rec",
        code=2,
    )
    assert words in said.err
    assert not (tmp_path / "rec").exists()


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("1.0,twelve,8.0,4.0", "twelve"),
        ("-0.5,12.0,8.0,4.0", "line"),
        ("1.0,12.0,8.0", "line"),
    ],
)
def test_a_bad_line_of_a_trace_is_named_with_its_number(run, tmp_path, line, words):
    path = trace(tmp_path / "trace.csv", DEAD_SPOT[:1])
    path.write_text(path.read_text() + line + "\n")
    said = run("import", path, "--time", "t", *ASSIGN, "--out", tmp_path / "rec", code=2)
    assert words in said.err
    assert "52" in said.err
    assert not (tmp_path / "rec").exists()


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("nominal = 12\n", "Did you mean 'nominal_v'"),
        ("nominal_v = 'twelve'\n", "nominal_v"),
        ("nominal_v = = 12\n", "TOML"),
        ("[speed.one]\nmin_a = 1\n", "speed.one"),
    ],
)
def test_bad_limits_are_2_and_name_file_and_key(run, imported, tmp_path, text, words):
    path = tmp_path / "bad.toml"
    path.write_text(text)
    said = run("review", imported, "--limits", path, code=2)
    assert words in said.err
    assert "bad.toml" in said.err


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (["--assign", "motor-feed=line-logger.fed"], "Did you mean 'line-logger.feed'"),
        (["--scale", "motor-current=lots"], "ROLE=NUMBER"),
        (["--scale", "motor-curent=1"], "Did you mean 'motor-current'"),
        (["--limits", "absent.toml"], "absent.toml"),
        (["--speed-from", "absent.csv"], "absent.csv"),
    ],
)
def test_a_bad_record_request_is_2_before_any_port_is_opened(run, tmp_path, more, words):
    said = run(
        "record", "--meter", "line-logger@/no/such/port", "--out", tmp_path / "r", *more, code=2
    )
    assert words in said.err
    assert not (tmp_path / "r").exists()


def test_a_port_that_is_not_there_is_1_and_names_it(run, tmp_path):
    said = run("record", "--meter", "line-logger@/no/such/port", "--out", tmp_path / "r", code=1)
    assert "/no/such/port" in said.err
    assert not (tmp_path / "r").exists()
