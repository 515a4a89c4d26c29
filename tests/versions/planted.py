"""Differences planted into the demo's versions, by plain replacement: what stood there, what stands there now."""

from __future__ import annotations

# language -> (text in the version, what it is changed to). Each plants one difference of value, unit or name.
PLANTED: dict[str, list[tuple[str, str]]] = {
    "fr": [
        ("504 km", "540 km"), ("1er décembre", "2 décembre"), ("14 décembre", "14 novembre"), ("100 météores", "mille météores"),
        ("35 km/s", "25 km/s"), ("21 h 40", "20 h 40"), ("neuf ans", "dix ans"), ("4,50 €", "45,0 €"), ("19 h", "9 h"),
        ("Amina Osei. Elle", "Amina Osai. Elle"),
    ],
    "es": [
        ("504 km", "504 m"), ("viernes 18", "viernes 17"), ("21:40", "21:14"), ("nueve años", "seis años"), ("4,50 €", "4,50 $"),
        ("las 19:00", "las 18:00"), ("35 km/s", "53 km/s"), ("tres cosas que", "cuatro cosas que"), ("Amina Osei. Es", "Amira Osei. Es"),
    ],
    "de": [
        ("504 km", "405 km"), ("21:40 Uhr", "22:40 Uhr"), ("neun Jahren", "neun Monaten"), ("4,50 €", "5,40 €"),
        ("dem 18. Dezember", "dem 19. Dezember"), ("um 19 Uhr", "um 20 Uhr"), ("35 km/s", "3,5 km/s"), ("100 Meteore", "Meteore"),
        ("Drei Dinge lohnen", "Vier Dinge lohnen"), ("Freitag", "Samstag"),
    ],
    "pt": [
        ("21h40", "21h04"), ("504 km", "594 km"), ("nove anos", "nove meses"), ("€ 4,50", "€ 4,05"), ("às 19h", "às 17h"),
        ("14 de dezembro", "15 de dezembro"), ("100 meteoros", "100 mil meteoros"), ("Amina Osei. Ela", "Amina Oseia Dias. Ela"),
        ("sexta-feira", "quinta-feira"),
    ],
    "ru": [
        ("504 км", "50,4 км"), ("21:40", "21:45"), ("девять лет", "восемь лет"), ("4,50 €", "4,50 ₽"), ("в 19:00", "в 9:00"),
        ("18 декабря", "18 января"), ("100 метеоров", "10 метеоров"), ("на три вещи", "на пять вещей"), ("Амина Осеи.", "Амина Коте."),
        ("1 декабря, воздух", "11 декабря, воздух"),
    ],
    "ar": [
        ("504 كم", "540 كم"), ("35 كم/ث", "53 كم/ث"), ("9:40 مساءً", "9:40 صباحًا"), ("14 ديسمبر", "14 نوفمبر"),
        ("تسع سنوات", "سبع سنوات"), ("4.50 €", "5.40 €"), ("7:00 مساءً", "8:00 مساءً"), ("الأول من ديسمبر", "الثاني من ديسمبر"),
        ("100 شهاب", "١٠٠٠ شهاب"), ("21 ديسمبر", "22 ديسمبر"),
    ],
    "hi": [
        ("504 km", "५४० km"), ("35 km/s", "35 m/s"), ("21:40", "20:40"), ("नौ साल", "सात साल"), ("€4.50", "₹4.50"),
        ("शाम 7 बजे", "सुबह 7 बजे"), ("14 दिसंबर", "14 नवंबर"), ("100 उल्काएँ", "200 उल्काएँ"), ("18 दिसंबर", "28 दिसंबर"),
        ("तीन चीज़ें देखने", "चार चीज़ें देखने"),
    ],
    "sw": [
        ("504 tu", "405 tu"), ("saa 3:40 usiku", "saa 2:40 usiku"), ("miaka tisa", "miaka sita"), ("€4.50", "€5.50"),
        ("saa 1 usiku", "saa 1 asubuhi"), ("tarehe 14", "tarehe 24"), ("vimondo 100", "vimondo 1000"), ("kilomita 35", "kilomita 30"),
    ],
    "zh": [
        ("504公里", "504米"), ("每秒35公里", "每秒53公里"), ("21:40", "22:40"), ("九年", "七年"), ("4.50欧元", "4.50美元"),
        ("晚上7点", "早上7点"), ("12月14日", "11月14日"), ("100颗", "1万颗"),
    ],
    "ja": [
        ("504キロ", "540キロ"), ("秒速35キロ", "秒速25キロ"), ("21時40分", "21時14分"), ("9年間", "6年間"), ("4.50ユーロ", "4.50ドル"),
        ("午後7時", "午後8時"), ("12月18日", "12月19日"), ("100個", "百五十個"),
    ],
    "ko": [
        ("504 km", "504 m"), ("초속 35 km", "초속 36 km"), ("밤 9시 40분", "밤 8시 40분"), ("9년 동안", "9개월 동안"),
        ("4.50유로", "4.80유로"), ("오후 7시", "오전 7시"), ("12월 14일", "12월 4일"), ("100개를", "300개를"),
    ],
}  # fmt: skip

