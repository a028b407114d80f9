"""ClaimPdf: a claim as one PDF for a sceptical reviewer. Needs Qt."""

from meterlog.evidence.claim_pdf.writing import write_claim_pdf

__all__ = ["write_claim_pdf"]
