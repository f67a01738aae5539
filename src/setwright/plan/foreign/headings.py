"""Lines that are no exercise: days, titles, settings, weeks, supersets, sections, notes."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final

from setwright.plan.day_words import DAY_KINDS, HEADING, MINUTES, WEEKDAYS
from setwright.plan.foreign.model import AS_WRITTEN, BY_CUSTOM

_SIGNS = re.compile(r"[\U0001F000-\U0001FAFF\u2600-\u27BF\u2B00-\u2BFF\uFE0F\u200D\u20E3]+")
_MARKUP = re.compile(r"^[#=*_~\s>\[{<|•▪◦·●○►‣+–—-]+|[#=*_~:\s\]}>|–—-]+$")
_DAY = "|".join(sorted(WEEKDAYS, key=len, reverse=True))
# Weekdays of two or three letters that are words of their own too: only where nothing else
# stands, or a colon after them.
_SHORT = {
    "mo": 0, "lu": 0, "lun": 0, "ma": 1, "di": 1, "mar": 1, "mi": 2, "wo": 2, "mer": 2, "mie": 2,
    "mié": 2, "do": 3, "to": 3, "jeu": 3, "jue": 3, "fr": 4, "vr": 4, "ven": 4, "vie": 4, "sa": 5,
    "za": 5, "sam": 5, "sab": 5, "sáb": 5, "so": 6, "zo": 6, "dim": 6, "dom": 6,
}  # fmt: skip
_SHORT_DAY = re.compile(
    rf"(?P<weekday>{'|'.join(sorted(_SHORT, key=len, reverse=True))})\.?"
    r"(?:\s*[:|–—-]+\s*(?P<name>.*)|\s*[(\[](?P<inside>.*)[)\]])?\Z",
    re.IGNORECASE,
)
_COUNTED = {
    "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7",
    "first": "1", "second": "2", "third": "3", "eins": "1", "zwei": "2", "drei": "3", "vier": "4",
}  # fmt: skip
_COUNTED_DAY = re.compile(
    rf"(?:(?P<kind>{DAY_KINDS})\s+(?P<word>{'|'.join(_COUNTED)})|"
    rf"(?P<number>\d)\s*(?:\.|st|nd|rd|th|er|e|º|ª)\s*(?P<after>{DAY_KINDS}))\b"
    r"(?P<rest>.*)\Z",
    re.IGNORECASE,
)
_DAYS_TOGETHER = re.compile(
    rf"(?P<days>(?:{_DAY})s?\.?(?:\s*(?:,|/|&|\+|and|und)\s*(?:{_DAY})s?\b\.?)+)"
    r"\s*[-–—:.)]*\s*(?P<name>.*)\Z",
    re.IGNORECASE,
)
_DAY_INSIDE = re.compile(
    rf"(?P<name>[^\d(\[]{{2,40}}?|[^(\[]{{2,40}}?(?=\s*[(\[]))\s*(?:[-–—:,|]\s*|[(\[]\s*)"
    rf"(?P<weekday>{_DAY})s?\s*[)\]]?\s*\Z",
    re.IGNORECASE,
)
_WEEK = re.compile(
    r"(?:week|wk|woche|w)\s*(?P<number>\d{1,2})\b\s*[-–—:,/.]*\s*(?P<rest>.*)\Z", re.IGNORECASE
)
SPLIT_WORDS: Final = frozenset(
    {
        "push", "pull", "legs", "leg", "upper", "lower", "full", "total", "whole", "body",
        "torso", "limbs", "chest", "back", "shoulders", "shoulder", "arms", "arm", "glutes",
        "quads", "hamstrings", "hams", "biceps", "triceps", "calves", "delts", "abs", "core",
        "trunk", "posterior", "anterior", "chain", "oberkörper", "unterkörper", "ganzkörper",
        "brust", "rücken", "schultern", "arme", "beine", "bauch", "drücken", "ziehen", "jambes",
        "haut", "bas", "corps", "pectoraux", "pecs", "dos", "épaules", "bras", "fessiers",
        "pierna", "piernas", "pecho", "espalda", "hombros", "hombro", "brazos", "glúteos",
        "empuje", "tirón", "superior", "inferior", "benen", "borst", "rug", "schouders", "armen",
        "poussée", "tirage", "complet",
    }
)  # fmt: skip
_FILLING: Final = frozenset(
    {
        "day", "workout", "session", "training", "a", "b", "c", "d", "e", "1", "2", "3", "4", "5",
        "6", "i", "ii", "iii", "and", "und", "with", "heavy", "light", "focus", "emphasis", "tag",
        "volume", "one", "two", "three", "presses", "pulls", "first", "second", "et", "y", "en",
        "du", "de", "le", "jour", "séance", "día", "dia", "tren", "cuerpo", "strength",
        "hypertrophy", "pump", "only", "dominant",
    }
)  # fmt: skip
OFF: Final = re.compile(
    r"(?:rest(?:\s*day)?|off(?:\s*day)?|day\s+off|frei|ruhetag|pause|(?:active\s+)?recovery|"
    r"no\s+(?:training|gym)|repos|descanso|rust(?:dag)?|fri|riposo|-+|–|—)\W*\Z",
    re.IGNORECASE,
)
TITLE: Final = re.compile(
    r"(?:title|plan|programme|program|block|name of plan|titel)\s*[:=]\s*(.+)\Z", re.IGNORECASE
)
PERSON: Final = re.compile(
    r"(?:person|client|for|athlete|name|trainee|kunde|kundin|für)\s*[:=]\s*(.+)\Z", re.IGNORECASE
)
UNIT: Final = re.compile(
    r"\b(?:units?|(?:all\s+)?(?:the\s+)?(?:loads?|weights?)|(?:alle\s+)?gewichte?|charges?|cargas?|"
    r"pesos?|gewichten)\s*(?:(?:listed|given|written)\s*)?"
    r"(?:[:=]|in|are\s+(?:all\s+)?in|sind\s+in|en|are)?\s*(?:in\s+)?(kg|kilos?|lbs?|pounds)\b",
    re.IGNORECASE,
)
NOTE: Final = re.compile(
    r"(?:notes?|notiz(?:en)?|comments?|remarks?|hinweise?|bemerkung|progression|ps|nb|n\.b\.|"
    r"remember|reminder|coach|cues?|goals?|focus|date|start|phase|deload|//|>|"
    r"(?:frequency|level|length|gym|equipment|weeks?|age|height|bodyweight|split|häufigkeit|ziel|"
    r"objecti[fv]o?|objetivo|fréquence|frecuencia|niveau|nivel|doel|dauer|wichtig|important|"
    r"importante|"
    r"tipps?|tips?|conseils?|consejos?|warning|attention|achtung|ojo)(?=\s*[:–-]))\s*[:–-]?\s*\S",
    re.IGNORECASE,
)
GREETING: Final = re.compile(
    r"(?:hi|hey+|hello|hiya|yo|hallo|hei|hej|hoi|moin|servus|dear|good\s+(?:morning|evening)[\s,!]|"
    r"liebe[rs]?|sehr\s+geehrte\w*|guten\s+(?:tag|morgen|abend)|bonjour|bonsoir|salut|coucou|"
    r"cher|chère|hola|buenas|buenos\s+días|querid[oa]|ciao|olá|beste|"
    r"dag)\b(?!\s*\d)(?!.*\d\s*[x×])",
    re.IGNORECASE,
)
CLOSING: Final = re.compile(
    r"(?:best|cheers|thanks?|thank\s+you|thx|(?:kind|warm|best)\s+(?:regards|wishes)|regards|"
    r"sincerely|yours|see\s+you|take\s+care|have\s+fun|good\s+luck|enjoy|lmk|let\s+me\s+know|"
    r"(?:viele|liebe|beste|schöne)\s+grüße|grüße|gruß|lg|vg|mfg|danke|viel\s+(?:spaß|erfolg)|"
    r"cordialement|bises|à\s+(?:bientôt|plus)|merci|bon\s+courage|amicalement|saludos|un\s+abrazo|"
    r"gracias|nos\s+vemos|groet(?:en|jes)?|met\s+vriendelijke|succes|hilsen|hälsningar|sent\s+from|"
    r"xx?o?x?)\b(?!\s+(?:of|sets?))[^\d]*\Z",
    re.IGNORECASE,
)
TOTAL: Final = re.compile(
    r"(?:(?:grand\s+|weekly\s+)?total\w*|(?:sets?|reps?|sätze|séries|volume)\s+(?:in\s+)?total|"
    r"sums?|gesamt\w*|summe|insgesamt|totaal|"
    r"(?:total\s+)?volume|approx\w*|estimated|duration|dauer|durée|duración|time|zeit)\b"
    r"(?!\s*\d+\s*[x×])",
    re.IGNORECASE,
)
# Words of somebody who speaks to somebody.
SPEECH: Final = re.compile(
    r"\b(?:you|we|i|if|when|once|then|add|adding|increase|next|each|every|week|weeks|aim|try|"
    r"should|"
    r"can|feel|before|du|wenn|dann|wir|ich|steiger\w*|woche|erhöh\w*|si|quand|tu|vous|ajoute\w*|"
    r"semaine|cuando|añad\w*|aument\w*|semana|je|als|wanneer|verhoog|voeg)\b",
    re.IGNORECASE,
)
SETTING: Final = re.compile(
    r"\b(?:all(?:\s+(?:sets|exercises|lifts))?|every(?:thing|\s+set)?|throughout|defaults?|"
    r"alle[ns]?"
    r"(?:\s+(?:sätze|übungen))?|unless\s+(?:noted|stated)|if\s+not\s+(?:noted|stated)|überall|"
    r"immer|always|partout|toujours|tous|toutes|chaque|todos|todas|todo|siempre|cada|overal|altijd|"
    r"elke|entire|whole\s+program\w*|standard)\b",
    re.IGNORECASE,
)
SUPERSET: Final = re.compile(
    r"(?:s[uú]per\s*-?sets?|supersatz|supersätze|s[uú]per\s?s[ée]ries?|bis[ée]ries?|ss|pair(?:ed)?|"
    r"bi-?set|tri-?set|giant\s+set|circuit|zirkel|circuito|alternat\w+|im\s+wechsel|combo)"
    r"\b[\s\d():,.\w-]{0,30}\Z",
    re.IGNORECASE,
)
# A superset told in the line that names it.
SUPERSET_OF: Final = re.compile(
    r"\W*(?:s[uú]per\s?-?sets?|supersatz|s[uú]per\s?s[ée]rie|bis[ée]rie|ss|pair(?:ed)?|giant\s+set|"
    r"tri-?set|circuit)\s*(?:\d|[a-h])?\s*[:–—-]+\s*(?P<of>\S.*)\Z",
    re.IGNORECASE,
)
SECTION: Final = re.compile(
    r"(?P<warm>warm(?:ing)?[\s-]*ups?|aufwärmen|mobili\w+|activation|prep|échauffement|"
    r"calentamiento|"
    r"opwarming|warming-up|riscaldamento|oppvarming|uppvärmning)\b|"
    r"(?P<after>cool[\s-]*down|cardio|conditioning|stretch(?:es|ing)?|dehnen|cool|étirements?|"
    r"estiramientos?|ausdauer|vuelta\s+a\s+la\s+calma|retour\s+au\s+calme)\b|"
    r"(?:main(?:\s+(?:work|part|lifts?))?|working\s+sets|accessor(?:y|ies)|assistance|"
    r"finishers?|hauptteil|strength|hypertrophy|pump(?:\s+work)?|isolation|compounds?|primary|"
    r"secondary|block\s+[a-d1-4]|part\s+[a-d1-4])"
    r"(?=\W*\Z|\s*[:(–-]|\s+(?:work|exercises?|lifts?|movements?|part|block|section)\b)",
    re.IGNORECASE,
)
ASIDE: Final = re.compile(
    r"\b(?:bike|run|walk|treadmill|rower|rowing machine|steps|stretch\w*|mobility|sleep|water|"
    r"protein|sauna|deload|progress\w*|cardio|add\s+(?:weight|load|reps)|"
    r"échauff\w*|calent\w*|aufwärm\w*|opwarm\w*|étir\w*|dehn\w*|estir\w*|"
    r"(?:\d\s*x|times|days?|sessions?|mal|fois|veces|keer)\s*(?:per|a|pro|par|por|/|la)\s*"
    r"(?:week|woche|semaine|semana|wk)|"
    r"holiday|gym|phone|email|version|page|warm[\s-]*up|cool[\s-]*down|foam)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class DayHeading:
    """The heading of a day.

    Attributes:
        weekdays: days of the week it names, Monday 0; none when it is only numbered or named.
        name: of the session.
        minutes: to be had, or None.
        confidence: 0 to 1.
        off: whether it is a day without training.
        by_split: whether only words such as ``push`` or ``upper`` make it a heading.
        week: number of the week it stands in, or None.
    """

    weekdays: tuple[int, ...]
    name: str
    minutes: int | None = None
    confidence: float = AS_WRITTEN
    off: bool = False
    by_split: bool = False
    week: int | None = None


def bare(text: str) -> str:
    """A line without the marks around it and the small pictures in it."""
    return _MARKUP.sub("", _SIGNS.sub(" ", text)).strip()


def unlabelled(text: str) -> str:
    """A line without the number or letter before it."""
    return re.sub(r"\A(?:\d{1,2}|[A-Za-z])\s*[.):|]\s*", "", text)


def day_heading(text: str) -> DayHeading | None:
    """The day that a line heads, or None."""
    words = _WELL.sub("", bare(text))
    words = _weekday_mended(unlabelled(words) if words[:1].isdigit() else words)
    if not words or len(words) > 80:
        return None
    week = _WEEK.match(words)
    if week is not None and week["rest"]:
        inner = day_heading(week["rest"])
        if inner is not None and not inner.by_split:
            return DayHeading(
                inner.weekdays, inner.name, inner.minutes, inner.confidence, inner.off,
                week=int(week["number"]),
            )  # fmt: skip
    together = _DAYS_TOGETHER.match(words)
    if together is not None:
        named = re.findall(_DAY, together["days"].lower())
        days = tuple(dict.fromkeys(WEEKDAYS[word] for word in named))
        return _made(days, together["name"], together["days"])
    counted = _COUNTED_DAY.match(words)
    if counted is not None:
        number = counted["number"] or _COUNTED[counted["word"].lower()]
        words = f"{counted['kind'] or counted['after']} {number}{counted['rest']}"
    match = HEADING.match(words)
    if match is not None:
        word = match["weekday"]
        given = word.capitalize() if word else f"{match['kind']} {match['number'].upper()}"
        return _made((WEEKDAYS[word.lower()],) if word else (), match["name"], given)
    short = _SHORT_DAY.match(text.strip(" #*_\t"))
    if short is not None:
        rest = short["name"] or short["inside"] or ""
        return _made((_SHORT[short["weekday"].lower()],), rest, short["weekday"])
    minutes = MINUTES.search(words)
    spare = words if minutes is None else words[: minutes.start()] + words[minutes.end() :]
    inside = _DAY_INSIDE.match(spare.rstrip(" /,-–—|)]")) or _DAY_INSIDE.match(
        spare.rstrip(" /,-–—|()[]")
    )
    if inside is not None and not re.search(r"\d\s*[x×]", inside["name"]):
        time = "" if minutes is None else f" {minutes[0]}"
        return _made((WEEKDAYS[inside["weekday"].lower()],), f"{inside['name']}{time}", "")
    return _by_split(words)


def _weekday_mended(words: str) -> str:
    """Words whose first is a weekday with a slip of the keyboard, without the slip."""
    first = re.match(r"[^\W\d_]{6,10}\b", words)
    if first is None or first[0].lower() in WEEKDAYS or not first[0].lower().endswith(_ENDINGS):
        return words
    return f"{_slipped(first[0].lower()) or first[0]}{words[first.end() :]}"


@cache
def _slipped(word: str) -> str | None:
    from rapidfuzz.distance import OSA

    allowed = 2 if len(word) > 6 else 1
    near = [day for day in WEEKDAYS if len(day) > 5 and OSA.distance(word, day) <= allowed]
    return near[0].capitalize() if len({WEEKDAYS[day] for day in near}) == 1 else None


def _made(weekdays: tuple[int, ...], rest: str, given: str) -> DayHeading:
    rest = _IS.sub("", _MORE_DAYS.sub("", rest))
    minutes = MINUTES.search(rest)
    if minutes is not None:
        rest = f"{rest[: minutes.start()]} {_LIMIT.sub('', rest[minutes.end() :])}"
    rest = " ".join(rest.split())
    shown = given.strip(" .,")
    name = rest.strip(" -–—:,.()[]*_#/|") or (shown.capitalize() if shown.islower() else shown)
    time = int(minutes[1]) if minutes is not None and 5 <= int(minutes[1]) <= 300 else None
    off = OFF.match(rest.strip(" -–—:,.()[]*_#")) is not None and bool(rest.strip())
    return DayHeading(weekdays, name, time, off=off)


_MORE_DAYS: Final = re.compile(r"\A\s*(?:(?:[&+]|and|und)\s*\d{1,2}\b\s*)+[:–-]*")
_IS: Final = re.compile(r"\A\s*(?:is|=|ist|est|es)\s+(?:for\s+|für\s+|pour\s+)?", re.IGNORECASE)
# How somebody who speaks begins.
_WELL: Final = re.compile(r"\A(?:(?:ok(?:ay)?|so|alright|now|and|right)\b[,.]?\s+)+", re.IGNORECASE)
_ENDINGS: Final = ("day", "dya", "tag", "di", "dag")
_LIMIT: Final = re.compile(r"\A\s*(?:max(?:imum)?|tops?|at\s+most|ca|approx)\b\.?", re.IGNORECASE)


def _by_split(words: str) -> DayHeading | None:
    minutes = MINUTES.search(words)
    name = words
    if minutes is not None:
        name = (words[: minutes.start()] + words[minutes.end() :]).strip(" -–—:,.()[]")
    pieces = [one for one in re.split(r"[\s/,&+()–—:.-]+", name.lower()) if one]
    if not pieces or not any(one in SPLIT_WORDS for one in pieces):
        return None
    if not all(one in SPLIT_WORDS or one in _FILLING for one in pieces):
        return None
    found = _made((), words, words)
    return DayHeading((), found.name, found.minutes, BY_CUSTOM, by_split=True)


def week_number(text: str) -> int | None:
    """The number of the week that a line heads, when it says nothing else that matters."""
    match = _WEEK.match(bare(text))
    if match is None or (match["rest"] and day_heading(match["rest"]) is not None):
        return None
    return int(match["number"])
