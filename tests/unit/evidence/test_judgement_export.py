"""The whole judgement in the exported folder: as text, as JSON, and what it rests on as tables."""

import csv
import json
import math
from dataclasses import replace

import pytest

from meterlog.evidence import export_recording, review_to_dict
from meterlog.model import (
    Budget,
    FindingKind,
    Origin,
    Outcome,
    Ranked,
    RunVerdict,
    Shape,
    Source,
    StartUp,
    Step,
    Sureness,
    Tap,
    TapEvidence,
    Verdict,
)
from meterlog.recording import Recording

GAIN = Source(
    "gain, 2 %", 1.5, "%", 0.05, Shape.RECTANGULAR, math.inf, "m.current:gain", "data sheet"
)
SCATTER = Source("scatter of 20 readings", 0.2, "A", 1.0, Shape.NORMAL, 19.0)


def full(desk):
    """Give a review with everything in it, invented."""
    current = Budget(
        "motor current at speed 2", 5.0, "A", (GAIN, SCATTER), 0.21, 24.5, 2.11, 0.44, "t"
    )
    bare = Budget("motor voltage", 12.5, "V", (), 0.0, math.inf, 2.0, 0.0, lacking="accuracy")
    step = Step(
        None, desk.second, 3 * desk.second, 20, edge_ns=20_000_000, found=True, proposed_speed=2,
        current=current, voltage=bare,
    )  # fmt: skip
    start = StartUp(
        desk.second,
        20_000_000,
        2,
        "command",
        17.5,
        0.5,
        0.1,
        True,
        5.0,
        3.5,
        None,
        None,
        9.0,
        1.5,
    )
    tap = Tap(
        2 * desk.second, 2, 0.0, 5.0, "dead", "running", 0.25, 0.02,
        answered=True, stopped=False, attempt=1,
    )  # fmt: skip
    taps = TapEvidence((tap,), 1, 1, 0.25, 4, (), Verdict.CANT_TELL, "On 1 of 1 taps it came back.")
    ranked = Ranked("It opens.", "motor", Sureness.PROVEN, 0.999, ("4 dead",), (), "Tap it again.")
    verdict = RunVerdict(Outcome.FAULT, "A fault was found.", (ranked,), ("short ones",))
    made = desk.review()
    sure = replace(made.findings[0], probability=0.001)
    return replace(
        made, steps=(step,), findings=(sure,), startups=(start,), taps=taps, verdict=verdict,
        decision_rule="Guard bands.",
    )  # fmt: skip


def rows(path):
    with path.open(encoding="utf-8", newline="") as table:
        return list(csv.DictReader(table))


@pytest.fixture
def out(recording, desk, tmp_path):
    export_recording(recording, full(desk), tmp_path / "out", lambda _: None)
    return tmp_path / "out"


def test_judgement_txt_tells_the_verdict_first_and_each_budget(out):
    text = (out / "judgement.txt").read_text(encoding="utf-8")
    assert text.index("Verdict: fault found") < text.index("No current for 2.0 s")
    for words in (
        "A fault was found.",
        "next: Tap it again.",
        "Guard bands.",
        "gain, 2 %",
        "k = 2.11",
    ):
        assert words in text
    assert "8f2d8d0c-51c5-4d0b-8f3e-6f0f8bb1a001" in text
    assert "SIMULATED" not in text


def test_review_json_is_strict_json_of_the_whole_review(out, desk):
    def refuse(word):
        raise AssertionError(word)

    said = json.loads((out / "review.json").read_text(encoding="utf-8"), parse_constant=refuse)
    assert said["recording"]["id"] == "8f2d8d0c-51c5-4d0b-8f3e-6f0f8bb1a001"
    assert said["recording"]["origin"] == "measured"
    expected = json.loads(json.dumps(review_to_dict(full(desk))))
    assert {name: said[name] for name in expected} == expected


def test_each_line_of_a_budget_is_a_row_that_repeats_its_result(out):
    gain, scatter, _ = rows(out / "budgets.csv")
    for row in (gain, scatter):
        assert (row["figure"], row["value"], row["value_unit"]) == ("current", "5.0", "A")
        assert (row["coverage_factor"], row["expanded_uncertainty"]) == ("2.11", "0.44")
    assert (gain["source"], gain["unit"], gain["shape"]) == ("gain, 2 %", "%", "rectangular")
    assert (gain["degrees"], scatter["degrees"]) == ("INF", "19.0")
    assert float(gain["contribution"]) == pytest.approx(1.5 * 0.05)
    assert (gain["basis"], gain["same_error"]) == ("data sheet", "m.current:gain")
    assert gain["speed"] == ""


