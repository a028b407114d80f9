"""What is told of one step gives its edges the same uncertainty, whatever it tells."""

import pytest

from meterlog.analysis.step_edges import step_edge_ns
from meterlog.model import Controller, FindingKind, Fuse, Step

OF_A_STEP = {
    FindingKind.STEP_CURRENT,
    FindingKind.FUSE_LOAD,
    FindingKind.RESISTIVE_GROUND,
    FindingKind.CONTROLLER_HEAT,
}


@pytest.mark.parametrize("lag_s", [0.3, 1.0])
def test_findings_on_one_step_agree_how_well_its_edges_are_known(trace, lag_s):
    lim = trace.limits(
        fuse=Fuse(30.0, "blade-medium"),
        max_ground_drop_v=0.3,
        controller=Controller("linear", max_heat_w=60.0),
        command_lag_s=lag_s,
    )
    legs = [trace.Leg(12.0, *trace.NORMAL[1]), trace.Leg(30.0, *trace.NORMAL[4])]
    review = trace.review(legs, [trace.speed(0.0, 1), trace.speed(12.0, 4)], lim=lim)
    told = [one for one in review.findings if one.speed == 4 and one.kind in OF_A_STEP]
    assert {one.kind for one in told} >= OF_A_STEP - {FindingKind.CONTROLLER_HEAT}
    assert {one.edge_ns for one in told} == {round(lag_s * 1e9)}
    # On the whole recording: its edges are its first and its last reading.
    (whole,) = [one for one in review.findings if one.kind is FindingKind.FUSE_OPENING]
    spans = review.spans
    assert (whole.start_ns, whole.end_ns) == (spans[0].start_ns, spans[-1].end_ns)
    assert whole.edge_ns == max(spans[0].start_edge_ns, spans[-1].end_edge_ns) == 0


def test_a_found_step_is_known_no_better_than_where_it_was_found(trace):
    lim = trace.limits(command_lag_s=0.3)
    assert step_edge_ns(Step(4, 0, 10, edge_ns=500_000_000), lim) == 500_000_000
    assert step_edge_ns(Step(4, 0, 10), lim) == 300_000_000
