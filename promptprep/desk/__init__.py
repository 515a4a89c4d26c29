"""The desk: one folder of scripts on a local page, for people who do not like command lines."""
