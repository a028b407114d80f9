"""Evidence: tables and pictures for those who were not there, and the check of a seal.

Pictures need Qt and are imported from ``evidence/trace_picture.py`` by whoever paints.
"""

from meterlog.evidence.csv_export import export_recording
from meterlog.evidence.findings_table import findings_table
from meterlog.evidence.judgement_text import judgement_text
from meterlog.evidence.review_json import review_to_dict
from meterlog.evidence.verify import Verification, seal_digest, verify_folder

__all__ = [
    "Verification",
    "export_recording",
    "findings_table",
    "judgement_text",
    "review_to_dict",
    "seal_digest",
    "verify_folder",
]
