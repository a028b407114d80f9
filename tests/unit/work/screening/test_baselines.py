"""Baselines: what good motors draw, by hand and by the rule."""

import math
import shutil
import statistics

import numpy as np
import pyarrow.parquet as pq
import pytest

from meterlog.analysis.compare import tolerance_factor
from meterlog.model import Conditions, Origin
from meterlog.model.errors import EvidenceError
from meterlog.model.job_card import with_value
from meterlog.work.job_cards import change_card
from meterlog.work.job_folder import CARD, JobWork, Side, keep_work
from meterlog.work.screening import baselines_for, baselines_of
from meterlog.work.speed_figures import SpeedFigures, brought


def _found(said, number="FM-20", origin="measured"):
    return {one.speed: one for one in baselines_of(said.baseline_table, number, origin=origin)}


@pytest.fixture
def five(make, screened, tmp_path):
    """Five good motors of FM-20."""
    for number in (0, 3, 6, 9, 12):
        make(f"run-{number}", number)
    return tmp_path / "own"


def test_mean_spread_and_uncertainty_are_those_reckoned_by_hand(five, screened, of):
    said, rows = screened(five)
    at = _found(said)[4]
    used = of(rows, "speed", speed=4)
    assert at.n == len(used) == 5
    assert at.reference_v == used[0]["compared_at_v"] == 13.0
    amps, us = [], []
    for row in used:
        ratio = 13.0 / row["motor_v"]
        there = row["current_a"] * ratio ** row["exponent"]
        amps.append(there)
        us.append(
            math.hypot(
                row["current_u_a"] * there / row["current_a"],
                row["exponent"] * there / row["motor_v"] * row["motor_u_v"],
                there * math.log(ratio) * row["exponent_u"],
            )
        )
    assert sorted(at.currents_a) == pytest.approx(sorted(amps))
    assert sorted(at.currents_u_a) == pytest.approx(sorted(us))
    assert at.mean_a == pytest.approx(statistics.fmean(amps))
    assert at.spread_a == pytest.approx(statistics.stdev(amps))
    u = math.hypot(max(us), statistics.stdev(amps) / math.sqrt(5))
    assert at.expanded_u_a == pytest.approx(at.coverage * u)
    assert 2.0 <= at.coverage < 2.8
    k = tolerance_factor(5, 0.90, 0.95)
    assert at.low_a == pytest.approx(at.mean_a - k * at.spread_a)
    assert at.high_a == pytest.approx(at.mean_a + k * at.spread_a)


def test_low_speeds_stand_at_their_own_voltage(five, screened, of):
    said, rows = screened(five)
    at = _found(said)[1]
    volts = [row["motor_v"] for row in of(rows, "speed", speed=1)]
    assert at.reference_v == pytest.approx(statistics.fmean(volts))
    assert at.reference_v == pytest.approx(4.6, abs=0.4)


@pytest.mark.parametrize(
    ("more", "why"),
    [
        ({"origin": Origin.TYPED}, "it is typed by hand"),
        ({"origin": Origin.IMPORTED}, "it is imported"),
        ({"dead": True}, "it was not judged in order"),
        ({"measured_under": Conditions(place="bench")}, "the motor was on the bench"),
        ({"measured_under": Conditions(housing="open")}, "the housing was open"),
        ({"measured_under": Conditions(filter="none")}, "there was no filter"),
        ({"measured_under": Conditions(filter="clogged")}, "the filter was clogged"),
    ],
)
def test_what_is_no_good_run_is_in_no_baseline(five, make, screened, of, more, why):
    folder = make("odd", 15, **more)
    said, rows = screened(five)
    (row,) = of(rows, folder=str(folder))
    assert row["not_good"] == why
    assert _found(said)[4].n == 5
    assert all(folder.name not in name for one in _found(said).values() for name in one.folders)


def test_simulated_ones_have_baselines_of_their_own_and_are_marked(five, make, screened, of):
    make("false", 15, origin=Origin.SIMULATED)
    said, rows = screened(five)
    (row,) = of(rows, mark="SIMULATED")
    assert row["origin"] == "simulated"
    assert _found(said)[4].n == 5
    assert _found(said, origin="simulated")[4].n == 1
    assert _found(said, origin="simulated")[4].spread_a is None
    assert _found(said, origin="simulated")[4].low_a is None


