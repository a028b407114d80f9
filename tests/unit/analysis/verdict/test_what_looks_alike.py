"""What looks like a fault and may be none is told as such, and proves nothing."""

import pytest

from meterlog.model import Role, Span, SpanKind

THREE = (Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT)
ASKED = (*THREE, Role.COMMAND)
END_S = 60.0


@pytest.mark.parametrize("kind", ["feed-lost", "ground-lost"])
@pytest.mark.parametrize(
    ("roles", "lost", "sureness", "outcome"),
    [
        (THREE, [(50.0, 10.0)], "possible", "suspicion"),  # still so at the end
        (THREE, [(20.0, 4.0)], "likely", "fault found"),
        (THREE, [(20.0, 4.0), (50.0, 10.0)], "proven", "fault found"),
        (ASKED, [(50.0, 10.0)], "proven", "fault found"),
    ],
)
def test_a_fan_that_may_have_been_switched_off_unmarked_is_no_proof(
    verdict_of, kit, kind, roles, lost, sureness, outcome
):
    # A dip beside it makes it no surer.
    dip = kit.finding("dip", "can't tell", 5.0, 0.1)
    told = verdict_of(dip, *(kit.finding(kind, "fail", *one) for one in lost), roles=roles)
    assert (told.ranked[0].sureness, told.outcome) == (sureness, outcome)
    assert any("without a mark" in one for one in told.ranked[0].against) is (sureness != "proven")
    assert ("without a mark" in told.paragraph) is (sureness != "proven")


def test_nobody_switches_a_motor_off_inside(verdict_of, kit):
    told = verdict_of(kit.finding("dead", "fail", 50.0, 10.0), roles=THREE)
    assert told.ranked[0].sureness == "proven"


@pytest.mark.parametrize("kind", ["dead", "feed-lost", "ground-lost", "no-current"])
def test_where_no_current_was_ever_read_nothing_is_proven(verdict_of, kit, kind):
    gone = Span(SpanKind(kind), 0, 60_000_000_000, speed=4)
    told = verdict_of(kit.finding(kind, "fail", 0.0, END_S), roles=ASKED, spans=(gone,))
    assert told.ranked[0].sureness == "likely"
    assert told.ranked[0].against[0].startswith("No current was read at any time")


def test_dropouts_shorter_than_the_limits_count_are_a_suspicion(verdict_of, kit):
    told = verdict_of(kit.passed(4), brief=17, brief_s=0.517)
    assert told.outcome == "suspicion"
    assert "gone 17 times for less than 0.05 s each, 0.517 s together" in told.paragraph
    assert "no dropout was seen" not in told.paragraph
    with_others = verdict_of(kit.finding("dead"), brief=17, brief_s=0.517)
    assert len(with_others.ranked) == 1


def test_an_overload_is_not_in_order(verdict_of, kit):
    words = "No data at speed 4: meter: overload: the current was beyond its range."
    over = kit.finding("no-data", "can't tell", length=1.0, value=None, statement=words)
    told = verdict_of(kit.passed(4), over)
    assert told.outcome == "can't tell"
    assert "beyond the meter's range (overload)" in told.paragraph
    assert "Nothing was read" not in told.paragraph
    while_off = kit.replace(over, speed=0)
    assert verdict_of(kit.passed(4), while_off).outcome == "in order"


def test_a_current_read_with_the_fan_off_is_not_in_order(verdict_of, kit):
    off = kit.replace(kit.step(0, 0.0, 0.0), median_a=1.73)
    told = verdict_of(kit.passed(4), steps=(kit.step(4), off))
    assert told.outcome == "can't tell"
    assert "with the fan off 1.73 A were read" in told.paragraph
    short = kit.replace(off, end_ns=off.start_ns + 500_000_000)
    assert verdict_of(kit.passed(4), steps=(kit.step(4), short)).outcome == "in order"


ZERO = {"role": Role.MOTOR_CURRENT, "offset_a": 1.2}


def test_a_zero_that_is_off_takes_the_pass_away(verdict_of, kit):
    told = verdict_of(kit.passed(4), doubts=(kit.doubt("zero-seen", **ZERO),))
    assert told.outcome == "can't tell"
    assert "The readings can't be taken as they stand. Doubt: zero-seen." in told.paragraph


@pytest.mark.parametrize(("over", "sureness"), [(1.0, "possible"), (5.0, "likely")])
def test_and_what_is_no_further_beyond_its_limit_than_the_zero_is_off(
    verdict_of, kit, over, sureness
):
    much = kit.finding("over", value=18.0 + over, limit=18.0)
    told = verdict_of(much, kit.passed(4), doubts=(kit.doubt("zero-seen", **ZERO),))
    (first,) = [one for one in told.ranked if one.part == "motor"]
    assert first.sureness == sureness
    for text in (told.paragraph, *told.shorter):
        assert "Doubt: zero-seen." in text


def test_a_clamp_that_read_nothing_once_proves_no_dead_motor(verdict_of, kit):
    quiet = kit.doubt("clamp-quiet", 40.0, 42.0)
    denied = kit.finding("dead", "can't tell", 40.0, statement="The current channel reads nothing.")
    told = verdict_of(kit.finding("dead"), denied, doubts=(quiet,), roles=THREE)
    (first,) = [one for one in told.ranked if one.part == "motor"]
    assert first.sureness == "likely"
    assert not any("reads nothing" in one for one in first.rests_on)


def test_leads_that_are_swapped_prove_no_hot_controller(verdict_of, kit):
    swapped = kit.doubt("sign", 2.0, 22.0, role=Role.MOTOR_FEED)
    turned = kit.doubt("sign", 2.0, 22.0, role=Role.MOTOR_CURRENT)
    heat = kit.finding("controller-heat", value=120.0, limit=60.0, unit="W")
    told = verdict_of(heat, doubts=(swapped,))
    assert told.outcome == "suspicion"
    assert told.ranked[0].part == "measuring"
    assert verdict_of(heat, doubts=(turned,)).outcome == "fault found"
