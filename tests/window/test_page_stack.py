"""PageStack: pages are made once, ahead in steps or when they are turned to."""

import pytest
from PySide6.QtWidgets import QLabel, QStackedWidget, QWidget

from meterlog.evidence.palette import DAY
from meterlog.window.page_stack import PageStack
from meterlog.window.pages import Page


class Made:
    """A page that says what was done with it."""

    def __init__(self, did):
        self.widget, self.did = QLabel("made"), did
        did.append("made")

    def begin(self):
        self.did.append("begun")

    def tick(self):
        self.did.append("tick")

    def set_palette(self, palette, pixels):
        self.did.append(f"{palette.name} {pixels}")

    def keys(self):
        return ()

    def may_close(self):
        return False

    def close(self):
        self.did.append("closed")


@pytest.fixture
def stack(qtbot):
    stack = QStackedWidget()
    qtbot.addWidget(stack)
    for _ in range(Page.JOB):
        stack.addWidget(QWidget())
    stack.show()
    return stack


@pytest.fixture
def did():
    return {Page.JOB: [], Page.COMPARE: []}


@pytest.fixture
def parts(stack, did):
    parts = PageStack(stack, {page: lambda page=page: Made(did[page]) for page in did})
    parts.set_palette(DAY, 14)
    return parts


def test_nothing_is_made_before_somebody_asks(parts, did):
    parts.tick()
    assert did == {Page.JOB: [], Page.COMPARE: []}
    assert parts.holding() is None


def test_all_are_made_ahead_in_steps_with_their_colours(parts, did, stack):
    steps = sum(1 for _ in parts.making())
    assert steps >= 2 * len(did)
    look = f"{DAY.name} 14"
    assert did == {Page.JOB: ["made", look], Page.COMPARE: ["made", look]}
    assert stack.widget(Page.JOB).findChild(QLabel).text() == "made"


def test_one_made_ahead_does_nothing_until_it_is_asked_for(parts, did):
    for _ in parts.making():
        pass
    parts.begin(Page.COMPARE)
    parts.tick()
    assert "tick" not in did[Page.JOB]
    assert did[Page.COMPARE][-2:] == ["begun", "tick"]


def test_one_half_made_is_made_to_its_end_where_it_is_asked_for(parts, did):
    making = parts.making([Page.JOB])
    next(making)
    assert did[Page.JOB] == ["made"]
    parts.begin(Page.JOB)
    assert did[Page.JOB] == ["made", f"{DAY.name} 14", "begun"]
    assert list(making) == []
    assert did[Page.JOB].count("made") == 1


def test_none_is_made_once_the_window_closed(parts, did):
    making = parts.making()
    next(making)
    parts.close()
    assert list(making) == []
    assert sum("made" in one for one in did.values()) == 1


def test_one_that_could_not_be_made_is_tried_again(stack, did):
    tries = []

    def fails_once():
        tries.append(1)
        if len(tries) == 1:
            raise OSError("invented")
        return Made(did[Page.JOB])

    parts = PageStack(stack, {Page.JOB: fails_once})
    with pytest.raises(OSError, match="invented"):
        list(parts.making())
    parts.begin(Page.JOB)
    assert did[Page.JOB] == ["made", "begun"]