def test_each_motor_counts_once_with_its_newest_run_and_copies_do_not(five, make, screened):
    newest = make("later", 300, part="FM-20, serial 00000")
    shutil.copytree(newest, five / "copy")
    said, _ = screened(five)
    at = _found(said)[4]
    assert at.n == 5
    assert str(five / "run-0") not in at.folders
    assert at.recording_ids.count("00000000-0000-4000-8000-000000000300") == 1


def test_the_number_is_that_of_the_jobs_card(make, screened, tmp_path):
    folder = make("run", 0, part="motor as fitted")
    _fitted(tmp_path / "own" / "jobs" / "1", folder)
    said, rows = screened(tmp_path / "own")
    assert rows[0]["part_number"] == "FM-99"
    assert rows[0]["motor"] == "77"
    assert _found(said, "fm-99")[4].n == 1


def _fitted(job, folder):
    """Make a job in which a recording was made with the new part."""
    change_card(
        job / CARD,
        lambda card: with_value(
            with_value(card, "new_part.number", "fm-99"), "new_part.serial", "77"
        ),
    )
    keep_work(job, JobWork().taking(folder, Side.NEW))


@pytest.mark.parametrize("given", ["deep", "run in its job", "run first", "run last"])
def test_the_card_is_found_wherever_its_job_lies(make, screened, tmp_path, given):
    job = tmp_path / "own" / "a" / "b" / "c" / "d" / "e" / "f" / "job"
    folder = make("a/b/c/d/e/f/job/after", 0, part="motor as fitted")
    _fitted(job, folder)
    shelf = tmp_path / "own"
    folders = {
        "deep": [shelf],
        "run in its job": [folder],
        "run first": [folder, shelf],
        "run last": [shelf, folder],
    }
    _, rows = screened(*folders[given])
    assert (rows[0]["part_number"], rows[0]["motor"]) == ("FM-99", "77")


def test_the_card_in_one_folder_tells_of_a_recording_in_another(make, screened, tmp_path):
    folder = make("run", 0, part="motor as fitted")
    _fitted(tmp_path / "jobs" / "1", folder)
    for folders in ([tmp_path / "jobs", folder], [folder, tmp_path / "jobs"]):
        _, rows = screened(*folders)
        assert rows[0]["part_number"] == "FM-99"


def test_the_table_of_baselines_reads_as_numbers_with_numpy(five, screened):
    said, _ = screened(five)
    table = pq.read_table(said.baseline_table)
    means = [np.mean(one) for one in table["currents_a"].to_pylist()]
    assert np.allclose(means, table["mean_a"].to_numpy())


def test_no_vehicle_stands_in_the_tables(five, make, screened):
    make("bare", 15, part="FM-20", vehicle="Kestrel of Mrs Invented")
    said, _ = screened(five)
    for path in (said.table, said.baseline_table):
        assert "Kestrel" not in str(pq.read_table(path).to_pylist())
    assert _found(said)[4].n == 6


def test_what_is_no_table_of_baselines_is_refused(tmp_path, five, screened):
    said, _ = screened(five)
    (tmp_path / "text.parquet").write_text("no")
    for path, words in (
        (tmp_path / "text.parquet", "can't be read"),
        (tmp_path / "nowhere.parquet", "is not there"),
        (said.table, "is no table of baselines"),
    ):
        with pytest.raises(EvidenceError, match=words):
            baselines_of(path, "FM-20")


def test_a_window_is_given_what_is_known_of_a_part_and_nothing_where_nothing_is(
    five, screened, tmp_path, monkeypatch
):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert baselines_for("FM-20, serial 5") == ()
    said, _ = screened(five, out="data/meterlog/screening")
    assert [one.speed for one in baselines_for("FM-20, serial 5")] == [1, 2, 3, 4]
    assert baselines_for("fm-20", table=said.table.parent, nominal_v=24.0) == ()
    assert baselines_for("FM-20", simulated=True) == ()
    assert baselines_for("") == ()


def test_a_current_is_brought_no_farther_than_a_quarter():
    figures = SpeedFigures(4, 100, 10.0, 0.1, 10.0, 0.1, 1.7, 0.2, "")
    there = brought(figures, 12.0)
    assert there.value == pytest.approx(10.0 * 1.2**1.7)
    assert brought(figures, 14.0) is None
    assert brought(SpeedFigures(4, 9, 10.0, 0.1, None, None, None, None, "-"), 12.0) is None
