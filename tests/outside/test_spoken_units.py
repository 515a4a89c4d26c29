"""Units of measure against the CLDR's unit patterns (through babel), in every plural category that they have.

Russian grams are left out: the CLDR has the spoken genitive "килограмм", handbooks prefer "килограммов".
"""

from __future__ import annotations

import unicodedata

import pytest
from babel import Locale

from promptprep.engines.spelling import IcuSpeller
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data

SPELLER = IcuSpeller()
COUNTS = (1, 2, 5, 11, 21, 22, 100, 1.5)
UNITS = {
    "ru": """км kilometer|см centimeter|мм millimeter|м meter|т tonne|с second|мин minute|ч hour|м/с meter-per-second
        |км/ч kilometer-per-hour|км² square-kilometer|м² square-meter|м³ cubic-meter|га hectare|л liter|мл milliliter
        |Гц hertz|кГц kilohertz|МГц megahertz|ГГц gigahertz|Вт watt|кВт kilowatt|МВт megawatt|ГБ gigabyte|МБ megabyte
        |°C celsius|°F fahrenheit|К kelvin|пк parsec|а. е. astronomical-unit|В volt|А ampere|Дж joule|° degree
        |ккал kilocalorie|гПа hectopascal|мс millisecond|мкс microsecond|нм nanometer|мкм micrometer|мА milliampere""",
    "hi": """km kilometer|m meter|cm centimeter|mm millimeter|kg kilogram|g gram|mg milligram|s second|min minute|h hour
        |km/h kilometer-per-hour|m/s meter-per-second|km² square-kilometer|m² square-meter|ha hectare|l liter
        |ml milliliter|m³ cubic-meter|Hz hertz|kHz kilohertz|MHz megahertz|GHz gigahertz|W watt|kW kilowatt
        |GB gigabyte|°C celsius|K kelvin|ly light-year|V volt|J joule|hPa hectopascal|ms millisecond|nm nanometer
        |µm micrometer|ft foot|% percent""",
    "sw": """km kilometer|kg kilogram|km/h kilometer-per-hour|m/s meter-per-second|km² square-kilometer
        |m² square-meter|m³ cubic-meter|GB gigabyte|MB megabyte|hPa hectopascal|K kelvin|°C celsius""",
    "ar": "كم kilometer|غ gram|دقيقة minute",
}
CASES = [(tag, *pair.strip().rsplit(" ", 1)) for tag, units in UNITS.items() for pair in units.split("|")]


def patterns(tag: str, name: str) -> dict[str, str]:
    """The long patterns of the unit whose identifier ends in `name`, whatever its group ("length-kilometer")."""
    units = Locale(tag)._data["unit_patterns"]
    key = next(k for k in units if k.split("-", 1)[-1] == name)
    return dict(units[key]["long"])


@pytest.mark.parametrize(("tag", "unit", "name"), CASES)
def test_a_unit_takes_the_form_that_its_number_asks_for(tag: str, unit: str, name: str) -> None:
    wanted = patterns(tag, name)
    plural = Locale(tag).plural_form
    missed = []
    for count in COUNTS:
        pattern = wanted.get(plural(count), "")
        if "{0}" not in pattern or (tag == "ar" and count == 2):  # Arabic says two in the dual, without a numeral
            continue
        written = str(count).replace(".", ",") if tag == "ru" else str(count)
        said = speak(f"{written} {unit}", language_data(tag), SPELLER).text
        words = unicodedata.normalize("NFC", pattern.replace("{0}", " ")).split()
        if not set(words) <= set(said.split()):
            missed.append((said, pattern))
    assert not missed
