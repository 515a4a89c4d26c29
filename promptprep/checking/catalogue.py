"""The explicit list of rules, in the order in which `explain` shows them."""

from __future__ import annotations

from promptprep.checking.rule import Rule
from promptprep.checking.rules import (
    bare_symbol,
    breathless_sentence,
    confusable_figures,
    crowded_figures,
    doubled_negation,
    doubled_word,
    invisible_character,
    long_insert,
    long_list,
    look_alike_letter,
    overexact_figure,
    parser_faults,
)

RULES: tuple[Rule, ...] = (
    breathless_sentence.RULE,
    long_insert.RULE,
    long_list.RULE,
    doubled_word.RULE,
    look_alike_letter.RULE,
    invisible_character.RULE,
    bare_symbol.RULE,
    overexact_figure.RULE,
    crowded_figures.RULE,
    confusable_figures.RULE,
    doubled_negation.RULE,
    *parser_faults.RULES,
)

BY_NAME = {rule.name: rule for rule in RULES}
