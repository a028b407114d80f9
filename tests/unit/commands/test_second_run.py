"""``meterlog record --second-to``: conditions that differ are said before the second run starts."""

import pytest

from meterlog.recording import Recording

METER = ("--meter", "typed-amps@typed:", "--assign", "motor-current=typed-amps.amps")


@pytest.fixture
def first(run, tmp_path):
    recorded(run, tmp_path / "first", "engine=off", "filter=used", "battery_v=12.4", "windows=open")
    return tmp_path / "first"


def recorded(run, out, *conditions, more=(), code=0):
    """Record for a moment."""
    stated = [word for one in conditions for word in ("--condition", one)]
    return run("record", *METER, *stated, *more, "--seconds", "0.1", "--out", out, code=code)


def test_what_differs_is_said_with_what_it_may_do(run, first, tmp_path):
    said = recorded(
        *(run, tmp_path / "second", "engine=running", "filter=used", "battery_v=13.9"),
        more=("--second-to", first),
    ).err
    lines = said.splitlines()
    starts = next(at for at, line in enumerate(lines) if "recording to" in line)
    before = "\n".join(lines[:starts])
    assert "NOT COMPARABLE: engine was 'off', now 'running'" in before
    assert "the commonest false difference" in before
    assert "Differs: the battery had 12.4 V, now 13.9 V" in before
    assert "Not stated: windows was 'open'; say what it is now." in before
    assert "filter" not in before
    assert Recording.open(tmp_path / "second").about.job.measured_under.engine == "running"


def test_the_same_conditions_are_said_to_be_the_same(run, first, tmp_path):
    said = recorded(
        *(run, tmp_path / "second", "engine=off", "filter=used", "battery_v=12.5", "windows=open"),
        more=("--second-to", first),
    ).err
    assert "none that was stated differs" in said


def test_no_first_run_is_refused_before_anything_is_made(run, tmp_path):
    more = ("--second-to", tmp_path / "nowhere")
    said = recorded(run, tmp_path / "second", more=more, code=2).err
    assert "is not there" in said
    assert not (tmp_path / "second").exists()
