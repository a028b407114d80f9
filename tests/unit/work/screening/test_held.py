"""One run beside good ones: what the verdicts come to, the median, and what was otherwise."""

import statistics
from dataclasses import replace

import pyarrow as pa
import pyarrow.parquet as pq
import pytest

from meterlog.analysis.compare import side_of
from meterlog.model import Conditions, Limits, Origin, Verdict
from meterlog.model.errors import EvidenceError, UsageError
from meterlog.work.drawn import drawn_from, drawn_of, drawn_text
from meterlog.work.library.hit import Usual
from meterlog.work.review import review_folder
from meterlog.work.screening import AgainstRequest, baselines_of, hold_folder, with_few_named
from meterlog.work.screening.held import held_against, usual_of

GOOD = (0, 3, 6, 9, 12, 18, 21, 24)


@pytest.fixture
def table(make, screened, tmp_path):
    for number in GOOD:
        make(f"run-{number}", number)
    return screened(tmp_path / "own")[0].baseline_table


def _drawn(folder):
    recording, review = review_folder(folder)
    return drawn_of(
        side_of(folder.name, recording.about, review, recording.about.limits, recording.standing)
    )


@pytest.mark.parametrize(("load", "usual"), [(1.45, Usual.HIGHER), (0.6, Usual.LOWER)])
def test_what_fails_is_higher_or_lower_by_so_many_percent_of_the_median(table, make, load, usual):
    new = make("new", 30, part="FM-20, serial 9", load=load)
    held = hold_folder(AgainstRequest(table, new))
    assert held.usual is usual
    assert {one.usual for one in held.speeds} == {usual}
    for one in held.speeds:
        good = next(row for row in baselines_of(table, "FM-20") if row.speed == one.step.speed)
        assert one.good == good
        assert good.median_a == statistics.median(good.currents_a)
        assert one.off_percent == pytest.approx(
            100.0 * (one.step.new_a.value / good.median_a - 1.0)
        )
        low, high = good.middle_a
        within = [amps for amps in good.currents_a if low <= amps <= high]
        assert len(within) == len(good.currents_a) / 2
        assert (one.step.verdict, one.step.count) == (Verdict.FAIL, len(GOOD))


def test_a_good_one_is_as_usual_or_cannot_be_told(table, make):
    held = hold_folder(AgainstRequest(table, make("new", 27)))
    assert {one.usual for one in held.speeds} <= {Usual.AS_USUAL, Usual.CANT_TELL}
    assert Usual.AS_USUAL in {one.usual for one in held.speeds}
    told = {one.step.verdict for one in held.speeds}
    assert (held.usual is Usual.AS_USUAL) == (told == {Verdict.PASS})


def test_one_higher_and_another_lower_are_both_told(table, make):
    drawn = _drawn(make("new", 27))
    turned = replace(
        drawn,
        figures=tuple(
            replace(one, current_a=one.current_a * (1.5 if one.speed == 1 else 0.6))
            for one in drawn.figures
        ),
    )
    assert usual_of(turned, baselines_of(table, "FM-20"), "FM-20") is Usual.BOTH


def test_of_two_good_ones_nothing_is_told_but_their_median(make, screened, tmp_path):
    make("run-0", 0)
    make("run-3", 3)
    table = screened(tmp_path / "own")[0].baseline_table
    held = hold_folder(AgainstRequest(table, make("new", 27)))
    assert held.usual is Usual.TOO_FEW
    assert {(one.usual, one.good.middle_a) for one in held.speeds} == {(Usual.TOO_FEW, None)}
    assert all(one.off_percent is not None for one in held.speeds)


def test_what_the_index_keeps_is_held_as_a_review_is(table, make):
    new = make("new", 30, part="FM-20, serial 9", load=1.45)
    kept = drawn_from(drawn_text(_drawn(new)))
    good = baselines_of(table, "FM-20")
    held = held_against(kept, good, "FM-20")
    said = hold_folder(AgainstRequest(table, new))
    assert held.speeds == said.speeds
    assert held.comparison.steps == said.comparison.steps
    assert usual_of(kept, good, "FM-20") is said.usual is Usual.HIGHER


@pytest.mark.parametrize("text", ["", "{", "[]", '{"figures": []}', '{"figures": [{"speed": 1}]}'])
def test_what_is_no_run_is_read_as_none(text):
    assert drawn_from(text) is None


