import numpy as np
import pytest

from meterlog.instruments.virtual.probe import pick, place
from meterlog.model import Channel, Quantity
from meterlog.model.errors import UsageError

V, A = Quantity.VOLTAGE, Quantity.CURRENT


def test_channels_go_where_their_names_say():
    channels = [
        Channel("return", V),
        Channel("clamp", A),
        Channel("feed", V),
        Channel("battery", V),
    ]
    assert place(channels, {}) == ("motor-return", "motor-current", "motor-feed", "battery")


def test_channels_without_telling_names_go_to_feed_then_return_then_battery():
    channels = [Channel("ch1", V), Channel("ch2", V), Channel("ch3", V)]
    assert place(channels, {}) == ("motor-feed", "motor-return", "battery")
    assert place(channels, {"ch2": "motor-feed"})[0] == "motor-return"


def test_the_wanted_point_wins():
    assert place([Channel("feed", V)], {"feed": "across-motor"}) == ("across-motor",)


@pytest.mark.parametrize(
    ("wanted", "words"),
    [
        ({"nose": "battery"}, "It has: feed"),
        ({"feed": "roof"}, "There are: battery"),
        ({"feed": "motor-current"}, "reads voltage"),
    ],
)
def test_what_does_not_fit_is_refused(wanted, words):
    with pytest.raises(UsageError, match=words):
        place([Channel("feed", V)], wanted)


def test_picking_takes_the_right_columns_and_the_difference_across_the_motor():
    means = np.array([[12.4, 12.0, 2.5, 9.0, 0.1]])
    points = ("motor-current", "across-motor", "controller-ground", "battery", "motor-return")
    assert pick(means, points)[0] == pytest.approx([9.0, 9.5, 0.1, 12.4, 2.5])
