"""``meterlog claim``: one pack of PDF and zip, that holds against those who look for a flaw."""

import hashlib
import json
import os
import shutil
import subprocess
import zipfile
import zlib
from dataclasses import replace
from datetime import UTC, datetime

import bagit
import pikepdf
import pytest
from PIL import Image

from meterlog.evidence import signing
from meterlog.evidence.claim_content import PageSize
from meterlog.evidence.pack_verify import verify_pack
from meterlog.model import Job, Origin
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.recording import Recording, about_bytes
from meterlog.work.claim import ClaimRequest, make_claim
from meterlog.work.claim_ahead import doubts_ahead
from meterlog.work.job_cards import load_card

VIN = "1M8GDM9AXKP042788"


@pytest.fixture(autouse=True)
def keys(monkeypatch, tmp_path):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")


@pytest.fixture
def card(run, tmp_path):
    path = tmp_path / "job.json"
    facts = {
        "work_order": "WO-7781",
        "customer": "Ms Imra Vantablank",
        "plate": "QX 118 ZZ",
        "vin": VIN,
        "vehicle": "Hartwell Nomad (invented)",
        "complaint": "Dead until I hit it",
    }
    run("job", path, *(word for k, v in facts.items() for word in ("--set", f"{k}={v}")))
    return path


def unpacked(pack, place):
    with zipfile.ZipFile(pack / "claim.zip") as archive:
        archive.extractall(place)
    return place / "claim"


def words_of(pdf):
    tool = shutil.which("pdftotext")
    if tool is None:
        pytest.skip("pdftotext is not installed")
    done = subprocess.run([tool, "-layout", pdf, "-"], capture_output=True, text=True, check=True)
    return done.stdout


def test_a_pack_is_a_signed_bag_and_a_pdf_that_carries_its_tables(run, small, card, tmp_path):
    out = tmp_path / "pack"
    said = run("claim", card, "--before", small, "--out", out)
    assert "a reviewer will ask" in said.err
    assert "Signed by the key" in said.out
    assert sorted(path.name for path in out.iterdir()) == ["claim.pdf", "claim.zip"]
    for name in ("claim.pdf", "claim.zip"):
        assert run("verify", out / name).out.count("intact") == 1
    folder = unpacked(out, tmp_path / "here")
    bagit.Bag(str(folder)).validate()
    readings = next((folder / "data" / "before").glob("readings-*.csv")).read_bytes()
    with pikepdf.open(out / "claim.pdf") as pdf:
        held = {name: pdf.attachments[name].get_file().read_bytes() for name in pdf.attachments}
    named = next(name for name in held if "readings-" in name and name.endswith(".csv"))
    assert held[named] == readings
    text = words_of(out / "claim.pdf")
    assert "Dead until I hit it" in text
    assert VIN in text


def test_both_sides_are_compared_and_a_circuit_check_comes_with_them(run, small, card, tmp_path):
    after = tmp_path / "after"
    rows = ["t,feed,return,amps", *(f"{k / 50:.2f},12.5,8.5,4.1" for k in range(600))]
    (tmp_path / "new.csv").write_text("\n".join(rows) + "\n")
    (tmp_path / "on.csv").write_text("elapsed_s,kind,value\n0,speed,1\n")
    run(
        *("import", tmp_path / "new.csv", "--time", "t", "--events", tmp_path / "on.csv"),
        *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
        *("--assign", "motor-current=amps", "--out", after),
    )
    check = tmp_path / "check"
    run(
        *("circuit", "low-side-linear-12v", "--state", "key=on,speed=4", "--sign", "fan=dead"),
        *("--reading", "motor-feed=12.4", "--reading", "motor-return=0.1", "--save", check),
    )
    out = tmp_path / "pack"
    run(
        *("claim", card, "--before", small, "--after", after, "--circuit", check),
        *("--out", out, "--page", "letter", "--json"),
    )
    folder = unpacked(out, tmp_path / "here")
    for name in ("comparison.txt", "circuit/circuit.txt", "before/steps.csv", "after/steps.csv"):
        assert (folder / "data" / name).is_file()
    text = words_of(out / "claim.pdf")
    assert "Low-side linear transistor controller" in text
    with pikepdf.open(out / "claim.pdf") as pdf:
        assert [round(float(side)) for side in pdf.pages[0].mediabox[2:]] == [612, 792]


