"""The program run in this process, and a small recording to run it on. All of it invented."""

from __future__ import annotations

import pytest

from meterlog import cli


@pytest.fixture
def run(qapp, capsys):
    del qapp  # a picture would else make a lesser application than the window tests need

    def command(*words, code=0):
        try:
            left = cli.main([str(word) for word in words])
        except SystemExit as leaving:
            left = leaving.code
        said = capsys.readouterr()
        assert left == code, said
        assert "Traceback" not in said.err
        assert "fault in meterlog itself" not in said.err
        return said

    return command


@pytest.fixture
def small(run, tmp_path):
    """A sealed recording of 12 s at 50 rows a second; dead from 6 s to 7 s at speed 1."""
    rows = ["t,feed,return,amps"]
    for k in range(600):
        dead = 300 <= k < 350
        rows.append(f"{k / 50:.2f},12.5,{0 if dead else 8.5},{0 if dead else 4}")
    (tmp_path / "small.csv").write_text("\n".join(rows) + "\n")
    (tmp_path / "marks.csv").write_text("elapsed_s,kind,value\n0,speed,1\n7.0,tap,\n")
    run(
        *("import", tmp_path / "small.csv", "--time", "t", "--events", tmp_path / "marks.csv"),
        *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
        *("--assign", "motor-current=amps", "--accuracy", "motor-current=1.5+0.05"),
        *("--limits", "linear-12v", "--out", tmp_path / "small"),
    )
    return tmp_path / "small"
