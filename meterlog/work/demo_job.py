"""The demo's job: an invented card, so that the window's pages have something to show."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.work.job_cards import change_card
from meterlog.work.job_folder import CARD

if TYPE_CHECKING:
    from meterlog.work.bench_process import ScenarioCard

JOB = "job"
"""Folder of the job beside the demo's recordings."""


def demo_card(vehicle: str) -> JobCard:
    """Give a card of which everything is invented, and says so.

    Parameters
    ----------
    vehicle : str
        As the scenario names it.
    """
    return JobCard(
        work_order="DEMO-0001",
        claim_number="none (invented)",
        claimant="Workshop of the demo (invented)",
        customer="Nobody (invented)",
        vehicle=vehicle,
        plate="DE-MO 1",
        odometer="48 211 km (invented)",
        complaint="Fan stops by itself and runs again when hit. (invented)",
        old_part=PartIdentity("fan motor", "OX-1180 (invented)", "004417", "3218"),
        new_part=PartIdentity("fan motor", "OX-1180 (invented)", "019302", "0626"),
        technician="nobody (virtual bench)",
        ambient="20 °C",
        filter="new",
        flap="face, fresh air",
        notes="Virtual bench: no real vehicle, part or person.",
    )


def demo_job_folder(out: Path, card: ScenarioCard) -> Path:
    """Make the folder of the demo's job, or leave the one that is there.

    Raises
    ------
    DiskFailed
        If it can't be written.
    """
    folder = out / JOB
    if not (folder / CARD).exists():
        change_card(folder / CARD, lambda _: demo_card(card.vehicle))
    return folder
