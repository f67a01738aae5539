"""The handout as a workbook: sessions, a log to fill in, totals, parts."""
