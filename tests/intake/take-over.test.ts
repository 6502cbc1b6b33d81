import { expect, test } from 'vitest'
import { type Case, outcome, takenOver } from './taking-over.ts'

/** An instrument's file, the record before, and the record after. */
const cases: Readonly<Record<string, Case & { readonly after: string }>> = {
  'a gauge with a line for each reading': {
    record:
      "lot: X-1\nmeasured:\n  tested: 2026-03-14\nsheets:\n  - id: 1 # flat\n    mass: 5.1 g\n    thickness: ['', '', '']\n",
    mapping:
      'fills: sheets\nfile: { decimal: comma }\nskip: { Sheet: [Mean] }\ncolumns:\n  - { column: Sheet, to: id }\n  - { column: Thickness, to: thickness }\n  - { column: Remark }\n',
    file: 'Gauge 7;;\nSheet;Thickness [mm];Remark\n1;1,003;\n2;0,998;bent\n1;0,990;\nMean;0,997;\n',
    after:
      'lot: X-1\nmeasured:\n  tested: 2026-03-14\nsheets:\n  - id: 1 # flat\n    mass: 5.1 g\n    thickness: [1.003 mm, 0.990 mm]\n  - id: 2\n    thickness: [0.998 mm]\n'
  },
  'a gauge with a line for each place of a sheet': {
    record:
      "lot: X-1\nmeasured:\n  tested: 2026-03-14\nsheets:\n  - id: 1 # flat\n    mass: 5.1 g\n    thickness: ['', '', '']\n",
    mapping:
      'fills: thickness\nfile: { decimal: comma }\ncolumns:\n  - { column: Sheet, to: id }\n  - { column: X, to: x, unit: mm }\n  - { column: Y, to: y }\n  - { column: Thickness, to: thickness, unit: mm }\n',
    file: 'Sheet;X;Y (cm);Thickness\n1;10;1,0;1,003\n2;10;1,0;0,998\n1;90,5;1,0;0,990\n2;50;5,0;1,001\n',
    after:
      'lot: X-1\nmeasured:\n  tested: 2026-03-14\nsheets:\n  - id: 1 # flat\n    mass: 5.1 g\n    thickness: [1.003 mm, 0.990 mm]\n    positions:\n      - { x: 10 mm, y: 1.0 cm }\n      - { x: 90.5 mm, y: 1.0 cm }\n  - id: 2\n    thickness: [0.998 mm, 1.001 mm]\n    positions:\n      - { x: 10 mm, y: 1.0 cm }\n      - { x: 50 mm, y: 5.0 cm }\n'
  },
  'a gauge with a line for each sheet': {
    record: 'lot: X-1\nmeasured: { tested: 2026-03-14 }\n',
    mapping:
      'fills: sheets\ncolumns:\n  - { column: Sheet, to: id }\n  - { column: m, to: mass, unit: g }\n  - { column: l, to: length }\n  - { column: t1, to: thickness, unit: µm }\n  - { column: t2, to: thickness, unit: µm }\n',
    file: '\uFEFFSheet,m,l (mm),t1,t2\nA,5.68,90.1,1003,998\nB,5.70,90.0,1010,\n',
    after:
      'lot: X-1\nmeasured: { tested: 2026-03-14, sources: [{ file: export.csv, sha256: aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa, written: 2026-03-14 14:09Z }] }\nsheets:\n  - id: A\n    mass: 5.68 g\n    length: 90.1 mm\n    thickness: [1003 µm, 998 µm]\n  - id: B\n    mass: 5.70 g\n    length: 90.0 mm\n    thickness: [1010 µm]\n'
  },
  'a balance with a line for each sieve, in any order': {
    folder: 'batches',
    record:
      "lot: X-1\ntests:\n  sieve:\n    tested: 2026-03-14\n    sieves: [500 µm, 300 µm]\n    readings:\n      - charged: # from the jar\n        retained: ['', '']\n        pan:\n",
    mapping:
      "fills: sieve\nreading: Run\ncolumns:\n  - { column: Charged, to: charged, unit: g }\n  - { column: Net, to: retained, unit: g, where: { Sieve: '500' } }\n  - { column: Net, to: retained, unit: g, where: { Sieve: '300' } }\n  - { column: Net, to: pan, unit: g, where: { Sieve: pan } }\n",
    file: 'Run\tSieve\tNet\tCharged\n1\tpan\t0.24\t50.02\n1\t300\t39.12\t50.02\n1\t500\t3.94\t50.02\n2\t500\t3.71\t49.97\n2\t300\t39.30\t49.97\n2\tpan\t0.21\t49.97\n',
    after:
      'lot: X-1\ntests:\n  sieve:\n    tested: 2026-03-14\n    sieves: [500 µm, 300 µm]\n    readings:\n      - charged: 50.02 g # from the jar\n        retained: [3.94 g, 39.12 g]\n        pan: 0.24 g\n      - charged: 49.97 g\n        retained: [3.71 g, 39.30 g]\n        pan: 0.21 g\n'
  },
  'a titrator with blanks among the samples': {
    folder: 'batches',
    record:
      "lot: X-1\ntests:\n  free-acid:\n    tested:\n    titrant: NA-1\n    blanks: ['', '']\n    readings:\n      - { mass: , titre: }\n      - { mass: , titre: }\n",
    mapping:
      'fills: free-acid\ncolumns:\n  - { column: Titre, to: blanks, unit: mL, where: { Kind: Blank } }\n  - { column: Titre, to: titre, unit: mL, where: { Kind: Sample } }\n  - { column: Mass, to: mass, unit: g, where: { Kind: Sample } }\n  - { column: Date, to: tested, date: day-month-year }\n',
    file: 'Kind;Mass;Titre;Date\nBlank;;0,05;3.4.2026\nSample;10,01;1,87;3.4.2026\nBlank;;0,07;3.4.2026\nSample;10,03;1,91;3.4.2026\n',
    after:
      'lot: X-1\ntests:\n  free-acid:\n    tested: 2026-04-03\n    titrant: NA-1\n    blanks: [0.05 mL, 0.07 mL]\n    readings:\n      - { mass: 10.01 g, titre: 1.87 mL }\n      - { mass: 10.03 g, titre: 1.91 mL }\n'
  },
  'a conductivity meter with its units in a line below the headings': {
    folder: 'batches',
    record: 'lot: X-1\ntests:\n',
    mapping:
      'fills: conductivity\nfile: { units-below: 1 }\nset: { water: 1.4 µS/cm }\ncolumns:\n  - { column: Cond, to: conductivity }\n  - { column: Temp, to: temperature }\n',
    file: 'Cond;Temp\nuS/cm;°C\n214;22.8\n219;23.1\n',
    tested: '2026-03-14',
    after:
      'lot: X-1\ntests:\n  conductivity:\n    water: 1.4 µS/cm\n    tested: 2026-03-14\n    readings:\n      - { conductivity: 214 µS/cm, temperature: 22.8 °C }\n      - { conductivity: 219 µS/cm, temperature: 23.1 °C }\n'
  },
  'the highest force of each curve of a tensile tester': {
    record:
      'lot: X-1\ntests:\n  tensile:\n    tested: 2026-03-14\n    readings:\n      - { direction: along, force: , width: 15.0 mm, thickness: 0.99 mm }\n      - { direction: across, force: , width: 15.0 mm, thickness: 1.01 mm }\n',
    mapping:
      'fills: tensile\nreading: Specimen\ncolumns:\n  - { column: Force, to: force, take: largest }\n  - { column: Extension }\n',
    file: 'Specimen,Extension (mm),Force (N)\n1,0.0,0.1\n1,0.1,9.84\n1,0.2,12.31\n1,0.3,2.0\n2,0.0,0.2\n2,0.2,11.07\n',
    after:
      'lot: X-1\ntests:\n  tensile:\n    tested: 2026-03-14\n    readings:\n      - { direction: along, force: 12.31 N, width: 15.0 mm, thickness: 0.99 mm }\n      - { direction: across, force: 11.07 N, width: 15.0 mm, thickness: 1.01 mm }\n'
  },
  'pH readings, which have no unit': {
    folder: 'batches',
    record: "lot: X-1\ntests:\n  slurry-ph:\n    tested: 2026-03-14\n    readings: ['', '']\n",
    mapping:
      'fills: slurry-ph\nfile: { headings: no, decimal: point }\ncolumns:\n  - { column: 2, to: readings }\n  - { column: 1 }\n',
    file: '1;3.42\n2;3.45\n',
    after: 'lot: X-1\ntests:\n  slurry-ph:\n    tested: 2026-03-14\n    readings: [3.42, 3.45]\n'
  },
  'directions in the words of the tester': {
    record: 'lot: X-1\n',
    mapping:
      'fills: tensile\ncolumns:\n  - { column: D, to: direction, words: { L: along, Q: across } }\n  - { column: F, to: force, unit: N }\n  - { column: W, to: width, unit: mm }\n  - { column: T, to: thickness, unit: mm }\n',
    file: 'D;F;W;T\nL;12.3;15.0;0.99\nQ;11.1;15.0;1.01\n',
    tested: '2026-03-14',
    after:
      'lot: X-1\ntests:\n  tensile:\n    tested: 2026-03-14\n    readings:\n      - { direction: along, force: 12.3 N, width: 15.0 mm, thickness: 0.99 mm }\n      - { direction: across, force: 11.1 N, width: 15.0 mm, thickness: 1.01 mm }\n'
  },
  'a furnace log, thinned out past midnight': {
    folder: 'expansions',
    record: 'lot: X-1\nmade: 2026-03-14 # night shift\n',
    mapping:
      'fills: log\nevery: 2 min\ncolumns:\n  - { column: Time, to: at }\n  - { column: T, to: temperature, unit: °C }\n',
    file: 'Time;T\n23:58:00;940.1\n23:59:00;951.2\n00:00:00;950.3\n00:01:00;949.9\n00:02:00;950.0\n00:02:30;948.8\n',
    after:
      'lot: X-1\nmade: 2026-03-14 # night shift\nlog:\n  - { at: 23:58:00, temperature: 940.1 °C }\n  - { at: 23:59:00, temperature: 951.2 °C }\n  - { at: 00:00:00, temperature: 950.3 °C }\n  - { at: 00:02:00, temperature: 950.0 °C }\n  - { at: 00:02:30, temperature: 948.8 °C }\n'
  },
  'a log of elapsed time into the second step': {
    folder: 'batches',
    step: 2,
    record: 'lot: X-1\nsteps:\n  - { what: mixed }\n  - { what: dried, for: overnight }\n',
    mapping:
      'fills: log\ncolumns:\n  - { column: t, to: at, unit: min }\n  - { column: T1, to: temperature, unit: °C }\n',
    file: 't|T1\n0|21.5\n30|57.9\n',
    after:
      'lot: X-1\nsteps:\n  - { what: mixed }\n  - { what: dried, for: overnight, log: [{ at: 0 min, temperature: 21.5 °C }, { at: 30 min, temperature: 57.9 °C }], sources: [{ file: export.csv, sha256: aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa, written: 2026-03-14 14:09Z }] }\n'
  },
  'readings that come besides': {
    folder: 'batches',
    add: true,
    record:
      'lot: X-1\ntests:\n  expansion-volume:\n    tested: 2026-03-14\n    readings:\n      - { mass: 0.50 g, volume: 131 mL } # first\n',
    mapping:
      'fills: expansion-volume\ncolumns:\n  - { column: m, to: mass, unit: g }\n  - { column: V, to: volume, unit: mL }\n',
    file: 'm;V\n0.51;133\n',
    after:
      'lot: X-1\ntests:\n  expansion-volume:\n    tested: 2026-03-14\n    readings:\n      - { mass: 0.50 g, volume: 131 mL } # first\n      - { mass: 0.51 g, volume: 133 mL }\n'
  }
}

