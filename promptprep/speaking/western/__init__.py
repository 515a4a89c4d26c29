"""The shared reader of languages that write figures as Western Europe does; each language brings grammar and data.

`reader.Western` asks the parts in their order: what the language puts first, clock times, dates, the language's own
parts (decades, German ordinals), ordinals, serial and telephone numbers, fractions, ratios, and at last quantities,
which read any number. `grammar.Grammar` holds what differs in speech; `spoken.toml` holds the words. Its tables:

- `numbers`: `group` (characters between thousands), `mark` (decimal), `marks` (how they are said), `minus`, `range`
  and `to`; `magnitudes.beyond`: "exponent|one|more" from ten to the fifteenth on; `.written` and `.money`: short
  forms of million and the like, "one|more|gender" (no gender where no "de" follows, as after "mil"); `.counting`:
  letters right behind a figure, where something is counted ("1.5M views"); `multiples.times`: "x" behind a figure
- `currencies`: "one|more|gender; cent|cents|gender"; `units.names`: "one|more|gender"; `units.square` and `.cubic`:
  "form of one|form of more" with {} for the unit
- `fractions.names` by denominator; `.alone`, `.after` (behind a whole number), `.idioms`
- `symbols.words`, `.before_number`, `.between_figures`; `electronic`: names of signs in addresses
- `dates`, `clock`, `ordinals.suffixes`, `roman.suffixes`: `link`, `day_suffix` and `mark` are regular expressions
- `dates.before`, `.not_after`, `.not_before`: words beside which 3/4 is a day, or a fraction after all
- `years.before` and `.count_before`, `scores.before`, `serials.before`, `roman.*`: small-letter words in front that
  decide how figures are meant; `sentences.openers`: words that often begin a sentence
- `acronyms.words` are said as words, `.letters` letter by letter, `.plain_words` are words that may be shouted
- `abbreviations.always`, `.before_number` ("one|several"), `.before_name` ("before|after"), `.plain` (without a dot),
  `.closing` (that end a list)
- `abbreviations.endings`: last parts cut short ("str." in "Hauptstr."); `symbols.joined`: words with a bar ("and/or")
- `weekdays.names` and `.short` (place in the week): days cut short before a date or time; `clock.before`: words after
  which figures with "hours" behind them are a time of day; `magnitudes.crowds`: nouns before which "m" is million
- `symbols.operators` between figures only, `.doubled` of two signs; `compass`: points behind degrees; `scores.after`:
  words that make two figures a score; `serials.paired`: words behind which three figures are said as one and two
- `ratings.of` and `.before`: points out of five or ten; `units.periods`: words behind a bar that something is counted
  by; `fractions.halved`: nouns behind a half without an article
- `clock.words`: words of time with a dash beside a time ("8pm-late"); `weekdays.before`: words before a day cut short
  with a dot; `magnitudes.paid`: verbs behind which "2m" is money; `scores.in_row`: how the sets of a match are said;
  `abbreviations.after_place`: what is written short behind a town ("Boston, Mass.")
- `roman.events`: small-letter nouns behind an article and one Roman letter; `acronyms.pairs`: doubled plurals
- `weekdays.lower` and `.sure`: days cut short in small letters; `units.per_words`: what a bar before a word says;
  `symbols.bar_in_words`: whether a bar between words is said
- `steps`: words before one of several ("1/3") and before a season of two years; `ages`: what signs before ages and
  classes by weight say; `ratios.scale`: a map's scale; `saints`: names behind "S."; `multiples.counted`: nouns behind
  the second of two multiplied figures; `clock.zones` and `compass.winds`: letters behind an hour or a word of wind
- `ordinals.warm` and `.degrees_of`: words beside which a raised o is a degree; `units.arcs_before`: words after which
  a double prime is an arc; `numbers.minus_after` and `dates.to`: how dashes between blanks are said there
- `abbreviations.streets`: small-letter words before a street's name; `numbers.naming`: words behind which a number
  ranks; `serials.calls`, `.hundreds`: words before short telephone numbers and codes; `laws`: their numbers' shapes
- `abbreviations.plain_before_number` and `.plain_after_name`: without a dot, where a figure follows ("No 10") or a
  name stands in front ("Main St"); `dates.improper` and `.improper_not_after`: whether 25/12 is a day, and where not
- `books.names`, `.short`, `.numbered`, `.marks`: chapter and verse; `multiples.repeats`: "x" before what is repeated
- English alone: `places` (points of the compass, streets, roads, states), `telephone` (numbers that are dialled),
  `temperatures` (bare degrees), `scores.record_before` and `.record_after`, `clock.services` and `.lapse_before`
- `nouns.feminine`, `.masculine`, `.neuter`: where the ending does not tell
"""
