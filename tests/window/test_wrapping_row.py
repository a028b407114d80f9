"""WrappingRow: groups that are laid out anew keep what has not changed."""

import pytest
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from meterlog.window.wrapping_row import WrappingRow


@pytest.fixture
def host(qtbot):
    host = QWidget()
    qtbot.addWidget(host)
    host.show()
    return host


@pytest.fixture
def row(host):
    return WrappingRow(host)


def groups_of(row):
    return [row.itemAt(at).widget() for at in range(row.count())]


def test_a_group_that_is_the_same_stays_and_another_is_made_anew(row, qtbot):
    key, first, second = QPushButton("key"), QPushButton("1"), QPushButton("2")
    row.fill([("Key", [key]), ("Speed", [first])])
    before = groups_of(row)
    row.fill([("Speed", [first, second]), ("Key", [key])])
    after = groups_of(row)
    assert after[1] is before[0]
    assert after[0] not in before
    assert [one.text() for one in after[0].findChildren(QPushButton)] == ["1", "2"]
    qtbot.waitUntil(lambda: all(one.isVisible() for one in (*after, key, first, second)))
    assert before[1].isHidden()


def test_other_words_make_it_another_group(row):
    key = QPushButton("key")
    row.fill([("Key", [key])])
    (before,) = groups_of(row)
    row.fill([("Schlüssel", [key])])
    (after,) = groups_of(row)
    assert after is not before
    assert after.findChild(QLabel).text() == "Schlüssel"
    assert key.parent() is after


def test_what_was_hidden_in_a_group_that_stays_is_shown_again(row, qtbot):
    key = QPushButton("key")
    row.fill([("Key", [key])])
    key.hide()
    row.fill([("Key", [key])])
    qtbot.waitUntil(key.isVisible)
