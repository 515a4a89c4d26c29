"""Context decides: the same figures are said otherwise elsewhere. Worked by hand in each language."""

from __future__ import annotations

import pytest

from promptprep.engines.spelling import IcuSpeller
from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.speak import readings, speak
from promptprep.store.languages import language_data

SPELLER = IcuSpeller()
CASES = {
    "en": [
        ("in 2:08:41", "in two hours, eight minutes and forty-one seconds"),
        ("at 2:08:41", "at two oh eight and forty-one seconds"),
        ("noon-1pm, 8pm-late, 1–5:30 pm", "noon to one P M, eight P M to late, one to five thirty P M"),
        ("May 5 to 8; Jan. 9, 16 and 23", "May fifth to eighth; January ninth, sixteenth and twenty-third"),
        ("On May 5, 16 people died.", "On May fifth, sixteen people died."),
        ("a 12-3-1 record, code 12-3-1", "a twelve, three and one record, code one two, three, one"),
        ("Gen. 1:1, Gen. Lee", "Genesis one one, General Lee"),
        ("1 Cor. 13:4-8", "first Corinthians thirteen, four to eight"),
        ("500 N. Main St., 500 N of force", "five hundred North Main Street, five hundred newtons of force"),
        ("Austin, TX, and SW winds, SW", "Austin, Texas, and southwest winds, S W"),
        ("Call 911. It has 911 pages.", "Call nine one one. It has nine hundred eleven pages."),
        ("spent 2m on 2m of rope", "spent two million on two meters of rope"),
        ("2-1/2 in. nails, in 5 in a row", "two and a half inch nails, in five in a row"),
        ("3-5 in. of snow", "three to five inches of snow"),
        ("two F-35s in 35s, the 747s", "two F-thirty-fives in thirty-five seconds, the seven forty-sevens"),
        ("6-4, 3-6, 7-5; 10-15, 20-25", "six four, three six, seven five; ten to fifteen, twenty to twenty-five"),
        ("It began in 1999.", "It began in nineteen ninety-nine."),
        ("1,999 people came.", "one thousand nine hundred ninety-nine people came."),
        ("1999 people came.", "one thousand nine hundred ninety-nine people came."),
        ("a 6.5-m mirror and 6.5 m of cable", "a six point five meter mirror and six point five meters of cable"),
        ("the $5 note costs $5", "the five dollar note costs five dollars"),
        ("He won in the U.S. They lost in the U.S. Senate.", "He won in the U S. They lost in the U S Senate."),
        ("I saw Part I.", "I saw Part one."),
        ("WE ARE OFF NOW, said the BBC", "WE ARE OFF NOW, said the B B C"),
        ("a 747-400, a 3-1 win", "a seven forty-seven four hundred, a three to one win"),
        ("+1 555 010 9999 or +5", "plus one, five five five, zero one zero, nine nine nine nine or plus five"),
        ("€12,50 and 3.500,00", "twelve euros and fifty cents and three thousand five hundred point zero zero"),
        ("10⁻³, 10⁶", "ten to the power of minus three, ten to the power of six"),
        ("31 May–2 June", "the thirty-first of May to the second of June"),
        ("9am-5pm on 5-10-2026", "nine A M to five P M on May tenth, twenty twenty-six"),
        ("USD 5 and the USD", "five U S dollars and the U S D"),
        ("1,2,3 go, then 1,2.5, 1,200", "one, two, three go, then one, two point five, one thousand two hundred"),
        ("1.5M views, 20K fans, 5bn miles", "one point five million views, twenty thousand fans, five billion miles"),
        ("5M active users in row 12B on a 4K camera", "five million active users in row twelve B on a four K camera"),
        ("2-3x faster, a 10x zoom, 3X bigger", "two to three times faster, a ten times zoom, three times bigger"),
        ("2x + 3 = 7, 0x1F, 4x4", "two x plus three equals seven, zero x one F, four by four"),
        ("2×10^8, 3.5x10⁸", "two times ten to the power of eight, three point five times ten to the power of eight"),
        ("3×4, 5x5x5, 10x15 cm", "three by four, five by five by five, ten by fifteen centimeters"),
        ("a 1920x1080 picture", "a nineteen twenty by ten eighty picture"),
        ("It fell by 3/4, on 3/4 of it", "It fell by three quarters, on three quarters of it"),
        ("by 3/4 inch, by 3/4 km", "by three quarters inch, by three quarters of a kilometer"),
        ("M.D.", "M D"),
        ("She is an M.D.", "She is an M D."),
        ("Credits\n(U.S.)\nWe left at 9 a.m.", "Credits\n(U S)\nWe left at nine A M."),
        ("Mon, 3 Aug, Mo, Fri–Sun, the Sun", "Monday, the third of August, Mo, Friday to Sunday, the Sun"),
        ("Mon., Wed. and Fri. at 9 a.m.", "Monday, Wednesday and Friday at nine A M."),
        ("It took 3:45.2, at 3:45", "It took three minutes forty-five point two seconds, at three forty-five"),
        ("2026-05-12T09:30Z", "May twelfth, twenty twenty-six, nine thirty U T C"),
        ("f/2.8, T-10 seconds, a T-10", "f two point eight, T minus ten seconds, a T-ten"),
        ("5m people, 5m of cable", "five million people, five meters of cable"),
        ("1,2 or 3 and 1,2 m", "one, two or three and one point two meters"),
        ("500 USD, USD 500, QF 500", "five hundred U S dollars, five hundred U S dollars, Q F five zero zero"),
        ("CO₂, mc², 10³⁰ kg", "C O two, m c squared, ten to the power of thirty kilograms"),
        ("3.0e8 m/s", "three point zero times ten to the power of eight meters per second"),
        ("41°24'12\"N, 6'2\"", "forty-one degrees twenty-four minutes twelve seconds north, six feet two inches"),
        ("$12.50–$15, €5/£4", "twelve dollars and fifty cents to fifteen dollars, five euros, four pounds"),
        ("under-16s, two 5s, 5s long, 100s of us", "under-sixteens, two fives, five seconds long, hundreds of us"),
        ("67P/Halley, C/2023 A3, km/h", "sixty-seven P Halley, C twenty twenty-three A three, kilometers per hour"),
        ("a 9/10, 9/10 of it, 4.5/5", "a nine out of ten, nine tenths of it, four point five out of five"),
        ("Elizabeth I and II, C and I", "Elizabeth the first and the second, C and I"),
        ("won 21:15, at 21:15", "won twenty-one to fifteen, at twenty-one fifteen"),
        ("flight BA117, FY2025, MP3", "flight B A one one seven, F Y twenty twenty-five, M P three"),
        ("pH 7, mRNA, i.e. IDs", "p H seven, m R N A, that is I D's"),
        ("and/or, km/s/Mpc, he/she", "and or, kilometers per second per megaparsec, he or she"),
    ],
    "fr": [
        ("21 étoiles, 21 ans", "vingt-et-une étoiles, vingt-et-un ans"),
        ("Le XXe siècle, Ce, Les", "Le vingtième siècle, Ce, Les"),
        ("à 1 h, 1 km", "à une heure, un kilomètre"),
        ("3 millions d’euros, 3 M€, 3 €", "trois millions d’euros, trois millions d'euros, trois euros"),
        ("M. Roux parle à M. le maire.", "Monsieur Roux parle à Monsieur le maire."),
        ("Me voici. Me Blanc plaide.", "Me voici. Maître Blanc plaide."),
        ("1 000 000 d’étoiles, 1 000 000 étoiles", "un million d’étoiles, un million d'étoiles"),
        ("la 1 000ème fois, le 1000e, le 2 000 000e", "la millième fois, le millième, le deux millionième"),
        ("1,2,3 partez, 1,2 km", "un, deux, trois partez, un virgule deux kilomètre"),
        ("3x plus, 1x", "trois fois plus, une fois"),
        ("½ heure, 2½ heures", "une demi-heure, deux heures et demie"),
    ],
    "de": [
        ("am 3. Mai, der 3. Mai", "am dritten Mai, der dritte Mai"),
        ("Es sind 3. Dann kommt der 3. Versuch.", "Es sind drei. Dann kommt der dritte Versuch."),
        ("1 Stunde, 1 Tag, mit 1 Stunde, um 1 Grad", "eine Stunde, ein Tag, mit einer Stunde, um einen Grad"),
        ("1905 kamen 1905 Leute", "neunzehnhundertfünf kamen eintausendneunhundertfünf Leute"),
        ("3:1 um 9:40", "drei zu eins um neun Uhr vierzig"),
        ("bis 2030. Seit 1. Mai", "bis zweitausenddreißig. Seit ersten Mai"),
        ("3x schneller, 2×10^8", "dreimal schneller, zwei mal zehn hoch acht"),
        ("die 5. kalte Nacht, in der 5. Nacht", "die fünfte kalte Nacht, in der fünften Nacht"),
        ("ein 2. großes Bild, ein 2. Bild, ein 2. Tag", "ein zweites großes Bild, ein zweites Bild, ein zweiter Tag"),
        ("das Ende der 2. Nacht, der 2. Tag", "das Ende der zweiten Nacht, der zweite Tag"),
        ("am 3., 4. und 5. Juni, der 3. und 4. Mai", "am dritten, vierten und fünften Juni, der dritte und vierte Mai"),
        ("1. bis 3. Klasse, 10.–12. Klasse", "erste bis dritte Klasse, zehnte bis zwölfte Klasse"),
        ("Wir senden am 15. und heute ist der 5.", "Wir senden am fünfzehnten und heute ist der fünfte."),
        ("der Hof Ludwigs XIV. in Paris", "der Hof Ludwigs des Vierzehnten in Paris"),
        ("unter Kaiser Karl V. und bei Anna II.", "unter Kaiser Karl dem Fünften und bei Anna der Zweiten."),
        ("Mehmed II. nahm sie im XV. Jahrhundert", "Mehmed der Zweite nahm sie im fünfzehnten Jahrhundert"),
        ("Sie hat 1 neuen Stern, mit 1 neuen Kamera", "Sie hat einen neuen Stern, mit einer neuen Kamera"),
        ("Wir suchen 1 Planeten nach 1 Tag und 1 Nacht", "Wir suchen einen Planeten nach einem Tag und einer Nacht"),
        ("nur 1 Kind, mit nur 1 Kind, Gruppe 1 Nord", "nur ein Kind, mit nur einem Kind, Gruppe eins Nord"),
        ("in 400 km Höhe, über 400 km", "in vierhundert Kilometern Höhe, über vierhundert Kilometer"),
        ("1-mal, 21-mal, 1-jährig, 1x", "einmal, einundzwanzigmal, einjährig, einmal"),
        ("die dt. Spieler, ein dt. Team, zur hl. Anna", "die deutschen Spieler, ein deutsches Team, zur heiligen Anna"),
        ("die 2. und 3. Plätze, die 3. Generation", "die zweiten und dritten Plätze, die dritte Generation"),
        ("Sie wurde 2., er kam als 3. ins Ziel", "Sie wurde Zweite, er kam als Dritter ins Ziel"),
        ("Karl der V. und Friedrichs II. Schloss", "Karl der Fünfte und Friedrichs des Zweiten Schloss"),
        ("KW 12, KW 48/2025", "Kalenderwoche zwölf, Kalenderwoche achtundvierzig zweitausendfünfundzwanzig"),
        ("Blutdruck 120/80, aus NW, Mann/Frau", "Blutdruck einhundertzwanzig zu achtzig, aus Nordwest, Mann und Frau"),
        ("die 25-Jährige, 24-h-Rennen", "die Fünfundzwanzigjährige, vierundzwanzig Stunden-Rennen"),
        ("unter 116 117, 116 000 Leute", "unter eins eins sechs, eins eins sieben, einhundertsechzehntausend Leute"),
        ("die 2001 gegründete Firma, jeder 3. Deutsche", "die zweitausendeins gegründete Firma, jeder dritte Deutsche"),
        ("des 20. Jh. wegen, in der 12. Min. noch", "des zwanzigsten Jahrhunderts wegen, in der zwölften Minute noch"),
        ("Dauer: 1:30 h, bis zu 100 m tief", "Dauer: eine Stunde dreißig Minuten, bis zu einhundert Meter tief"),
        ("31:28 (15:14)", "einunddreißig zu achtundzwanzig (fünfzehn zu vierzehn)"),
        ("am 12.–14.5. und später", "am zwölften bis vierzehnten Mai und später"),
        ("32 ct pro kWh, +/-3 %", "zweiunddreißig Cent pro Kilowattstunde, plus minus drei Prozent"),
        ("100%ige Sicht, 5 %ige Lösung", "hundertprozentige Sicht, fünfprozentige Lösung"),
        ("Hauptstr. 12, Dipl. Ing., 3 St.", "Hauptstraße zwölf, Diplom Ingenieur, drei Stück."),
        ("Fr. 12.50, Fr. Kaya, Mi. und Fr.", "zwölf Franken fünfzig, Frau Kaya, Mittwoch und Freitag."),
        ("siehe Tab. 2.1. Und am 2.1. um 8", "siehe Tabelle zwei Punkt eins. Und am zweiten Januar um acht"),
        ("19.00–20.30 Uhr, 19.00 Euro", "neunzehn Uhr bis zwanzig Uhr dreißig, neunzehn Euro"),
        ("1 bis 2 Tage, 1–2 %, um 20 h", "ein bis zwei Tage, ein bis zwei Prozent, um zwanzig Uhr"),
        ("1. Licht\n2. Ton", "erstens. Licht\nzweitens. Ton"),
        ("z. B. Sterne usw. Und so weiter", "zum Beispiel Sterne und so weiter. Und so weiter"),
    ],
    "es": [
        ("21 años, 21 horas, el 21", "veintiún años, veintiuna horas, el veintiuno"),
        ("siglo X, siglo XX, la II Guerra", "siglo décimo, siglo veinte, la segunda Guerra"),
        ("1.000.000 personas y 1.000.001 personas", "un millón de personas y un millón una personas"),
        ("EE. UU. y la ONU, n.º 5", "Estados Unidos y la ONU, número cinco"),
        ("1 de cada 10", "uno de cada diez"),
        ("2x más, 1.000.º", "dos veces más, milésimo"),
    ],
    "pt": [
        ("venceu em 6/4 e 7/5; em 6/4 viaja", "venceu em seis a quatro e sete a cinco; em seis de abril viaja"),
        ("às 3ªs e 5ªs-feiras, a 3ª volta", "às terças e quintas-feiras, a terceira volta"),
        ("11 91234-5678", "um um, nove um dois três quatro, cinco seis sete oito"),
        ("2014-2018", "dois mil e catorze a dois mil e dezoito"),
        ("na R. Augusta com Ana R. Silva", "na rua Augusta com Ana R. Silva"),
        ("a III Bienal e o III Encontro", "a terceira Bienal e o terceiro Encontro"),
        ("Brasil 2x1 Chile, um carro 4x4", "Brasil dois a um Chile, um carro quatro por quatro"),
        ("0,5% a.m., o HD de 500 GB", "zero vírgula cinco por cento ao mês, o H D de quinhentos gigabytes"),
        ("2 luas, 2 anos", "duas luas, dois anos"),
        ("século X, século XX, XXIII Festa", "século décimo, século vinte, vigésima terceira Festa"),
        ("58 milhões de km, 3½ horas", "cinquenta e oito milhões de quilômetros, três horas e meia"),
        ("por 2 a 0", "por dois a zero"),
        ("às 21h40, 2 h", "às vinte e uma horas e quarenta minutos, duas horas"),
    ],
}  # fmt: skip


