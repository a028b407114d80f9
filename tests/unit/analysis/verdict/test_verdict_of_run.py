"""The verdict of a run: what is wrong, how sure, what it rests on, what to measure next."""

import pytest

from meterlog.model import (
    Conditions,
    Event,
    EventKind,
    Inferred,
    InferredKind,
    Rhythm,
    RhythmKind,
    Role,
    Span,
    SpanKind,
    TapCheck,
    Verdict,
)

ONLY_FEED = (Role.MOTOR_FEED, Role.MOTOR_CURRENT)
NO_VOLTS = (Role.MOTOR_CURRENT,)


def rhythm(kind, count=6):
    return Rhythm(kind, count, 8.0, 0.2, 5.0, 3.0, 0.001, f"Told as {kind.value}.")


def inferred(after_tap_s=None):
    words = "Dip consistent with an open of about 30 ms."
    return Inferred(InferredKind.DIP, 0, 1, (0.02, 0.04), 13.0, 9.0, 12.0, 4, after_tap_s, words)


@pytest.mark.parametrize(
    ("kind", "more", "part", "next_words"),
    [
        ("dead", {}, "motor", "turn the wheel"),
        ("feed-lost", {}, "feed", "relay output (87)"),
        ("ground-lost", {}, "ground side", "ground pin"),
        ("command-lost", {}, "command", "request"),
        ("locked", {"value": 52.0, "limit": 40.0}, "motor", "turn the wheel"),
        ("over", {"value": 21.0, "limit": 18.0}, "motor", "80 %"),
        ("over", {"value": 5.0, "limit": 0.3, "speed": 0}, "controller", "zero"),
        ("under", {"value": 1.0, "limit": 2.0}, "motor or its supply", "filter"),
        ("drag", {"value": 20.0, "limit": 16.0}, "motor", "rub"),
        ("step-current", {"value": 20.0, "limit": 18.0}, "motor", "80 %"),
        ("step-current", {"value": 1.0, "limit": 2.0}, "motor or its supply", "filter"),
        ("resistive-feed", {"value": 1.6, "limit": 0.5, "unit": "V"}, "feed", "30 to 87"),
        ("resistive-ground", {"value": 1.6, "limit": 0.2, "unit": "V"}, "ground side", "stud"),
        ("fuse-load", {"value": 91.0, "limit": 80.0, "unit": "%"}, "fuse", "rating"),
        ("fuse-opening", {"value": 0.5, "limit": 1.0, "unit": ""}, "fuse", "rating"),
        ("controller-heat", {"value": 55.0, "limit": 40.0, "unit": "W"}, "controller", "heat"),
        ("bars", {"value": 0.4, "limit": None, "unit": ""}, "motor", "7,000"),
        ("missed-dropout", {"value": 31.0, "limit": None}, "motor or circuit", "faster"),
    ],
)
def test_each_failed_finding_points_to_its_part_and_says_what_to_measure(
    verdict_of, kit, kind, more, part, next_words
):
    told = verdict_of(kit.finding(kind, **more))
    assert told.ranked[0].part == part
    assert next_words in told.ranked[0].next_measurement
    assert "service manual" in told.ranked[0].next_measurement
    assert told.outcome in ("fault found", "suspicion")
    assert f"{kind} at 10 s" in told.ranked[0].rests_on[0]


def test_one_cause_is_told_once_though_many_findings_tell_of_it(verdict_of, kit):
    dead = [kit.finding("dead", start=10.0 + 6.0 * i) for i in range(5)]
    told = verdict_of(
        *dead,
        kit.finding("dip", "can't tell", 50.0, 0.1),
        kit.finding("missed-dropout", "can't tell", 52.0, 0.1),
        kit.finding("bars", "can't tell", 0.0, 60.0),
        taps=kit.taps(),
        inferred=(inferred(0.1), inferred()),
        rhythm=rhythm(RhythmKind.TAPS),
    )
    assert [one.part for one in told.ranked] == ["motor"]
    rests_on = "; ".join(told.ranked[0].rests_on)
    assert "5 times dead between 10.0 s and 36.0 s, 10.00 s together" in rests_on
    assert "On 3 of 3 taps" in rests_on
    assert "2 more short dropouts are inferred, 1 of them within reach of a tap" in rests_on
    assert "Told as taps" in rests_on
    assert told.ranked[0].sureness == "proven"
    assert told.outcome == "fault found"
    assert "On 3 of 3 taps" in told.paragraph


