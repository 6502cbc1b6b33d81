"""Process figures: balances by mass along the chain of lots, the liquor around the flake, its gas."""

import math

from chemistry import HEAT_CAPACITY, HEATS, molar_mass
from records import Reading, Session
from uncertain import nominal, through

ACIDS = {'sulfuric acid': ('H2SO4', 2), 'nitric acid': ('HNO3', 1), 'phosphoric acid': ('H3PO4', 3)}
# Formula, hydrogen ions taken up, heat of taking up one in kJ/mol (NBS Tables, 1982), salt a hydrogen ion in g.
BASES = {'sodium hydrogen carbonate': ('NaHCO3', 1, -7.64, molar_mass('Na2SO4') / 2)}
# Molar conductivities at infinite dilution and 25 °C, S cm²/mol of charge.
HYDROGEN, SULFATE, SODIUM = 349.8, 80, 50.1

total = lambda parts: sum(parts[1:], parts[0]) if parts else 0.0


class Process:
    """Figures of one lot; `earlier` are those of the lots it was made from, by number."""

    def __init__(self, records, lot, record, product, earlier):
        self.records, self.lot, self.record = records, lot, record
        self.product, self.earlier = product, earlier
        self.step = Session(records, lot, record['made'], None, record.get('instruments'))
        self.figures = {}

    def grams(self, text, what):
        return self.step.read(text, 'g', 'mass', what)

    def put_in(self):
        return total([self.grams(use['mass'], f'in {index}') for index, use in enumerate(self.record['from'])])

    def along(self, key):
        """A yield over the lots used: their mass over the sum of what each came from; looks through blends."""
        return joined(self.earlier, self.record['from'], key)


def joined(earlier, uses, key):
    came_from = []
    for use in uses:
        lot = earlier.get(use['lot'])
        one = lot and lot.figures.get(key)
        if lot and one is None and lot.record.get('from') and lot.record.get('product'):
            one = joined(earlier, lot.record['from'], key)
        if one is None:
            return None
        came_from.append(Reading(use['mass'], 'g').value / one)
    return math.fsum(Reading(use['mass'], 'g').value for use in uses) / total(came_from)


