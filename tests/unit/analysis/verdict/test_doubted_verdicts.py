"""What a reader who doubts everything would find in a verdict: too much said, or said twice."""

import pytest

from meterlog.model import Rhythm, RhythmKind, Role, Sureness


def rhythm(kind, count=6):
    return Rhythm(kind, count, 8.0, 0.2, 5.0, 3.0, 0.001, f"Told as {kind.value}.")


@pytest.mark.parametrize(("chance", "part"), [(0.11, "motor or circuit"), (0.9, "controller")])
def test_dropouts_that_each_ended_upon_a_tap_have_the_hands_rhythm(verdict_of, kit, chance, part):
    """A slow meter: too few taps to blame the motor, yet no ground to blame the controller."""
    lost = [kit.finding("no-current", start=6.0 * i) for i in range(1, 5)]
    told = verdict_of(
        *lost,
        roles=(Role.MOTOR_CURRENT,),
        rhythm=rhythm(RhythmKind.RETRY),
        taps=kit.taps(tried=4, answered=4, chance=chance),
    )
    assert [one.part for one in told.ranked] == [part]


def test_of_many_dropouts_those_beyond_the_uncertainty_are_counted(verdict_of, kit):
    """Of four missing currents one is sure: the trace does not prove four."""
    vague = [kit.finding("no-current", "can't tell", 6.0 * i, 3.0) for i in range(1, 4)]
    sure = kit.finding("no-current", start=30.0, length=1.5, statement="The sure one.")
    told = verdict_of(*vague, sure, roles=(Role.MOTOR_CURRENT,))
    clause = told.ranked[0].rests_on[0]
    assert "4 times no current" in clause
    assert "1 of them beyond the uncertainty" in clause
    assert "the longest: The sure one" in clause


def test_a_gap_in_a_held_step_does_not_make_two_faults_of_one(verdict_of, kit):
    """What follows a gap is too short to be told as held, and is told as too much current."""
    told = verdict_of(
        kit.finding("locked", start=4.5, value=6.0, limit=3.5, speed=1),
        kit.finding("over", start=6.6, length=0.1, value=6.0, limit=5.5, speed=1),
        kit.finding("over", start=12.0, value=9.5, limit=8.0, speed=2),
    )
    assert [one.part for one in told.ranked] == ["motor"]
    assert "stalls on low" in told.ranked[0].what


def test_each_speed_outside_its_limits_is_told_with_its_figures(verdict_of, kit):
    off = [
        kit.finding("step-current", value=20.0, limit=18.0, speed=n, statement=f"Speed {n} is off.")
        for n in (1, 2, 3, 4)
    ]
    rests_on = " ".join(verdict_of(*off).ranked[0].rests_on)
    assert all(f"Speed {n} is off" in rests_on for n in (1, 2, 3, 4))


def test_a_long_clause_is_cut_where_a_clause_ends(verdict_of, kit):
    words = "No current " + "; ".join(f"clause {n} with a few words in it" for n in range(12)) + "."
    told = verdict_of(
        kit.finding("no-current", start=5.0, statement=words), roles=(Role.MOTOR_CURRENT,)
    )
    assert "...." not in told.paragraph
    assert ": no current clause 0" in told.paragraph
    assert "words in it. " in told.paragraph


@pytest.mark.parametrize("kind", ["beyond-nominal", "other-nominal"])
def test_nothing_is_proven_beside_volts_that_can_not_be(verdict_of, kit, kind):
    """The current is read by a clamp of its own, but what else is stated wrong nobody knows."""
    lost = kit.finding("no-current", length=5.0)
    off = kit.doubt(kind, 0.0, 60.0, role=Role.MOTOR_FEED)
    assert verdict_of(lost).ranked[0].sureness is Sureness.PROVEN
    told = verdict_of(lost, doubts=(off,))
    assert [(one.part, one.sureness) for one in told.ranked] == [
        ("motor or circuit", Sureness.LIKELY),
        ("measuring", Sureness.LIKELY),
    ]
    # Something of the vehicle is told: it is not said that nothing is.
    assert "nothing is told" not in told.ranked[1].next_measurement
    assert "what rests on it tells nothing" in told.ranked[1].next_measurement


def test_a_level_beside_a_supply_of_another_vehicle_is_possible_and_no_more(verdict_of, kit):
    low = kit.finding("under", start=15.0, value=1.0, limit=2.0, speed=1)
    off = kit.doubt("other-nominal", 0.0, 60.0, role=Role.MOTOR_FEED)
    causes = [one for one in verdict_of(low, doubts=(off,)).ranked if one.part != "measuring"]
    assert [one.sureness for one in causes] == [Sureness.POSSIBLE]


def test_a_full_clamp_speaks_against_no_verdict_that_it_leaves_standing(verdict_of, kit):
    """Too little current on low is not doubted for the peak of a start that was too much."""
    low = kit.finding("under", start=15.0, value=1.0, limit=2.0, speed=1)
    full = kit.doubt("past-range", 4.1, 4.2, role=Role.MOTOR_CURRENT)
    drift = kit.doubt("zero-drift", 0.0, 20.0)
    told = verdict_of(low, doubts=(full, drift))
    assert "zero-drift" in " ".join(told.ranked[0].against)
    assert "past-range" not in " ".join(told.ranked[0].against)
