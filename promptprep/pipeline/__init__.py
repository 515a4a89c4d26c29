"""The order of the work: the only place that names it. Scripts, versions, sessions, and the files that come out."""