def test_without_customer_nothing_tells_whose_vehicle_it_was(run, card, tmp_path):
    rows = ["t,feed,return,amps", *(f"{k / 50:.2f},12.5,8.5,4.1" for k in range(300))]
    (tmp_path / "a.csv").write_text("\n".join(rows) + "\n")
    marks = "elapsed_s,kind,value\n0,speed,1\n2,note,Vantablank waits outside\n"
    (tmp_path / "e.csv").write_text(marks)
    folder = tmp_path / "told"
    run(
        *("import", tmp_path / "a.csv", "--time", "t", "--events", tmp_path / "e.csv"),
        *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
        *("--assign", "motor-current=amps", "--out", folder, "--vehicle", f"Nomad, {VIN}"),
    )
    out = tmp_path / "pack"
    run("claim", card, "--before", folder, "--out", out, "--without-customer")
    bare = unpacked(out, tmp_path / "here")
    told = {
        str(path): path.read_bytes().lower()
        for path in bare.rglob("*")
        if path.is_file() and path.suffix != ".png"
    }
    told["pdf"] = words_of(out / "claim.pdf").lower().encode()
    for secret in (b"vantablank", VIN.lower().encode(), b"qx 118 zz"):
        assert not [name for name, content in told.items() if secret in content]
    assert any(b"dead until i hit it" in content for content in told.values())


def test_without_customer_a_vehicle_is_not_called_by_its_owner(run, small, card, tmp_path):
    run("job", card, "--set", "vehicle=Nomad of Ms Vantablank", "--set", "old_part.number=FM-20")
    out = tmp_path / "pack"
    run("claim", card, "--before", small, "--out", out, "--without-customer")
    kept = json.loads((unpacked(out, tmp_path / "here") / "data" / "job-card.json").read_text())
    assert kept["vehicle"] == "Nomad of Ms [left out]"
    assert kept["old_part"]["number"] == "FM-20"
    assert "vantablank" not in words_of(out / "claim.pdf").lower()


def test_without_customer_it_is_said_that_the_vin_was_in_doubt_but_not_the_vin(
    run, small, card, tmp_path
):
    words = "One doubt about entries that are left out here, such as the VIN, can't be told."
    for name, vin, told in (("good", VIN, False), ("bad", "1M8GDM9A1KP042788", True)):
        run("job", card, "--set", f"vin={vin}")
        out = tmp_path / name
        run("claim", card, "--before", small, "--out", out, "--without-customer")
        text = " ".join(words_of(out / "claim.pdf").split())
        assert (words in text) is told
        assert "042788" not in text


@pytest.mark.parametrize("bare", [False, True])
def test_that_a_photo_may_show_a_plate_is_said_where_it_matters(run, small, card, tmp_path, bare):
    Image.new("RGB", (30, 20)).save(tmp_path / "label.jpg")
    run("job", card, "--photo", tmp_path / "label.jpg")
    words = ["--without-customer"] if bare else []
    said = run("claim", card, "--before", small, "--out", tmp_path / "pack", *words)
    assert ("look whether one shows a plate" in said.err) is bare


def test_what_looks_wrong_is_said_before_the_pack_is_made(run, small, card, tmp_path):
    run("job", card, "--set", "vin=1M8GDM9A1KP042788", "--set", "failed_on=2026-11-28")
    run("job", card, "--set", "repaired_on=2026-11-20")
    told = json.loads(
        run("claim", card, "--before", small, "--out", tmp_path / "p", "--json", "--unsigned").out
    )
    vin, days, meter = told["doubts"]
    assert "check digit" in vin
    assert "before" in days
    assert "when its calibration is due is not stated" in meter


def test_an_overdue_meter_is_said_before_the_pack_is_made(run, small, card, tmp_path):
    recording = Recording.open(small)
    (meter,) = recording.about.instruments
    late = replace(meter, identity=replace(meter.identity, calibration_due="2020-01-31"))
    started = datetime(2026, 5, 4, 8, tzinfo=UTC)
    head = replace(recording.about, instruments=(late,), started_utc=started)
    folder = tmp_path / "late"
    (folder / "data").mkdir(parents=True)
    (folder / "data" / "about.json").write_bytes(about_bytes(head))
    sides = [("before", folder), ("after", folder)]
    same, said = doubts_ahead(JobCard(), sides, [tmp_path / "gone"])
    assert "in the same second" in same
    assert "was due 2020-01-31" in said
    assert said.endswith("overdue.")


def test_swapped_runs_of_another_job_and_part_are_said_before_the_pack_is_made(
    run, small, tmp_path
):
    def head(name, day, job):
        folder = tmp_path / name
        (folder / "data").mkdir(parents=True)
        about = Recording.open(small).about
        about = replace(about, job=job, started_utc=datetime(2026, 5, day, 8, tzinfo=UTC))
        (folder / "data" / "about.json").write_bytes(about_bytes(about))
        return folder

    card = JobCard(work_order="4711", old_part=PartIdentity(serial="A1"))
    other = Job(work_order="DEMO-0001", part="FM-20 serial B7")
    sides = [("before", head("b", 5, other)), ("after", head("a", 4, Job(work_order="WO-4711")))]
    said = [one for one in doubts_ahead(card, sides) if "calibration" not in one]
    assert [one.partition(";")[0] for one in said[:2]] == [
        "before: The job card has the work order '4711'",
        "before: The job card gives the serial number A1 for this part",
    ]
    assert "the wrong way round" in said[2]
    assert len(said) == 3


