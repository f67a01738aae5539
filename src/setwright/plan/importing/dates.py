"""Dates and times as tables hold them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from typing import Literal

from setwright.plan.amounts import AmountError

DateOrder = Literal["dmy", "mdy", "ymd"]
ORDERS: tuple[DateOrder, ...] = ("dmy", "mdy", "ymd")
DATE_FORMS = "a date such as 2026-09-07 or 7 Sep 2026"
TIME_FORMS = "a time such as 18:05 or 6:05 pm"
# Day 0 of the serial numbers spreadsheets keep dates as, and the numbers taken for dates:
# 1980 to 2079.
SERIAL_ZERO = datetime(1899, 12, 30)
SERIALS = (29221, 65745)
_MONTH_NAMES = (
    "jan januar january janv enero ene",
    "feb februar february febrero",
    "mar mär märz march marzo",
    "apr april abril avr",
    "may mai mayo",
    "jun juni june junio juin",
    "jul juli july julio juil",
    "aug august agosto ago août",
    "sep sept september septiembre",
    "oct okt oktober october octubre",
    "nov november noviembre",
    "dec dez dezember december diciembre dic déc",
)
_MONTHS = {
    name: number for number, names in enumerate(_MONTH_NAMES, start=1) for name in names.split()
}
_ISO = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T\s,]+(.+))?\Z")
_FIGURES = re.compile(r"(\d{1,2})\s*([-/.])\s*(\d{1,2})\s*[-/.]\s*(\d{4}|\d{2})(?:[T\s,]+(.+))?\Z")
_DAY_MONTH = re.compile(
    r"(\d{1,2})(?:st|nd|rd|th|\.)?[\s-]*([^\W\d]{3,10})\.?,?[\s-]*(\d{4})(?:[\s,]+(?:at\s+)?(.+))?\Z"
)
_MONTH_DAY = re.compile(
    r"([^\W\d]{3,10})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})(?:[\s,]+(?:at\s+)?(.+))?\Z"
)
_WEEKDAY = re.compile(
    r"^(?:mon|tue|wed|thu|fri|sat|sun|mo|di|mi|do|fr|sa|so)[a-zäö]*\.?,?\s+", re.IGNORECASE
)
_CLOCK = re.compile(
    r"(\d{1,2})(?:[:.h](\d{2}))?(?:[:.](\d{2})(?:\.\d+)?)?\s*(am|pm|a\.m\.|p\.m\.|uhr)?"
    r"\s*(?:z|[+-]\d{2}:?\d{2})?\Z",
    re.IGNORECASE,
)


class OrderUnknownError(AmountError):
    """A date that means two days, as long as nobody says whether day or month comes first."""


def order_of(cells: Iterable[str]) -> tuple[DateOrder | None, bool]:
    """The order that the dates of a column prove, and whether two of them contradict."""
    day_first = month_first = False
    for cell in cells:
        match = _FIGURES.match(_bare(cell))
        if match:
            first, second = int(match[1]), int(match[3])
            day_first |= first > 12 or match[2] == "."
            month_first |= second > 12
    if day_first and month_first:
        return None, True
    return ("dmy" if day_first else "mdy" if month_first else None), False


def read_date(cell: str, order: DateOrder | None) -> tuple[date, time | None]:
    """A day, and a time when the cell holds one too.

    Raises:
        OrderUnknownError: when day and month could be exchanged and no order is known.
        AmountError: when it is no date.
    """
    text = _bare(cell)
    try:
        return _written(text, order)
    except (ValueError, OverflowError) as error:
        if isinstance(error, AmountError):
            raise
        raise AmountError(DATE_FORMS) from None


def _bare(cell: str) -> str:
    return _WEEKDAY.sub("", cell)


def _serial(figure: float) -> tuple[date, time | None]:
    if not SERIALS[0] <= figure <= SERIALS[1]:
        raise AmountError(DATE_FORMS)
    moment = SERIAL_ZERO + timedelta(days=figure)
    return moment.date(), moment.time().replace(microsecond=0) if figure % 1 else None


def _written(text: str, order: DateOrder | None) -> tuple[date, time | None]:
    if match := _ISO.match(text):
        return date(int(match[1]), int(match[2]), int(match[3])), _after(match[4])
    if match := _FIGURES.match(text):
        first, second, year = int(match[1]), int(match[3]), int(match[4])
        year += 2000 if year < 100 else 0
        if order == "ymd":
            raise AmountError(DATE_FORMS)
        if match[2] == "." or first > 12 or first == second:
            day, month = first, second
        elif second > 12:
            day, month = second, first
        elif order is None:
            raise OrderUnknownError("whether the day or the month comes first")
        else:
            day, month = (first, second) if order == "dmy" else (second, first)
        return date(year, month, day), _after(match[5])
    if match := _DAY_MONTH.match(text):
        return date(int(match[3]), _month(match[2]), int(match[1])), _after(match[4])
    if match := _MONTH_DAY.match(text):
        return date(int(match[3]), _month(match[1]), int(match[2])), _after(match[4])
    if re.fullmatch(r"\d{5}(?:\.\d+)?", text):
        return _serial(float(text))
    raise AmountError(DATE_FORMS)


def _month(word: str) -> int:
    number = _MONTHS.get(word.casefold())
    if number is None:
        raise AmountError(DATE_FORMS)
    return number


def _after(words: str | None) -> time | None:
    return read_time(words) if words else None


def read_time(cell: str) -> time:
    """A time of day.

    Raises:
        AmountError: when it is none.
    """
    if re.fullmatch(r"0[.,]\d+|0", cell):
        share = float(cell.replace(",", "."))
        return (SERIAL_ZERO + timedelta(seconds=round(share * 86_400))).time()
    match = _CLOCK.match(cell)
    if match is None or not (match[2] or match[4]):
        raise AmountError(TIME_FORMS)
    hour, half = int(match[1]), (match[4] or "").lower().replace(".", "")
    if half in ("am", "pm"):
        if not 1 <= hour <= 12:
            raise AmountError(TIME_FORMS)
        hour = hour % 12 + (12 if half == "pm" else 0)
    try:
        return time(hour, int(match[2] or 0), int(match[3] or 0))
    except ValueError:
        raise AmountError(TIME_FORMS) from None
