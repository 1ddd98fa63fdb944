"""Posteriors of small networks by a general library, from full tables: the peer of the program's own computation.

Reads networks as JSON from standard input, writes the probability of every shared cause and of every state of every
place. Each observation's table is made by enumeration over who produced which grade, not by the product formula.
"""

import itertools
import json
import sys
import warnings

warnings.filterwarnings("ignore")

import logging

logging.disable(logging.WARNING)

import pgmpy
from pgmpy.factors.discrete import TabularCPD
from pgmpy.inference import VariableElimination
from pgmpy.models import DiscreteBayesianNetwork

GRADES = 5


def exactly(maker, grade):
    at_most = maker["grades"]["at_most"]
    return at_most[grade] - (at_most[grade - 1] if grade else 0.0)


def by_grade(makers):
    """The chance of each greatest grade, over every combination of what each maker produced."""
    chances = [0.0] * GRADES
    for grades in itertools.product(range(GRADES), repeat=len(makers)):
        chance = 1.0
        for maker, grade in zip(makers, grades):
            chance *= exactly(maker, grade)
        chances[max(grades)] += chance
    return chances


def seen(observation, makers):
    """The chance of what was observed, given who is there."""
    chances, observed = by_grade(makers), observation["observed"]
    if observed == "present":
        return sum(chances[1:])
    if "unreported" in observed:
        return chances[0] + observed["unreported"]["missed"] * sum(chances[1:])
    if "slight" in observed:
        return sum(chances[:2]) + observed["slight"]["missed"] * sum(chances[2:])
    if "grade" in observed:
        return chances[observed["grade"]]
    grade = observed["located"]
    made = [exactly(maker, grade) for maker in makers]
    here = sum(m * maker["share"] for m, maker in zip(made, makers))
    return chances[grade] * here / sum(made)


def build(network):
    """The library's network, with a node for each observation: 0 is what was observed, 1 anything else."""
    model, tables, observations, places = DiscreteBayesianNetwork(), [], [], []
    causes = [f"cause{n}" for n in range(len(network["priors"]))]
    model.add_nodes_from(causes)
    for name, prior in zip(causes, network["priors"]):
        tables.append(TabularCPD(name, 2, [[1 - prior], [prior]]))

    def add_observation(observation, root, own):
        parents = [causes[by] for by, _ in observation["shared"]]
        sizes = [2] * len(parents)
        for place in dict.fromkeys(filter(None, (root, own))):
            parents.append(place[0])
            sizes.append(place[1])
        rows = []
        for states in itertools.product(*(range(size) for size in sizes)):
            at = dict(zip(parents, states))
            makers = [observation["leak"]]
            makers += [maker for by, maker in observation["shared"] if at[causes[by]] == 1]
            if root:
                makers += [maker for by, maker in observation["root"] if at[root[0]] == by]
            makers += [maker for by, maker in observation["own"] if at[own[0]] == by]
            rows.append(seen(observation, makers))
        name = f"observation{len(observations)}"
        model.add_node(name)
        model.add_edges_from((parent, name) for parent in parents)
        values = [rows, [1 - row for row in rows]]
        tables.append(TabularCPD(name, 2, values, parents or None, sizes or None))
        observations.append(name)

    for number, site in enumerate(network["sites"]):
        root = (f"place{number}", len(site["states"]))
        model.add_node(root[0])
        tables.append(TabularCPD(root[0], root[1], [[prior] for prior in site["states"]]))
        places.append(root[0])
        for observation in site["observations"]:
            add_observation(observation, None, root)
        for nth, branch in enumerate(site["branches"]):
            own = (f"place{number}.{nth}", len(branch["states"][0]))
            model.add_edge(root[0], own[0])
            given = [list(column) for column in zip(*branch["states"])]
            tables.append(TabularCPD(own[0], own[1], given, [root[0]], [root[1]]))
            places.append(own[0])
            for observation in branch["observations"]:
                add_observation(observation, root, own)
    model.add_cpds(*tables)
    model.check_model()
    return model, causes, places, observations


def solve(network):
    model, causes, places, observations = build(network)
    inference, evidence = VariableElimination(model), {name: 0 for name in observations}

    def of(name):
        return [float(p) for p in inference.query([name], evidence, show_progress=False).values]

    return {"shared": [of(name)[1] for name in causes], "places": [of(name) for name in places]}


if __name__ == "__main__":
    networks = json.load(sys.stdin)
    print(json.dumps({"pgmpy": pgmpy.__version__, "python": sys.version.split()[0], "answers": [solve(n) for n in networks]}))
