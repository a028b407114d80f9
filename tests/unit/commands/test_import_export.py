"""export and import of what was exported, through the command line: options, words, exit codes."""

import csv
import json

import pytest

FORMS = [
    ((), ",", "."),
    (("--delimiter", "semicolon", "--decimal", "comma"), ";", ","),
    (("--delimiter", "tab", "--decimal", "comma"), "\t", ","),
    (("--delimiter", "semicolon"), ";", "."),
]


def _reviewed(run, folder):
    said = json.loads(run("review", folder, "--json").out)
    recording = said.pop("recording")
    return said, (recording["started_utc"], recording["end_s"], recording["times"])


@pytest.mark.parametrize(("options", "delimiter", "decimal"), FORMS)
def test_an_export_is_imported_without_hints_and_judged_the_same(
    run, small, tmp_path, options, delimiter, decimal
):
    run("export", small, "--out", tmp_path / "out", *options)
    said = json.loads(run("import", tmp_path / "out", "--out", tmp_path / "again", "--json").out)
    assert (said["rows"], said["events"], said["warnings"]) == ({"imported": 600}, 2, [])
    assert _reviewed(run, tmp_path / "again") == _reviewed(run, small)
    run("verify", tmp_path / "again")
    # and once more, from the copy: the same tables but for what they are of
    run("export", tmp_path / "again", "--out", tmp_path / "out2", *options)
    for path in (tmp_path / "out").glob("*.csv"):
        assert path.read_bytes() == (tmp_path / "out2" / path.name).read_bytes()
    with (tmp_path / "out" / "steps.csv").open(encoding="utf-8", newline="") as stream:
        (row,) = csv.DictReader(stream, delimiter=delimiter)
    assert row["steady_mean_a (A)"] == f"4{decimal}0"


def test_columns_with_a_rate_of_their_own_go_out_and_come_back_as_they_are(run, tmp_path):
    lines = ["t,feed,amps"]
    lines += [f"{i * 0.02:.2f},12.{i % 7},{'' if i % 5 else 3.5 + i % 2 / 10}" for i in range(500)]
    (tmp_path / "trace.csv").write_text("\n".join(lines) + "\n")
    (tmp_path / "events.csv").write_text("elapsed_s,kind,value\n0,speed,1\n")
    said = run(
        *("import", tmp_path / "trace.csv", "--time", "t", "--events", tmp_path / "events.csv"),
        *("--assign", "motor-feed=feed", "--assign", "motor-current=amps"),
        *("--limits", "linear-12v", "--out", tmp_path / "own"),
    )
    assert "motor-feed: 500 readings, one every 0.02 s" in said.out
    assert "motor-current: 100 readings, one every 0.1 s" in said.out
    run("export", tmp_path / "own", "--out", tmp_path / "out")
    names = {path.name for path in (tmp_path / "out").glob("readings-*.csv")}
    assert names == {"readings-imported.csv", "readings-imported-2.csv"}
    said = json.loads(run("import", tmp_path / "out", "--out", tmp_path / "again", "--json").out)
    assert said["rows"] == {"imported": 500, "imported-2": 100}
    assert _reviewed(run, tmp_path / "again") == _reviewed(run, tmp_path / "own")
    assert "columns of one trace" in " ".join(_reviewed(run, tmp_path / "own")[0]["notes"])


@pytest.mark.parametrize(("options", "delimiter", "decimal"), FORMS)
def test_the_readme_says_which_form_it_is(run, small, tmp_path, options, delimiter, decimal):
    run("export", small, "--out", tmp_path / "out", *options)
    text = " ".join((tmp_path / "out" / "README.txt").read_text(encoding="utf-8").split())
    named = {",": "comma", ";": "semicolon", "\t": "tab"}[delimiter]
    mark = {",": "comma", ".": "point"}[decimal]
    assert f"a {named} between fields, a {mark} as decimal mark" in text
    assert ("no exponents" in text) == (decimal == ",")
    assert "-metadata.json" in text


def test_one_table_is_imported_with_the_events_beside_it(run, small, tmp_path):
    run("export", small, "--out", tmp_path / "out", *FORMS[1][0])
    table = tmp_path / "out" / "readings-imported.csv"
    run("import", table, "--out", tmp_path / "again", "--work-order", "4711")
    assert _reviewed(run, tmp_path / "again") == _reviewed(run, small)
    assert '"work_order": "4711"' in (tmp_path / "again/data/about.json").read_text()
    # other limits may be given, and hints still do without the metadata
    (tmp_path / "mine.toml").write_text("open_current_a = 0.2\n")
    run("import", table, "--limits", tmp_path / "mine.toml", "--out", tmp_path / "other")
    assert json.loads(run("review", tmp_path / "other", "--json").out)["limits"] == "mine"
    run(
        *("import", table, "--time", "elapsed_s", "--assign", "motor-current=motor-current (A)"),
        *("--events", tmp_path / "out" / "events.csv", "--out", tmp_path / "hinted"),
    )
    (step,) = json.loads(run("review", tmp_path / "hinted", "--json").out)["steps"]
    assert step["steady_mean_a"] == 4.0


def test_a_comma_can_not_be_both(run, small, tmp_path):
    said = run("export", small, "--out", tmp_path / "out", "--decimal", "comma", code=2)
    assert "--delimiter semicolon or tab" in said.err
    assert not (tmp_path / "out").exists()
    run("export", small, "--out", tmp_path / "out", "--delimiter", "pipe", code=2)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--time", "t"), "--assign ROLE=COLUMN is missing"),
        (("--assign", "motor-feed=feed"), "--time COLUMN is missing"),
        (("--accuracy", "motor-feed=1"), "says itself how good"),
        ((), "has no metadata beside it (small.csv-metadata.json). Say what its columns are"),
        (("--events", "nowhere.csv"), "has no metadata beside it"),
    ],
)
def test_a_trace_from_elsewhere_needs_hints(run, small, tmp_path, words, said):
    del small
    told = run("import", tmp_path / "small.csv", *words, "--out", tmp_path / "x", code=2)
    assert said in told.err
    assert not (tmp_path / "x").exists()


def test_what_is_lacking_is_told(run, small, tmp_path):
    run("export", small, "--out", tmp_path / "out")
    (tmp_path / "out" / "events.csv").unlink()
    told = run("import", tmp_path / "out", "--out", tmp_path / "again")
    assert "warning: no events were found" in told.err


def test_what_differs_from_its_seal_is_not_called_sealed(run, small, tmp_path):
    run("export", small, "--out", tmp_path / "whole")
    readme = (tmp_path / "whole" / "README.txt").read_text()
    assert "State        sealed" in readme
    about = small / "data" / "about.json"
    about.write_bytes(about.read_bytes() + b" ")
    said = run("export", small, "--out", tmp_path / "changed")
    told = "NOT AS SEALED: data/about.json: differs"
    assert told in " ".join(said.err.split())
    readme = (tmp_path / "changed" / "README.txt").read_text()
    assert "State        NOT AS SEALED" in readme
    assert "data/about.json: differs" in " ".join(readme.split())
    judgement = (tmp_path / "changed" / "judgement.txt").read_text()
    assert told in " ".join(judgement.split())
    (told,) = (tmp_path / "changed").glob("review.json")
    facts = json.loads(told.read_text())["recording"]
    assert facts["state"] == "NOT AS SEALED"
    assert facts["not_as_sealed"]