class Batch(Process):
    def run(self):
        lines = self.record.get('charge') or []
        graphite = [line for line in lines if line['as'] == 'graphite']
        if graphite:
            self.yields(graphite)
        self.neutralising(lines)
        if any('does' in step for step in self.record.get('steps', [])):
            self.liquor(lines)
        return self

    def yields(self, graphite):
        charged = total([self.grams(line['mass'], f'graphite {index}') for index, line in enumerate(graphite)])
        product = self.grams(self.record['product']['mass'], 'product')
        self.figures['mass-yield'] = product / charged * 100
        lots = {line['material'] for line in graphite}
        stated = self.records.one('materials', graphite[0]['material']).get('moisture') if len(lots) == 1 else None
        damp = self.records.stated(stated, '%', f"{graphite[0]['material']} moisture") if stated else 0.0
        own = self.product.figures.get('moisture', 0.0)
        dry_in, dry_out = charged * (100 - damp) / 100, product * (100 - own) / 100
        uptake = (dry_out / dry_in - 1) * 100
        self.figures['uptake'] = uptake
        salt = self.record['product'].get('leachable-salt')
        if salt:
            rest = 100 - self.records.stated(salt, '%', f'{self.lot} salt')
            self.figures['uptake-without-salt'] = dry_out * rest / dry_in - 100
        self.stage(self.figures.get('uptake-without-salt', uptake))
        if nominal(uptake) < 0:
            return
        ceiling = uptake / (uptake + 100) * 100
        self.figures['loss-ceiling'] = ceiling
        acid = self.product.figures.get('acid-equivalent')
        if acid is not None:
            self.figures['sulfur-explained'] = acid / ((100 - own) / 100) / ceiling * 100

    def stage(self, uptake):
        """Carbon atoms per charge over the 24 of a first stage, were all of the uptake C24n HSO4 x H2SO4."""
        if nominal(uptake) <= 0:
            return
        x = self.records.arithmetic.make(2.25, [('x', 'x', math.inf, 0.25 / math.sqrt(3))])
        per_charge = (x * molar_mass('H2SO4') + molar_mass('HSO4')) / (uptake / 100)
        self.figures['stage-index'] = per_charge / molar_mass('C') / 24

    def part(self, line, substance):
        """Grams of a substance in a line of the charge, at its stated strength."""
        material = self.records.one('materials', line['material'])
        for one in material.get('composition', []):
            if one['substance'] == substance:
                return line['grams'] * self.records.stated(one['fraction'], '%', f"{line['material']} {substance}") / 100
        return None

    def hydrogen(self, lines):
        found = []
        for line in lines:
            for name, (formula, z) in ACIDS.items():
                mass = self.part(line, name)
                if mass is not None:
                    found.append(mass * (z / molar_mass(formula)))
        return total(found)

    def base(self, lines):
        """The base of neutralisers, and the hydrogen ions they can take up, mol."""
        for name, (formula, z, *_) in BASES.items():
            found = [mass for mass in (self.part(line, name) for line in lines) if mass is not None]
            if found:
                return name, total(found) * (z / molar_mass(formula))
        return None

    def weighed(self, lines):
        kinds = {line['material']: self.records.one('materials', line['material'])['kind'] for line in lines}
        return [
            {
                **line,
                'role': 'neutraliser' if line['as'] == 'other' and kinds[line['material']] == 'neutraliser' else line['as'],
                'grams': self.charged(line, index),
            }
            for index, line in enumerate(lines)
        ]

    def charged(self, line, index):
        """Grams as weighed, or of a volume at the density stated beside it."""
        if 'mass' in line:
            return self.grams(line['mass'], f'charged {index}')
        density = self.records.stated(line['density'], 'g/mL', f"{line['material']} density")
        return self.step.read(line['volume'], 'mL', 'volume', f'charged {index}') * density

    def neutralising(self, lines):
        lines = self.weighed(lines)
        base = self.base([line for line in lines if line['role'] == 'neutraliser'])
        acid = self.hydrogen([line for line in lines if line['role'] != 'neutraliser'])
        if base is None or nominal(acid) == 0:
            return
        name, _ = base
        formula, z, *_ = BASES[name]
        line = next(one for one in lines if one['role'] == 'neutraliser')
        strength = self.part({**line, 'grams': 1.0}, name)
        self.figures['neutraliser-demand'] = acid * (molar_mass(formula) / z) / strength

    def liquor(self, lines):
        """Follows acid, salt and liquor from step to step by balance of mass."""
        steps = self.record['steps']
        lines = [line for line in self.weighed(lines) if line['role'] != 'graphite']
        product = self.grams(self.record['product']['mass'], 'product')
        named = {material: index for index, step in enumerate(steps) for material in step.get('adds', [])}
        acts = [step.get('does') for step in steps]
        default = {'neutraliser': 'neutralise', 'water': 'quench'}

        def at(line):
            does = default.get(line['role'])
            return named.get(line['material'], acts.index(does) if does in acts else 0)

        liquor, acid, salt, before = 0.0, 0.0, 0.0, []
        for index, step in enumerate(steps):
            added = [line for line in lines if at(line) == index]
            water = self.grams(step['water'], f'water {index}') if 'water' in step else 0.0
            base = self.base(added)
            mixed = total([liquor, water, *(line['grams'] for line in added)])
            before.append((liquor, acid))
            if step.get('does') == 'quench':
                self.quench(lines, at, index, added, water, mixed)
            if step.get('does') == 'neutralise' and base:
                self.neutralise(base, acid, liquor, mixed)
            acid = acid + self.hydrogen(added)
            taken = base[1] if base and nominal(base[1]) <= nominal(acid) else (acid if base else 0.0)
            acid, salt, liquor = acid - taken, salt + taken, mixed
            if 'cake' in step:
                kept = self.grams(step['cake'], f'cake {index}') - product
                acid, salt, liquor = acid * kept / liquor, salt * kept / liquor, kept
        self.washed(acid, salt, self.base(lines))

    def quench(self, lines, at, index, added, water, mixed):
        charged = [line for line in lines if at(line) < index]
        of = lambda lines, name: total([one for one in (self.part(line, name) for line in lines) if one is not None])
        acid, own = of(charged, 'sulfuric acid'), of(charged, 'water')
        fresh = water + of(added, 'water')
        moles = acid / molar_mass('H2SO4')
        ratio = lambda grams: grams / molar_mass('H2O') / moles
        heat = moles * larger_heat(ratio(own), ratio(own + fresh)) * self.doubt()
        self.figures['dilution-rise'] = rise(heat, acid, mixed)

    def neutralise(self, base, acid, liquor, mixed):
        name, supplied = base
        self.figures['neutraliser-excess'] = supplied / acid
        grams = acid / 2 * molar_mass('H2SO4')
        taken = supplied if nominal(supplied) < nominal(acid) else acid
        diluting = taken / 2 * larger_heat((liquor - grams) / molar_mass('H2O') / (acid / 2), math.inf)
        heat = (diluting - taken * BASES[name][2]) * self.doubt()
        self.figures['neutralisation-rise'] = rise(heat, grams, mixed)

    def doubt(self):
        return self.records.arithmetic.make(1.0, [('heats', 'heats', math.inf, 0.05 / math.sqrt(3))])

    def washed(self, acid, salt, base):
        product = Reading(self.record['product']['mass'], 'g').value
        self.figures['washed-acid'] = acid / 2 * molar_mass('H2SO4') / product * 100
        if base:
            self.figures['washed-salt'] = salt * BASES[base[0]][3] / product * 100
        # 10 g of product in 100 mL: 100 g/L.
        per_litre = lambda mol: mol * 100 / product
        self.figures['washed-conductivity'] = (
            per_litre(acid) * (HYDROGEN + SULFATE) + per_litre(salt) * (SODIUM + SULFATE)
        ) * 1000


