"""Figures of foil: of its sheets, and of pieces cut from them."""

import math

import numpy as np

from flake import Flake, leach
from records import Reading, Session
from uncertain import log, mean, nominal, piecewise, root

# Correction for thickness over spacing of a four-point probe: Smits 1958, table III.
SMITS = [
    (0, 1), (0.3, 1), (0.4, 0.9995), (0.5, 0.9974), (0.5555, 0.9948), (0.625, 0.9898), (0.7143, 0.9797),
    (0.8333, 0.96), (1, 0.9215), (1.1111, 0.8907), (1.25, 0.8491), (1.4286, 0.7938), (1.6667, 0.7225), (2, 0.6337),
]


class Foil(Flake):
    def run(self):
        if self.record.get('sheets'):
            self.sheets()
        self.pulls()
        self.compression()
        self.electrical()
        for key in ['leachable-chloride', 'leachable-fluoride']:
            leach(self, key)
        self.repeated(
            'oxidation-loss', 'oxidation-loss', '%',
            lambda _, take, __: (take('dry', 'g', 'mass') - take('end', 'g', 'mass')) / take('dry', 'g', 'mass') * 100,
        )
        self.clamped()
        self.thermal()
        self.roll()
        return self

    def sheet_session(self, key):
        measured = self.record.get('measured') or {}
        rows = {**(self.grade.get('measured') or {}), **(self.grade.get('limits') or {})}
        named = self.records.one('methods', measured.get('method', '')) or {}
        method = measured.get('method') if named.get('quantity') == key else (rows.get(key) or {}).get('method')
        instruments = {**(self.record.get('instruments') or {}), **(measured.get('instruments') or {})}
        return Session(self.records, self.lot, measured.get('tested') or self.record['made'], method, instruments)

    def sheets(self):
        crystal = self.records.arithmetic.make(2.26, [('crystal', 'crystal', math.inf, 0.007 / math.sqrt(3))])
        thick, areal, dense, along, across = [], [], [], [], []
        for sheet in self.record['sheets']:
            for key, tapers in (('taper-along', along), ('taper-across', across)):
                tapers.extend(self.taper(key, sheet))
            # Each figure may name a method, and with it instruments, of its own.
            thick.append(self.thickness(self.sheet_session('thickness'), sheet))
            mass, area = self.size_of(self.sheet_session('areal-mass'), sheet)
            areal.append(mass / area * 1e6)
            session = self.sheet_session('foil-density')
            mass, area = self.size_of(session, sheet)
            dense.append(mass / (area * self.thickness(session, sheet)) * 1000)
        self.each = {'thickness': thick, 'areal-mass': areal, 'foil-density': dense}
        self.each['porosity'] = [100 - one / crystal * 100 for one in dense]
        if along:
            self.each.update({'taper-along': along, 'taper-across': across})
        # The scatter between sheets is the product's, and no part of the uncertainty.
        self.figures.update({key: mean(each) for key, each in self.each.items()})

    def thickness(self, session, sheet):
        what = f"sheet {sheet['id']} thickness"
        places = [session.read(one, 'mm', 'thickness', f'{what} {index}') for index, one in enumerate(sheet['thickness'])]
        return session.mean(places, what, 'mm')

    def taper(self, key, sheet):
        """Rise of the plane of least squares, by the pseudo-inverse; none where no plane is told."""
        places = sheet.get('positions') or (self.record.get('measured') or {}).get('positions') or []
        if len(places) < 4 or len(places) != len(sheet['thickness']):
            return []
        session = self.sheet_session(key)
        what = f"sheet {sheet['id']} thickness"
        design = np.array([[1.0] + [Reading(place[name], 'mm').value for name in 'xy'] for place in places])
        if np.linalg.matrix_rank(design) < 3:
            return []
        ts = [session.read(one, 'mm', 'thickness', f'{what} {index}') for index, one in enumerate(sheet['thickness'])]
        solver = np.linalg.pinv(design)
        values = np.array([nominal(t) for t in ts])
        left = values - design @ (solver @ values)
        freedom = len(ts) - 3
        s = math.sqrt(left @ left / freedom)
        weights = solver[1 if key == 'taper-along' else 2]
        pool = f'{self.lot} {what} about the plane'
        noise = self.records.arithmetic.make(0.0, [(f'{pool} {i}', pool, freedom, w * s) for i, w in enumerate(weights)])
        slope = sum((float(w) * t for w, t in zip(weights, ts)), noise)
        side = 'length' if key == 'taper-along' else 'width'
        return [slope * session.read(sheet[side], 'mm', 'length', f"sheet {sheet['id']} {side}")]

    def size_of(self, session, sheet):
        read = lambda name, unit, role: session.read(sheet[name], unit, role, f"sheet {sheet['id']} {name}")
        return read('mass', 'g', 'mass'), read('length', 'mm', 'length') * read('width', 'mm', 'length')

    def pulls(self):
        for way in ['along', 'across']:
            keep = lambda one, way=way: one['direction'] == way
            per_width = lambda take: take('force', 'N', 'force') / take('width', 'mm', 'length')
            alike = self.tests.get('tensile') and self.is_alike('tensile', 'MPa')
            self.repeated(
                'tensile', f'tensile-{way}', 'MPa',
                lambda _, take, __: per_width(take) / take('thickness', 'mm', 'thickness'), alike=alike, keep=keep,
            )
            self.repeated('tensile', f'force-per-width-{way}', 'N/mm', lambda _, take, __: per_width(take), keep=keep)

    def is_alike(self, block, unit):
        """Whether the method states its repeatability for a sister quantity in the same unit."""
        named = (self.session(block, '').method or {}).get('quantity', '')
        return named.startswith('tensile') and unit == 'MPa'

    def compression(self):
        under = lambda take: [take(one, 'mm', 'thickness') for one in ('preload', 'loaded', 'recovered')]

        def figure(of):
            return lambda _, take, __: of(*under(take)) * 100

        self.repeated('compression', 'compressibility', '%', figure(lambda p, m, b: (p - m) / p))
        self.repeated('compression', 'recovery', '%', figure(lambda p, m, b: (b - m) / (p - m)))
        self.repeated('compression', 'resiliency', '%', figure(lambda p, m, b: (b - m) / m))

    def electrical(self):
        test = self.tests.get('sheet-resistance')
        if test:
            session = self.session('sheet-resistance', 'sheet-resistance')
            spacing = session.read(test['spacing'], 'mm', 'length', 'spacing')
            geometry = math.pi / math.log(2)
            if 'diameter' in test:
                square = session.read(test['diameter'], 'mm', 'length', 'diameter') / spacing
                square = square * square
                geometry = math.pi / (log((square + 3) / (square - 3)) + math.log(2))
            xs, ys = map(np.array, zip(*SMITS))
            self.repeated(
                'sheet-resistance', 'sheet-resistance', 'mΩ',
                lambda _, take, __: geometry
                * piecewise(xs, ys, take('thickness', 'mm', 'thickness') / spacing)
                * take('voltage', 'mV', 'voltage') / take('current', 'mA', 'current') * 1000,
            )
        self.repeated('van-der-pauw-resistance', 'van-der-pauw-resistance', 'mΩ', van_der_pauw)
        self.repeated(
            'strip-resistance', 'resistivity', 'µΩ·m',
            lambda _, take, __: take('resistance', 'mΩ', 'resistance') * take('width', 'mm', 'length')
            * take('thickness', 'mm', 'thickness') / take('length', 'mm', 'length'),
        )
        if 'resistivity' in self.figures:
            self.figures['electrical-conductivity'] = 1000 / self.figures['resistivity']


    def clamped(self):
        self.repeated(
            'creep-relaxation', 'creep-relaxation', '%',
            lambda _, take, __: (take('initial', 'mm', 'length') - take('final', 'mm', 'length'))
            / take('initial', 'mm', 'length') * 100,
        )
        test = self.tests.get('gas-leak')
        if not test:
            return
        session = self.session('gas-leak', 'gas-leak')
        volume = session.read(test['volume'], 'mL', 'volume', 'volume')
        ring = session.read(test['diameter'], 'mm', 'length', 'ring') * math.pi
        molar = {'nitrogen': 28.014, 'helium': 4.0026, 'methane': 16.043}[test['gas']]

        def leak(_, take, reading):
            """Amounts of gas before and after, in mol; what went, over time and circumference."""
            def amount(when):
                pressure = take(f'absolute-{when}', 'kPa', 'pressure') * 1000
                return pressure * (volume * 1e-6) / ((take(f'temperature-{when}', '°C', 'temperature') + 273.15) * 8.314462618)
            time = self.records.stated(reading['time'], 's', f"{self.lot} leak, time {reading['time']}")
            return (amount('start') - amount('end')) * (molar * 1000) / (time * (ring / 1000))

        self.repeated('gas-leak', 'gas-leak', 'mg/(s·m)', leak)

    def roll(self):
        test = self.tests.get('roll')
        if not test:
            return
        session = self.session('roll', 'roll-length')
        lengths = [session.read(one, 'm', 'length', f'roll piece {index}') for index, one in enumerate(test['pieces'])]
        self.figures['roll-length'] = sum(lengths[1:], lengths[0])
        session = self.session('roll', 'roll-width')
        widths = [session.read(one, 'mm', 'width', f'roll width {index}') for index, one in enumerate(test['widths'])]
        self.each['roll-width'] = widths
        self.figures['roll-width'] = session.mean(widths, 'roll-width', 'mm')

    def thermal(self):
        test = self.tests.get('thermal-conductivity')
        if test:
            heat = self.records.stated(test['heat-capacity'], 'J/(g·K)', f'{self.lot} heat capacity') * self.figures['foil-density']
            self.repeated(
                'thermal-conductivity', 'thermal-conductivity', 'W/(m·K)',
                lambda _, take, __: take('diffusivity', 'mm²/s', 'diffusivity') * heat,
            )
        wanted = self.tests.get('strip-resistance', {}).get('thermal-estimate-at')
        if wanted:
            kelvin = self.records.stated(wanted, '°C', f'{self.lot} estimate at') + 273.15
            lorenz = self.records.arithmetic.make(6e-6, [('L', 'L', math.inf, 0.6e-6 / math.sqrt(3))])
            self.figures['thermal-conductivity-estimate'] = self.figures['electrical-conductivity'] * 1000 * kelvin * lorenz


def van_der_pauw(_, take, __):
    """exp(-pi Ra / R) + exp(-pi Rb / R) = 1, solved for R."""
    first, second = take('first', 'mΩ', 'resistance'), take('second', 'mΩ', 'resistance')
    part = lambda r, z: np.exp(-math.pi * r / z)

    def slopes(a, b, z):
        along, across = part(a, z), part(b, z)
        return -math.pi / z * along, -math.pi / z * across, math.pi / z**2 * (a * along + b * across)

    middle = math.pi / math.log(2) * (nominal(first) + nominal(second)) / 2
    return root(lambda a, b, z: part(a, z) + part(b, z) - 1, slopes, first, second, middle * 0.2, middle * 1.8)