def test_the_recording_itself_is_not_among_the_good_ones_it_is_held_against(table, tmp_path):
    held = hold_folder(AgainstRequest(table, tmp_path / "own" / "run-0"))
    assert {len(one.good.currents_a) for one in held.speeds} == {len(GOOD) - 1}
    drawn = _drawn(tmp_path / "own" / "run-0")
    alone = [one.without("nobody") for one in baselines_of(table, "FM-20")]
    only = [replace(one, n=1, recording_ids=(drawn.run.recording_id,)) for one in alone]
    assert usual_of(drawn, only, "FM-20") is Usual.NO_BASELINE
    refusal = held_against(drawn, only, "FM-20").comparison.refusal
    assert "itself is the only good one of FM-20 in this table" in refusal


def test_other_limits_and_another_motor_voltage_are_cautioned_of(table, make):
    new = make("new", 27)
    plain = hold_folder(AgainstRequest(table, new))
    assert plain.comparison.conditions == ()
    drawn = _drawn(new)
    other = replace(
        drawn,
        limits="wide",
        figures=tuple(replace(one, motor_v=one.motor_v * 1.12) for one in drawn.figures),
    )
    told = held_against(other, baselines_of(table, "FM-20"), "FM-20").comparison.conditions
    assert [(one.name, one.weight) for one in told] == [
        ("motor voltage", "differs"),
        ("limits", "differs"),
    ]
    volts, limits = told
    assert volts.old.endswith(" V")
    assert " V to " in volts.old
    low, high = (float(one.split()[0]) for one in volts.old.split(" to "))
    assert low < high < float(volts.new.split()[0])
    assert (limits.old, limits.new) == ("invented", "wide")


def test_judged_by_other_limits_it_says_so(table, make):
    new = make("new", 27)
    other = replace(Limits(), name="wide")
    told = hold_folder(AgainstRequest(table, new, limits=other)).comparison
    assert any((one.name, one.new) == ("limits", "wide") for one in told.conditions)


def test_another_nominal_voltage_is_refused_and_says_which_there_are(table, make):
    new = make("new", 27)
    with pytest.raises(UsageError, match="baselines of FM-20 for 12 V nominal only, not for 24 V"):
        hold_folder(AgainstRequest(table, new, limits=replace(Limits(), nominal_v=24.0)))


def test_nothing_is_reviewed_where_the_table_has_nothing_of_the_part(table, make, monkeypatch):
    def never(*_, **__):
        raise AssertionError

    new = make("new", 27, part="ZZ-1")
    monkeypatch.setattr("meterlog.work.screening.against.review_folder", never)
    with pytest.raises(UsageError, match="holds no measured baseline of ZZ-1"):
        hold_folder(AgainstRequest(table, new))


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"measured_under": Conditions(place="bench")}, "the motor was on the bench"),
        ({"measured_under": Conditions(filter="none")}, "there was no filter"),
    ],
)
def test_what_cannot_be_compared_is_named_so_with_the_reason(table, make, more, words):
    held = hold_folder(AgainstRequest(table, make("new", 27, **more)))
    assert held.usual is Usual.NOT_COMPARABLE
    assert held.comparison.refusal.startswith(f"new: {words}")
    assert held.speeds == ()


def test_the_mark_goes_with_it(table, make):
    held = hold_folder(AgainstRequest(table, make("new", 27, origin=Origin.TYPED)))
    assert held.mark == "TYPED BY HAND"


def test_a_table_of_another_version_is_refused_with_what_to_do(table, make, tmp_path):
    new, rows = make("new", 27), pq.read_table(table)
    old = rows.drop_columns(["limits"])
    said = {**rows.schema.metadata, b"format": b"1"}
    pq.write_table(old.replace_schema_metadata(said), tmp_path / "old.parquet")
    with pytest.raises(EvidenceError, match=r"another version.*not judged again"):
        hold_folder(AgainstRequest(tmp_path / "old.parquet", new))
    foreign = pa.table({"a": [1]})
    pq.write_table(foreign, tmp_path / "foreign.parquet")
    with pytest.raises(EvidenceError, match="is no table of baselines"):
        hold_folder(AgainstRequest(tmp_path / "foreign.parquet", new))


def test_an_old_table_is_mended_by_screening_again_without_judging(table, screened, tmp_path):
    rows = pq.read_table(table)
    said = {**rows.schema.metadata, b"format": b"1"}
    pq.write_table(rows.drop_columns(["limits"]).replace_schema_metadata(said), table)
    again, _ = screened(tmp_path / "own")
    assert again.reviewed == 0
    assert {one.limits for one in baselines_of(table, "FM-20")} == {("invented",) * len(GOOD)}


def test_of_many_good_ones_a_few_are_named(table, make):
    told = hold_folder(AgainstRequest(table, make("new", 27))).comparison
    few = with_few_named(told)
    assert (len(told.old), len(few.old)) == (len(GOOD), 5)
    assert few.notes[0] == "3 more good ones are not named here; the table of baselines names all."
