"""The key map of every page: no key stands there twice, and each does what stands beside it."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent

from meterlog.window.circuit_keys import CIRCUIT_BINDINGS, CircuitAction
from meterlog.window.keys import BINDINGS, Action
from meterlog.window.named_keys import OR, each_key, key_shown, keys_left, pressed_by
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.window.work_page import PageKey
from meterlog.work.job_folder import Side

_Key, _Ctrl = Qt.Key, Qt.KeyboardModifier.ControlModifier


def named(window):
    """Give the keys on the map of the page on show: (key, words), in the order of the map."""
    shown = window.desk.keys.shown(window.desk.page, guided=False)
    words = [(word, does) for keys, does in shown for word in each_key(keys) if word != OR]
    return [(key_shown(word), does) for word, does in words if key_shown(word) is not None]


@pytest.fixture
def recording(window, show):
    """A window that believes that it records."""
    show(window, live=True)
    window.desk.session.phase = Phase.RECORDING
    window.desk.tick()
    window.desk._pulse.stop()
    yield window
    window.desk.session.phase = Phase.SHOWING


def said_by(wanted):
    """Give all words by which the map may name what is wanted."""
    if isinstance(wanted, PageKey):
        return {wanted.words}
    bindings = CIRCUIT_BINDINGS if isinstance(wanted, CircuitAction) else BINDINGS
    both = [*bindings, *(CIRCUIT_BINDINGS if isinstance(wanted, Action) else ())]
    return {text for one in both if one.action is wanted for text in (one.words, *_before(one))}


def _before(binding):
    return (binding.before,) if getattr(binding, "before", "") else ()


def check(window, page):
    window.show_page(page)
    keys = named(window)
    assert len(keys) > 3
    only = [key for key, _ in keys]
    assert len(only) == len(set(only)), f"a key stands twice on the map of {page}"
    for key, does in keys:
        event = QKeyEvent(QEvent.Type.KeyPress, key, Qt.KeyboardModifier.NoModifier)
        found = window.desk.keys.wanted(event, page)
        if (page, key, does) == (Page.RECORDINGS, _Key.Key_Enter, "open"):
            continue  # the list itself takes it
        assert window.desk.keys.acts(found[0], page)
        words = said_by(found[0])
        # A second key of a group is told by the words of its first.
        assert does in words or words <= {"", "closer", "later", "next step"} or does == "pages"


# One window turns through all pages: to make one takes longer than all that is looked at in it.
def test_no_key_stands_twice_on_the_map_of_a_page(window, show):
    show(window)
    for page in Page:
        check(window, page)


def test_nor_while_recording(recording):
    for page in Page:
        check(recording, page)


def test_nor_where_keys_of_ones_own_do_something_else(window, show):
    show(window)
    own = window.desk.keys.own
    own.bind(_Key.Key_Q, Action.TAP)
    own.bind(_Key.Key_3, Action.NOTE)
    own.bind(_Key.Key_X, CircuitAction.TAKE)
    for page in Page:
        window.show_page(page)
        only = [key for key, _ in named(window)]
        assert len(only) == len(set(only)), page


def test_on_the_job_page_backspace_takes_back_the_mark_and_u_the_entry(recording, qtbot):
    recording.show_page(Page.JOB)
    keys = dict(named(recording))
    assert (keys[_Key.Key_Backspace], keys[_Key.Key_U]) == ("undo mark", "undo")
    done = []
    recording.desk.session.undo_mark = lambda: done.append("mark")
    qtbot.keyClick(recording.pages, _Key.Key_Backspace)
    assert done == ["mark"]


@pytest.mark.parametrize(
    ("shown", "taken", "left"),
    [
        ("+ / T / Space", {_Key.Key_T}, "+ / Space"),
        ("+ / T / Space", {_Key.Key_Plus}, "T / Space"),
        ("+ / T / Space", {_Key.Key_Space}, "+ / T"),
        ("⌫ / U", {_Key.Key_U, _Key.Key_Backspace}, ""),
        ("V Y PgUp PgDn", {_Key.Key_Y}, "V PgUp PgDn"),
        ("0 – 9", {_Key.Key_T}, "0 – 9"),
        ("0 – 9", {_Key.Key_0, _Key.Key_9}, "1 2 3 4 5 6 7 8"),
    ],
)
def test_what_is_left_of_keys_reads_well(shown, taken, left):
    assert keys_left(shown, taken) == left


@pytest.mark.parametrize("key", [_Key.Key_F11, _Key.Key_F12])
def test_whole_screen_and_keys_act_on_the_circuit_page(window, qtbot, key):
    done = []
    window.turn_full_screen = lambda: done.append(_Key.Key_F11)
    window.show_page(Page.CIRCUIT)
    qtbot.keyClick(window.pages, key)
    if window.desk.page is Page.KEYS:
        done.append(_Key.Key_F12)
    assert done == [key]
    assert key in dict(named(window)) or window.desk.page is Page.KEYS


def test_one_key_turns_the_sound_on_every_page(window, show, qtbot):
    show(window)
    done = []
    window.desk.sound.turn = lambda: done.append(window.desk.page)
    for page in Page:
        window.show_page(page)
        qtbot.keyClick(window.pages, _Key.Key_M, _Ctrl)
        window.keys.linkActivated.emit(str(pressed_by("Ctrl+M")))
    assert done == [page for page in Page for _ in range(2)]


def test_the_sound_key_acts_while_typing_and_stands_on_the_map(recording, qtbot):
    done = []
    recording.desk.sound.turn = lambda: done.append("sound")
    recording.show_page(Page.JOB)
    field = recording.desk.parts[Page.JOB].page.form.boxes["work_order"]
    field.setFocus()
    qtbot.keyClick(recording.focusWidget(), _Key.Key_M, _Ctrl)
    assert done == ["sound"]
    for page in (Page.CIRCUIT, Page.CLAIM):
        shown = dict(recording.desk.keys.shown(page, guided=False))
        assert shown["Ctrl+M"] == "sound"
    assert dict(recording.desk.keys.shown(Page.CIRCUIT, guided=False))["Ctrl+1…7"] == "pages"


def test_where_each_key_acts_is_told_as_it_is(window):
    window.show_page(Page.KEYS)
    where = {one[0]: one[1] for one in window.desk.parts[Page.KEYS].page._rows if _is_frame(one[0])}
    for action in (Action.MARK, Action.SECOND, Action.EDITS, Action.STRETCH):
        assert where[action] == "Trace"
    assert where[Action.START_STOP] == "Meters, Circuit, Trace; else: stop"
    assert where[Action.TAP] == "Trace; recording: all pages"
    assert where[Action.PART] == "Trace; recording: all but Circuit"
    assert where[Action.SOUND] == "Trace; recording: all but Circuit; Ctrl+M: all pages"
    assert (where[Action.LOOKS], where[Action.JOB]) == ("all pages", "all but Circuit")
    assert where[Action.ASK] == "Meters"


def _is_frame(action):
    return isinstance(action, Action)


@pytest.mark.parametrize("turn", ["key", "place", "button"])
def test_words_about_a_key_end_with_the_page_but_not_an_error_of_the_recording(
    window, show, qtbot, turn
):
    show(window)
    session = window.desk.session
    turns = {
        "key": lambda: qtbot.keyClick(window.pages, _Key.Key_M),
        "place": lambda: qtbot.keyClick(window.pages, _Key.Key_2, _Ctrl),
        "button": window.header.pages[Page.METERS].click,
    }
    qtbot.keyClick(window.pages, _Key.Key_T)
    assert "Nothing is being recorded" in window.said.text()
    turns[turn]()
    assert window.desk.page is Page.METERS
    assert not window.said.isVisible()
    window.show_page(Page.RUN)
    session._fail(Phase.RECORDING, "the disk is full.")
    turns[turn]()
    assert "the disk is full." in window.said.text()


def test_typing_on_the_circuit_page_before_a_circuit_is_chosen_starts_nothing(window, qtbot):
    window.show_page(Page.CIRCUIT)
    begun = []
    window.desk.session.start = begun.append
    for key in (_Key.Key_R, _Key.Key_1, _Key.Key_2, _Key.Key_Return):
        qtbot.keyClick(window.focusWidget(), key)
    assert begun == []
    assert window.desk.circuit.page.point.field.text() == "12"
    assert "Choose the circuit first" in window.said.text()


def test_a_run_in_progress_keeps_the_part_it_is_filed_with(recording, qtbot, tmp_path):
    desk = recording.desk
    desk.at_hand.enter("work_order", "WO 2 (invented)")
    desk.session.folder = tmp_path / "run"
    desk.at_hand.take_recording(tmp_path / "run")
    qtbot.keyClick(recording.pages, _Key.Key_P)
    assert desk.at_hand.work.fitted.value == "old"
    assert "this run is filed with the old part" in desk.session.trouble
    recording.show_page(Page.JOB)
    job = desk.parts[Page.JOB].page
    qtbot.keyClick(recording.pages, _Key.Key_X)
    for press in (lambda: None, job.sides[Side.NEW].click):
        press()
        assert desk.at_hand.work.fitted.value == "old"
        assert "Stop the recording first" in job.said.text()
        assert job.sides[Side.OLD].isChecked()
    desk.session.phase = Phase.SHOWING
    job.sides[Side.NEW].click()
    assert desk.at_hand.work.fitted.value == "new"
    assert job.said.text() == ""


def test_in_a_field_the_strip_says_first_what_leads_out_of_it(recording, qtbot):
    """Letters are written there; only a click on the strip does what it says."""
    desk = recording.desk
    recording.show_page(Page.JOB)
    assert "leaves the field" not in recording.keys.accessibleName()
    desk.parts[Page.JOB].page.form.boxes["work_order"].edit.setFocus()
    qtbot.waitUntil(lambda: "keys: Esc: leaves the field" in recording.keys.accessibleName())
    assert "tap" in recording.keys.accessibleName()
    qtbot.keyClick(recording.focusWidget(), _Key.Key_Escape)
    qtbot.waitUntil(lambda: "leaves the field" not in recording.keys.accessibleName())