def test_photos_come_without_what_they_tell_besides_and_bad_ones_are_named(
    run, small, card, tmp_path
):
    picture = Image.new("RGB", (3000, 1500), (200, 30, 30))
    exif = Image.Exif()
    exif[0x9286] = "taken at home by Ms Vantablank"
    picture.save(tmp_path / "label.jpg", exif=exif)
    picture.save(tmp_path / "torn.jpg")
    for name in ("label.jpg", "torn.jpg"):
        run("job", card, "--photo", tmp_path / name)
    (tmp_path / "torn.jpg").write_bytes(b"\xff\xd8\xff no picture")
    out = tmp_path / "pack"
    said = run("claim", card, "--before", small, "--out", out)
    assert "torn.jpg: can't be put in" in said.err
    folder = unpacked(out, tmp_path / "here")
    (kept,) = (folder / "data" / "photos").iterdir()
    with Image.open(kept) as image:
        assert max(image.size) == 2000
        assert not image.getexif()
    assert b"Vantablank" not in kept.read_bytes()


def test_an_unsigned_pack_says_so_and_the_same_pack_is_the_same_file(run, small, card, tmp_path):
    digests = []
    for name in ("one", "two"):
        request = ClaimRequest(load_card(card), tmp_path, small, None, tmp_path / name)
        made = make_claim(request, lambda _: None, lambda: datetime(2026, 11, 29, tzinfo=UTC))
        assert made.fingerprint == ""
        digests.append(hashlib.sha256((tmp_path / name / "claim.zip").read_bytes()).hexdigest())
    assert digests[0] == digests[1]
    assert "Not signed" in run("verify", tmp_path / "one" / "claim.zip").out


def test_stopped_on_its_way_it_leaves_nothing_behind(small, card, tmp_path):
    place = tmp_path / "shelf"
    for most in (0.1, 0.5, 0.7):

        def stop(part, most=most):
            if part > most:
                raise KeyboardInterrupt

        request = ClaimRequest(
            load_card(card), tmp_path, small, None, place / "pack", page=PageSize.LETTER
        )
        with pytest.raises(KeyboardInterrupt):
            make_claim(request, stop)
        assert not list(place.iterdir())


def test_what_is_asked_wrongly_is_refused_before_anything_is_written(run, small, card, tmp_path):
    assert "no recording was given" in run("claim", card, "--out", tmp_path / "p", code=2).err
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "mine.txt").write_text("mine")
    said = run("claim", card, "--before", small, "--out", tmp_path / "full", code=2)
    assert "not empty" in said.err
    said = run("claim", tmp_path / "none.json", "--before", small, "--out", tmp_path / "p", code=2)
    assert "none.json" in said.err
    assert not (tmp_path / "p").exists()
    told = json.loads(
        run("claim", card, "--before", small, "--out", tmp_path / "q", "--json", "--unsigned").out
    )
    assert told["fingerprint"] == ""
    assert told["missing"]
    assert verify_pack(tmp_path / "q" / "claim.zip").intact
    assert Recording.open(small).events  # the recording itself was only read


def test_without_customer_no_name_of_a_folder_no_mark_and_no_photo_tells_it(
    run, small, card, tmp_path
):
    rows = ["t,feed,return,amps", *(f"{k / 50:.2f},12.5,8.5,4.1" for k in range(600))]
    (tmp_path / "a.csv").write_text("\n".join(rows) + "\n")
    (tmp_path / "e.csv").write_text("elapsed_s,kind,value\n0,speed,1\n5,wiggle,Vantablank's plug\n")
    sides = [tmp_path / "vantablank old", tmp_path / "vantablank new"]
    shutil.copytree(small, sides[0])
    run(
        *("import", tmp_path / "a.csv", "--time", "t", "--events", tmp_path / "e.csv"),
        *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
        *("--assign", "motor-current=amps", "--out", sides[1], "--part", "motor of QX118ZZ"),
        *("--condition", "place=yard of Ms Vantablank", "--vehicle", "Nomad 2021, ZQ-99812"),
        *("--conditions", "beside ZQ 99812"),
    )
    picture = Image.new("RGB", (60, 40), (200, 30, 30))
    for name in ("vantablank.jpg", "vantablank.png"):
        picture.save(tmp_path / name, comment=b"Vantablank's fan")
        run("job", card, "--photo", tmp_path / name)
    (tmp_path / "vantablank.png").write_bytes(b"torn")
    out = tmp_path / "pack"
    run(
        "claim", card, "--before", sides[0], "--after", sides[1], "--out", out, "--without-customer"
    )
    bare = unpacked(out, tmp_path / "here")
    told = {str(path): path.read_bytes().lower() for path in bare.rglob("*") if path.is_file()}
    told["pdf"] = words_of(out / "claim.pdf").lower().encode()
    for secret in (b"vantablank", b"qx118zz", b"99812"):
        assert not [name for name, content in told.items() if secret in content]
    assert b"motor of [left out]" in told["pdf"]
    assert b"photo 2 of the job card is not in the pack" in told["pdf"]