test.for(Object.entries(cases))('takes over %s', ([, one]) => {
  expect(outcome(one)).toBe(one.after)
})

test('says where the readings came from', () => {
  const result = takenOver(cases['pH readings, which have no unit']!)
  expect(result.ok && result.value.text).toContain(
    `    sources:\n      - { file: export.csv, sha256: ${'a'.repeat(64)}, written: 2026-03-14 14:09Z }\n`
  )
})

const volumes: Case = {
  folder: 'batches',
  record: 'lot: X-1\ntests:\n  expansion-volume:\n    tested: 2026-03-14\n    readings: []\n',
  mapping:
    'fills: expansion-volume\ncolumns:\n  - { column: m, to: mass, unit: g }\n  - { column: V, to: volume, unit: mL }\n',
  file: 'm;V\n0.51;133\n'
}
const ph = cases['pH readings, which have no unit']!

/** What is wrong, and how it is told: place, code, first words, part of the hint. */
const places = {
  record: 'lot: X-1\nmeasured: { tested: 2026-03-14 }\n',
  mapping:
    'fills: thickness\nfile: { decimal: point }\ncolumns:\n  - { column: Sheet, to: id }\n  - { column: x, to: x, unit: mm }\n  - { column: y, to: y, unit: mm }\n  - { column: t, to: thickness, unit: mm }\n'
}

