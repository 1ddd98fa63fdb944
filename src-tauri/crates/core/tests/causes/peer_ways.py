"""Ways in by a general library, from full tables: the peer of what the program sums out in closed form.

Reads cases as JSON from standard input: the prior of a cause, its ways in with the share of its cases in which each was
open, and of each way what it leaves to be found. Writes for every case the probability of the cause, and of each way had
the cause been there.
"""

import json
import sys
import warnings

warnings.filterwarnings("ignore")

import logging

logging.disable(logging.WARNING)

from pgmpy.factors.discrete import TabularCPD
from pgmpy.inference import VariableElimination
from pgmpy.models import DiscreteBayesianNetwork


def solve(case):
    model, tables, evidence, ways = DiscreteBayesianNetwork(), [], {}, []
    model.add_node("cause")
    tables.append(TabularCPD("cause", 2, [[1 - case["prior"]], [case["prior"]]]))
    for nth, way in enumerate(case["ways"]):
        name, share = f"way{nth}", way["share"]
        ways.append(name)
        model.add_edge("cause", name)
        # Without the cause it matters to nobody whether the way was open: then it is as good as closed.
        tables.append(TabularCPD(name, 2, [[1, 1 - share], [0, share]], ["cause"], [2]))
        for number, find in enumerate(way["finds"]):
            found = f"{name}.find{number}"
            model.add_edge(name, found)
            stray, chance = find["stray"], find["chance"]
            tables.append(TabularCPD(found, 2, [[1 - stray, 1 - chance], [stray, chance]], [name], [2]))
            if find["seen"] is not None:
                evidence[found] = int(find["seen"])
    model.add_cpds(*tables)
    model.check_model()
    inference = VariableElimination(model)

    def present(name, known):
        return float(inference.query([name], known, show_progress=False).values[1])

    there = {**evidence, "cause": 1}
    return {"cause": present("cause", evidence), "ways": [present(way, there) for way in ways]}


if __name__ == "__main__":
    json.dump([solve(case) for case in json.load(sys.stdin)], sys.stdout)
