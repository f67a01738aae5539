"""Fit the weight of muscle length in the growth figure: ``python scripts/fit_growth.py``.

Pools the open data of sites where it is there, fits, and writes docs/growth.md and
docs/pictures/growth-against-trials.png and .svg. The weight itself stands in
src/setwright/mechanics/growth.py; the script says so when it has to be changed by hand.
"""

import growth_at_lengths
import growth_page
from growth_trials import trials


def main() -> None:
    """Pool, fit, write and print."""
    sites = growth_at_lengths.read_sites()
    if sites is None:
        print("The open data of sites is not here; its pooled figures are taken as committed.")
    else:
        growth_at_lengths.write(sites)
    print(growth_page.write(trials()))


if __name__ == "__main__":
    main()
