"""Names of exercises in other languages, word by word: what each says in English (common usage)."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from functools import cache
from typing import Final

# `theirs = ours`, separated by `;`. Written with their accents; read with or without them.
_GERMAN: Final = """
bankdrücken = bench press; flachbankdrücken = bench press;
schrägbankdrücken = incline bench press; schrägbank = incline; schräg = incline; flachbank = flat;
negativbankdrücken = decline bench press; negativ = decline; enges = close grip; eng = close grip;
enger griff = close grip; breiter griff = wide grip; breit = wide grip;
neutraler griff = neutral grip; parallelgriff = neutral grip; untergriff = underhand;
obergriff = overhand; kurzhantel = dumbbell; kurzhanteln = dumbbell; kh = dumbbell;
langhantel = barbell; lh = barbell; sz stange = ez; sz = ez; stange = barbell; kabelzug = cable;
kabelturm = cable; kabel = cable; seilzug = cable; seil = rope; maschine = machine;
maschinen = machine; gerät = machine; multipresse = smith; drücken = press;
brustdrücken = chest press; brustpresse = chest press; schulterpresse = shoulder press;
schulterdrücken = shoulder press; überkopfdrücken = overhead press;
nackendrücken = behind neck press; kniebeuge = squat; kniebeugen = squat;
frontkniebeuge = front squat; frontkniebeugen = front squat; kreuzheben = deadlift;
rumänisches kreuzheben = romanian deadlift; rumänisch = romanian; rum = romanian;
gestreckt = stiff leg; gestreckten beinen = stiff leg; beinpresse = leg press;
beinstrecker = leg extension; beinstrecken = leg extension; beinbeuger = leg curl;
beinbeugen = leg curl; beincurl = leg curl; beincurls = leg curl; liegend = lying;
liegender = lying; liegendes = lying; sitzend = seated; sitzender = seated; sitzendes = seated;
stehend = standing; stehendes = standing; wadenheben = calf raise; waden = calf raise;
wadenpresse = calf press; ausfallschritt = lunge; ausfallschritte = lunge; gehend = walking;
gehende = walking; bulgarische kniebeuge = bulgarian split squat;
bulgarische kniebeugen = bulgarian split squat; bulgarische split squats = bulgarian split squat;
bulgarische ausfallschritte = bulgarian split squat; hüftheben = hip thrust;
beckenheben = glute bridge; klimmzug = pull up; klimmzüge = pull up; latzug = lat pulldown;
latziehen = lat pulldown; lat ziehen = lat pulldown; rudern = row; rudern sitzend = seated row;
rudern am kabel = cable row; kabelrudern = cable row; vorgebeugtes rudern = bent over row;
vorgebeugt = bent over; bulgarisch = bulgarian; aufrechtes rudern = upright row;
aufrecht = upright; einarmig = single arm; einarmiges = single arm; einbeinig = single leg;
einbeiniges = single leg; einbeinige = single leg; seitheben = lateral raise;
vorgebeugtes seitheben = bent over lateral raise; frontheben = front raise; butterfly = pec deck;
butterfly reverse = reverse pec deck; reverse butterfly = reverse pec deck; fliegende = fly;
kabelzug über kreuz = cable crossover; überzüge = pullover; überzug = pullover;
liegestütz = push up; liegestütze = push up; liegestützen = push up; bizepscurl = biceps curl;
bizepscurls = biceps curl; bizeps = biceps; trizeps = triceps; hammercurls = hammer curl;
konzentrationscurls = concentration curl; trizepsdrücken = triceps pushdown;
trizepsstrecken = triceps extension; trizepsdrücken überkopf = overhead triceps extension;
überkopf = overhead; stirndrücken = skull crusher; schulterheben = shrug; nackenheben = shrug;
rückenstrecker = back extension; bauchpresse = crunch; bauchmaschine = machine crunch;
beinheben hängend = hanging leg raise; hängendes beinheben = hanging leg raise;
beinheben = leg raise; hängend = hanging; beinheben im hang = hanging leg raise;
zusatzgewicht = weighted; knieheben = knee raise; unterarmstütz = plank; seitstütz = side plank;
abduktoren = hip abduction machine; abduktorenmaschine = hip abduction machine;
adduktoren = hip adduction machine; adduktorenmaschine = hip adduction machine; bank = bench
"""
_FRENCH: Final = """
développé couché = bench press; dc = bench press;
développé couché haltères = dumbbell bench press; développé incliné = incline bench press;
développé incliné haltères = incline dumbbell press; développé haltères = dumbbell press;
développé décliné = decline bench press; développé militaire = overhead press;
développé épaules = shoulder press; développé assis haltères = seated dumbbell press;
développé machine = machine chest press; haltère = dumbbell; haltères = dumbbell; barre = barbell;
barre ez = ez; poulie = cable; poulie haute = cable; poulie basse = cable; corde = rope;
soulevé de terre = deadlift; soulevé de terre roumain = romanian deadlift;
sdt roumain = romanian deadlift; sdt = deadlift;
soulevé de terre jambes tendues = stiff leg deadlift; roumain = romanian;
squat avant = front squat; squat arrière = back squat; presse à cuisses = leg press;
presse cuisses = leg press; presse inclinée = leg press; presse = leg press; fentes = lunge;
fentes marchées = walking lunge; fentes bulgares = bulgarian split squat;
squat bulgare = bulgarian split squat; fentes arrière = reverse lunge;
leg curl allongé = lying leg curl; leg curl assis = seated leg curl;
ischios allongé = lying leg curl; ischios assis = seated leg curl; allongé = lying;
couché = lying; assis = seated; assise = seated; debout = standing; mollets = calf raise;
mollets debout = standing calf raise; mollets assis = seated calf raise;
mollets à la presse = leg press calf raise; tractions = pull up; traction = pull up;
tirage vertical = lat pulldown; tirage poitrine = lat pulldown;
tirage horizontal = seated cable row; tirage menton = upright row; tirage visage = face pull;
rowing barre = barbell row; rowing haltère = dumbbell row; rowing machine = machine row;
rowing poulie = cable row; rowing = row; élévations latérales = lateral raise;
élévation latérale = lateral raise; élévations frontales = front raise; oiseau = rear delt fly;
oiseaux = rear delt fly; écarté couché = dumbbell fly; écartés couchés = dumbbell fly;
écarté = fly; écartés = fly; écartés à la poulie = cable fly; écartés poulie = cable fly;
écartés machine = pec deck; pompes = push up; curl barre = barbell curl;
curl haltères = dumbbell curl; curl pupitre = preacher curl; curl marteau = hammer curl;
curl marteaux = hammer curl; marteau = hammer; pupitre = preacher; curl incliné = incline curl;
incliné = incline; inclinée = incline; décliné = decline; barre au front = skull crusher;
extension triceps poulie = triceps pushdown; extensions triceps poulie = triceps pushdown;
extensions triceps à la poulie = triceps pushdown;
extension triceps à la poulie = triceps pushdown; extensions triceps corde = rope pushdown;
extensions nuque = overhead triceps extension; gainage = plank; gainage latéral = side plank;
abdos = crunch; relevé de jambes = leg raise; relevés de jambes = leg raise;
relevés de jambes suspendu = hanging leg raise; relevé de jambes suspendu = hanging leg raise;
pont fessier = glute bridge; relevé de bassin = hip thrust; haussements d épaules = shrug;
haussement d épaules = shrug; abducteurs = hip abduction machine;
adducteurs = hip adduction machine; extensions lombaires = back extension;
lombaires = back extension; banc à lombaires = back extension; unilatéral = single;
à un bras = single arm; une jambe = single leg; prise serrée = close grip;
prise neutre = neutral grip; prise large = wide grip; prise supination = underhand;
lesté = weighted; lestées = weighted; lestés = weighted; épaules = shoulder; cuisses = leg
"""
_SPANISH: Final = """
press de banca = bench press; press banca = bench press; press plano = bench press;
press inclinado = incline bench press; press de banca inclinado = incline bench press;
press inclinado con mancuernas = incline dumbbell press; press declinado = decline bench press;
press militar = overhead press; press de hombro = shoulder press;
press de hombros = shoulder press; press hombro = shoulder press; press de pecho = chest press;
mancuerna = dumbbell; mancuernas = dumbbell; barra = barbell; barra z = ez; polea = cable;
polea alta = cable; polea baja = cable; poleas = cable; cuerda = rope; máquina = machine;
maquina = machine; sentadilla = squat; sentadillas = squat; sentadilla frontal = front squat;
sentadilla búlgara = bulgarian split squat; sentadillas búlgaras = bulgarian split squat;
búlgaras = bulgarian split squat; sentadilla libre = back squat; sentadilla hack = hack squat;
peso muerto = deadlift; peso muerto rumano = romanian deadlift; rumano = romanian;
prensa = leg press; prensa de piernas = leg press; prensa inclinada = leg press;
extensión de piernas = leg extension; extensiones de piernas = leg extension;
extensión de cuádriceps = leg extension; extensiones de cuádriceps = leg extension;
curl femoral = leg curl; curl femoral tumbado = lying leg curl;
curl femoral sentado = seated leg curl; femoral tumbado = lying leg curl;
femoral sentado = seated leg curl; tumbado = lying; sentado = seated; de pie = standing;
elevación de gemelos = calf raise; gemelos = calf raise; gemelo = calf raise;
elevación de talones = calf raise; pantorrillas = calf raise; zancadas = lunge; zancada = lunge;
zancadas caminando = walking lunge; desplantes = lunge; caminando = walking; dominadas = pull up;
dominada = pull up; dominadas supinas = chin up; jalón al pecho = lat pulldown; jalón = pulldown;
remo = row; remo con barra = barbell row; remo con mancuerna = dumbbell row;
remo en polea = cable row; remo sentado = seated row; remo polea baja = cable row;
remo al mentón = upright row; remo gironda = cable row; elevaciones laterales = lateral raise;
elevación lateral = lateral raise; laterales = lateral raise; elevaciones frontales = front raise;
pájaros = rear delt fly; aperturas = dumbbell fly; aperturas con mancuernas = dumbbell fly;
aperturas en polea = cable fly; cruces en polea = cable crossover;
cruce de poleas = cable crossover; cruces = cable crossover; contractora = pec deck;
contractor = pec deck; fondos = dip; flexiones = push up; curl de bíceps = biceps curl;
curl con barra = barbell curl; curl con mancuernas = dumbbell curl; curl martillo = hammer curl;
martillo = hammer; curl predicador = preacher curl; predicador = preacher;
curl inclinado = incline curl; extensión de tríceps en polea = triceps pushdown;
extensiones de tríceps en polea = triceps pushdown; jalón de tríceps = triceps pushdown;
tríceps en polea = triceps pushdown; tríceps polea = triceps pushdown;
extensión de tríceps = triceps extension; press francés = skull crusher;
empuje de cadera = hip thrust; puente de glúteo = glute bridge; puente de glúteos = glute bridge;
encogimientos = shrug; plancha = plank; plancha lateral = side plank; abdominales = crunch;
elevación de piernas = leg raise; elevaciones de piernas = leg raise; colgado = hanging;
abductores = hip abduction machine; abducción de cadera = hip abduction machine;
aductores = hip adduction machine; aducción de cadera = hip adduction machine;
inclinado = incline; inclinada = incline; declinado = decline; a una mano = single arm;
unilateral = single; agarre cerrado = close grip; agarre neutro = neutral grip;
agarre ancho = wide grip; agarre supino = underhand; lastradas = weighted; lastre = weighted;
lastrado = weighted; patada de glúteo = glute kickback; patada de tríceps = triceps kickback;
buenos días = good morning; hiperextensiones = back extension; rueda abdominal = ab wheel
"""
_DUTCH: Final = """
bankdrukken = bench press; schuin bankdrukken = incline bench press; schuin = incline;
halter = dumbbell; halters = dumbbell; kniebuiging = squat; kniebuigingen = squat;
roemeense deadlift = romanian deadlift; roemeense = romanian; beenpers = leg press;
beenstrekken = leg extension; beenextensie = leg extension; beencurl = leg curl;
beenbuigen = leg curl; optrekken = pull up; roeien = row; kabelroeien = cable row;
zittend roeien = seated row; schouderpers = shoulder press; schouderdrukken = shoulder press;
zijwaarts heffen = lateral raise; zijheffen = lateral raise; kuiten = calf raise;
kuitheffen = calf raise; uitvalspas = lunge; uitvalspassen = lunge; opdrukken = push up;
buikspieren = crunch; liggend = lying; liggende = lying; zittend = seated; zittende = seated;
staand = standing; staande = standing; hangend = hanging; éénarmig = single arm;
eenarmig = single arm; kabels = cable; borstpers = chest press
"""
_ITALIAN_PORTUGUESE: Final = """
panca piana = bench press; panca inclinata = incline bench press; panca = bench press;
stacco = deadlift; stacco rumeno = romanian deadlift; trazioni = pull up; rematore = row;
alzate laterali = lateral raise; affondi = lunge; lento avanti = overhead press; croci = fly;
manubri = dumbbell; bilanciere = barbell; cavi = cable; pressa = leg press; polpacci = calf raise;
supino reto = bench press; supino inclinado = incline bench press; agachamento = squat;
levantamento terra = deadlift; terra romeno = romanian deadlift; barra fixa = pull up;
puxada = lat pulldown; remada = row; elevação lateral = lateral raise;
desenvolvimento = shoulder press; rosca direta = barbell curl; rosca martelo = hammer curl;
cadeira extensora = leg extension; mesa flexora = lying leg curl; panturrilha = calf raise;
halteres = dumbbell
"""
_SCANDINAVIAN: Final = """
benkpress = bench press; bänkpress = bench press; bænkpres = bench press; markløft = deadlift;
marklyft = deadlift; dødløft = deadlift; knebøy = squat; knäböj = squat; squats = squat;
rumensk markløft = romanian deadlift; rumensk = romanian; roing = row; rodd = row;
sittende roing = seated row; nedtrekk = lat pulldown; latsdrag = lat pulldown;
sidehev = lateral raise; sidolyft = lateral raise; skulderpress = shoulder press;
axelpress = shoulder press; beinpress = leg press; benpress = leg press; benspark = leg extension;
tåhev = calf raise; tåhävning = calf raise; utfall = lunge; manualer = dumbbell;
hantlar = dumbbell; stående = standing; sittende = seated; liggende = lying;
kroppsheving = pull up; kroppshev = chin up
"""
_TABLES: Final = (_GERMAN, _FRENCH, _SPANISH, _DUTCH, _ITALIAN_PORTUGUESE, _SCANDINAVIAN)
# Of adjectives and of plurals.
_ENDINGS: Final = ("es", "er", "en", "em", "e", "s", "n")
_JOINTS: Final = re.compile(
    r"\b(?:am|an|der|die|das|dem|den|mit|auf|im|zum|zur|beim|à|a|la|le|les|du|de|des|au|aux|sur|en|"
    r"al|con|el|los|las|op|aan|met|het|alla|ai|con|na|no|i|på|med|av)\b"
)


def folded(words: str) -> str:
    """Words in small letters without accents; only letters, figures and single spaces."""
    plain = (
        words.lower()
        .replace("°", " degree ")
        .replace("ß", "ss")
        .replace("ø", "o")
        .replace("æ", "ae")
    )
    apart = unicodedata.normalize("NFKD", plain)
    letters = "".join(one for one in apart if not unicodedata.combining(one))
    return " ".join(re.sub(r"[^\w]+|_", " ", letters).split())


@cache
def _known() -> Mapping[str, str]:
    known = {}
    for table in _TABLES:
        for line in table.replace("\n", " ").split(";"):
            theirs, _, ours = line.partition("=")
            for form in (theirs, _spelled_out(theirs)):
                known[folded(form)] = ours.strip()
                known[_bare(folded(form))] = ours.strip()
    return known


def _spelled_out(words: str) -> str:
    """``ü`` written as ``ue``, as on a keyboard without it."""
    return words.replace("ü", "ue").replace("ä", "ae").replace("ö", "oe")


def _bare(words: str) -> str:
    return " ".join(_JOINTS.sub(" ", words).split()) or words


@cache
def _longest() -> int:
    return max(len(one.split()) for one in _known())


def in_english(words: str) -> str:
    """Words of an exercise with those of other languages put into English, the longest first.

    >>> in_english("Schrägbankdrücken mit Kurzhanteln")
    'incline bench press dumbbell'
    """
    spelled = folded(words)
    kept = spelled.split()
    bare = _bare(spelled).split()
    read = _translated(bare)
    return " ".join(read) if read != bare else " ".join(kept)


def _translated(tokens: list[str]) -> list[str]:
    known, at, out = _known(), 0, []
    while at < len(tokens):
        for length in range(min(_longest(), len(tokens) - at), 0, -1):
            found = known.get(" ".join(tokens[at : at + length]))
            if found is not None:
                out += found.split()
                at += length
                break
        else:
            out += _compound(tokens[at])
            at += 1
    return out


def _compound(token: str) -> list[str]:
    """A word made of two that are known, such as ``langhantelrudern``."""
    known = _known()
    for ending in _ENDINGS:
        base = known.get(token.removesuffix(ending)) if token.endswith(ending) else None
        if base is not None:
            return base.split()
    for cut in range(len(token) - 3, 2, -1):
        first, second = token[:cut], token[cut:]
        if first in known and second in known:
            return [*known[first].split(), *known[second].split()]
    return [token]
