"""The PDF of a claim against tools of others: poppler's and qpdf.

Source: ``pdfinfo``, ``pdffonts``, ``pdftotext``, ``pdfdetach`` and ``pdftoppm`` (poppler-utils);
``qpdf --check``. ISO 216 (A4); ISO 32000-2, 7.11.4 (embedded files). All readings are invented.
"""

import re
import shutil
import subprocess
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from io import BytesIO
from itertools import combinations
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pikepdf
import pytest
from PIL import Image, ImageFilter
from PySide6.QtGui import QFontDatabase

from meterlog.evidence.attached_names import attached_name
from meterlog.evidence.claim_content import ClaimContent, ClaimSide, PageSize
from meterlog.evidence.claim_pdf import write_claim_pdf
from meterlog.model import (
    About,
    Accuracy,
    Block,
    Channel,
    Event,
    EventKind,
    Identity,
    Instrument,
    Job,
    Origin,
    Quantity,
    Role,
)
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.profile import load_limits
from meterlog.recording import Recorder, Recording, seal
from meterlog.work.compare import CompareRequest, compare_folders
from meterlog.work.demo_circuit import check_circuit
from meterlog.work.review import review_folder

TOOLS = ("pdfinfo", "pdffonts", "pdfimages", "pdftotext", "pdfdetach", "pdftoppm", "qpdf")
pytestmark = pytest.mark.skipif(
    any(shutil.which(tool) is None for tool in TOOLS), reason="needs poppler-utils and qpdf"
)

GOLDEN = Path(__file__).with_name("claim-page-1.png")
"""The first page of ``both`` in A4 at 40 dots per inch, as it was looked at and found good."""
RATE = 50
SPEEDS = {1: (5.6, 3.7), 2: (7.2, 5.7), 3: (9.3, 8.9), 4: (12.05, 13.6)}
SECONDS = 5
DEAD = ((3, 2.6, 3.9), (4, 3.0, 4.2))
"""Speed, and from when to when after its command the old motor opens."""
ATTACHED = {
    "data/before/steps.csv": b"speed,start_s\r\n1,2.0\r\n",
    "data/after/steps.csv": bytes(range(256)) * 40,
    "manifest-sha256.txt": b"",
    "data/märz & co.txt": "ä".encode(),
}


def _instrument(due):
    def channel(name, quantity, role, percent):
        stated = Accuracy(percent, 2, 0.01, 0.02, "invented data sheet")
        return Channel(
            name, quantity, role, interval_s=1 / RATE, integration_s=1 / RATE, accuracy=stated
        )

    volts, amps = Quantity.VOLTAGE, Quantity.CURRENT
    return Instrument(
        "logger",
        "line-logger",
        "invented",
        (
            channel("feed", volts, Role.MOTOR_FEED, 0.3),
            channel("return", volts, Role.MOTOR_RETURN, 0.3),
            channel("current", amps, Role.MOTOR_CURRENT, 2.0),
        ),
        Identity("Invented", "L-8", "1203", calibration_due=due),
    )


def _values(dead, more):
    """Give feed, return and current of a run through all speeds, off at both ends."""
    dice = np.random.default_rng(5)
    count = RATE * SECONDS * (len(SPEEDS) + 2)
    values = np.zeros((count, 3))
    values[:, 0] = 12.5
    for speed, (volts, amps) in SPEEDS.items():
        rows = slice(RATE * SECONDS * speed, RATE * SECONDS * (speed + 1))
        after = np.arange(RATE * SECONDS) / RATE
        values[rows, 2] = more * amps * (1.0 + 0.5 * np.exp(-after / 0.3))
        values[rows, 0] = 12.5 - 0.02 * amps
        values[rows, 1] = values[rows, 0] - volts
    for speed, start, end in dead:
        rows = slice(round(RATE * (SECONDS * speed + start)), round(RATE * (SECONDS * speed + end)))
        values[rows] = (12.5, 0.05, 0.0)
    return values + dice.normal(0.0, (0.004, 0.004, 0.03), values.shape)


