"""The papers of the round as pages: check sheet, removal slip, isolation label."""
