"""How long does SUNDIALS take through Python, on these equations, for the season of `checks/race`?

    python race.py [layers rings]     one grid, or 1 x 1 and 6 x 4

Prints tolerance, seconds, slopes, Jacobians, and how far any cell's temperature is from a run at a
hundredth of the tightest tolerance, at the days on which the race looks. The seconds are those that
this program computes; what else the machine does counts little.
"""

import sys
import time

import cases
import pile

LOOKS = (1.0, 2.0, 3.0, 5.0, 6.9, 8.0, 11.0, 16.0, 22.0, 32.0, 50.0, 75.0, 100.0, 120.0)
TOLERANCES = (1e-3, 1e-4, 1e-5)


def season(layers, rings):
    """As `season` in checks/race/src/growth.rs."""
    done = [
        cases.turn(7), cases.turn(14), cases.water(14, 25.0), cases.turn(28), cases.water(35, 25.0), cases.turn(45),
        cases.turn(70),
    ]
    return cases.case(
        "season", cases.box(1.0), cases.mild(15.0), cases.mixture(1), 120, (layers, rings), LOOKS, more=done
    )


def main():
    grids = [tuple(map(int, sys.argv[1:3]))] if len(sys.argv) > 2 else [(1, 1), (6, 4)]
    for layers, rings in grids:
        case = season(layers, rings)
        reference = pile.path(case, cases.PARAMETERS, TOLERANCES[-1] / 100)[0]
        for tolerance in TOLERANCES:
            start = time.process_time()
            rows, _, _, cost = pile.path(case, cases.PARAMETERS, tolerance)
            seconds = time.process_time() - start
            apart = max(
                abs(one - other) for a, b in zip(rows, reference) for one, other in zip(a["cells_c"], b["cells_c"])
            )
            print(
                f"{layers} x {rings} | {tolerance:g} | {seconds:.2f} s | {cost['slopes']} slopes, "
                f"{cost['jacobians']} Jacobians | {apart:.1e} K",
                flush=True,
            )


if __name__ == "__main__":
    main()