@pytest.mark.parametrize("chance", [0.06, 0.12, 0.65, 0.89])
@pytest.mark.parametrize("kind", ["dead", "no-current"])
def test_taps_that_may_be_chance_support_nothing(verdict_of, kit, kind, chance):
    """Right behind "proven by the trace" they would pass for a part of the proof."""
    found = [kit.finding(kind, start=10.0 + 6.0 * i) for i in range(3)]
    told = verdict_of(*found, taps=kit.taps(chance=chance))
    first = told.ranked[0]
    assert not any("taps" in one for one in first.rests_on)
    assert "On 3 of 3 taps" not in told.paragraph
    assert f"chance the current would return as soon after them with a probability of {chance}" in (
        " ".join(first.against)
    )
    sure = verdict_of(*found, taps=kit.taps(chance=0.05))
    assert any("On 3 of 3 taps" in one for one in sure.ranked[0].rests_on)
    assert "On 3 of 3 taps" in sure.paragraph
    assert not any("by chance" in one for one in sure.ranked[0].against)


def test_taps_that_may_be_chance_speak_against_no_controller_either(verdict_of, kit):
    retry = rhythm(RhythmKind.RETRY)
    lost = [kit.finding("no-current", start=6.0 * i) for i in range(1, 5)]
    told = verdict_of(*lost, rhythm=retry, taps=kit.taps(tried=4, answered=2, chance=0.6))
    assert told.ranked[0].part == "controller"
    assert not any("taps" in one for one in told.ranked[0].against)
    sure = verdict_of(*lost, rhythm=retry, taps=kit.taps(tried=4, answered=2, chance=0.01))
    assert any("On 2 of 4 taps" in one for one in sure.ranked[0].against)


def test_taps_that_changed_nothing_are_told_and_support_nothing(verdict_of, kit):
    words = "3 taps made while the current was gone changed nothing."
    told = verdict_of(kit.finding("dead"), taps=kit.taps(answered=0, chance=1.0, summary=words))
    assert not any("taps" in one for one in told.ranked[0].rests_on)
    assert any("changed nothing" in one for one in told.ranked[0].against)


def test_a_single_short_dead_segment_is_likely_and_not_proven(verdict_of, kit):
    assert verdict_of(kit.finding("dead", length=0.2)).ranked[0].sureness == "likely"
    assert verdict_of(kit.finding("dead", length=1.2)).ranked[0].sureness == "proven"


def test_without_the_return_both_motor_and_ground_side_stay_possible(verdict_of, kit):
    told = verdict_of(kit.finding("no-current"), roles=ONLY_FEED)
    assert told.ranked[0].part == "motor or ground side"
    assert "return" in told.ranked[0].next_measurement
    assert any("Motor return not recorded" in one for one in told.unseen)


def test_without_any_voltage_the_feed_stays_possible_too(verdict_of, kit):
    told = verdict_of(kit.finding("no-current"), roles=NO_VOLTS)
    assert told.ranked[0].part == "motor or circuit"


def test_taps_that_answer_beyond_chance_point_to_the_motor_where_no_voltage_tells(verdict_of, kit):
    unknown = kit.finding("no-current")
    told = verdict_of(unknown, roles=ONLY_FEED, taps=kit.taps())
    assert [one.part for one in told.ranked] == ["motor", "motor or ground side"]
    assert told.ranked[0].sureness == "likely"
    assert "shaken by the tap" in told.ranked[0].against[0]
    by_chance = verdict_of(unknown, roles=ONLY_FEED, taps=kit.taps(chance=0.4))
    assert by_chance.ranked[0].part == "motor or ground side"


