"""The shared reader of languages that write figures as Western Europe does; each language brings grammar and data."""