def said(text: str, tag: str) -> str:
    return speak(text, language_data(tag), SPELLER).text


@pytest.mark.parametrize(("tag", "text", "wanted"), [(t, *case) for t, cases in CASES.items() for case in cases])
def test_context_decides(tag: str, text: str, wanted: str) -> None:
    assert said(text, tag) == wanted


def only(text: str, tag: str) -> Reading:
    (reading,) = readings(text, language_data(tag), SPELLER)
    return reading


@pytest.mark.parametrize(
    ("tag", "other"),
    [("en", "May twelfth, twenty twenty-six"), ("de", "fünfter Dezember zweitausendsechsundzwanzig")],
)
def test_a_date_that_could_be_another_says_so(tag: str, other: str) -> None:
    assert only("12/05/2026", tag).otherwise == (other,)
    assert only("25/12/2026", tag).otherwise == ()


@pytest.mark.parametrize(
    ("tag", "text", "wanted"),
    [
        ("en", "On 3/4 we met", "March fourth"),
        ("en-GB", "On 3/4 we met", "the third of April"),
        ("en", "closed since 12/4, again", "December fourth"),
    ],
)
def test_two_figures_with_a_bar_after_on_are_a_day_or_else_a_fraction(tag: str, text: str, wanted: str) -> None:
    reading = only(text, tag)
    assert (reading.said, reading.kind) == (wanted, "date")
    assert reading.otherwise in (("three quarters",), ("twelve over four",))


