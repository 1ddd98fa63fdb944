"""How far a general library gets on the network of a whole engine, and how long it takes beside the program itself.

Reads networks of growing size as JSON lines, each with the program's own answer and time; goes on until the library fails
or needs more than a minute. The tables are made by the product formula here, since enumerating who produced which grade
would take longer than everything else; the time counted is that of the library's own work.
"""

import json
import math
import os
import sys
import threading
import time

import peer

PATIENCE = 60.0


def by_grade(makers):
    """The chance of each greatest grade: the product of being at most that, less the product of being less."""
    chances, below = [], 0.0
    for grade in range(peer.GRADES):
        at_most = 1.0
        for maker in makers:
            at_most *= maker["grades"]["at_most"][grade]
        chances.append(at_most - below)
        below = at_most
    return chances


peer.by_grade = by_grade


def asked(network):
    model, causes, places, observations = peer.build(network)
    start = time.perf_counter()
    inference = peer.VariableElimination(model)
    evidence = {name: 0 for name in observations}
    of = lambda name: [float(p) for p in inference.query([name], evidence, show_progress=False).values]
    answer = [of(name)[1] for name in causes], [of(name) for name in places]
    return time.perf_counter() - start, answer


def close(told, answer):
    """Whether the two agree to 1e-9."""
    shared, places = answer
    rows = [row for place in told["places"] for row in place]
    ours = told["shared"] + [x / sum(row) for row in rows for x in row]
    theirs = shared + [x for row in places for x in row]
    return len(ours) == len(theirs) and all(abs(a - b) < 1e-9 for a, b in zip(ours, theirs))


def main():
    largest, gave_up = None, None
    for number, line in enumerate(sys.stdin, 1):
        told, result = json.loads(line), []

        def work():
            try:
                result.append(asked(told["network"]))
            except Exception as error:
                result.append(error)

        thread = threading.Thread(target=work, daemon=True)
        thread.start()
        thread.join(PATIENCE)
        if not result:
            gave_up = f"more than {PATIENCE:.0f} s"
            break
        if isinstance(result[0], Exception):
            gave_up = f"{type(result[0]).__name__}: {result[0]}"[:120]
            break
        seconds, answer = result[0]
        if any(math.isnan(x) for row in [answer[0], *answer[1]] for x in row):
            gave_up = "its product of likelihoods becomes zero, and every answer not a number"
            break
        if not close(told, answer):
            sys.exit(f"The two don't agree on the network of {number} places.")
        largest = number, told["observations"], told["ours_ms"], seconds * 1e3
    if largest is None:
        sys.exit(f"The library can't do the smallest network: {gave_up}")
    places, observations, ours, theirs = largest
    print(f"The largest network that pgmpy {peer.pgmpy.__version__} does: {places} places, {observations} observations")
    print(f"  ours {ours:.2f} ms, pgmpy {theirs:.0f} ms: ratio {ours / theirs:.5f}")
    if gave_up:
        print(f"  with one place more it gives up: {gave_up}")


main()
sys.stdout.flush()
# A computation that was given up may still be running.
os._exit(0)
