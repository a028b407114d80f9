"""A PDF on a full disk: the library would end the process; here it is an error like any other."""

import io
import subprocess
import sys
from datetime import UTC, datetime

import pikepdf
import pytest

from meterlog.evidence.claim_pdf.archive_form import Told, write_archived
from meterlog.evidence.pdf_form import out_of_form, save_in_form
from meterlog.evidence.pdf_pages import put_inside

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="RLIMIT_FSIZE is POSIX")

# A process of its own: what is tested for is that it does not die.
FULL = """
import resource, signal, sys
from pathlib import Path
from meterlog.evidence.pdf_pages import put_inside
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
limit = int(sys.argv[2])
resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
try:
    put_inside(Path(sys.argv[1]), {"a.csv": bytes(50_000)})
except OSError as error:
    print("told:", error.strerror)
"""


@pytest.fixture
def carrier(tmp_path):
    """Make a PDF in its form that carries a file."""
    pages, path = io.BytesIO(), tmp_path / "claim.pdf"
    with pikepdf.new() as document:
        document.add_blank_page()
        document.save(pages)
    told = Told("title", "maker", "writer", datetime(2026, 5, 4, 10, 20, 30, tzinfo=UTC))
    write_archived(pages, path, {"a.csv": b"1,2\r\n" * 3000}, told)
    return path


# Early, in the middle, and so late that the end stays in a buffer until the file is closed.
@pytest.mark.parametrize("short_of", [0, 700, 20_000, 50_000])
def test_a_full_disk_is_told_and_leaves_what_was_there(carrier, tmp_path, short_of):
    before = carrier.read_bytes()
    other = tmp_path / "other.pdf"
    other.write_bytes(before)
    put_inside(other, {"a.csv": bytes(50_000)})
    limit = other.stat().st_size - 1 - short_of
    other.unlink()
    ran = subprocess.run(
        [sys.executable, "-c", FULL, str(carrier), str(limit)],
        capture_output=True, text=True, timeout=240, check=False,
    )  # fmt: skip
    assert (ran.returncode, ran.stdout, ran.stderr) == (0, "told: File too large\n", "")
    assert carrier.read_bytes() == before
    assert [one.name for one in tmp_path.iterdir()] == [carrier.name]


def test_checking_the_form_writes_nothing_anywhere(carrier, tmp_path, monkeypatch):
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "no such folder"))
    assert out_of_form(carrier) == ("", "")
    whole = carrier.read_bytes()
    for other in (whole + b"\n", whole[:11] + b"x" + whole[12:]):
        carrier.write_bytes(other)
        assert "not, to the byte, as it was made" in out_of_form(carrier)[0]


def test_whatever_is_raised_while_saving_comes_out_and_leaves_nothing(carrier, tmp_path):
    def interrupt(_stream, _content):
        raise KeyboardInterrupt  # as by Ctrl-C

    with pytest.MonkeyPatch.context() as patch, pikepdf.open(carrier) as document:
        patch.setattr("meterlog.evidence.pdf_sink._write_all", interrupt)
        with pytest.raises(KeyboardInterrupt):
            save_in_form(document, tmp_path / "out.pdf")
    assert [one.name for one in tmp_path.iterdir()] == [carrier.name]
