"""The intake as a form: the person and the screening; its lists are in ``intake_rows``."""

from __future__ import annotations

from typing import Any, get_args

from django import forms

from setwright.plan.intake import DAYS, AgeBand, Experience, Focus, Split

YES_NO = (("yes", "Yes"), ("no", "No"))
NEVER_DIAGNOSES = (
    "These answers cap effort and sets and say where a licensed professional comes first. They "
    "never diagnose. Ask the person; do not guess."
)
# Every question of the screening: label and what it means.
QUESTIONS = {
    "active_last_3_months": (
        "Active over the last three months",
        "Planned exercise of 30 minutes, three days a week. If not, the first week is smaller.",
    ),
    "symptoms": (
        "Symptoms",
        "Chest pain, fainting, dizziness, breathlessness, a racing heart, and the like. Yes: a "
        "licensed professional first.",
    ),
    "known_disease": ("A known disease", "Of heart, metabolism or kidneys."),
    "clearance": (
        "Cleared for training",
        "A licensed professional has said that training is all right.",
    ),
    "pregnant": ("Pregnant", "Effort is capped; the maternity provider clears training."),
    "high_blood_pressure": ("High blood pressure", "No held breath, no sets to failure."),
    "osteoporosis": ("Osteoporosis", "No loaded bending of the spine."),
    "hernia": ("Hernia", "Effort is capped."),
    "back_pain": ("Back pain", "Known pain is watched; it is no bar by itself."),
    "recent_surgery": ("Recent surgery", "The surgeon's note comes first."),
    "returning_after_break": (
        "Back after a break",
        "Four weeks or more without training: half the sets in the first week.",
    ),
}


def choices(kind: Any, empty: str | None = None) -> list[tuple[str, str]]:
    """Choices of a form from the words a document allows."""
    found = [(word, word[0].upper() + word[1:]) for word in get_args(kind)]
    return found if empty is None else [("", empty), *found]


def number_field(
    label: str, help_text: str = "", most: int = 20, **attrs: Any
) -> forms.CharField:  # fmt: skip
    """A figure, or several; what it may be is the document's to say."""
    widget = forms.TextInput(attrs={"inputmode": "decimal", "size": 7, **attrs})
    return forms.CharField(
        label=label, required=False, max_length=most, help_text=help_text, widget=widget
    )


class PersonForm(forms.Form):
    """Everything of an intake but its lists."""

    base = forms.IntegerField(required=False, widget=forms.HiddenInput)
    name = forms.CharField(max_length=80, label="Name")
    experience = forms.ChoiceField(
        choices=choices(Experience),
        label="Experience",
        initial="beginner",
        help_text="Beginner: under a year of regular training; intermediate: up to about five "
        "(common practice).",
    )
    age_band = forms.ChoiceField(choices=choices(AgeBand), label="Age", initial="18-39")
    sex = forms.ChoiceField(
        choices=[("unstated", "Not said"), ("female", "Female"), ("male", "Male")],
        label="Sex",
        required=False,
        help_text="For first loads and how fast sets tire. Not said is in between.",
    )
    body_mass_kg = number_field("Body mass, kg", "For exercises that lift the body.")
    stature_cm = number_field("Stature, cm")
    unit = forms.ChoiceField(
        choices=[("kg", "kg"), ("lb", "lb")], label="Loads are said in", required=False
    )
    setting = forms.ChoiceField(
        choices=[("alone", "Alone"), ("with a partner or staff", "With a partner or staff")],
        label="Trains",
        required=False,
        help_text="Alone under a free bar, two repetitions stay in reserve.",
    )
    split = forms.ChoiceField(
        choices=choices(Split),
        label="Split",
        required=False,
        help_text="Auto: the design finds it.",
    )
    cleared_on = forms.CharField(
        max_length=10,
        required=False,
        label="Day of the last clearance",
        help_text="It speaks for symptoms reported in training before that day.",
        widget=forms.DateInput(attrs={"type": "date"}),
    )
    gym = forms.ChoiceField(
        choices=[
            ("full gym", "A full gym"),
            ("machines", "Machines"),
            ("home dumbbells", "Dumbbells at home"),
            ("bodyweight", "Body weight"),
            ("listed", "Only the kit listed below"),
        ],
        label="Gym",
        initial="full gym",
        help_text="Kit listed below is there besides, and its loads replace the usual ones.",
    )
    seed = number_field(
        "Seed", "Any whole number: the same seed gives the same design.", inputmode="numeric"
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for key, (label, meaning) in QUESTIONS.items():
            self.fields[key] = forms.ChoiceField(
                choices=YES_NO,
                widget=forms.RadioSelect,
                label=label,
                help_text=meaning,
                initial=None if key == "active_last_3_months" else "no",
                error_messages={"required": "Yes or no?"},
            )
        for day in DAYS:
            label = day.capitalize()
            self.fields[f"{day}_minutes"] = number_field(f"{label}, minutes", inputmode="numeric")
            self.fields[f"{day}_focus"] = forms.ChoiceField(
                choices=choices(Focus, "found by the design"),
                required=False,
                label=f"{label}, focus",
            )

    def days(self) -> list[tuple[str, forms.BoundField, forms.BoundField]]:
        """Every day with its two fields."""
        return [(day.capitalize(), self[f"{day}_minutes"], self[f"{day}_focus"]) for day in DAYS]

    def questions(self) -> list[forms.BoundField]:
        """The questions of the screening, the day of the clearance after its question."""
        order = list(QUESTIONS)
        at = order.index("clearance") + 1
        return [self[name] for name in (*order[:at], "cleared_on", *order[at:])]
