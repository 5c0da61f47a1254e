"""The report: an assessment as one HTML page, for reading, printing and keeping."""