const refusals: Readonly<Record<string, [Case, RegExp]>> = {
  'a reading of thickness without its place': [
    { ...places, file: 'Sheet;x;y;t\n1;10;10;1.003\n1;;10;0.998\n' },
    /^export\.csv:3:\d+ MISSING_FIELD\n {2}x: is blank, where the line gives the rest of a reading/u
  ],
  'a place without its reading': [
    { ...places, file: 'Sheet;x;y;t\n1;10;10;1.003\n1;20;10;\n' },
    /^export\.csv:3:\d+ MISSING_FIELD\n {2}t: is blank/u
  ],
  'one distance of a place alone': [
    {
      ...places,
      mapping: places.mapping.replace('{ column: y, to: y, unit: mm }', '{ column: y }'),
      file: 'Sheet;x;y;t\n1;10;10;1.003\n'
    },
    /^mappings\/m\.yaml:\d+:\d+ MISSING_COLUMN\n.*none for 'y'/u
  ],
  'a place left of the sheet': [
    { ...places, file: 'Sheet;x;y;t\n1;-1.5;10;1.003\n' },
    /^export\.csv:2:3 INVALID_VALUE\n {2}x: must be at least 0/u
  ],
  'a number that can be read two ways': [
    { ...volumes, file: 'm;V\n1,234;133\n' },
    /^export\.csv:2:1 AMBIGUOUS_NUMBER\n {2}m: '1,234' can be read two ways.*decimal: point/su
  ],
  'three decimals after a point, where nothing says so': [
    { ...volumes, file: 'm;V\n1.234;133\n' },
    /^export\.csv:2:1 AMBIGUOUS_NUMBER/u
  ],
  'two decimal marks in one file': [
    { ...volumes, file: 'm;V\n0.51;133\n0,52;130\n' },
    /^export\.csv:3:1 AMBIGUOUS_NUMBER\n.*'0,52' has another decimal mark than '0\.51'/u
  ],
  'another decimal mark than the mapping states': [
    { ...volumes, mapping: `${volumes.mapping}file: { decimal: comma }\n` },
    /^export\.csv:2:1 AMBIGUOUS_NUMBER\n.*than the comma of this file/u
  ],
  'thousands among decimals of the other mark': [
    { ...volumes, file: 'm;V\n0.51;1,330\n' },
    /^export\.csv:2:6 AMBIGUOUS_NUMBER/u
  ],
  'a column without a unit': [
    { ...volumes, mapping: volumes.mapping.replace(', unit: g', '') },
    /^export\.csv:2:1 MISSING_UNIT\n.*write 'unit: g'/su
  ],
  'a unit that contradicts the mapping': [
    { ...volumes, file: 'm [mg];V\n0.51;133\n' },
    /^export\.csv:2:1 WRONG_DIMENSION\n.*in g by one and in mg/u
  ],
  'a unit of another kind': [
    { ...volumes, mapping: volumes.mapping.replace('unit: g', 'unit: mm') },
    /^export\.csv:2:1 WRONG_DIMENSION\n.*'mm' is a unit of length, not of mass/u
  ],
  'a unit nobody knows': [
    { ...volumes, mapping: volumes.mapping.replace('unit: g', 'unit: stone') },
    /^export\.csv:2:1 UNKNOWN_UNIT/u
  ],
  'a column the mapping says nothing of': [
    { ...volumes, file: 'm;V;note\n0.51;133;x\n' },
    /^export\.csv:1:5 UNMAPPED_COLUMN\n.*column 'note'.*column: note/su
  ],
  'a column that is not there': [
    { ...volumes, file: 'm;W\n0.51;133\n' },
    /^export\.csv:1:1 MISSING_COLUMN\n {2}no column is headed 'V'.*columns here: m, W/su
  ],
  'a heading that is there twice': [
    { ...volumes, file: 'm;V;V\n0.51;133;134\n' },
    /^export\.csv:1:5 MISSING_COLUMN\n {2}two columns are headed 'V'/u
  ],
  'a decimal comma in a file parted by commas': [
    { ...volumes, file: 'm,V\n0,51,133\n' },
    /^export\.csv:2:6 NOT_A_TABLE\n.*3 entries, the headings are 2/u
  ],
  'a line cut short in a file parted by commas': [
    { ...volumes, file: 'm,V\n0.51\n' },
    /^export\.csv:2:1 NOT_A_TABLE/u
  ],
  'a word where a number belongs': [
    { ...volumes, file: 'm;V\n0.51;OL\n' },
    /^export\.csv:2:6 NOT_A_QUANTITY\n.*'OL'.*skip: \{ V: \[word\]/su
  ],
  'a formula': [{ ...volumes, file: 'm;V\n=A1*2;133\n' }, /^export\.csv:2:1 COMPUTED_VALUE/u],
  'a blank the record needs': [
    { ...volumes, file: 'm;V\n;133\n' },
    /^export\.csv:2:1 MISSING_FIELD\n {2}m: is blank/u
  ],
  'a quote never closed': [
    { ...volumes, file: 'm;V\n"0.51;133\n' },
    /^export\.csv:2:1 NOT_A_TABLE\n {2}a quote is opened here/u
  ],
  'one column, where two are looked for': [
    { ...volumes, file: 'values\n1\n2\n' },
    /^export\.csv:1:1 MISSING_COLUMN/u
  ],
  'more than one way to part the line': [
    { ...ph, file: '1;3.42\t7\n' },
    /^export\.csv:1:1 MISSING_COLUMN|NOT_A_TABLE/u
  ],
  'no line with a reading': [
    { ...volumes, file: 'm;V\n' },
    /^export\.csv:1:1 NOT_A_TABLE\n {2}has no line with a reading/u
  ],
  nothing: [{ ...volumes, file: '' }, /NOT_A_TABLE\n {2}is empty/u],
  'a blank file': [{ ...volumes, file: ' \r\n \r\n' }, /NOT_A_TABLE\n {2}holds nothing but space/u],
  'bytes of a picture': [
    { ...volumes, file: new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]) },
    /NOT_A_TABLE/u
  ],
  'bytes that are no UTF-8': [
    { ...volumes, file: new Uint8Array([109, 59, 86, 10, 0xb5, 59, 49, 10]) },
    /NOT_A_TABLE\n {2}is not text in utf-8: line 2/u
  ],
  'UTF-16 without a mark': [
    { ...volumes, file: new Uint8Array(Buffer.from('m;V\n0.51;133\n', 'utf16le')) },
    /NOT_A_TABLE\n.*encoding: utf-16le/su
  ],
  'a spreadsheet of an older kind': [
    { ...volumes, file: new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 1]) },
    /NOT_A_TABLE\n {2}is a spreadsheet of an older kind/u
  ],
  'a packed file that is no spreadsheet': [
    { ...volumes, file: new Uint8Array([0x50, 0x4b, 3, 4, 9, 9]) },
    /NOT_A_TABLE\n {2}is no \.xlsx spreadsheet/u
  ],
  'a field the record has not': [
    { ...volumes, mapping: volumes.mapping.replace('to: mass', 'to: mas') },
    /^mappings\/m\.yaml:4:\d+ UNKNOWN_FIELD\n.*'mas' is no field/u
  ],
  'other readings, where some are': [
    { ...volumes, record: volumes.record.replace('[]', '[{ mass: 0.52 g, volume: 130 mL }]') },
    /^batches\/X-1\.yaml:5:15 ALREADY_RECORDED\n.*has readings already/u
  ],
  'another value, where one is': [
    { ...volumes, tested: '2026-03-15' },
    /^batches\/X-1\.yaml:4:13 ALREADY_RECORDED\n.*'2026-03-14' in the record, and '2026-03-15' in the file/u
  ],
  'other lines than wait for it': [
    {
      ...cases['the highest force of each curve of a tensile tester']!,
      file: 'Specimen,Extension,Force (N)\n1,0,12.3\n'
    },
    /ALREADY_RECORDED\n.*2 readings wait for force, the file has 1/u
  ],
  'several values for one': [
    {
      ...cases['the highest force of each curve of a tensile tester']!,
      mapping:
        'fills: tensile\nreading: Specimen\ncolumns:\n  - { column: Force, to: force }\n  - { column: Extension }\n'
    },
    /^export\.csv:3:7 ALREADY_RECORDED\n.*take: largest/su
  ],
  'a kind of line the mapping says nothing of': [
    {
      ...cases['a titrator with blanks among the samples']!,
      file: 'Kind;Mass;Titre;Date\nTare;;;\n'
    },
    /UNMAPPED_COLUMN|NOT_A_TABLE/u
  ],
  'a sieve without its line': [
    {
      ...cases['a balance with a line for each sieve, in any order']!,
      file: 'Run\tSieve\tNet\tCharged\n1\tpan\t0.24\t50.02\n1\t300\t39.12\t50.02\n'
    },
    /MISSING_FIELD\n.*no line of this reading has '500' under Sieve/u
  ],
  'a day in another order than stated': [
    {
      ...cases['a titrator with blanks among the samples']!,
      file: 'Kind;Mass;Titre;Date\nBlank;;0,05;2026-04-03\nSample;10,01;1,87;2026-04-03\n'
    },
    /BAD_DATE/u
  ],
  'moments that cannot be told apart': [
    { ...cases['a furnace log, thinned out past midnight']!, file: 'Time;T\nearly;940.1\n' },
    /^mappings\/m\.yaml:\d+:\d+ INVALID_VALUE\n.*every: needs moments/u
  ]
}