def test_the_probability_of_a_reading_is_not_that_of_a_cause(verdict_of, kit):
    unknown = kit.finding("no-current", probability=0.001)
    told = verdict_of(unknown, roles=ONLY_FEED, taps=kit.taps())
    assert [one.probability for one in told.ranked] == [None, None]
    bare = verdict_of(unknown, roles=ONLY_FEED)
    assert bare.ranked[0].probability == pytest.approx(0.999)


@pytest.mark.parametrize("kind", [RhythmKind.RETRY, RhythmKind.CUT_OUT])
@pytest.mark.parametrize("gone", ["no-current", "ground-lost"])
def test_a_rhythm_of_its_own_points_to_the_controller(verdict_of, kit, kind, gone):
    lost = [kit.finding(gone, start=8.0 * i) for i in range(1, 7)]
    told = verdict_of(*lost, rhythm=rhythm(kind))
    assert [one.part for one in told.ranked] == ["controller"]
    assert "brush" in told.ranked[0].what
    assert "20 to 30 A" in told.ranked[0].next_measurement
    assert told.ranked[0].sureness == "likely"


def test_full_voltage_in_a_rhythm_is_the_motor_unless_the_lead_sat_elsewhere(verdict_of, kit):
    dead = [kit.finding("dead", start=8.0 * i) for i in range(1, 7)]
    told = verdict_of(*dead, rhythm=rhythm(RhythmKind.CUT_OUT))
    assert [(one.part, one.sureness.value) for one in told.ranked] == [
        ("motor", "proven"),
        ("controller", "possible"),
    ]
    assert "thermal switch" in told.ranked[0].what
    assert "return lead" in told.ranked[1].what


def test_where_some_of_the_rhythm_has_no_full_voltage_the_controller_comes_first(verdict_of, kit):
    dead = [kit.finding("dead", start=8.0 * i) for i in range(1, 4)]
    lost = [kit.finding("ground-lost", start=8.0 * i) for i in range(4, 7)]
    told = verdict_of(*dead, *lost, rhythm=rhythm(RhythmKind.RETRY))
    assert [(one.part, one.sureness.value) for one in told.ranked] == [
        ("controller", "likely"),
        ("motor", "possible"),
    ]
    assert "return lead" in told.ranked[0].against[0]


def test_taps_that_answer_outweigh_a_rhythm(verdict_of, kit):
    dead = [kit.finding("dead", start=8.0 * i) for i in range(1, 7)]
    told = verdict_of(*dead, rhythm=rhythm(RhythmKind.RETRY), taps=kit.taps())
    assert [one.part for one in told.ranked] == ["motor"]


def test_a_feed_that_goes_in_a_rhythm_is_consistent_with_a_breaker(verdict_of, kit):
    lost = [kit.finding("feed-lost", start=8.0 * i) for i in range(1, 7)]
    told = verdict_of(*lost, rhythm=rhythm(RhythmKind.RETRY))
    assert told.ranked[0].part == "feed"
    assert any("breaker" in one for one in told.ranked[0].rests_on)


def test_a_doubt_demotes_the_fault_and_the_measuring_comes_first(verdict_of, kit):
    told = verdict_of(kit.finding("dead"), doubts=(kit.doubt("clamp-quiet", 5.0, 30.0),))
    assert [one.part for one in told.ranked] == ["measuring", "motor"]
    assert told.ranked[1].sureness == "possible"
    assert "Doubt: clamp-quiet." in told.ranked[1].against
    assert told.outcome == "suspicion"
    assert "measure again" in told.paragraph


def test_a_doubt_elsewhere_demotes_nothing(verdict_of, kit):
    told = verdict_of(kit.finding("dead"), doubts=(kit.doubt("stuck", 40.0, 50.0),))
    assert [one.part for one in told.ranked] == ["motor", "measuring"]
    assert told.outcome == "fault found"


def test_a_loose_voltage_probe_does_not_take_a_current_away(verdict_of, kit):
    probe = kit.doubt("probe", 5.0, 30.0)
    held = verdict_of(kit.finding("locked", value=52.0, limit=40.0), doubts=(probe,))
    assert held.ranked[0].sureness == "proven"
    gone = verdict_of(kit.finding("feed-lost"), doubts=(probe,))
    assert gone.ranked[0].part == "measuring"


