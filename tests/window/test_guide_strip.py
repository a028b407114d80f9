from PySide6.QtCore import Qt

from meterlog.window.guide_strip import GuideStrip
from meterlog.window.main_window import MainWindow


def test_sentences_come_one_after_the_other_and_the_last_one_stays(qtbot):
    strip = GuideStrip(["one.", "two."])
    qtbot.addWidget(strip)
    strip.show()
    assert strip.words.text() == "1/2  one."
    qtbot.mouseClick(strip.more, Qt.MouseButton.LeftButton)
    assert strip.words.text() == "2/2  two."
    assert not strip.more.isVisible()
    strip.forward()
    assert strip.words.text() == "2/2  two."


def test_time_moves_the_guide_on(qtbot):
    strip = GuideStrip(["one.", "two."])
    qtbot.addWidget(strip)
    strip._timer.setInterval(1)
    qtbot.waitUntil(lambda: strip.words.text() == "2/2  two.")


def test_without_sentences_there_is_no_strip(qtbot):
    window = MainWindow()
    qtbot.addWidget(window)
    window.show()
    assert not window.guide.isVisible()
