"""Budgets as tables and as JSON. The figures are invented."""

import json

import pytest

from meterlog.analysis.budgets import BudgetMaker, budget
from meterlog.evidence.budgets_json import budget_to_dict, budgets_to_list
from meterlog.evidence.budgets_text import budget_lines, budgets_lines
from meterlog.model import (
    Accuracy,
    Channel,
    Instrument,
    Quantity,
    Role,
    Sensor,
    SensorKind,
    Shape,
    Source,
    Step,
)

VOLTS = Accuracy(0.5, 2, 0.01, basis="invented")
CLAMP = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")


@pytest.fixture
def steps():
    volt = Quantity.VOLTAGE
    channels = (
        Channel("feed", volt, Role.MOTOR_FEED, accuracy=VOLTS),
        Channel("return", volt, Role.MOTOR_RETURN, accuracy=VOLTS),
        Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, accuracy=VOLTS, sensor=CLAMP),
    )
    step = Step(
        3, 2_000_000_000, 9_000_000_000, 70, steady_n=60, steady_mean_v=9.0, steady_mean_a=8.0,
        steady_sd_a=0.09, steady_lag1_a=0.5, steady_volts_n=60, steady_sd_v=0.04,
        steady_lag1_v=0.0, steady_feed_v=12.0, steady_back_v=3.0, steady_correlation=-0.4,
    )  # fmt: skip
    maker = BudgetMaker([Instrument("long-named-hand-meter-2", "test", "-", channels)])
    return maker.with_budgets([step])


def test_each_figure_of_a_step_has_its_table_and_its_result_below(steps):
    lines = budgets_lines(steps)
    titles = [line for line in lines if ", 2.0 s to 9.0 s" in line]
    assert [title.split(" at speed")[0] for title in titles] == [
        "motor current", "motor voltage", "motor power", "volts by amperes",
    ]  # fmt: skip
    assert max(map(len, lines)) <= 100
    heads = [line for line in lines if line.startswith("source")]
    assert len(heads) == 4
    assert heads[0].split() == [
        "source", "u", "unit", "shape", "degrees", "sensitivity", "contribution", "share",
    ]  # fmt: skip


def test_the_shares_of_a_table_add_up_to_the_whole(steps):
    for made in (steps[0].current, steps[0].voltage, steps[0].power, steps[0].ratio):
        rows = [
            line for line in budget_lines(made) if "normal  " in line or "rectangular  " in line
        ]
        shares = [float(line.split()[-2]) for line in rows]
        assert len(shares) == len(made.sources)
        assert sum(shares) == pytest.approx(100.0, abs=0.06 * len(shares))


def test_the_result_names_k_its_reason_the_probability_and_what_is_not_in(steps):
    text = " ".join(" ".join(budget_lines(steps[0].current)).split())
    assert "coverage probability about 95 %" in text
    assert "Not in: the clamp's own error for motor-current is not stated" in text
    assert text.endswith("U is a lower bound.")


def test_a_table_worked_by_hand():
    lines = budget_lines(
        budget(
            "y",
            12.3456,
            "V",
            [
                Source("gain", 0.3, "%", 0.1, Shape.RECTANGULAR, basis="x"),
                Source("scatter", 0.04, "V", -1.0, degrees=9),
            ],
        ),
        ", then",
    )
    assert lines == [
        "y, then",
        "source      u  unit  shape        degrees  sensitivity  contribution   share",
        "-------  ----  ----  -----------  -------  -----------  ------------  ------",
        "gain      0.3  %     rectangular      inf          0.1          0.03  36.0 %",
        "scatter  0.04  V     normal             9           -1         -0.04  64.0 %",
        "  (12.35 ± 0.11) V: u = 0.05 V, k = 2.12 (Student's t for 22.0 effective degrees of freedom),",  # noqa: E501
        "  coverage probability about 95 %.",
    ]


def test_without_sources_the_uncertainty_is_said_to_be_unknown():
    lines = budget_lines(budget("y", 8.0, "A", (), "the meter's accuracy"))
    assert lines == ["y", "  8.000 A; its uncertainty is not known. Not in: the meter's accuracy."]
    assert budgets_lines([]) == ["No budgets: no step has a steady current or voltage."]


def test_the_json_is_strict_with_a_budget_an_object_and_its_lines_in_order(steps):
    found = json.loads(json.dumps(budgets_to_list(steps), allow_nan=False))
    assert [one["figure"] for one in found] == ["current", "voltage", "power", "ratio"]
    assert [one["unit"] for one in found] == ["A", "V", "W", "ohm"]
    first = found[0]
    assert (first["speed"], first["start_s"], first["end_s"]) == (3, 2.0, 9.0)
    assert first["value"] == 8.0
    assert first["expanded_u"] == pytest.approx(first["coverage_factor"] * first["combined_u"])
    assert sum(one["contribution"] ** 2 for one in first["sources"]) == pytest.approx(
        first["combined_u"] ** 2
    )
    assert set(first["sources"][0]) == {
        "name", "standard_u", "unit", "shape", "degrees", "sensitivity", "contribution", "key",
        "basis",
    }  # fmt: skip
    assert first["sources"][1]["degrees"] is None  # infinite


def test_a_budget_without_sources_has_no_uncertainty_in_json():
    found = budget_to_dict(budget("y", 8.0, "A", ()))
    assert (found["value"], found["combined_u"], found["expanded_u"]) == (8.0, None, None)
    assert found["coverage_factor"] is None
