"""A PDF of some kilobytes that unpacks to gigabytes as soon as it is looked at."""

import subprocess
import sys
import zlib

import pikepdf
import pytest

from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.pdf_limits import MOST_BYTES, bound
from meterlog.model.errors import EvidenceError

NEEDED = pytest.mark.skipif(
    not hasattr(pikepdf.settings, "set_qpdf_limits"), reason="this version can't be told limits"
)


def pdf_with_objects_in(path, mib):
    """A PDF whose names lie in a list of objects that is followed by so many MiB of blanks."""
    packer = zlib.compressobj(9)
    body = packer.compress(b"4 0 <</A 1>>")
    body += b"".join(packer.compress(b" " * (1 << 20)) for _ in range(mib)) + packer.flush()
    objects = [
        b"<</Type/Catalog/Pages 2 0 R/Names 4 0 R>>",
        b"<</Type/Pages/Kids[]/Count 0>>",
        b"<</Type/ObjStm/N 1/First 4/Filter/FlateDecode/Length %d>>stream\n%b\nendstream"
        % (len(body), body),
    ]
    out, places = b"%PDF-1.7\n", []
    for number, content in enumerate(objects, 1):
        places.append(len(out))
        out += b"%d 0 obj\n%b\nendobj\n" % (number, content)
    rows = [(0, 0, 255), *((1, place, 0) for place in places), (2, 3, 0), (1, len(out), 0)]
    table = b"".join(bytes([kind]) + at.to_bytes(4, "big") + bytes([end]) for kind, at, end in rows)
    head = b"<</Type/XRef/Size 6/W[1 4 1]/Root 1 0 R/Length %d>>" % len(table)
    start = len(out)
    out += b"5 0 obj\n%b stream\n%b\nendstream\nendobj\n" % (head, table)
    path.write_bytes(out + b"startxref\n%d\n%%%%EOF\n" % start)


@NEEDED
def test_a_list_of_objects_within_the_limit_is_read(tmp_path):
    pdf_with_objects_in(tmp_path / "a.pdf", 1)
    with pytest.raises(EvidenceError, match="carries no files"):
        verify_pack(tmp_path / "a.pdf")


@NEEDED
def test_one_that_would_fill_the_memory_is_refused(tmp_path):
    pdf_with_objects_in(tmp_path / "a.pdf", 700)
    assert (tmp_path / "a.pdf").stat().st_size < 1 << 20
    code = (
        "import re, sys\n"
        "from pathlib import Path\n"
        "from meterlog.evidence.pack_verify import verify_pack\n"
        "from meterlog.model.errors import EvidenceError\n"
        "try:\n"
        "    verify_pack(Path(sys.argv[1]))\n"
        "except EvidenceError:\n"
        # Not by resource: that remembers what the parent took before this program began.
        "    print(re.search(r'VmHWM:\\s+([0-9]+)', Path('/proc/self/status').read_text())[1])\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, tmp_path / "a.pdf"], capture_output=True, text=True, check=True
    )
    assert int(done.stdout) * 1024 < (300 << 20) + MOST_BYTES


@NEEDED
def test_the_limits_are_those_of_the_process():
    bound()
    bound()
    assert pikepdf.settings.get_qpdf_limits()["flate_max_memory"] == MOST_BYTES


def test_odd_metadata_of_a_strangers_pdf_puts_no_traceback_on_the_terminal(tmp_path):
    with pikepdf.new() as document:
        document.add_blank_page()
        document.Root.Metadata = document.make_stream(b"<a>no metadata</a>")
        document.save(tmp_path / "odd.pdf", fix_metadata_version=False)
    code = (
        "import sys; from pathlib import Path\n"
        "from meterlog.evidence.pdf_form import pikepdf, save_in_form\n"
        "save_in_form(pikepdf.open(sys.argv[1]), Path(sys.argv[2]))\n"
    )
    words = [sys.executable, "-c", code, str(tmp_path / "odd.pdf"), str(tmp_path / "saved.pdf")]
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
    assert (tmp_path / "saved.pdf").is_file()