def test_a_value_whose_uncertainty_nobody_knows_has_no_figure_for_it(out):
    bare = rows(out / "budgets.csv")[2]
    assert (bare["value"], bare["lacking"]) == ("12.5", "accuracy")
    for column in ("combined_u", "effective_degrees", "coverage_factor", "expanded_uncertainty"):
        assert bare[column] == ""


def test_starts_and_taps_have_tables_of_their_own(out):
    (start,) = rows(out / "startups.csv")
    assert (start["start_s"], start["peak_a (A)"], start["peak_is_floor"]) == ("1.0", "17.5", "yes")
    assert (start["ratio"], start["settle_s"], start["i2t (A2s)"]) == ("3.5", "", "9.0")
    (tap,) = rows(out / "taps.csv")
    assert (tap["tap_s"], tap["before"], tap["after"]) == ("2.0", "dead", "running")
    assert (tap["returned_s"], tap["answered"], tap["stopped"]) == ("0.25", "yes", "no")


def test_a_found_step_says_so_and_what_it_may_be(out):
    (step,) = rows(out / "steps.csv")
    assert (step["speed"], step["found"], step["proposed_speed"]) == ("", "yes", "2")
    assert step["edge_s"] == "0.02"


def test_a_finding_carries_the_probability_of_conformity(out):
    (finding,) = rows(out / "findings.csv")
    assert finding["kind"] == FindingKind.DEAD.value
    assert finding["probability"] == "0.001"


def test_the_readme_names_every_file_and_the_decision_rule(out):
    text = (out / "README.txt").read_text(encoding="utf-8")
    assert "HOW VERDICTS ARE MADE\nGuard bands.\n" in text
    for path in out.iterdir():
        assert path.name.removesuffix("-metadata.json") in text or path.name == "README.txt"
    assert max(map(len, text.splitlines())) <= 100


def test_every_column_of_the_new_tables_is_explained(out):
    text = (out / "README.txt").read_text(encoding="utf-8")
    for name in ("found", "proposed_speed", "probability", "lacking", "same_error", "answered"):
        assert name in text


@pytest.mark.parametrize("origin", [Origin.SIMULATED, Origin.IMPORTED, Origin.TYPED])
def test_what_was_not_measured_is_marked_in_every_new_file(desk, tmp_path, origin):
    recording = desk.make(tmp_path / "made", origin)
    export_recording(recording, full(desk), tmp_path / "out", lambda _: None)
    assert f"{origin.value.upper()}: " in (tmp_path / "out/judgement.txt").read_text("utf-8")
    said = json.loads((tmp_path / "out/review.json").read_text("utf-8"))
    assert said["recording"]["origin"] == origin.value
    for name in ("budgets.csv", "startups.csv", "taps.csv"):
        assert {row["origin"] for row in rows(tmp_path / "out" / name)} == {origin.value}


def test_damage_stands_at_the_head_of_the_judgement(desk, tmp_path):
    desk.make(tmp_path / "made", sealed=False)
    kept = tmp_path / "made/data/logger.arrows"
    kept.write_bytes(kept.read_bytes()[:-300])
    recording = Recording.open(tmp_path / "made")
    export_recording(recording, full(desk), tmp_path / "out", lambda _: None)
    head = (tmp_path / "out/judgement.txt").read_text("utf-8").partition("Verdict:")[0]
    assert "NOT WHOLE: data/logger.arrows: " in " ".join(head.split())


def test_judgement_txt_says_first_what_other_files_come_to(recording, desk, tmp_path):
    beside = ("Circuit check of a fan: Fan motor: over 99 %. On what: circuit.txt.",)
    export_recording(recording, full(desk), tmp_path / "out", lambda _: None, None, beside)
    text = (tmp_path / "out" / "judgement.txt").read_text(encoding="utf-8")
    assert text.index(beside[0]) < text.index("of the traces alone") < text.index("Verdict:")
    export_recording(recording, full(desk), tmp_path / "bare", lambda _: None)
    assert "traces alone" not in (tmp_path / "bare" / "judgement.txt").read_text(encoding="utf-8")