def test_photos_that_no_camera_took_are_named_and_harm_nothing(run, small, card, tmp_path):
    chunk = b"IHDR" + (60_000).to_bytes(4, "big") * 2 + b"\x08\x02\0\0\0"
    head = b"\x89PNG\r\n\x1a\n" + (13).to_bytes(4, "big") + chunk
    bomb = head + zlib.crc32(chunk).to_bytes(4, "big") + b"\0\0\0\0IDAT" + b"\0" * 4
    (tmp_path / "bomb.png").write_bytes(bomb)
    Image.new("L", (12_000, 10_001)).save(tmp_path / "many.png")
    (tmp_path / "print.eps").write_bytes(b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n")
    (tmp_path / "folder.jpg").mkdir()
    os.mkfifo(tmp_path / "pipe.jpg")
    (tmp_path / "gone.jpg").symlink_to("nowhere")
    Image.new("RGBA", (40, 30)).save(tmp_path / "good.webp")
    names = ["bomb.png", "many.png", "print.eps", "folder.jpg", "pipe.jpg", "gone.jpg"]
    values = json.loads(card.read_text())
    card.write_text(json.dumps({**values, "photos": [*names, "x" * 3000, "good.webp"]}))
    out = tmp_path / "pack"
    said = run("claim", card, "--before", small, "--out", out, "--json")
    answer = json.loads(said.out)
    for name, why in zip(
        names,
        ("million pixels", "million pixels", "no picture", "no file", "no file", "No such file"),
        strict=True,
    ):
        assert any(f"photo {name}: can't be put in" in t and why in t for t in answer["remarks"])
    assert max(len(text) for text in answer["remarks"]) < 400
    assert sum("of the job card is not in the pack" in text for text in answer["missing"]) == 7
    photos = unpacked(out, tmp_path / "here") / "data" / "photos"
    assert [path.name for path in photos.iterdir()] == ["photo-8.jpg"]


def test_what_speaks_against_a_recording_stands_on_the_first_page(run, small, card, tmp_path):
    after = tmp_path / "after"
    lines = (tmp_path / "small.csv").read_text()
    (tmp_path / "new.csv").write_text(lines)
    run(
        *("import", tmp_path / "new.csv", "--time", "t", "--assign", "motor-feed=feed"),
        *("--assign", "motor-return=return", "--assign", "motor-current=amps", "--out", after),
        *("--part", "fan FM-21, serial 77"),
    )
    with (small / "bag-info.txt").open("a") as stream:
        stream.write("Contact-Name: somebody else\n")
    (after / "bagit.txt").unlink()
    run("job", card, "--set", "new_part.serial=S-78")
    run("claim", card, "--before", small, "--after", after, "--out", tmp_path / "pack")
    words = " ".join(words_of(tmp_path / "pack" / "claim.pdf").split("page 1 of")[0].split())
    assert "NOT AS SEALED: bag-info.txt: differs from what was sealed" in words
    assert "It was never sealed: nothing shows that it was not changed since." in words
    assert "gives the serial number S-78 for this part; the recording was made with" in words


def test_a_changed_page_of_the_pdf_is_told(run, small, card, tmp_path):
    out = tmp_path / "pack"
    run("claim", card, "--before", small, "--out", out)
    with pikepdf.open(out / "claim.pdf", allow_overwriting_input=True) as pdf:
        pdf.pages[0].contents_add(pdf.make_stream(b"1 g 0 0 600 600 re f"))
        pdf.save(out / "claim.pdf")
    said = run("verify", out / "claim.pdf", code=1)
    assert "page 1: is not as it was made" in said.out


def test_a_circuit_check_must_be_one_and_of_this_vehicle(run, small, card, tmp_path):
    out = tmp_path / "pack"
    check = tmp_path / "check"
    said = run("claim", card, "--before", small, "--circuit", small, "--out", out, code=2)
    assert "holds no circuit check" in said.err
    run(
        *("circuit", "low-side-linear-12v", "--state", "key=on,speed=4", "--sign", "fan=dead"),
        *("--save", check),
    )
    about = Recording.open(check).about
    simulated = about_bytes(replace(about, origin=Origin.SIMULATED))
    (check / "data" / "about.json").write_bytes(simulated)
    said = run("claim", card, "--before", small, "--circuit", check, "--out", out, code=2)
    assert "is simulated, and the recordings are not" in said.err
    assert not out.exists()
