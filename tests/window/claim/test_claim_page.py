"""The Claim page: what goes in is shown before, and what comes out can be checked."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit

from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.palette import DAY
from meterlog.evidence.signing import Signer
from meterlog.model import Identity
from meterlog.recording import Recorder, Recording, about_bytes
from meterlog.window.claim_page import ClaimDesk, claim_desk
from meterlog.window.claim_page.recording_facts import read_facts
from meterlog.window.session import Phase, Session
from meterlog.window.theme import style_sheet
from meterlog.work.job_folder import Side, load_work
from tests.rig.apart_works import make_when_told

Left = Qt.MouseButton.LeftButton


@pytest.fixture
def make_desk(qtbot, in_a_thread):
    """Put the page of a job on show."""
    made = []

    def make(at_hand):
        desk = ClaimDesk(at_hand, Session())
        made.append(desk)
        qtbot.addWidget(desk.widget)
        desk.widget.setStyleSheet(style_sheet(DAY, 14))
        desk.set_palette(DAY, 14)
        desk.widget.resize(1000, 600)
        desk.widget.show()
        qtbot.waitExposed(desk.widget)
        desk.begin()
        return desk

    yield make
    for desk in made:
        desk.close()


@pytest.fixture
def desk(make_desk, full):
    return make_desk(full)


def press(desk, name):
    """Press a key of the page, as the frame does."""
    acting = desk.keys()
    (one,) = [key for key in acting if key.shown == name]
    one.do()


def wait(desk, qtbot, done):
    qtbot.waitUntil(lambda: desk.tick() or done(), timeout=30000)


def made(desk, qtbot):
    """Wait for the pack; gives its folder."""
    wait(desk, qtbot, lambda: desk.page.made.isVisible() or bool(desk.page.said.text()))
    assert desk.page.said.text() == ""
    return desk.page.made.folder


def test_the_newest_recording_with_each_part_goes_in_and_is_told(desk, qtbot, tmp_path):
    page = desk.page
    assert page.before.folder == tmp_path / "shelf" / "before"
    assert page.after.folder == tmp_path / "shelf" / "after"
    wait(desk, qtbot, lambda: "being read" not in page.before.facts.text())
    assert "0:06 min" in page.before.facts.text()
    assert page.before.facts.text().splitlines()[1] == "⚠ Suspicion"
    assert page.before.mark.text() == "IMPORTED"
    assert "Work order: WO-7781" in page.card.facts.text()
    assert "The cause is not stated." in page.card.missing.text()
    assert page.options.out.text() == str(desk.at_hand.folder / "claim-1")


def test_a_pack_is_made_checked_and_remembered(desk, qtbot):
    press(desk, "P")
    acting = desk.keys()
    assert acting[0].shown == "C"
    assert not desk.page.make.isEnabled()
    folder = made(desk, qtbot)
    assert folder == desk.at_hand.folder / "claim-1"
    assert sorted(path.name for path in folder.iterdir()) == ["claim.pdf", "claim.zip"]
    signer = Signer.load_or_make()
    assert signer.fingerprint in desk.page.made.files.text()
    assert load_work(desk.at_hand.folder).packs == (folder,)
    assert desk.page.options.out.text() == str(desk.at_hand.folder / "claim-2")
    qtbot.mouseClick(desk.page.made.check, Left)
    wait(desk, qtbot, lambda: desk.page.check.verdict.text() == "Intact")
    assert "your own on this machine" in desk.page.check.lines.text()


def test_options_reach_the_pack(desk, qtbot, tmp_path):
    qtbot.mouseClick(desk.page.options.papers["letter"], Left)
    press(desk, "H")
    assert "Left out: customer" in desk.page.card.facts.text()
    for tick in (desk.page.options.signed, desk.page.options.comma):
        tick.setFocus()
        qtbot.keyClick(tick, Qt.Key.Key_Space)
    desk.page.options.out.setText(str(tmp_path / "elsewhere" / "pack"))
    plan = desk.plan()
    assert (plan.page, plan.without_customer, plan.signed, plan.decimal_comma) == (
        *("letter", True),
        *(False, True),
    )
    qtbot.mouseClick(desk.page.make, Left)
    folder = made(desk, qtbot)
    assert folder == tmp_path / "elsewhere" / "pack"
    assert "Not signed" in desk.page.made.files.text()
    found = verify_pack(folder / "claim.zip")
    assert found.intact
    assert b"Vantablank" not in (folder / "claim.pdf").read_bytes()
    press(desk, "Y")
    assert desk.page.options.paper == "a4"


def test_one_side_can_be_left_out_but_not_both(desk, qtbot):
    for side in (desk.page.before, desk.page.after):
        side.box.setFocus()
        side.box.setCurrentIndex(0)
        side.box.activated.emit(0)
        assert "No recording" in side.facts.text()
    press(desk, "P")
    wait(desk, qtbot, lambda: "no recording to claim by" in desk.page.said.text())
    assert desk.page.make.isEnabled()
    assert not (desk.at_hand.folder / "claim-1").exists()


def test_another_recording_is_put_on_the_job_and_what_is_none_is_refused(
    desk, qtbot, recorded, tmp_path
):
    other = recorded("other", dead=True)
    desk.sides.take(other, Side.OLD)
    assert desk.page.before.folder == other
    assert load_work(desk.at_hand.folder).newest(Side.OLD) == other
    wait(desk, qtbot, lambda: "0:06 min" in desk.page.before.facts.text())
    desk.sides.take(tmp_path, Side.NEW)
    assert "holds no recording" in desk.page.said.text()
    assert desk.page.after.folder == tmp_path / "shelf" / "after"


def test_circuit_checks_go_in_unless_they_are_unticked(desk, qtbot, command, tmp_path):
    check = tmp_path / "shelf" / "check"
    command(
        *("circuit", "low-side-linear-12v", "--state", "key=on,speed=4", "--sign", "fan=dead"),
        *("--reading", "motor-feed=12.4", "--save", check),
    )
    desk.sides.take(check, Side.OLD, circuit=True)
    (tick,) = desk.page.circuits.ticks.values()
    assert desk.plan().circuits == (check,)
    tick.setChecked(False)
    desk.begin()
    assert desk.plan().circuits == ()
    tick.setChecked(True)
    desk.sides.take(tmp_path / "shelf" / "after", Side.OLD, circuit=True)
    press(desk, "P")
    wait(desk, qtbot, lambda: bool(desk.page.said.text()))
    assert "holds no circuit check" in desk.page.said.text()
    assert "--" not in desk.page.said.text()


def test_cancel_leaves_nothing_and_closing_asks_once(desk, qtbot, monkeypatch):
    monkeypatch.setattr(claim_desk, "make", make_when_told)
    around = desk.at_hand.folder.parent
    press(desk, "P")
    qtbot.waitUntil((around / "under-way").exists, timeout=30000)
    assert not desk.may_close()
    assert "Close once more" in desk.page.said.text()
    press(desk, "C")
    desk.tick()
    assert desk.page.making.stop.text() == "Stopping…"
    (around / "go-on").touch()
    wait(desk, qtbot, lambda: "Cancelled" in desk.page.said.text())
    assert sorted(path.name for path in desk.at_hand.folder.iterdir()) == ["card.json", "work.json"]
    assert desk.may_close()


def test_no_pack_is_made_while_recording(desk):
    desk._session.phase = Phase.RECORDING
    desk.tick()
    assert not desk.page.make.isEnabled()
    assert desk.page.said.text() == "Stop the recording first, then make the pack."
    press(desk, "P")
    assert desk.page.said.text() == "Stop the recording first, then make the pack."
    assert desk.page.made.isHidden()
    desk._session.phase = Phase.SHOWING
    desk.tick()
    assert desk.page.make.isEnabled()
    assert desk.page.said.isHidden()


def test_a_recording_in_progress_is_to_be_stopped_not_sealed(tmp_path, about_of, block_of):
    folder = tmp_path / "live"
    recorder = Recorder.create(folder, about_of())
    recorder.take(block_of(0, 1, (12.5, 12.5, 0.0)))
    recorder.tick(2_000_000_000)
    (facts,) = read_facts([folder], lambda _: None)
    assert facts.warnings[0] == "It is being recorded: stop the recording first."
    recorder.take(block_of(1, 2, (12.5, 12.5, 0.0)))
    recorder.close()
    (facts,) = read_facts([folder], lambda _: None)
    assert facts.warnings[0] == "It is not sealed: seal it on the Recordings page first."


def test_a_key_under_a_passphrase_is_asked_for_and_a_wrong_one_is_told(desk, qtbot):
    Signer.load_or_make("under the dash")
    desk.begin()
    options = desk.page.options
    assert options.passphrase.isVisible()
    options.passphrase.setFocus()
    qtbot.keyClicks(options.passphrase, "wrong")
    qtbot.keyClick(options.passphrase, Qt.Key.Key_Return)
    wait(desk, qtbot, lambda: "passphrase is wrong" in desk.page.said.text())
    options.signed.setChecked(False)
    assert not options.passphrase.isVisible()
    options.signed.setChecked(True)
    options.passphrase.clear()
    qtbot.keyClicks(options.passphrase, "under the dash")
    press(desk, "P")
    made(desk, qtbot)
    assert options.passphrase.text() == ""


def test_a_folder_that_holds_something_is_not_written_over(desk, qtbot, tmp_path):
    held = tmp_path / "held"
    held.mkdir()
    (held / "file").write_text("kept")
    desk.page.options.out.setText(str(held))
    press(desk, "P")
    wait(desk, qtbot, lambda: "not empty" in desk.page.said.text())
    assert (held / "file").read_text() == "kept"
    desk._choose_out(held)
    assert desk.page.options.out.text() == str(held / "claim-1")


def test_changed_packs_recordings_and_what_is_neither_are_told(desk, qtbot, tmp_path):
    press(desk, "P")
    packed = made(desk, qtbot) / "claim.zip"
    content = bytearray(packed.read_bytes())
    content[len(content) // 2] ^= 1
    spoilt = tmp_path / "spoilt.zip"
    spoilt.write_bytes(content)
    panel = desk.page.check
    for path, verdict, words in (
        (spoilt, "CHANGED", "NOT as it was packed"),
        (tmp_path / "shelf" / "before", "Intact", "agrees with the seal"),
        (tmp_path, "Not checked", "is neither a recording nor a pack"),
    ):
        desk.check.check(path)
        assert panel.busy.isVisible()
        wait(desk, qtbot, lambda verdict=verdict: panel.verdict.text() == verdict)
        assert words in panel.head.text()
    panel.key.setText("0123")
    desk.check.check(packed)
    wait(desk, qtbot, lambda: "40 digits" in panel.head.text())
    assert "--key" not in panel.head.text()
    panel.key.setText("0" * 40)
    desk.check.check(packed)
    wait(desk, qtbot, lambda: panel.verdict.text() == "CHANGED")
    assert "NOT the one asked for" in panel.lines.text()


def test_overdue_simulated_edited_and_unsealed_are_told_before_the_pack(full, command, tmp_path):
    folder = tmp_path / "shelf" / "before"
    command("amend", folder, "--step", "0=2", "--who", "R. Quill", "--why", "wrong key")
    (facts,) = read_facts([folder], lambda _: None)
    assert any("wrong key" in one for one in facts.edits)
    assert facts.warnings == ("imported: when its calibration is due is not stated.",)
    about = Recording.open(folder).about
    meters = tuple(
        replace(one, identity=Identity(serial="S1", calibration_due="2026-01-31"))
        for one in about.instruments
    )
    dated = replace(about, started_utc=datetime(2026, 5, 4, 10, tzinfo=UTC), instruments=meters)
    (folder / "data" / "about.json").write_bytes(about_bytes(dated))
    (folder / "bagit.txt").unlink()
    (facts,) = read_facts([folder], lambda _: None)
    assert any("not sealed" in one for one in facts.warnings)
    assert any("overdue" in one and "S1" in one for one in facts.warnings)
    simulated = tuple(replace(one, simulated=True) for one in meters)
    (folder / "data" / "about.json").write_bytes(about_bytes(replace(dated, instruments=simulated)))
    (facts, lost) = read_facts([folder, tmp_path / "gone"], lambda _: None)
    assert "SIMULATED" in facts.mark
    assert "is not there" in lost.trouble


def test_another_job_brings_its_own_recordings(desk, qtbot, tmp_path):
    first = desk.at_hand.folder
    desk.at_hand.new()
    assert desk.page.before.folder is None
    assert desk.page.card.facts.text() == "Nothing is stated yet."
    assert desk.page.options.out.text() == ""
    desk.at_hand.open(first)
    assert desk.page.before.folder == tmp_path / "shelf" / "before"


def test_the_pack_is_shown_with_the_systems_own_program(desk, qtbot, monkeypatch):
    shown = []
    monkeypatch.setattr(claim_desk, "opener", lambda url: shown.append(url) or False)
    press(desk, "P")
    folder = made(desk, qtbot)
    qtbot.mouseClick(desk.page.made.open_pdf, Left)
    press(desk, "X")
    assert [Path(url.toLocalFile()) for url in shown] == [folder / "claim.pdf", folder]
    assert str(folder) in desk.page.said.text()


def test_words_below_are_reached_by_keys_and_what_comes_up_is_brought_into_sight(desk, qtbot):
    desk.widget.resize(900, 300)
    qtbot.waitUntil(lambda: desk.page._left.verticalScrollBar().maximum() > 0)
    keys = desk.keys()
    acting = {one: key for key in keys for one in key.keys}
    acting[Qt.Key.Key_PageDown].do()
    assert desk.page._left.verticalScrollBar().value() > 0
    acting[Qt.Key.Key_PageUp].do()
    assert desk.page._left.verticalScrollBar().value() == 0
    press(desk, "P")
    made(desk, qtbot)
    view = desk.page._right.viewport()

    def seen():
        at = desk.page.made.heading.mapTo(view, desk.page.made.heading.rect().topLeft())
        return 0 <= at.y() < view.height()

    qtbot.waitUntil(seen)


def test_each_control_has_a_name_and_tab_reaches_it(desk, qtbot):
    desk.page.before.box.setFocus()
    seen = {desk.page.before.box}
    while True:
        qtbot.keyClick(desk.widget.focusWidget(), Qt.Key.Key_Tab)
        if desk.widget.focusWidget() in seen:
            break
        seen.add(desk.widget.focusWidget())
    wanted = (QAbstractButton, QComboBox, QLineEdit)
    shown = [one for kind in wanted for one in desk.widget.findChildren(kind) if one.isVisible()]
    for one in shown:
        assert one.accessibleName() or one.text(), one
        assert one in seen, one.accessibleName()
