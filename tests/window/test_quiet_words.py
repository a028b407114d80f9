"""What warns of nothing is not in the colour of a caution, and nothing has no sign."""

import pytest

from meterlog.acquire import ZeroTaking
from meterlog.model import Channel, Quantity, Role
from meterlog.model.sensor import Zero
from meterlog.window.numbers import number
from meterlog.window.plain_note import PlainNote, zero_words
from meterlog.window.point_line import PointLine

CHANNEL = Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.1)


@pytest.mark.parametrize(
    ("value", "form", "words"),
    [(-0.0011, ".2f", "0.00"), (-0.4, ".0f", "0"), (-0.0, "", "0.0"), (-0.01, ".2f", "-0.01"),
     (-1000.0, ",.0f", "-1,000"), (0.0, ".2f", "0.00")],
)  # fmt: skip
def test_what_rounds_to_nothing_has_no_sign(value, form, words):
    assert number(value, form) == words


def test_a_zero_that_is_taken_is_told_plainly_and_one_refused_is_a_caution(window, show):
    show(window)
    taken, refused = (ZeroTaking("meter", 0, CHANNEL, 3.0) for _ in range(2))
    taken.take(Zero(-0.001225, 0.0093, 151))
    refused.give_up("the current moves.")
    session, said = window.desk.session, window.said
    for taking, rank in ((taken, "note"), (refused, "caution"), (taken, "note")):
        session.trouble = zero_words(taking)
        window.desk._show_words()
        assert (said.property("rank"), said.text()) == (rank, str(taking))
        assert said.isVisible()
    session.trouble = "Something is wrong."
    window.desk._show_words()
    assert said.property("rank") == "caution"
    assert isinstance(zero_words(taken), PlainNote)


def test_the_words_about_a_point_keep_the_room_that_they_have_had(qtbot):
    line = PointLine()
    qtbot.addWidget(line)
    line.resize(500, 200)
    line.show()
    qtbot.waitExposed(line)

    def room(words):
        line.show_point(words, reached=True)
        return line.minimumSizeHint().height()

    short = room("A  battery: at the post.")
    assert room("A\n⚠ one") == short
    assert room("A\n⚠ one\n⚠ two") == short
    high = room("A\n⚠ one\n⚠ two\n⚠ three\n⚠ four")
    assert high > short
    assert room("A  battery: at the post.") == high
    line.resize(700, 200)
    assert room("A  battery: at the post.") == short
