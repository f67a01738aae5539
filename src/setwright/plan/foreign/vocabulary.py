"""Words of exercise names brought to one spelling, and words that say how rather than what."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

# Shorthand, joined and misspelt words of the trade (common practice); ``|`` stands for a space.
SPELLINGS: Final[Mapping[str, str]] = {
    written: meant
    for meant, forms in {
        "barbell": "bb barbel barbells bbell",
        "dumbbell": "db dbs dumbbells dumbell dumbells dumbel dbell dumb|bell dumb|bells",
        "kettlebell": "kb kbs kettlebells kettle|bell",
        "bodyweight": "bw body|weight",
        "overhead": "oh over|head",
        "incline": "inc incl inclined 30|degree|incline 45|degree|incline 15|degree|incline "
        "low|incline slight|incline",
        "decline": "declined",
        "extension": "ext exts extn extensions extention extentions",
        "triceps": "tri tris tricep",
        "biceps": "bi bis bicep",
        "hamstring": "ham hams hammy hammies hamstrings hamm",
        "quad": "quads quadriceps quadricep",
        "glute": "glutes gluteus",
        "calf": "calves calve calfs",
        "delt": "delts deltoid deltoids",
        "machine": "mach machines mc",
        "smith": "smith|machine smith|mach multi|press smiths",
        "reverse": "rev reversed",
        "push up": "push|ups pushup pushups press|up press|ups pressup pressups",
        "pull up": "pull|ups pullup pullups",
        "chin up": "chin|ups chinup chinups chins chin",
        "sit up": "sit|ups situp situps",
        "step up": "step|ups stepup stepups",
        "push down": "pushdown pushdowns press|down press|downs pressdown pressdowns "
        "pull|down|triceps",
        "pull down": "pulldown pulldowns lat|pull|down lat|pull|downs lat|pulldown lat|pulldowns "
        "pull|downs latpulldown",
        "pull over": "pullover pullovers",
        "kick back": "kickback kickbacks",
        "roll out": "rollout rollouts",
        "cross over": "crossover crossovers",
        "bench press": "benchpress bench|presses",
        "leg press": "legpress leg|presses",
        "leg curl": "legcurl legcurls",
        "leg extension": "legextension legext",
        "deadlift": "dead|lift deadlifts deads dead dl dls",
        "romanian deadlift": "rdl rdls romanian|deads romanians romanian|dl",
        "stiff leg deadlift": "sldl sldls stiff|leg|deads straight|leg|deadlift "
        "straight|leg|deadlifts",
        "overhead press": "ohp ohps",
        "hip thrust": "hipthrust hipthrusts hip|thruster hip|thrusters",
        "good morning": "goodmorning goodmornings",
        "skull crusher": "skullcrusher skullcrushers skulls skull skulcrushers",
        "lateral raise": "lat|raise lat|raises lateral|raises side|raise side|raises lateral|lift "
        "side|lateral|raise side|lateral|raises side|lateral side|laterals laterals "
        "lateral|delt|raise side|delt|raise side|delt|raises",
        "front raise": "front|delt|raise front|delt|raises",
        "rear delt": "rear|deltoid rear|delts posterior|delt",
        "fly": "flye flyes flies flys",
        "pec deck": "pec|deck|fly pec|dec|fly pec|dec pecdeck pecdec peck|deck",
        "pec": "pecs",
        "ab": "abs abdominal abdominals",
        "crunch": "crunches",
        "single": "one 1 uni unilateral",
        "single arm": "sa one|armed single|armed 1arm one|handed single|hand one|hand 1|hand",
        "single leg": "sl one|legged single|legged 1leg",
        "stiff leg": "stiff|legged stiff|leged straight|legged",
        "straight arm": "straight|armed",
        "close grip": "cg narrow|grip close|grips closegrip cgrip close|hand",
        "neutral grip": "ng neutral parallel|grip hammer|grip",
        "wide grip": "wg widegrip",
        "underhand": "supinated reverse|grip underhand|grip supinated|grip under|hand",
        "overhand": "pronated overhand|grip pronated|grip over|hand",
        "ez": "ez|bar ezbar e|z|bar ez|curl|bar e|z curl|bar",
        "trapbar": "trap|bar hex|bar hexbar",
        "tbar": "t|bar",
        "chest supported": "cs chest|supp chestsupported chest|support incline|supported",
        "bent over": "bentover bent|over|barbell",
        "front squat": "fs fsq frontsquat",
        "back squat": "backsquat",
        "squat": "squats sq",
        "ab wheel": "abwheel ab|roller ab|wheels",
        "alternating": "alt alternate alternated",
        "bulgarian": "bulgarians bulg rear|foot|elevated rfe",
        "farmer": "farmers farmer|s",
        "adduction": "adductor adductors adductions adduct",
        "abduction": "abductor abductors abductions abduct",
        "row": "rows rowing",
        "military press": "mil|press military|presses",
        "back extension": "back|raise back|raises",
        "hyperextension": "hyper|extension hyper|extensions hyperextensions hypers",
        "dead bug": "deadbug deadbugs",
        "leg raise": "leg|lift leg|lifts",
        "curl": "curls crul",
        "landmine": "land|mine",
        "lowhigh": "low|to|high low|high",
        "highlow": "high|to|low high|low",
        "45 degree": "45 45|deg 45|degrees",
        "rower": "rowing|machine rower|machine",
        "wrist": "forearm|wrist",
    }.items()
    for written in (meant, *(one.replace("|", " ") for one in forms.split()))
}
# Words without meaning in a name.
FILLING: Final = frozenset(
    {
        "the", "a", "an", "with", "on", "using", "of", "for", "in", "at", "and", "to", "from", "w",
        "your", "exercise", "variation", "style", "type", "s", "do",
    }
)  # fmt: skip
# What a name's equipment is called, and what it must be made of (kit or resistance).
EQUIPMENT: Final[Mapping[str, tuple[str, ...]]] = {
    "barbell": ("barbell", "curl bar"),
    "dumbbell": ("dumbbells", "dumbbell"),
    "cable": ("cable",),
    "machine": ("machine",),
    "kettlebell": ("kettlebell", "kettlebells"),
    "band": ("band",),
    "bodyweight": ("bodyweight",),
    "plate": ("plates",),
    "trapbar": ("trap bar",),
}
# Muscles that a name may say beside what is done.
MUSCLES: Final = frozenset(
    {
        "triceps", "biceps", "lat", "quad", "hamstring", "glute", "pec", "chest", "delt",
        "shoulder", "ab", "calf", "back", "upper", "lower", "body", "rear", "side", "medial",
        "mid", "trap", "leg", "oblique", "core",
    }
)  # fmt: skip
# What is done, often left out: `dumbbell bench`, `standing calves`.
MOVEMENTS: Final = ("press", "raise", "curl", "fly", "row", "extension", "squat")
# How an exercise is done: kept as a note of it.
HOW: Final = (
    "weighted", "standing", "seated", "strict", "paused", "pause", "tempo", "slow", "slowly",
    "heavy", "light", "controlled", "alternating", "flat", "bilateral", "two arm", "both arm",
    "single arm",
    "single leg", "single", "wide grip", "close grip", "neutral grip", "underhand", "overhand",
    "rope", "v bar", "straight bar", "ez", "bar", "handle", "v handle", "attachment", "kneeling",
    "deep", "full range", "full rom", "optional", "explosive", "main lift", "finisher", "working",
    "top", "top set", "back off", "backoff", "any", "your choice", "choice", "elbow in", "strap",
    "loaded", "plate loaded", "medium grip", "grip",
    "in front", "dropset", "drop set",
)  # fmt: skip
