"""One module a language, each with `verbaliser(data, speller)`; see `speaking/verbaliser.py`."""
