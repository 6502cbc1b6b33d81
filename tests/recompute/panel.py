"""Figures of coating panels: loading, film, char, and time at the back, each by its definition."""

import math
import re

from records import Reading, Session
from uncertain import mean, nominal


def moment(text):
    """Seconds, and the step of the last digit: by the clock or from a beginning."""
    clock = re.search(r'(\d+):(\d\d)(?::(\d\d))?$', text)
    if clock:
        hours, minutes, seconds = (int(part or 0) for part in clock.groups())
        return 3600 * hours + 60 * minutes + seconds, 1 if clock[3] else 60
    reading = Reading(text, 's')
    return reading.value, reading.step


class Panel:
    product = None

    def __init__(self, records, lot, record, lots):
        self.records, self.lot, self.record, self.lots = records, lot, record, lots
        self.figures = {}

    def session(self, part=None):
        own = (self.record.get(part) or {}).get('instruments') or {} if part else {}
        day = self.record.get('tested') or self.record['made']
        return Session(self.records, self.lot, day, self.record.get('method'), {**(self.record.get('instruments') or {}), **own})

    def run(self):
        self.paint()
        for part, key, role in [('wet-film', 'wet-film', 'thickness'), ('dry-film', 'dry-film', 'thickness'), ('char', 'char-height', 'length')]:
            if part in self.record:
                session = self.session(part)
                read = [session.read(one, 'mm', role, f'{key} {index}') for index, one in enumerate(self.record[part]['readings'])]
                self.figures[key] = session.mean(read, key, 'mm')
        self.film()
        self.rise()
        self.times()
        return self

    def paint(self):
        """Of flake weighed into paint whose solids were dried here, as in the demo."""
        if 'solids' in self.record:
            session = self.session('solids')
            grams = lambda one, name, index: session.read(one[name], 'g', 'mass', f'solids {index} {name}')
            dried = []
            for index, one in enumerate(self.record['solids']['readings']):
                dish, before, after = (grams(one, name, index) for name in ('dish', 'before', 'after'))
                dried.append((after - dish) / (before - dish) * 100)
            self.figures['paint-solids'] = session.mean(dried, 'paint-solids', '%')
        if 'loading' in self.record:
            session = self.session()
            flake, paint = (session.read(self.record['loading'][name], 'g', 'mass', f'loading {name}') for name in ('flake', 'paint'))
            self.figures['wet-loading'] = flake / (flake + paint) * 100
            solid = paint * self.figures['paint-solids'] / 100
            self.figures['dry-loading'] = flake / (flake + solid) * 100

    def film(self):
        if 'mass' not in self.record:
            return
        session, plate = self.session(), self.record['plate']
        bare, coated = (session.read(self.record['mass'][name], 'g', 'mass', f'plate {name}') for name in ('plate', 'coated'))
        metres = [session.read(plate[name], 'mm', 'length', f'plate {name}') / 1000 for name in ('length', 'width')]
        film = self.figures['film-mass'] = (coated - bare) / (metres[0] * metres[1])
        # g/m² over mm is kg/m³.
        self.figures['film-density'] = film / self.figures['dry-film'] / 1000
        if 'dry-loading' in self.figures:
            self.figures['active-mass'] = film * self.figures['dry-loading'] / 100

    def rise(self):
        if 'char-height' not in self.figures:
            return
        high, film = self.figures['char-height'], self.figures['dry-film']
        self.figures['char-ratio'] = high / film
        flake = self.lots.get(self.record.get('lot'))
        if flake and 'active-mass' in self.figures:
            volumes = flake.product.figures
            volume = volumes.get('expansion-at-600', volumes.get('expansion-volume'))
            ceiling = self.figures['char-ceiling'] = volume * self.figures['active-mass'] / 1000
            self.figures['char-efficiency'] = (high - film) / ceiling * 100

    def time_to(self, celsius):
        """Minutes from the start of heating; None where the log does not come so far."""
        session, log = self.session(), self.record['log']
        temperatures = [Reading(one['temperature'], '°C').value for one in log]
        above = next((index for index, one in enumerate(temperatures) if one >= celsius), None)
        if above is None:
            return None
        make = self.records.arithmetic.make

        def at(index):
            seconds, step = moment(log[index]['at'])
            cause = (f'{self.lot} moment {index}', 'moments', math.inf, step / 2 / math.sqrt(3))
            return make(seconds, [cause])

        start = self.record['start']
        name = f'{self.lot} start'
        begun = make(moment(start['at'])[0], [(name, name, math.inf, Reading(start['within'], 's').value / math.sqrt(3))])
        low, high = (session.read(log[index]['temperature'], '°C', 'temperature', f'log {index}') for index in (above - 1, above))
        early, late = at(above - 1), at(above)
        return (early + (late - early) * ((celsius - low) / (high - low)) - begun) / 60

    def times(self):
        until = Reading(self.record['until'], '°C').value
        own = self.time_to(until)
        if own is None:
            return
        self.figures['backside-time'] = own
        if 'bare' not in self.record:
            return
        bare = [self.lots[number].time_to(until) for number in self.record['bare']]
        values = [nominal(one) for one in bare]
        centre, n = math.fsum(values) / len(values), len(values)
        s = math.sqrt(math.fsum((one - centre) ** 2 for one in values) / (n - 1))
        pool = f"bare {' '.join(self.record['bare'])}"
        scatter = self.records.arithmetic.make(0.0, [(f'{pool} mean', pool, n - 1, s / math.sqrt(n))])
        gained = self.figures['time-gained'] = own - (mean(bare) + scatter)
        self.figures['gain-per-film'] = gained / self.figures['dry-film']
        for key, per in [('gain-per-film-mass', 'film-mass'), ('gain-per-active-mass', 'active-mass')]:
            if per in self.figures:
                self.figures[key] = gained * 60 / self.figures[per]
