"""The table of steps keeps its rows as high as their text."""

from dataclasses import replace

from meterlog.analysis.budgets import budget
from meterlog.evidence.palette import DAY
from meterlog.model import Source, Step
from meterlog.window.steps_view import StepsView
from meterlog.window.theme import style_sheet


def test_rows_grow_with_the_text_though_the_steps_stay_as_they_are(qtbot):
    view = StepsView()
    qtbot.addWidget(view)
    view.setStyleSheet(style_sheet(DAY, 13))
    view.resize(500, 400)
    view.show()
    view.show_steps(tuple(Step(k, k * 10**9, (k + 1) * 10**9) for k in range(4)))
    view.setStyleSheet(style_sheet(DAY, 34))
    table = view.table
    qtbot.waitUntil(lambda: table.rowHeight(0) >= table.fontMetrics().height())
    assert all(table.rowHeight(row) >= table.fontMetrics().height() for row in range(4))
    tall = table.rowHeight(0)
    view.setStyleSheet(style_sheet(DAY, 13))
    qtbot.waitUntil(lambda: table.rowHeight(0) < tall)


def test_what_the_uncertainties_do_not_hold_stands_under_them(qtbot):
    view = StepsView()
    qtbot.addWidget(view)
    scatter = (Source("scatter of the readings", 0.002, "A"),)
    known = budget("steady current", 3.5, "A", scatter)
    step = Step(1, 0, 10**9, current=known)
    view.show_steps((step,))
    assert view.lacking.isHidden()
    lacking = replace(known, lacking="the meter's accuracy; the clamp's zero")
    view.show_steps((step, replace(step, speed=2, current=lacking)))
    assert not view.lacking.isHidden()
    assert view.lacking.text() == "±A is a lower bound: the meter's accuracy; the clamp's zero"
    view.show_steps((step,))
    assert view.lacking.isHidden()
