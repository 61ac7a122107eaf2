"""Make errors on purpose: one file for each family of errors."""
