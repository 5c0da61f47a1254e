"""The demo: an invented scenario, laid out with dates counted from the day on which it is laid out."""