# language -> (text in the version, another way to say the same): nothing may be found here.
REPHRASED: dict[str, list[tuple[str, str]]] = {
    "fr": [("504 km", "cinq cent quatre kilomètres"), ("21 h 40", "21:40"), ("100 météores", "cent météores"), ("4,50 €", "4,50 euros"), ("neuf ans", "9 ans"), ("19 h", "19 heures")],
    "es": [("504 km", "quinientos cuatro kilómetros"), ("100 meteoros", "cien meteoros"), ("las 19:00", "las siete de la tarde"), ("4,50 €", "4,50 euros"), ("nueve años", "9 años")],
    "de": [("504 km", "fünfhundertvier Kilometern"), ("100 Meteore", "hundert Meteore"), ("neun Jahren", "9 Jahren"), ("4,50 €", "4,50 Euro"), ("um 19 Uhr", "um 19.00 Uhr")],
    "pt": [("504 km", "quinhentos e quatro quilômetros"), ("100 meteoros", "cem meteoros"), ("21h40", "21:40"), ("€ 4,50", "4,50 euros"), ("nove anos", "9 anos")],
    "ru": [("504 км", "пятьсот четыре километра"), ("100 метеоров", "сто метеоров"), ("девять лет", "9 лет"), ("4,50 €", "4,50 евро"), ("в 19:00", "в 7 часов вечера")],
    "ar": [("504 كم", "٥٠٤ كم"), ("9:40 مساءً", "21:40"), ("4.50 €", "٤٫٥٠ يورو"), ("تسع سنوات", "9 سنوات"), ("35 كم/ث", "٣٥ كيلومترًا في الثانية")],
    "hi": [("504 km", "५०४ किलोमीटर"), ("100 उल्काएँ", "सौ उल्काएँ"), ("नौ साल", "9 साल"), ("€4.50", "4.50 यूरो"), ("21:40", "रात 9:40")],
    "sw": [("504 tu", "mia tano na nne tu"), ("vimondo 100", "vimondo mia moja"), ("saa 3:40 usiku", "saa 21:40"), ("miaka tisa", "miaka 9"), ("€4.50", "yuro 4.50")],
    "zh": [("504公里", "五百零四公里"), ("100颗", "一百颗"), ("21:40", "晚上9点40分"), ("九年", "9年"), ("4.50欧元", "€4.50"), ("12月14日", "十二月十四日")],
    "ja": [("504キロ", "五百四キロ"), ("100個", "百個"), ("21時40分", "午後9時40分"), ("9年間", "九年間"), ("4.50ユーロ", "€4.50")],
    "ko": [("504 km", "504킬로미터"), ("밤 9시 40분", "21시 40분"), ("오후 7시", "19시"), ("9년 동안", "구 년 동안"), ("4.50유로", "€4.50")],
}  # fmt: skip