def test_a_light_doubt_speaks_against_levels_only(verdict_of, kit):
    missing = kit.doubt("zero-missing")
    over = verdict_of(kit.finding("over", value=19.0, limit=18.0), doubts=(missing,))
    assert over.ranked[0].against == ("Doubt: zero-missing.",)
    assert over.ranked[0].sureness == "proven"
    dead = verdict_of(kit.finding("dead"), doubts=(missing,), taps=kit.taps())
    assert dead.ranked[0].against == ()


def test_a_level_without_a_stated_uncertainty_is_likely_only(verdict_of, kit):
    over = kit.finding("over", value=21.0, limit=18.0, expanded_uncertainty=None)
    assert verdict_of(over).ranked[0].sureness == "likely"


def test_too_much_current_and_a_loaded_fuse_are_one_motor_that_drags(verdict_of, kit):
    told = verdict_of(
        kit.finding("over", value=21.0, limit=18.0),
        kit.finding("step-current", value=21.0, limit=18.0),
        kit.finding("drag", value=21.0, limit=18.0),
        kit.finding("fuse-load", value=105.0, limit=80.0, unit="%"),
        kit.finding("controller-heat", value=55.0, limit=40.0, unit="W"),
    )
    assert [one.part for one in told.ranked] == ["motor"]
    assert len(told.ranked[0].rests_on) == 5
    assert "kills it" in told.ranked[0].what


def test_a_step_that_failed_for_a_held_rotor_is_told_with_it(verdict_of, kit):
    told = verdict_of(
        kit.finding("locked", start=12.0, value=52.0, limit=40.0),
        kit.finding("step-current", start=10.0, length=10.0, value=52.0, limit=40.0),
        kit.finding("fuse-opening", start=10.0, value=0.4, limit=1.0, unit=""),
    )
    assert [one.part for one in told.ranked] == ["motor"]
    assert "held" in told.ranked[0].what


def test_too_little_current_behind_a_resistive_feed_is_told_with_it(verdict_of, kit):
    told = verdict_of(
        kit.finding("resistive-feed", value=1.7, limit=0.5, unit="V"),
        kit.finding("step-current", value=1.5, limit=2.0),
    )
    assert [one.part for one in told.ranked] == ["feed"]


def test_conditions_under_which_a_sound_motor_draws_more_speak_against_drag(verdict_of, kit):
    bench = Conditions(place="bench", filter="none")
    told = verdict_of(kit.finding("over", value=21.0, limit=18.0), conditions=bench)
    assert any("free air" in one for one in told.ranked[0].against)
    assert any("No filter" in one for one in told.ranked[0].against)
    high = verdict_of(kit.finding("over", value=21.0, limit=18.0), steps=(kit.step(4, volts=14.1),))
    assert any("14.1 V across it" in one for one in high.ranked[0].against)


def test_a_fan_that_stands_comes_before_a_figure_off_its_limit(verdict_of, kit):
    told = verdict_of(
        kit.finding("over", start=1.0, value=21.0, limit=18.0),
        kit.finding("feed-lost", start=30.0),
        kit.finding("bars", value=0.4, limit=None),
    )
    assert [one.part for one in told.ranked] == ["feed", "motor", "motor"]


def test_a_fault_that_is_only_possible_comes_behind_one_that_is_proven(verdict_of, kit):
    told = verdict_of(
        kit.finding("dead", "can't tell"), kit.finding("over", value=21.0, limit=18.0)
    )
    assert [(one.part, one.sureness.value) for one in told.ranked] == [
        ("motor", "proven"),
        ("motor", "possible"),
    ]
    assert "Not ruled out" in told.paragraph


def test_a_connector_that_moved_the_trace_is_told(verdict_of, kit):
    moved = TapCheck("connectors moved", Verdict.FAIL, "the trace moved: motor plug at 9.0 s.")
    told = verdict_of(kit.passed(4), taps=kit.taps(0, 0, None, checks=(moved,)))
    assert told.ranked[0].part == "connector"
    assert told.outcome == "fault found"


