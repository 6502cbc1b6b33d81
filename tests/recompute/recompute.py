"""Recompute every figure of a workshop edition from the records' readings, and compare.

    python3 recompute.py CONTENT SITE [DRAWS]

CONTENT is the folder of records, SITE a workshop edition built from it, DRAWS how many a Monte Carlo
takes. Formulas, propagation and the reading of records are this script's own: nothing of the program
is used. Exit status 1 where a figure differs, is missing, or is not known here.
"""

import json
import math
import sys
from collections import Counter
from pathlib import Path

from scipy import stats

from flake import Flake, reported_value
from foil import Foil
from panel import Panel
from process import Batch, Expansion, Pressing
from records import Reading, Records
from uncertain import Arithmetic, coverage_factor, degrees_of_freedom, nominal, standard_uncertainty

VALUE, FIRST_ORDER = 1e-9, 1e-5
# What a formula may bend within its uncertainties, beside five standard deviations of the drawing.
BEND = 0.01


def evaluate(folder, draws=0):
    """Figures of every lot and coating panel by its number, in the order lots are made from each other."""
    arithmetic = Arithmetic(draws)
    records = Records(folder, arithmetic)
    lots = {}
    kinds = [('batches', Flake, Batch), ('expansions', None, Expansion), ('foils', Foil, Pressing)]
    for kind, product_kind, process_kind in kinds:
        waiting = {number: record for number, [record] in records.kinds.get(kind, {}).items() if record.get('draft') != 'yes'}
        while waiting:
            number = next(n for n, one in waiting.items() if all(use['lot'] not in waiting for use in one.get('from', [])))
            record = waiting.pop(number)
            product = product_kind(records, number, record).run() if product_kind else None
            lots[number] = process_kind(records, number, record, product, lots).run()
    # Bare panels come before those that are held against them.
    panels = [(number, record) for number, [record] in records.kinds.get('panels', {}).items()]
    for number, record in sorted(panels, key=lambda one: (one[1]['kind'] != 'blank', one[0])):
        lots[number] = Panel(records, number, record, lots).run()
    return records, lots


