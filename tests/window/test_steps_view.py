"""The table of steps keeps its rows as high as their text."""

from meterlog.evidence.palette import DAY
from meterlog.model import Step
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
