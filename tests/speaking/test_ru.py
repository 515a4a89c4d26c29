"""Russian: agreement and case that the vectors' sources do not cover. Expected forms worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from promptprep.speaking.languages.ru_numbers import CASES, RussianNumbers, governed, plural_class
from promptprep.store.languages import language_data
from tests.speaking.support import SPELLER, assert_holds, found, kinds, said, texts

NUMBERS = RussianNumbers(language_data("ru"), SPELLER)
WORDS = [
    "в",
    "с",
    "до",
    "около",
    "г.",
    "году",
    "мая",
    "млн",
    "руб.",
    "км/ч",
    "°C",
    "-й",
    "-летний",
    "час",
    "минуту",
    "XX",
    "век",
    "т.",
    "е.",
    "США",
    "ул.",
    "гг.",
    "по",
    "и",
]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("21 звезда", "двадцать одна звезда"),
        ("22 звезды", "двадцать две звезды"),
        ("1 окно", "одно окно"),
        ("2 окна", "два окна"),
        ("1 ночь", "одна ночь"),
        ("1 день", "один день"),
        ("2 новые минуты", "две новые минуты"),
        ("2 больших телескопа", "два больших телескопа"),
        ("2 мужчины", "два мужчины"),
        ("5 программ", "пять программ"),
        ("около 21 километра", "около двадцати одного километра"),
        ("от 2 до 4 минут", "от двух до четырех минут"),
        ("с 20 друзьями", "с двадцатью друзьями"),
        ("в 5 километрах", "в пяти километрах"),
        ("к 40 годам", "к сорока годам"),
        ("более 1500 человек", "более тысячи пятисот человек"),
    ],
)
def test_a_number_agrees_with_its_noun_and_its_preposition(text: str, expected: str) -> None:
    assert said(text, "ru") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("до 5 км", "до пяти километров"),
        ("на высоте 300 м", "на высоте трехсот метров"),
        ("22 м²", "двадцать два квадратных метра"),
        ("5 а. е.", "пять астрономических единиц"),
        ("2 а. е.", "две астрономические единицы"),
        ("0,5 %", "ноль целых пять десятых процента"),
        ("5 с половиной", "пять с половиной"),
        ("5 с. и дальше", "пять с. и дальше"),
        ("Выдержка 5 с.", "Выдержка пять секунд."),
        ("10 с", "десять секунд"),
        ("−$5", "минус пять долларов"),
        ("$2 млрд", "два миллиарда долларов"),
        ("около 21 млн", "около двадцати одного миллиона"),
        ("$0.50", "пятьдесят центов"),
    ],
)
def test_units_and_money_are_declined(text: str, expected: str) -> None:
    assert said(text, "ru") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("с 1998 по 2003 год", "с тысяча девятьсот девяносто восьмого по две тысячи третий год"),
        ("в 1941–1945 годах", "в тысяча девятьсот сорок первом — тысяча девятьсот сорок пятом годах"),
        ("21 год", "двадцать один год"),
        ("2 года", "два года"),
        ("5–7 мая", "с пятого по седьмое мая"),
        ("к 1 сентября", "к первому сентября"),
        ("с 9:00 до 18:00", "с девяти часов до восемнадцати часов"),
        ("конец XIX — начало XX века", "конец девятнадцатого — начало двадцатого века"),
        ("в 60-х гг. XX в.", "в шестидесятых годах двадцатого века"),
        ("2-х", "двух"),
        ("с 5-м", "с пятым"),
        ("в г. Твери", "в городе Твери"),
    ],
)
def test_times_take_the_case_of_their_place(text: str, expected: str) -> None:
    assert said(text, "ru") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [("С новым годом", "С новым годом"), ("кто-то", "кто-то"), ("Я и ты.", "Я и ты."), ("I am", "I am"), ("", "")],
)
def test_plain_words_pass_through(text: str, expected: str) -> None:
    assert said(text, "ru") == expected
    assert kinds(text, "ru") == []


def test_what_cannot_be_decided_has_another_saying() -> None:
    (date,) = found("05/06/2026", "ru")
    assert date.said == "пятого июня две тысячи двадцать шестого года"
    assert date.otherwise == ("шестого мая две тысячи двадцать шестого года",)
    assert not found("25/06/2026", "ru")[0].otherwise
    (years,) = found("1914–1918", "ru")
    assert years.otherwise == ("тысяча девятьсот четырнадцать — тысяча девятьсот восемнадцать",)


@pytest.mark.parametrize(
    ("n", "expected"),
    [
        (0, "нулевой"),
        (40, "сороковой"),
        (200, "двухсотый"),
        (1900, "тысяча девятисотый"),
        (2000, "двухтысячный"),
        (21000, "двадцатиоднотысячный"),
        (100000, "стотысячный"),
        (1000000, "миллионный"),
        (2000001, "два миллиона первый"),
    ],
)
def test_ordinals_that_the_rule_sets_lack(n: int, expected: str) -> None:
    assert NUMBERS.ordinal(n) == expected


def test_the_fortieth_in_the_prepositional() -> None:
    assert NUMBERS.ordinal(40, "masculine", "prepositional") == "сороковом"


@pytest.mark.parametrize(
    ("n", "kind"), [(1, "one"), (11, "many"), (12, "many"), (22, "few"), (111, "many"), (121, "one")]
)
def test_plural_classes_are_the_unicode_ones(n: int, kind: str) -> None:
    assert plural_class(n) == kind


def test_every_unit_and_coin_is_a_noun_of_the_data() -> None:
    data = language_data("ru")
    for table in ("units", "money", "money_parts", "scales", "declined_abbreviations", "before_a_number"):
        for unit in data.get("spoken", table).values():
            noun = NUMBERS.noun(unit.split(" | ")[0].split(" ")[-1])
            assert len(noun.forms) == 12
            assert governed(noun, 5, "nominative")


@settings(max_examples=150, deadline=None)
@given(texts(WORDS))
def test_any_text_has_a_spoken_form(text: str) -> None:
    assert_holds(text, "ru")


def test_ten_thousand_digits_are_said_one_by_one() -> None:
    assert said("7" * 10_000, "ru").split() == ["семь"] * 10_000


def test_figures_in_a_row_are_no_decimals() -> None:
    assert said("1,2,3 и 1,5", "ru") == "один, два, три и одна целая пять десятых"


@pytest.mark.parametrize("case", CASES)
@pytest.mark.parametrize("gender", ["masculine", "feminine", "neuter", "plural"])
def test_number_words_are_spelled_with_one_letter_for_both(gender: str, case: str) -> None:
    for n in (3, 4, 14, 33, 44, 300, 400, 3_000, 4_000_000):
        said_n = NUMBERS.cardinal(n, "masculine" if gender == "plural" else gender, case)
        assert "ё" not in said_n + NUMBERS.ordinal(n, gender, case)


def test_the_letter_of_the_author_stays() -> None:
    assert said("4-й счёт, 3-летний учёный, 4 звёзды", "ru").count("ё") == 3


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("с 2 мая", "со второго мая"),
        ("В 2 классе", "Во втором классе"),
        ("в 3 классе", "в третьем классе"),
        ("с 100 рублями", "со ста рублями"),
        ("с 3 рублями", "с тремя рублями"),
        ("о 11 планетах", "об одиннадцати планетах"),
        ("о 3 планетах", "о трех планетах"),
        ("с II века", "со второго века"),
    ],
)
def test_prepositions_grow_before_the_sounds_that_ask_for_it(text: str, expected: str) -> None:
    assert said(text, "ru") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("С 2 по 5 классы", "Со второго по пятый классы"),
        ("с 3 по 7 место", "с третьего по седьмое место"),
        ("с 5 по 7 главу", "с пятой по седьмую главу"),
        ("2-й и 3-й этапы", "второй и третий этапы"),
        ("в 2-й и 3-й школах", "во второй и третьей школах"),
        ("ученик 3-й школы", "ученик третьей школы"),
    ],
)
def test_runs_of_ranks_share_their_noun(text: str, expected: str) -> None:
    assert said(text, "ru") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Выставка откроется 23.02.", "Выставка откроется двадцать третьего февраля."),
        ("до 31.12", "до тридцать первого декабря"),
        ("до 31.12 метра", "до тридцати одной целой двенадцати сотых метра"),
        ("масса 23.02", "масса двадцать три целых две сотых"),
        ("поднялась до 23.02%", "поднялась до двадцати трех целых двух сотых процента"),
        ("к 8 Марта", "к восьмому Марта"),
        ("15 ч. 20 мин.", "пятнадцать часов двадцать минут"),
        ("т. 3, ч. 2", "том три, часть два"),
        ("2 ст. ложки сахара", "две столовые ложки сахара"),
        ("ст. научный сотрудник", "старший научный сотрудник"),
        ("нет 5 мест", "нет пяти мест"),
        ("5-ю голосами", "пятью голосами"),
        ("5-ю главу", "пятую главу"),
        ("в 1 полугодии", "в первом полугодии"),
        ("на 5 странице", "на пятой странице"),
        ("5 страниц", "пять страниц"),
        ("2 страницы", "две страницы"),
        ("1 страница", "одна страница"),
        ("Поздравляем с 8 Марта!", "Поздравляем с восьмым Марта!"),
    ],
)
def test_days_written_short_and_what_is_written_short_beside_figures(text: str, expected: str) -> None:
    assert said(text, "ru") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("в Московской обл.", "в Московской области."),
        ("жители с. Липки и дер. Луговая", "жители села Липки и деревни Луговая"),
        ("свернули на ул. Мира, стоят на ул. Мира", "свернули на улицу Мира, стоят на улице Мира"),
        ("в р-не Арбата, на пр-те Мира", "в районе Арбата, на проспекте Мира"),
        ("гл. врач, с ж/д вокзала", "главный врач, с железнодорожного вокзала"),
        ("ст. лейтенант, ст. 5", "старший лейтенант, статья пять"),
        ("в тыс. руб., в руб. и коп.", "в тысячах рублей, в рублях и копейках."),
        ("Возьмите 200 г муки и 1/2 стакана воды", "Возьмите двести граммов муки и половину стакана воды"),
        ("В 988 г. крестили Русь", "В девятьсот восемьдесят восьмом году крестили Русь"),
        ("дети 5–7 лет, ребёнку 5 лет", "дети пяти-семи лет, ребёнку пять лет"),
        ("до 52 руб. 50 коп.", "до пятидесяти двух рублей пятидесяти копеек"),
        ("под № 10, у № 3", "под номером десять, у номера три"),
        ("пн–пт, со вт, в сб", "с понедельника по пятницу, со вторника, в субботу"),
        ("Он был 3-м, она 2-й не стала", "Он был третьим, она второй не стала"),
        ("вышли в 1/8 финала", "вышли в одну восьмую финала"),
        ("31.12 мы закрыты", "тридцать первого декабря мы закрыты"),
        (
            "с 10.07 по 12.07, 10.07–12.07.2025",
            "с десятого июля по двенадцатое июля, с десятого июля по двенадцатое июля две тысячи двадцать пятого года",
        ),
        ("В 1999 он уехал", "В тысяча девятьсот девяносто девятом он уехал"),
        (
            "В 1999 домах, до 1999 рублей",
            "В тысяче девятистах девяноста девяти домах, до тысячи девятисот девяноста девяти рублей",
        ),
        ("Рост с 1990 по 2020 остановился", "Рост с тысяча девятьсот девяностого по две тысячи двадцатый остановился"),
        ("с 1500 до 2000 рублей", "с тысячи пятисот до двух тысяч рублей"),
        ("собор св. Петра, у св. Ольги", "собор святого Петра, у святой Ольги"),
        ("в ср. школе, ср. температура", "в средней школе, средняя температура"),
        ("у проф. Петрова, зам. нач. цеха", "у профессора Петрова, заместитель начальника цеха"),
        (
            "1'000'000, 1.234.567,5",
            "один миллион, один миллион двести тридцать четыре тысячи пятьсот шестьдесят семь целых пять десятых",
        ),
    ],
)
def test_what_is_short_takes_the_case_of_its_place(text: str, expected: str) -> None:
    assert said(text, "ru") == expected
