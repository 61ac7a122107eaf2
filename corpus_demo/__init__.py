"""The demo bank as data, and the invented class that uses it."""
