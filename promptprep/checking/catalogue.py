"""The explicit list of rules, in the order in which `explain` shows them."""

from __future__ import annotations

from promptprep.checking.rule import Rule
from promptprep.checking.rules import (
    backward_pointer,
    bare_symbol,
    breathless_sentence,
    confusable_figures,
    copy_like_note,
    crowded_figures,
    dangling_pronoun,
    doubled_negation,
    doubled_word,
    echoing_sounds,
    empty_segment,
    excused,
    foreign_word,
    hard_passage,
    idle_pronunciation,
    invisible_character,
    late_subject,
    long_insert,
    long_list,
    look_alike_letter,
    named_passive,
    nested_clause,
    noun_stack,
    overexact_figure,
    overfull_slot,
    overlong_sentence,
    overwide_line,
    parser_faults,
    parted_verb,
    pasted_markup,
    poor_sightline,
    preposition_chain,
    shouted_word,
    speaker_label,
    spoken_note,
    spoken_url,
    stranded_word,
    tangled_sounds,
    two_readings,
    two_way_figure,
    unfinished_copy,
    unheard_quotes,
    unknown_name,
    unsaid_name,
    unshown_character,
)

BREATH = (
    breathless_sentence.RULE,
    overlong_sentence.RULE,
    late_subject.RULE,
    parted_verb.RULE,
    nested_clause.RULE,
    long_insert.RULE,
    long_list.RULE,
    noun_stack.RULE,
    preposition_chain.RULE,
)
MOUTH = (
    tangled_sounds.RULE,
    echoing_sounds.RULE,
    doubled_word.RULE,
)
EYE = (
    two_readings.RULE,
    unsaid_name.RULE,
    foreign_word.RULE,
    shouted_word.RULE,
    two_way_figure.RULE,
    spoken_url.RULE,
    bare_symbol.RULE,
    look_alike_letter.RULE,
    invisible_character.RULE,
)
EAR = (
    overexact_figure.RULE,
    crowded_figures.RULE,
    confusable_figures.RULE,
    dangling_pronoun.RULE,
    unheard_quotes.RULE,
    backward_pointer.RULE,
    doubled_negation.RULE,
    named_passive.RULE,
    hard_passage.RULE,
)
FORMAT = (
    *parser_faults.RULES,
    overfull_slot.RULE,
    empty_segment.RULE,
    unknown_name.RULE,
    idle_pronunciation.RULE,
    copy_like_note.RULE,
    spoken_note.RULE,
    speaker_label.RULE,
    pasted_markup.RULE,
    unfinished_copy.RULE,
    *excused.RULES,
)
SCREEN = (
    unshown_character.RULE,
    overwide_line.RULE,
    poor_sightline.RULE,
    stranded_word.RULE,
)

RULES: tuple[Rule, ...] = (*BREATH, *MOUTH, *EYE, *EAR, *FORMAT, *SCREEN)
BY_NAME = {rule.name: rule for rule in RULES}
