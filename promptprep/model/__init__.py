"""Frozen records that the steps hand to each other. No step is imported here."""