test.for(Object.entries(refusals))('refuses %s', ([, [one, told]]) => {
  const result = takenOver(one)
  expect(result.ok).toBe(false)
  expect(outcome(one)).toMatch(told)
})

test('tells every fault of a file in one run', () => {
  const result = takenOver({ ...volumes, file: 'm;V\nx;133\n0.51;y\n;130\n' })
  expect(result.problems.map(({ code }) => code)).toEqual([
    'NOT_A_QUANTITY',
    'NOT_A_QUANTITY',
    'MISSING_FIELD'
  ])
})

test('what was taken over before changes nothing', () => {
  const first = takenOver({ ...volumes, file: 'm;V\n0.51;133\n' })
  const text = first.ok ? first.value.text : ''
  expect(outcome({ ...volumes, record: text })).toMatch(/were taken over before/u)
})

test('five thousand lines are read in a second or two', () => {
  const lines = Array.from(
    { length: 5000 },
    (_, n) => `${n} s;${(900 + (n % 100) / 10).toFixed(1)}`
  )
  const result = takenOver({
    folder: 'expansions',
    record: 'lot: X-1\n',
    mapping:
      'fills: log\ncolumns:\n  - { column: t, to: at }\n  - { column: T, to: temperature, unit: °C }\n',
    file: `t;T\n${lines.join('\n')}\n`
  })
  expect(result.ok && result.value.readings).toBe(5000)
})