def test_the_probability_is_that_of_the_surest_finding(verdict_of, kit):
    told = verdict_of(
        kit.finding("over", value=19.0, limit=18.0, probability=0.02),
        kit.finding("over", value=21.0, limit=18.0, probability=0.001),
    )
    assert told.ranked[0].probability == pytest.approx(0.999)


def test_a_motor_that_stalls_on_low_and_draws_too_much_on_high_is_one_that_drags(verdict_of, kit):
    told = verdict_of(
        kit.finding("locked", start=5.0, value=6.0, limit=3.5, speed=1),
        kit.finding("over", start=12.0, value=9.5, limit=8.0, speed=2),
        kit.finding("over", start=20.0, value=21.0, limit=18.0, speed=4),
        kit.finding("fuse-load", value=95.0, limit=80.0, unit="%"),
    )
    assert [one.part for one in told.ranked] == ["motor"]
    assert "stalls on low" in told.ranked[0].what


def test_a_rotor_held_on_high_is_not_told_as_one_that_drags(verdict_of, kit):
    told = verdict_of(
        kit.finding("over", start=5.0, value=6.0, limit=5.0, speed=1),
        kit.finding("locked", start=20.0, value=52.0, limit=40.0, speed=4),
    )
    assert len(told.ranked) == 2
    assert "held" in told.ranked[0].what


def test_a_current_with_the_fan_off_may_be_the_clamps_where_its_zero_is_in_doubt(verdict_of, kit):
    left = kit.finding("over", value=0.5, limit=0.3, speed=0)
    assert verdict_of(left).ranked[0].sureness == "proven"
    doubted = verdict_of(left, doubts=(kit.doubt("zero-missing"),))
    assert doubted.ranked[0].sureness == "possible"
    assert doubted.outcome == "suspicion"


def test_a_tap_test_is_asked_for_until_one_was_accepted(verdict_of, kit):
    dead = kit.finding("dead")
    assert "tap test in full" in verdict_of(dead).ranked[0].next_measurement
    accepted = verdict_of(dead, taps=kit.taps())
    assert "tap test in full" not in accepted.ranked[0].next_measurement


def test_where_a_tap_test_falls_short_is_named(verdict_of, kit):
    short = TapCheck("base line", Verdict.CANT_TELL, "4 s.")
    told = verdict_of(
        kit.finding("dead"), taps=kit.taps(checks=(short,), accepted=Verdict.CANT_TELL)
    )
    assert told.ranked[0].against == (
        "The tap test falls short of the accepted form in: base line",
    )


@pytest.mark.parametrize(
    ("what", "at_s", "parts"),
    [
        ("motor plug", 9.8, ["feed", "connector"]),
        ("motor plug", 10.3, ["feed", "connector"]),
        ("motor plug", 8.5, ["feed"]),
        ("motor plug", 11.0, ["feed"]),
        ("leads", 9.8, ["feed"]),
    ],
)
def test_a_plug_upon_whose_moving_the_current_went_is_told_without_a_tap(kit, what, at_s, parts):
    spans = (
        Span(SpanKind.RUNNING, 0, 10_000_000_000, speed=4),
        Span(SpanKind.FEED_LOST, 10_000_000_000, 12_000_000_000, speed=4),
        Span(SpanKind.RUNNING, 12_000_000_000, 20_000_000_000, speed=4),
    )
    moved = Event(round(at_s * 1e9), EventKind.WIGGLE, what)
    judged = kit.replace(kit.judged(), events=(moved,))
    told = kit.run_verdict(judged, kit.review(kit.finding("feed-lost"), spans=spans))
    assert [one.part for one in told.ranked] == parts


def test_dips_belong_to_the_only_side_that_opens_and_to_none_of_two(verdict_of, kit):
    dip = kit.finding("dip", "can't tell", 50.0, 0.1)
    one = verdict_of(kit.finding("ground-lost"), dip)
    assert [it.part for it in one.ranked] == ["ground side"]
    two = verdict_of(kit.finding("ground-lost"), kit.finding("feed-lost", start=30.0), dip)
    assert [it.part for it in two.ranked] == ["ground side", "feed", "motor or circuit"]
