"""A claim goes out as tables: who gets them makes the recording again and judges it the same."""

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from meterlog.evidence import review_to_dict, verify_folder
from meterlog.evidence.table_form import table_form
from meterlog.instruments.virtual import simulate
from meterlog.model import About, Block, Event, EventKind, Flag, Limits, Origin, join
from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.profile import load_limits, load_meter
from meterlog.recording import ExportRequest, Recorder, Recording, import_export, seal
from meterlog.work import review_folder
from meterlog.work.amended import Amending
from meterlog.work.amendments import add_amendment
from meterlog.work.evidence_folder import write_evidence

FORMS = [("comma", "point"), ("semicolon", "comma")]


def _record(folder, scenario, *, speeds=True):
    """Record a run of a virtual fan, with readings that did not come and a zero that was taken."""
    done = simulate(scenario, 3, meter=load_meter("line-logger"))
    key = done.instrument.key
    about = About(
        "8f2d8d0c-51c5-4d0b-8f3e-6f0f8bb1a002",
        datetime(2026, 5, 4, 10, 20, 30, 123456, tzinfo=UTC),
        7200, 0, "meterlog test", Origin.SIMULATED, (done.instrument,), load_limits("linear-12v"),
    )  # fmt: skip
    values, flags = done.block.values.copy(), done.block.flags.copy()
    values[200:230] = np.nan
    flags[200:230] = Flag.NO_DATA
    values[400, -1] = np.nan
    flags[400, -1] = Flag.OVERLOAD
    events = [event for event in done.events if speeds or event.kind is not EventKind.SPEED]
    zero = Event(10**9, EventKind.ZERO, "current 0.01 A scatter 0.002 n 20", key)
    note = Event(2 * 10**9, EventKind.NOTE, '=he said: "it\'s dead";\r\n\tagain')
    recorder = Recorder.create(folder, about)
    for event in sorted([*events, zero, note], key=lambda event: event.t_ns):
        recorder.take(event)
    recorder.take(Block(key, done.block.t_ns, values, flags))
    recorder.close()
    seal(folder)
    return folder


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("scenario", ["tap-test", "healthy-new"])
def test_the_same_findings_with_value_u_verdict_and_times(qapp, tmp_path, scenario, form):
    del qapp
    before, review = review_folder(_record(tmp_path / "run", scenario))
    write_evidence(before, review, tmp_path / "out", lambda _: None, table_form(*form))
    _, lacking = import_export(ExportRequest(tmp_path / "out", tmp_path / "again"))
    assert lacking == ()
    again, same = review_folder(tmp_path / "again")
    assert review.findings
    assert same.findings == review.findings
    assert any(finding.expanded_uncertainty for finding in same.findings)
    assert review_to_dict(same) == review_to_dict(review)
    assert again.events == before.events
    (key,) = (one.key for one in before.about.instruments)
    old, new = (join(list(one.blocks(key))) for one in (before, again))
    np.testing.assert_array_equal(new.t_ns, old.t_ns)
    np.testing.assert_array_equal(new.values, old.values)
    np.testing.assert_array_equal(new.flags, old.flags)


@pytest.mark.parametrize("form", FORMS)
def test_a_circuit_check_is_judged_the_same(shell, tmp_path, form):
    words = ("--state", "key=on,speed=4", "--sign", "fan=dead", "--reading", "motor-feed=12.4")
    shell.run("circuit", "low-side-linear-12v", *words, "--save", tmp_path / "run")
    options = ("--delimiter", form[0], "--decimal", form[1])
    shell.run("export", tmp_path / "run", "--out", tmp_path / "out", *options)
    shell.run("import", tmp_path / "out", "--out", tmp_path / "again")
    before, after = (shell.json("review", tmp_path / name) for name in ("run", "again"))
    assert before["circuit_checks"][0]["suspects"]
    assert after["circuit_checks"] == before["circuit_checks"]
    shell.run("export", tmp_path / "again", "--out", tmp_path / "out2", *options)
    for name in ("circuit-readings.csv", "circuit-suspects.csv"):
        table = (tmp_path / "out2" / name).read_bytes()
        assert len(table.splitlines()) > 1
        assert table == (tmp_path / "out" / name).read_bytes()


def test_other_limits_and_found_steps_survive_too(qapp, tmp_path):
    del qapp
    mine = Limits(name="mine", open_current_a=0.5)
    folder = _record(tmp_path / "run", "tap-test", speeds=False)
    before, review = review_folder(folder, mine)
    before.about = replace(before.about, limits=mine)  # as the command does
    write_evidence(before, review, tmp_path / "out", lambda _: None, table_form("tab", "comma"))
    import_export(ExportRequest(tmp_path / "out", tmp_path / "again"))
    again, same = review_folder(tmp_path / "again")
    assert again.about.limits == mine
    told, told_again = (review_to_dict(one) for one in (review, same))
    others, *notes = told.pop("notes")
    # By then they are its own, and that they were not is told like an edit.
    before_import, *notes_again = told_again.pop("notes")
    assert others.startswith("Judged by the limits mine, given for this judgement, and not by")
    assert before_import.endswith(f"exported, and imported here: {others}")
    assert (told_again, notes_again) == (told, notes)
    assert Recording.open(folder).about.limits.name == "linear-12v"


def test_edits_in_what_was_exported_are_told_of_what_is_imported(qapp, tmp_path):
    del qapp
    run = _record(tmp_path / "run", "healthy-new")
    limit = Amendment(AmendmentKind.LIMIT, "fuse.rating_a", None, "", "25", "N. N.", "box\nlabel")
    add_amendment(run, limit)
    told = []
    for number, name in enumerate(("run", "one", "two")):
        recording, review = review_folder(tmp_path / name)
        told.append([note for note in review.notes if note.startswith("Edit on top of")])
        out = tmp_path / f"out-{number}"
        write_evidence(recording, review, out, lambda _: None)
        import_export(ExportRequest(out, tmp_path / ("one", "two", "three")[number]))
    assert "N. N.: the limit 'fuse.rating_a' was changed from nothing to 25" in told[0][0]
    before = "Edit on top of the recording: before it was exported, and imported here: "
    words = told[0][0].removeprefix("Edit on top of the recording: ")
    # However often it goes out and comes in, it is said once.
    assert told[1] == told[2] == [before + words]
    assert verify_folder(tmp_path / "two").intact
    _, bare = review_folder(tmp_path / "one", amending=Amending(named=False))
    assert f"{before}1 [left out]." in bare.notes
    assert not any("N. N." in note for note in bare.notes)
