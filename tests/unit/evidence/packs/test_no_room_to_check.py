"""No room to make a zip anew for comparing says nothing of the pack: it is an error of its own."""

import errno

import pytest

from meterlog.evidence import pack_zip
from meterlog.evidence.pack_bag import write_bag
from meterlog.evidence.pack_zip import write_zip
from meterlog.evidence.zip_form import zip_out_of_form


def test_a_full_disk_is_not_taken_for_a_zip_that_was_changed(tmp_path, monkeypatch):
    (tmp_path / "claim" / "data").mkdir(parents=True)
    (tmp_path / "claim" / "data" / "a.csv").write_bytes(b"1,2\r\n")
    write_bag(tmp_path / "claim", {"Bagging-Date": "2026-05-04"}, None)
    write_zip(tmp_path / "claim", tmp_path / "claim.zip")
    assert zip_out_of_form(tmp_path / "claim.zip", tmp_path / "claim") == ("", "")

    def full(_descriptor):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(pack_zip.os, "fsync", full)
    with pytest.raises(OSError, match="No space left on device"):
        zip_out_of_form(tmp_path / "claim.zip", tmp_path / "claim")
