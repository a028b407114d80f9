"""What is shown of an instrument: the most pressing first, and nothing when all is well."""

from meterlog.acquire.condition import SAID_NS, Condition, Topic


def test_the_most_pressing_is_shown_and_what_is_well_again_is_forgotten():
    condition = Condition()
    assert condition.words(0) == ""
    condition.say(Topic.PACE, "too slow", 0)
    condition.say(Topic.LINK, "silent", 1)
    assert condition.words(2) == "silent"
    condition.say(Topic.SPEED, "wrong speed", 3)
    assert condition.words(4) == "wrong speed"
    condition.clear(Topic.LINK, Topic.SPEED)
    assert condition.words(5) == "too slow"
    condition.clear(Topic.PACE, Topic.STOPPED)
    assert condition.words(6) == ""


def test_a_report_passes_but_what_lasts_stays():
    condition = Condition()
    condition.say(Topic.DEVICE, "-113 Undefined header", 0)
    condition.say(Topic.OTHER_DEVICE, "another instrument answers now", 0)
    condition.clear(Topic.OTHER_DEVICE)
    assert condition.words(SAID_NS - 1) == "-113 Undefined header"
    assert condition.words(SAID_NS) == ""
    condition.say(Topic.OTHER_DEVICE, "another instrument answers now", 0)
    assert condition.words(100 * SAID_NS) == "another instrument answers now"
