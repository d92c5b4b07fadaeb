"""The interpretive section of a report, from one outline into each medium."""