@pytest.mark.parametrize(
    ("tag", "text", "other"),
    [
        ("en", "1.500 km", "one thousand five hundred kilometers"),
        ("de", "1,500 km", "eintausendfünfhundert Kilometer"),
        ("en", "1.5m waves", "one point five million"),
        ("en", "Doors 5/12.", "May twelfth"),
    ],
)
def test_what_reads_two_ways_says_so(tag: str, text: str, other: str) -> None:
    assert only(text, tag).otherwise == (other,)


def test_british_dates_in_figures_begin_with_the_day() -> None:
    reading = only("12/05/2026", "en-GB")
    assert reading.said == "the twelfth of May, twenty twenty-six"
    assert reading.otherwise == ("the fifth of December, twenty twenty-six",)


def test_a_year_before_a_counted_noun_says_so() -> None:
    assert only("in 1999 people fled", "en").otherwise == ("one thousand nine hundred ninety-nine",)


@pytest.mark.parametrize("tag", CASES)
def test_prose_without_figures_is_itself(tag: str) -> None:
    text = "Bonsoir — „gut“, “fine”; (and) l’air, ¿no? É isso!\nEnd"
    assert said(text, tag) == text


@pytest.mark.parametrize(
    ("tag", "wanted"), [("en-GB", "one hundred and one kilometres"), ("en", "one hundred one kilometers")]
)
def test_british_english_says_and(tag: str, wanted: str) -> None:
    assert said("101 km", tag) == wanted


def test_a_language_without_data_gets_plain_numbers() -> None:
    spoken = speak("Er zijn 1.234 sterren, 3,5 graden en 12:30.", LanguageData("nl"), SPELLER)
    assert spoken.text == "Er zijn duizendtweehonderdvierendertig sterren, drie komma vijf graden en twaalf:dertig."


def test_a_language_without_number_words_is_left_alone() -> None:
    assert speak("1234", LanguageData("tlh"), SPELLER).text == "1234"