def _record(folder, name, dead=(), more=1.0, due="2027-03-01"):
    """Record a run; returns its folder."""
    about = About(
        recording_id=f"00000000-0000-4000-8000-{name:0>12}",
        started_utc=datetime(2026, 5, 4, 8, tzinfo=UTC) + timedelta(hours=len(dead)),
        local_offset_s=7200,
        zero_ns=0,
        program="meterlog test",
        origin=Origin.SIMULATED,
        instruments=(_instrument(due),),
        limits=load_limits("linear-12v"),
        job=Job(part=f"fan motor {name} (invented)"),
    )
    values = _values(dead, more)
    times = (np.arange(len(values)) * (1_000_000_000 // RATE)).astype(np.int64)
    recorder = Recorder.create(folder, about)
    recorder.take(Block("logger", times, values, np.zeros(values.shape, np.uint8)))
    for place, speed in enumerate((0, *SPEEDS, 0)):
        recorder.take(Event(place * SECONDS * 1_000_000_000, EventKind.SPEED, str(speed)))
    for speed, _, end in dead:
        tap_s = SECONDS * speed + end
        recorder.take(Event(round(tap_s * 1e9), EventKind.TAP))
    recorder.close()
    seal(folder)
    return folder


CARD = JobCard(
    work_order="W-17",
    claim_number="C-2026-4",
    vehicle="invented van, 2021",
    plate="INV 17",
    odometer="83 412 km",
    complaint="The fan stops by itself and runs again when the dash is hit.",
    old_part=PartIdentity("fan motor", "X-1180", "4417", "2107"),
    new_part=PartIdentity("fan motor", "X-1180", "19302", "2633"),
    fitted_by="somebody invented",
)


@pytest.fixture(scope="module")
def contents(tmp_path_factory, qapp):
    """Make the contents: both runs with a check of the circuit, before alone, after alone."""
    place = tmp_path_factory.mktemp("claim")
    old = _record(place / "before", "old", DEAD, due="2026-01-31")
    new = _record(place / "after", "new", more=1.02)
    check = check_circuit("dead-spot", place / "circuit", Job(), 1)
    before = ClaimSide("before", *review_folder(old))
    after = ClaimSide("after", *review_folder(new))
    photo = place / "label.png"
    Image.new("RGB", (640, 480), (90, 120, 60)).save(photo)
    both = ClaimContent(
        card=CARD,
        sides=(replace(before, checks=(check,)), after),
        comparison=compare_folders(CompareRequest((old,), new)),
        missing=("ambient temperature",),
        amendments=("speed 2 was marked late by 1 s (invented)",),
        checksums={name: f"{k:064x}" for k, name in enumerate(ATTACHED)},
        fingerprint="1a2b 3c4d 5e6f 7081 92a3 b4c5 d6e7 f809 1a2b 3c4d",
        photos=(photo, place / "gone.jpg"),
        made_utc="2026-06-01T09:30:00+00:00",
    )
    less = {"comparison": None, "photos": (), "amendments": (), "missing": ()}
    return {
        "both": both,
        "no-circuit": replace(both, sides=(before, after)),
        "before": replace(both, sides=both.sides[:1], **less),
        "after": replace(both, sides=(after,), fingerprint="", **less),
    }


CASES = [(name, page) for name in ("both", "no-circuit", "before", "after") for page in PageSize]


@pytest.fixture(scope="module")
def pdfs(contents, tmp_path_factory):
    place = tmp_path_factory.mktemp("pdf")
    made = {}
    for name, page in CASES:
        made[name, page] = place / f"{name}-{page.value}.pdf"
        write_claim_pdf(contents[name], made[name, page], page, ATTACHED, lambda _: None)
    return made


def _run(*words):
    done = subprocess.run([str(word) for word in words], capture_output=True, check=True)
    return done.stdout.decode("utf-8", "replace")


def _pages(path):
    return int(re.search(r"Pages:\s+(\d+)", _run("pdfinfo", path))[1])


@pytest.mark.parametrize("case", CASES, ids=str)
def test_the_file_is_sound_of_the_right_size_and_says_what_it_is(pdfs, case):
    said = _run("pdfinfo", pdfs[case])
    size = {PageSize.A4: "595 x 842 pts (A4)", PageSize.LETTER: "612 x 792 pts (letter)"}
    assert size[case[1]] in said
    assert "Title:           Cabin fan: claim C-2026-4, work order W-17" in said
    assert "CreationDate:    Mon Jun  1 09:30:00 2026" in said
    assert re.search(r"PDF version:\s+1\.7", said)
    assert "No syntax or stream encoding errors found" in _run("qpdf", "--check", pdfs[case])
    assert "<pdfaid:part>3</pdfaid:part>" in _run("pdfinfo", "-meta", pdfs[case])


@pytest.mark.parametrize("case", CASES, ids=str)
def test_all_fonts_are_inside_in_part_and_can_be_read_as_text(pdfs, case):
    rows = _run("pdffonts", pdfs[case]).splitlines()[2:]
    assert rows
    # Embedded and with what their signs mean; that it is but a part shows from its size.
    assert all(re.search(r"\s(yes) (yes|no)\s+(yes)\s+\d+\s+\d+$", row) for row in rows)
    with pikepdf.open(pdfs[case]) as document:
        sizes = [
            len(one.FontFile2.read_bytes())
            for one in document.objects
            if isinstance(one, pikepdf.Dictionary) and "/FontFile2" in one
        ]
    assert len(sizes) == len(rows)
    assert max(sizes) < 120_000


@pytest.mark.parametrize("case", CASES, ids=str)
def test_what_a_pdf_for_keeping_may_not_hold_is_not_there(pdfs, case):
    """ISO 19005-3: an output intent with its profile, nothing encrypted, no program, no sound."""
    with pikepdf.open(pdfs[case]) as document:
        (intent,) = document.Root.OutputIntents
        assert intent.S == "/GTS_PDFA1"
        assert len(intent.DestOutputProfile.read_bytes()) > 128
        assert not document.is_encrypted
        assert len(document.trailer.ID) == 2
        for one in document.objects:
            if not isinstance(one, pikepdf.Dictionary | pikepdf.Stream):
                continue
            assert one.get("/S") not in {"/JavaScript", "/Launch", "/Sound", "/Movie"}
            assert "LZW" not in str(one.get("/Filter"))
            assert one.get("/Interpolate", False) is False
            # Nothing see-through: the pages are of PDF/A-1.
            assert one.get("/SMask", "/None") == "/None"
            assert float(one.get("/ca", 1)) == float(one.get("/CA", 1)) == 1.0
        assert [str(spec.UF) for spec in document.Root.AF] == sorted(map(attached_name, ATTACHED))
        assert [str(spec.Desc) for spec in document.Root.AF] == sorted(ATTACHED)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_the_attachments_come_out_as_they_went_in(pdfs, case, tmp_path):
    listed = _run("pdfdetach", "-list", pdfs[case]).splitlines()
    assert listed[0] == f"{len(ATTACHED)} embedded files"
    names = [line.partition(": ")[2] for line in listed[1:]]
    assert names == sorted(map(attached_name, ATTACHED))
    # Into one folder, in which none was made for any of them.
    _run("pdfdetach", "-saveall", "-o", tmp_path, pdfs[case])
    assert {one.name: one.read_bytes() for one in tmp_path.iterdir()} == {
        attached_name(name): content for name, content in ATTACHED.items()
    }


ORDER = (
    ("SIMULATED", {"both", "no-circuit", "before", "after"}),
    ("The fan stops by itself and runs again when the dash is hit.", {"both", "before", "after"}),
    ("Before the repair", {"both", "no-circuit", "before"}),
    ("After the repair", {"both", "no-circuit", "after"}),
    ("New against old", {"both", "no-circuit"}),
    ("Circuit check of", {"both", "before"}),
    ("calibration OVERDUE: it was due 2026-01-31", {"both", "no-circuit", "before"}),
    ("The job", {"both", "no-circuit", "before", "after"}),
    ("Cabin fan trace", {"both", "no-circuit", "before", "after"}),
    ("Verdict: ", {"both", "no-circuit", "before", "after"}),
    ("Per step", {"both", "no-circuit", "before", "after"}),
    ("Findings", {"both", "no-circuit", "before", "after"}),
    ("Readings and signs", {"both", "before"}),
    ("Suspects", {"both", "before"}),
    ("Photo 1: label.png", {"both", "no-circuit"}),
    ("Photo 2, gone.jpg: can't be shown: there is no such file.", {"both", "no-circuit"}),
    ("Meters and method", {"both", "no-circuit", "before", "after"}),
    ("Decision rule", {"both", "no-circuit", "before", "after"}),
    ("What this set-up could not have seen", {"both", "no-circuit", "before", "after"}),
    ("Cautions for whoever measures again", {"both", "no-circuit", "before", "after"}),
    ("Edits made on top of the recordings", {"both", "no-circuit", "before", "after"}),
    ("Files of the pack", {"both", "no-circuit", "before", "after"}),
    (f"{3:064x}", {"both", "no-circuit", "before", "after"}),
)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_the_words_stand_there_in_order(pdfs, case):
    text = " ".join(_run("pdftotext", "-raw", pdfs[case], "-").split())
    at = 0
    for words, cases in ORDER:
        if case[0] in cases:
            assert text.find(words, at) >= at, words
            at = text.find(words, at)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_each_page_has_its_number_the_key_and_the_recordings(pdfs, case, contents):
    count = _pages(pdfs[case])
    content = contents[case[0]]
    key = f"signing key {content.fingerprint}" if content.fingerprint else "not signed"
    for number in range(1, count + 1):
        text = _run("pdftotext", "-f", number, "-l", number, pdfs[case], "-")
        assert f"page {number} of {count}" in text
        assert key in text
        assert all(side.recording.about.recording_id in text for side in content.sides)
        assert "SIMULATED" in text


def _boxes(path):
    """Give, for each page, its size and the words with their boxes."""
    tree = ElementTree.fromstring(_run("pdftotext", "-bbox", path, "-"))
    for page in tree.iter("{http://www.w3.org/1999/xhtml}page"):
        words = [
            (one.text, *(float(one.get(side)) for side in ("xMin", "yMin", "xMax", "yMax")))
            for one in page
        ]
        yield float(page.get("width")), float(page.get("height")), words


def _overlap(first, second):
    """Give by how much two boxes lie over each other, the less of both directions, points."""
    across = min(first[3], second[3]) - max(first[1], second[1])
    down = min(first[4], second[4]) - max(first[2], second[2])
    return min(across, down)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_no_word_is_cut_by_the_page_or_lies_on_another(pdfs, case):
    for width, height, words in _boxes(pdfs[case]):
        assert words
        for _, left, top, right, bottom in words:
            assert left >= 36.0
            assert right <= width - 36.0
            assert top >= 10.0
            assert bottom <= height - 10.0
        # Turned words (the axes of a trace) have boxes that say nothing.
        flat = [one for one in words if one[3] - one[1] > 0.4 * (one[4] - one[2])]
        met = [pair for pair in combinations(flat, 2) if _overlap(*pair) > 2.0]
        assert met == []


def _page(path, number=1):
    done = subprocess.run(
        ["pdftoppm", "-r", "40", "-f", str(number), "-l", str(number), "-gray", "-png", str(path)],
        capture_output=True,
        check=True,
    )
    return Image.open(BytesIO(done.stdout))


def _difference(first, second):
    """Give the mean difference of two pages, 0 to 255, blurred so that a shifted letter is none."""
    if first.size != second.size:
        return 255.0
    soft = [
        np.asarray(one.convert("L").filter(ImageFilter.GaussianBlur(2.0)), float)
        for one in (first, second)
    ]
    return float(np.abs(soft[0] - soft[1]).mean())


def test_the_first_page_looks_as_it_was_found_good(pdfs):
    if "DejaVu Sans" not in QFontDatabase.families():
        pytest.skip("the picture was made with DejaVu Sans")
    with Image.open(GOLDEN) as golden:
        first = _page(pdfs["both", PageSize.A4])
        assert _difference(first, golden) < 1.5
        # The measure tells a page of another case and another page: it can fail.
        assert _difference(_page(pdfs["before", PageSize.A4]), golden) > 3.0
        assert _difference(_page(pdfs["both", PageSize.A4], 2), golden) > 3.0


def test_the_traces_are_lines_and_no_pictures(pdfs):
    rows = _run("pdfimages", "-list", pdfs["no-circuit", PageSize.A4]).splitlines()[2:]
    assert {int(row.split()[0]) for row in rows} <= {
        number
        for number in range(1, _pages(pdfs["no-circuit", PageSize.A4]) + 1)
        if "Photo 1"
        in _run("pdftotext", "-f", number, "-l", number, pdfs["no-circuit", PageSize.A4], "-")
    }


def test_the_recordings_are_as_meant(contents):
    before, after = contents["both"].sides
    assert isinstance(before.recording, Recording)
    assert before.review.verdict.outcome == "fault found"
    assert after.review.verdict.outcome == "in order"
    assert contents["both"].comparison.refusal == ""
