from PySide6.QtWidgets import QHBoxLayout, QWidget

from meterlog.window.elided_label import ElidedLabel


def test_words_that_do_not_fit_end_in_dots_and_stand_whole_in_the_tip(qtbot):
    place = QWidget()
    qtbot.addWidget(place)
    label = ElidedLabel()
    row = QHBoxLayout(place)
    row.addWidget(label)
    label.setText("line-logger: NOT CONNECTED (silent since 3.0 s)")
    place.resize(800, 40)
    place.show()
    qtbot.waitExposed(place)
    assert label.shown() == label.text()
    place.resize(label.minimumSizeHint().width() + 40, 40)
    qtbot.waitUntil(lambda: label.shown() != label.text())
    assert label.shown().endswith("…")
    assert label.toolTip() == label.text()
    label.grab()


def test_without_words_it_takes_no_room(qtbot):
    label = ElidedLabel()
    qtbot.addWidget(label)
    assert label.minimumSizeHint().width() == 0
