"""How each reader is called: as a command or the window would, and all that it gives is used."""

from __future__ import annotations

import contextlib
import json
import tempfile
from pathlib import Path


def opened(path: Path) -> None:
    from meterlog.recording import Recording
    from meterlog.work.first_run import first_run

    first_run(path)
    recording = Recording.open(path)
    recording.check()
    assert recording.end_ns >= 0
    for item in recording.items():
        assert item is not None


def reviewed(path: Path) -> None:
    from meterlog.evidence.judgement_text import judgement_text
    from meterlog.evidence.review_json import review_to_dict
    from meterlog.work.review import review_folder

    _, review = review_folder(path)
    json.dumps(review_to_dict(review), allow_nan=False).encode()
    judgement_text(review).encode("utf-8", "backslashreplace")


def exported(path: Path) -> None:
    from meterlog.evidence.csv_export import export_recording
    from meterlog.work.review import review_folder

    with tempfile.TemporaryDirectory(prefix="meterlog-fuzz-") as out:
        export_recording(*review_folder(path), Path(out) / "out", lambda _: None)


def listed(path: Path) -> None:
    from meterlog.work.library.facts import recording_facts

    recording_facts(path)


def verified(path: Path) -> None:
    from meterlog.evidence.verify import verify_folder

    verify_folder(path)


def amended(path: Path) -> None:
    from meterlog.work.amendments import amendments_of
    from meterlog.work.review import review_folder

    amendments_of(path / "run")
    review_folder(path / "run")


def meter(path: Path) -> None:
    from meterlog.profile import load_meter, meter_faults, read_text

    meter_faults(read_text(path), str(path))
    load_meter(str(path))


def limits(path: Path) -> None:
    from meterlog.profile import load_limits

    load_limits(str(path))


def circuit(path: Path) -> None:
    from meterlog.circuit.in_order import check_in_order
    from meterlog.profile import circuit_faults, is_circuit, load_circuit, read_text

    text = read_text(path)
    is_circuit(text)
    circuit_faults(text, str(path))
    check_in_order(load_circuit(str(path)), str(path))


def circuit_check(path: Path) -> None:
    from meterlog.work.circuit_checks import judged_checks
    from meterlog.work.review import review_folder

    recording, _ = review_folder(path)
    judged_checks(recording)


def trace_imported(path: Path) -> None:
    from meterlog.recording import ImportRequest, import_trace

    roles = (("motor-feed", "feed"), ("motor-return", "return"), ("motor-current", "amps"))
    with tempfile.TemporaryDirectory(prefix="meterlog-fuzz-") as out:
        folder, marks = Path(out) / "out", path / "marks.csv"
        made = import_trace(ImportRequest(path / "trace.csv", "t", roles, folder, events=marks))
        opened(made)


def export_imported(path: Path) -> None:
    from meterlog.recording import ExportRequest, import_export

    with tempfile.TemporaryDirectory(prefix="meterlog-fuzz-") as out:
        folder = Path(out) / "out"
        import_export(ExportRequest(path, folder))
        opened(folder)


def pack(path: Path) -> None:
    from meterlog.evidence.pack_verify import is_pack, verify_pack

    is_pack(path)
    verify_pack(path)


def card(path: Path) -> None:
    from meterlog.work.job_cards import card_bytes, load_card

    card_bytes(load_card(path))


def job_list(path: Path) -> None:
    from meterlog.work.job_folder import load_work
    from meterlog.work.library.facts import job_facts

    load_work(path)
    job_facts(path)


def templates(path: Path) -> None:
    from meterlog.work.card_templates import CardTemplates

    templates = CardTemplates(path)
    for name in templates.names():
        templates.load(name)


def settings(path: Path) -> None:
    from meterlog.model import Identity, Instrument
    from meterlog.work.kept_meters import KeptMeters
    from meterlog.work.library.watched import WatchedFolders
    from meterlog.work.skews import KeptSkews
    from meterlog.work.zeros import KeptZeros

    kept = KeptZeros(path)
    for key in kept._entries.read():
        kept.find(key)
    skews = KeptSkews(path)
    from meterlog.work.skews import _skew

    for entry in skews._entries.read().values():
        _skew(entry)
    KeptMeters(path).known()
    one = Instrument("bench", "bench", "", (), identity=Identity(serial="0815"))
    skews.applied((one,))
    WatchedFolders(path).load()


def index(path: Path) -> None:
    from meterlog.work.library.library import Library
    from meterlog.work.library.wanted import Wanted

    with Library(path / "index.sqlite3") as library:
        library.refresh((path / "shelf",), lambda *_: None)
        library.search((path / "shelf",), Wanted())


def photo(path: Path) -> None:
    from meterlog.model.job_card import JobCard
    from meterlog.work.claim_photos import copy_photos

    with tempfile.TemporaryDirectory(prefix="meterlog-fuzz-") as out:
        copy_photos(JobCard(photos=(path.name,)), path.parent, Path(out), lambda _: None)


def key(path: Path) -> None:
    from meterlog.evidence.signing import Signer, own_fingerprint

    own_fingerprint(path)
    with contextlib.suppress(OSError):
        (path / "signing-key.pem").chmod(0o600)
    Signer.load_or_make(folder=path)


def window(path: Path) -> None:
    from meterlog.window.edits.last_editor import LastEditor
    from meterlog.window.key_map import KeyMap
    from meterlog.window.last_conditions import LastConditions
    from meterlog.window.last_setup import LastSetup
    from meterlog.window.where_i_was import WhereIWas

    LastSetup(path).load()
    LastConditions(path).load()
    KeyMap(path)
    WhereIWas(path).load()
    LastEditor(path).load()
