"""The form of every JSON object that promptprep gives: the page's plan, take files, reports, answers."""

FORMAT = 1  # the value of "promptprep" in each; a change that a program could stumble over raises it
