"""How far a bias of calls is acted on."""

import pytest

from setwright.training.effort import asked, known_bias
from setwright.training.lifter import Honesty


@pytest.mark.parametrize(
    ("honest", "acted"),
    [
        # A quarter of the normal law lies more than 0.674 SD, 0.526 half widths, below.
        (Honesty(1.5, 0.5, 2.5, 20), 1.5 - 0.526),
        (Honesty(0.3, -0.7, 1.3, 20), 0.0),
        # To stop earlier needs no further evidence.
        (Honesty(-0.6, -1.6, 0.4, 20), -0.6),
        (Honesty(-2.0, -3.0, -1.0, 20), -1.0),
        (Honesty(4.0, 3.5, 4.5, 20), 2.0),
        (Honesty(1.5, 0.5, 2.5, 2), 0.0),
    ],
)
def test_more_effort_is_asked_only_as_far_as_the_bias_is_sure(honest, acted):
    assert known_bias(honest) == pytest.approx(acted, abs=0.001)


def test_a_surer_estimate_is_acted_on_further():
    wide, narrow = Honesty(1.5, 0.2, 2.8, 9), Honesty(1.5, 1.2, 1.8, 30)
    assert asked(2.0, known_bias(narrow), 0.0).felt <= asked(2.0, known_bias(wide), 0.0).felt
    assert known_bias(narrow) > known_bias(wide)