class Comparison:
    def __init__(self, records, lots, drawn, draws):
        self.records, self.lots, self.drawn = records, lots, drawn
        self.by_draws = BEND + 5 / math.sqrt(2 * draws)
        self.causes, self.faults, self.counts = records.arithmetic.causes, [], Counter()

    def check(self, lot, key, what, theirs, ours, tolerance):
        if theirs is None or ours is None:
            if theirs is not ours:
                self.faults.append(f'{lot} {key}: {what} is {theirs}, recomputed {ours}')
        elif not abs(theirs - ours) <= tolerance * max(abs(theirs), abs(ours)):
            self.faults.append(f'{lot} {key}: {what} is {theirs!r}, recomputed {ours!r}')

    def lot(self, data):
        lot = self.lots.get(data['lot'])
        if lot is None:
            self.faults.append(f"{data['lot']}: no record of it was found")
            return
        product = lot.product
        ours = {**(product.figures if product else {}), **lot.figures}
        theirs = {**data['quantities'], **(data['process'] or {})}
        measured = {key: one for key, one in theirs.items() if one['basis'] == 'measured'}
        for key in ours.keys() - measured.keys():
            self.faults.append(f'{lot.lot} {key}: recomputed, but not in the data')
        self.figures(lot, measured, ours, product.limits if product else {})
        self.looked(lot.lot, data['visual'], lot.record.get('visual'))

    def looked(self, lot, theirs, record):
        """What a sampling plan accepts, by the distributions themselves."""
        if theirs is None or record is None or theirs['plan'] is None:
            if (theirs is None) != (record is None):
                self.faults.append(f'{lot} visual: in the data or the record alone')
            return
        plan, found = theirs['plan'], int(record['nonconforming'])
        n, ac = plan['sampleSize'], plan['acceptance']
        self.counts['sampling plan'] += 1
        self.check(lot, 'visual', 'sample', theirs['inspected'], n, 0)
        self.check(lot, 'visual', 'rejection number', plan['rejection'], ac + 1, 0)
        self.check(lot, 'visual', 'accepted at the AQL', plan['acceptedAtAql'], float(stats.binom.cdf(ac, n, float(record['aql']) / 100)), VALUE)
        self.check(lot, 'visual', 'accepted one time in ten', plan['acceptedOnceInTen'], float(stats.beta.ppf(0.9, ac + 1, n - ac)), VALUE)
        if theirs['accepted'] is not (found <= ac):
            self.faults.append(f"{lot} visual: accepted is {theirs['accepted']}, with {found} found and {ac} allowed")

    def figures(self, lot, theirs, ours, limits):
        for key, one in theirs.items():
            if one['source'] == 'external':
                self.reported(lot, key, one)
            elif key not in ours:
                self.faults.append(f'{lot.lot} {key}: this script does not know how to recompute it')
            else:
                self.figure(lot, key, one, ours[key], limits.get(key))

    def figure(self, lot, key, theirs, ours, below):
        self.counts[key] += 1
        number, u = lot.lot, standard_uncertainty(ours)
        self.check(number, key, 'reporting limit', theirs['below'], below, VALUE)
        if below is None:
            self.check(number, key, 'value', theirs['value'], nominal(ours), VALUE)
        df = degrees_of_freedom(ours, self.causes)
        k = coverage_factor(df)
        self.check(number, key, 'standard uncertainty', theirs['standardUncertainty'], u, FIRST_ORDER)
        self.check(number, key, 'degrees of freedom', theirs['effectiveDegreesOfFreedom'], None if math.isinf(df) else df, 0)
        self.check(number, key, 'coverage factor', theirs['coverageFactor'], k, VALUE)
        self.check(number, key, 'expanded uncertainty', theirs['expandedUncertainty'], k * u, FIRST_ORDER)
        twin = self.drawn[number]
        drawn = twin.figures.get(key)
        if drawn is None:
            drawn = twin.product.figures[key]
        self.check(number, key, 'standard uncertainty by draws', theirs['standardUncertainty'], standard_uncertainty(drawn), self.by_draws)
        self.probability(lot, key, theirs, nominal(ours), u)

    def probability(self, lot, key, theirs, value, u):
        """Of conformity, the figure taken as normal; of the single figure that decides, where one does."""
        limit, decides = theirs['limit'], theirs['decidedBy']
        if limit is None or theirs['conformityProbability'] is None:
            return
        if decides:
            names = [sheet['id'] for sheet in lot.record['sheets']] if lot.record.get('sheets') else []
            place = decides['place'].split()[-1]
            one = lot.product.each[key][names.index(place) if place in names else int(place) - 1]
            value, u = nominal(one), standard_uncertainty(one)
            self.check(lot.lot, key, 'deciding value', decides['value'], value, VALUE)
            k = coverage_factor(degrees_of_freedom(one, self.causes))
            self.check(lot.lot, key, 'deciding uncertainty', decides['expandedUncertainty'], k * u, FIRST_ORDER)
        upper = 1 if limit['max'] is None else stats.norm.cdf(limit['max'], value, u)
        lower = 0 if limit['min'] is None else stats.norm.cdf(limit['min'], value, u)
        self.counts['probability of conformity'] += 1
        self.check(lot.lot, key, 'probability of conformity', 1 + theirs['conformityProbability'], 1 + max(0.0, float(upper - lower)), FIRST_ORDER)

    def reported(self, lot, key, theirs):
        """A figure measured elsewhere has no readings: only what the report says is compared."""
        report = lot.record['reported'][key]
        self.counts[f'{key}, as reported'] += 1
        text = report.get('less-than') or report['value']
        unit = text.split(' ', 1)[1] if ' ' in text else '1'
        self.check(lot.lot, key, 'reported figure', theirs['below' if 'less-than' in report else 'value'], Reading(text, unit).value, VALUE)
        stated = report.get('expanded-uncertainty')
        self.check(lot.lot, key, 'reported uncertainty', theirs['expandedUncertainty'], Reading(stated, unit).value if stated else None, VALUE)


def main(content, site, draws='20000'):
    records, lots = evaluate(content)
    comparison = Comparison(records, lots, evaluate(content, int(draws))[1], int(draws))
    files = sorted(Path(site).glob('**/data.json'))
    seen = set()
    for path in files:
        data = json.loads(path.read_text(encoding='utf-8'))
        if data.get('format') == 'lotfolio-lot-data':
            seen.add(data['lot'])
            comparison.lot(data)
        if data.get('format') == 'lotfolio-panel-data':
            seen.add(data['panel'])
            comparison.lot({'lot': data['panel'], 'quantities': data['quantities'], 'process': None, 'visual': None})
    for number in sorted(lots.keys() - seen):
        comparison.faults.append(f'{number}: no data.json of it in the site')
    for key, count in sorted(comparison.counts.items()):
        print(f'{count:4d}  {key}')
    print(f'{sum(comparison.counts.values())} figures of {len(comparison.counts)} kinds, {len(seen)} lots and panels')
    for fault in comparison.faults:
        print(fault, file=sys.stderr)
    return 1 if comparison.faults or not comparison.counts else 0


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