def folded(ratio):
    """r / (r + 1.8), 1 at infinite dilution."""
    return 1.0 if isinstance(ratio, float) and math.isinf(ratio) else ratio / (ratio + 1.8)


def larger_heat(start, end):
    at = lambda curve, ratio: through(curve, folded(ratio))
    heats = [at(curve, end) - at(curve, start) for curve in HEATS]
    return max(heats, key=nominal)


def rise(heat, acid, liquor):
    return heat * 1000 / (liquor * through(HEAT_CAPACITY, acid / liquor * 100))


class Expansion(Process):
    def run(self):
        worms = self.record['worms']
        fed, out = self.put_in(), self.grams(worms['mass'], 'worms')
        loss = (1 - out / fed) * 100
        self.figures['loss-on-expansion'] = loss
        if 'volume' in worms:
            volume = self.step.read(worms['volume'], 'mL', 'volume', 'worms volume')
            self.figures['worm-density'] = out / volume * 1000
            self.figures['run-expansion-volume'] = volume / fed
        yielded = self.along('mass-yield')
        if yielded is not None:
            self.figures['carbon-recovery'] = yielded * (100 - loss) / 100
        gone = fed * loss / 100
        molar_volume = 8.314462618 * 298.15 / 101.325
        self.figures['gas-bound'] = gone / molar_mass('H2O') * molar_volume
        dioxide = gone * (molar_mass('SO2') / molar_mass('H2SO4'))
        self.figures['sulfur-dioxide-bound'] = dioxide
        room = self.records.producer.get('room')
        if room:
            self.figures['sulfur-dioxide-in-room'] = dioxide * 1000 / Reading(room, 'm³').value
        return self


class Pressing(Process):
    def run(self):
        record = self.record
        instruments = {**(record.get('instruments') or {}), **((record.get('measured') or {}).get('instruments') or {})}
        self.step = Session(self.records, self.lot, record['made'], None, instruments)
        if 'saleable' in record:
            saleable = self.grams(record['saleable'], 'saleable')
        elif record.get('sheets'):
            saleable = total([self.grams(one['mass'], f"sheet {one['id']} mass") for one in record['sheets']])
        else:
            return self
        trimmed = saleable / self.put_in() * 100
        self.figures['trim-yield'] = trimmed
        recovered = self.along('carbon-recovery')
        if recovered is not None:
            self.figures['overall-yield'] = recovered * trimmed / 100
        return self
