/** What goes on a lot's labels, and what keeps it from having any. */

import { describe, expect, test } from 'vitest'
import type { LabelDocument, LabelWish } from '../../src/documents/label-types.ts'
import { labelLanguages, labelWords } from '../../src/documents/label-words/index.ts'
import { rulesFor, readContainer, readLanguages } from '../../src/documents/label-wish.ts'
import { noRegister, registerOfLot } from '../../src/documents/issued.ts'
import { labelDocuments } from '../../src/documents/labels.ts'
import type { Edition } from '../../src/hazards/editions.ts'
import { editionText, statementText } from '../../src/hazards/statements.ts'
import { substances } from '../../src/hazards/substances.ts'
import { judgeContent, lotLabels } from '../../src/pipeline.ts'
import { isError, type SourceFile } from '../../src/problem.ts'
import { ownChain } from '../../src/records/own-chain.ts'
import { demoFiles as demo, smallFiles, withChange } from '../records-on-disk.ts'
import { pageOf, publicSite, workshopSite } from './demo.ts'
import { demoRegister as register } from './demo-register.ts'

const wish: LabelWish = { profile: 'eu-2028', languages: ['de'] }
const pouch = readContainer('pouch', '500mL', '50.5g')
if (typeof pouch === 'string') throw new Error(pouch)

/** Of the records that a lot rests on, as the command makes them. */
const labelsOf = (lot: string, wanted: Partial<LabelWish> = {}, files = demo) =>
  lotLabels(
    ownChain(files, lot)!,
    lot,
    { ...wish, ...wanted },
    { register: files === demo ? registerOfLot(register, lot) : noRegister }
  )

const only = (lot: string, wanted: Partial<LabelWish> = {}, files = demo) => {
  const { labels, problems } = labelsOf(lot, { containers: [pouch], ...wanted }, files)
  expect(problems.filter(isError)).toEqual([])
  return labels[0]!
}

const refusalsOf = (lot: string, wanted: Partial<LabelWish> = {}, files = demo) => {
  const { labels, problems } = labelsOf(lot, wanted, files)
  expect(labels).toEqual([])
  return problems.filter(isError).map(({ code, message, hint }) => `${code} ${message}: ${hint}`)
}

function judgedDemo(lot: string) {
  const { evaluated, lots } = judgeContent(
    ownChain(demo, lot)!,
    undefined,
    registerOfLot(register, lot)
  )
  return { content: evaluated!.content, lot: lots.find(one => one.evaluated.lot === lot)! }
}

describe('a label', () => {
  test('says what the lot is, in one language', () => {
    const [content] = only('EB-26-012').contents
    expect(content).toMatchObject({
      name: 'flake-250',
      product: [{ language: 'de', text: 'Blähgraphit' }],
      identifiers: ['CAS\u00a012777-87-6', 'EG\u00a0235-819-4'],
      blocks: [
        {
          signal: 'Achtung',
          hazards: ['Verursacht schwere Augenreizung.'],
          storage: 'Trocken lagern. Unter 40\u00a0°C lagern.'
        }
      ],
      facts: [
        { label: 'Charge', text: 'EB-26-012' },
        { label: 'Nennmenge', text: '50,5\u00a0g' },
        { label: 'Hergestellt', text: '2026-08-25' },
        { label: 'Nachprüfen bis', text: '2027-08-25' }
      ],
      supplier: [
        'Ossenfold Graphite Workshop',
        'Shed 4, Ossenfold Yard, Nether Quillam, Marlshire',
        'Tel. +1 555 0142'
      ],
      code: { url: 'https://ossenfold.example.org/lots/EB-26-012/' }
    })
    expect(content!.pictograms.map(({ code, title }) => [code, title])).toEqual([
      ['GHS07', 'Ausrufezeichen']
    ])
    expect(content!.blocks[0]!.precautions).toEqual(
      ['P280', 'P305+P351+P338', 'P337+P313'].map(code => {
        const statement = statementText(code, 'de')
        return statement.ok && statement.text
      })
    )
  })

  test('in several says once what they share', () => {
    const [content] = only('EB-26-012', { languages: ['en', 'fr', 'it'] }).contents
    expect(content!.facts.map(({ label, text }) => `${label}: ${text}`)).toEqual([
      'Lot / Lotto: EB-26-012',
      'Nominal quantity / Quantité nominale / Quantità nominale: 50.5\u00a0g',
      'Made / Fabriqué le / Prodotto il: 2026-08-25',
      'Retest by / À recontrôler avant le / Ricontrollare entro il: 2027-08-25'
    ])
    expect(content!.blocks.map(({ signal }) => signal)).toEqual([
      'Warning',
      'Attention',
      'Attenzione'
    ])
  })

  test('of foil has no hazard block, as foil is an article', () => {
    const [content] = only('FL-26-012').contents
    expect(content!.pictograms).toEqual([])
    expect(content!.blocks).toEqual([
      { language: 'de', hazards: [], precautions: [], storage: 'Trocken lagern.' }
    ])
  })

  test('is made for each container of the grade, or those of one kind', () => {
    expect(labelsOf('EB-26-012').labels.map(({ fileName }) => fileName)).toEqual([
      'EB-26-012-pouch-0.5L-de.pdf',
      'EB-26-012-pail-5L-de.pdf'
    ])
    expect(
      labelsOf('EB-26-012', { kind: 'pail' }).labels.map(({ minima }) => minima.label_mm)
    ).toEqual([[74, 105]])
  })

  test('of a lot with a certificate says what was issued', () => {
    const issued = register.issued.findLast(
      ({ state, revision }) => state === 'current' && revision.lot.startsWith('EB-')
    )!
    const { certificate } = issued.frozen
    const { hazards } = certificate
    const frozen = {
      ...issued,
      frozen: {
        ...issued.frozen,
        certificate: {
          ...certificate,
          producer: { ...certificate.producer, name: 'As It Was Called Then' },
          hazards: {
            ...hazards!,
            statements: hazards!.statements.map(one =>
              one.code === 'H319' ? { code: 'H319', text: 'As it was worded then.' } : one
            )
          }
        }
      }
    }
    const { labels } = lotLabels(
      ownChain(demo, issued.revision.lot)!,
      issued.revision.lot,
      { profile: 'eu-2028', languages: ['en'], containers: [pouch] },
      { register: { ...register, problems: [], issued: [frozen] } }
    )
    // The check of certificates against records tells the difference, and stops there.
    expect(labels).toEqual([])
    const { content, lot } = judgedDemo(issued.revision.lot)
    const label = labelDocuments(content, lot, [frozen], {
      profile: 'eu-2028',
      languages: ['en'],
      containers: [pouch]
    }).labels[0]!
    expect(label.contents[0]!.supplier[0]).toBe('As It Was Called Then')
    expect(label.contents[0]!.blocks[0]!.hazards).toEqual(['As it was worded then.'])
  })
})

test('pages of the workshop edition offer the labels that can be made, public ones none', () => {
  const urls = (lot: string) => pageOf(workshopSite, lot).labels?.map(({ url }) => url)
  expect(urls('EB-26-012')).toEqual([
    'lots/EB-26-012/labels/EB-26-012-pouch-0.5L-en.pdf',
    'lots/EB-26-012/labels/EB-26-012-pail-5L-en.pdf'
  ])
  expect(urls('EB-26-013')).toBeUndefined()
  expect(pageOf(workshopSite, 'EB-26-012').document.papers.map(({ title }) => title)).toContain(
    'Label EB-26-012, pail of 5\u00a0L (PDF)'
  )
  expect(publicSite.lots.every(({ labels }) => labels === undefined)).toBe(true)
})

describe('in the United States', () => {
  const us: Partial<LabelWish> = { profile: 'us', languages: ['en'] }
  const sized = (capacity: string) => {
    const container = readContainer('pouch', capacity, '20 g')
    if (typeof container === 'string') throw new Error(container)
    return only('EB-26-010', { ...us, containers: [container] }).contents
  }

  test('the label warns of dust', () => {
    expect(sized('500 mL')[0]!.blocks[0]!.hazards).toContain(
      'May form combustible dust concentrations in air.'
    )
    expect(only('FL-26-012', us).contents[0]!.blocks[0]!.hazards).toEqual([])
  })

  test('a container of at most 100 mL may leave the rest to the outer package', () => {
    expect(sized('101 mL')).toHaveLength(1)
    const [full, reduced, ...rest] = sized('100 mL')
    expect(rest).toEqual([])
    expect(full!.blocks[0]!.precautions).not.toEqual([])
    expect(reduced).toMatchObject({
      name: full!.name,
      pictograms: full!.pictograms,
      blocks: [
        {
          signal: 'Warning',
          hazards: [],
          precautions: [],
          outer: 'Full label information is on the outer package.'
        }
      ],
      supplier: ['Ossenfold Graphite Workshop', 'Tel. +1 555 0142']
    })
  })

  test('one of at most 3 mL may carry its name alone', () => {
    expect(sized('3 mL')).toHaveLength(3)
    expect(sized('3 mL')[2]).toMatchObject({ pictograms: [], blocks: [], supplier: [] })
  })

  test('other languages are refused', () => {
    expect(refusalsOf('EB-26-010', { profile: 'us', languages: ['en', 'es'] })).toEqual([
      "MISSING_TEXT a label of the edition 'OSHA Hazard Communication Standard (United States)' has texts in 'en' alone: take the other languages out"
    ])
  })
})

describe('the edition', () => {
  const labelBy = (wanted: Partial<LabelWish>) =>
    only('EB-26-010', { languages: ['en'], ...wanted })
  const wording = (edition: Edition) => {
    const texts = ['H319', edition === 'un' ? 'P337+P317' : 'P337+P313'].map(code => {
      const statement = statementText(code, 'en', undefined, edition)
      return statement.ok && statement.text
    })
    return [editionText(edition), ...texts]
  }
  const saidOn = ({ subject, contents: [content] }: LabelDocument) => {
    const { hazards, precautions } = content!.blocks[0]!
    return [subject.split('statements: ')[1], hazards[0], precautions.at(-1)]
  }

  test.for([
    [{}, 'clp', 'CLP 2025-09-01 + 2019/521'],
    [{ wording: 'un' }, 'un', 'UN GHS Rev. 10'],
    [{ profile: 'us' }, 'us', '29 CFR 1910.1200 (2024)']
  ] as const)('%j: its own texts, named on the label', ([wanted, edition, short]) => {
    const label = labelBy(wanted)
    expect(saidOn(label)).toEqual(wording(edition))
    expect(label.contents[0]!.wording).toBe(short)
  })

  test('is in the file’s name where it is not the profile’s own', () => {
    expect(labelBy({ wording: 'un' }).fileName).toBe('EB-26-010-pouch-500mL-en-un.pdf')
  })

  test('is not named where nothing is stated', () => {
    expect(only('FL-26-012').contents[0]).not.toHaveProperty('wording')
  })

  test('has to stand on the certificate', () => {
    expect(refusalsOf('EB-26-012', { languages: ['en'], wording: 'un' })).toEqual([
      "NOT_LABELLABLE its certificate has no label of the edition 'UN GHS, revision 10': add un to 'editions:' of the grade's hazards and issue a revision of the certificate"
    ])
  })

  test('of a lot without a certificate is computed', () => {
    const files = filled('fill: { P264: hands }')
    const made = (edition: Partial<LabelWish>) =>
      only('EB-1', { languages: ['en'], ...edition }, files).contents[0]!.blocks[0]!
    expect(made({ profile: 'us' }).hazards[0]).toBe('Causes serious eye irritation')
    expect(made({}).hazards[0]).toBe('Causes serious eye irritation.')
  })
})

describe('there is no label', () => {
  test('while questions on the hazards are open', () => {
    const said = refusalsOf('EB-26-013')
    expect(said).toHaveLength(3)
    expect(said.join()).toContain('its hazards are not settled (oxidising)')
    expect(said.join()).toContain('test it, or record')
  })

  test('of what was rejected or called back', () => {
    expect(refusalsOf('EB-26-004').join()).toContain('is rejected')
    expect(refusalsOf('EB-26-008').join()).toContain('is withdrawn')
  })

  test('of flake whose grade declares nothing, nor without a container', () => {
    const said = refusalsOf('EB-1', {}, smallFiles)
    expect(said.join()).toContain('its grade declares no hazards')
    expect(said.join()).toContain('its grade FK-1 names no container')
    expect(refusalsOf('FL-1', { kind: 'drum' }, smallFiles).join()).toContain('names no drum')
  })

  test('with a blank: a gap filled in English alone is told for each other language', () => {
    const files = filled('fill: { P264: hands }')
    expect(only('EB-1', { languages: ['en'] }, files).contents[0]!.blocks[0]!.precautions).toEqual([
      'Wash hands thoroughly after handling.'
    ])
    expect(
      refusalsOf('EB-1', { languages: ['en', 'de', 'it'], containers: [pouch] }, files)
    ).toEqual(
      ['de', 'it'].map(
        language =>
          `MISSING_TEXT P264 on the label of EB-1 has no words for its gap in '${language}': add 'fill-in-languages: { ${language}: { P264: … } }'`
      )
    )
    // A gap that may stay open is none to lose words in: 'lungs' has to be said in German too.
    const organs = withChange(files, 'grades/FK-1.yaml', 'Eye Irrit. 2]', 'STOT RE 1]')
    const lungs = withChange(organs, 'grades/FK-1.yaml', 'P264: hands', 'P264: hands, H372: lungs')
    const codes = refusalsOf('EB-1', { containers: [pouch] }, lungs).map(one => one.split(' ')[1])
    expect(codes).toEqual(['H372', 'P264'])
    const both = filled('fill: { P264: hands }, fill-in-languages: { de: { P264: Hände } }')
    expect(only('EB-1', {}, both).contents[0]!.blocks[0]!.precautions[0]).toContain('Hände')
  })
})

/** The small workshop with a gap in one of its statements. */
const filled = (fill: string): SourceFile[] =>
  withChange(
    withChange(
      smallFiles,
      'grades/FK-1.yaml',
      'limits:',
      `hazards: { classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P264], ${fill}, basis: our own }\nlimits:`
    ),
    'batches/EB-1.yaml',
    'status:',
    'hazards:\n  decisions:\n    - { about: missing data, by: quality manager, on: 2026-02-06, because: seen before }\nstatus:'
  )

describe('the words', () => {
  test('of every language are there, and none is another’s by oversight', () => {
    for (const language of labelLanguages) {
      const { substances: names, pictograms, ...words } = labelWords[language]
      const texts = [...Object.values(names), ...Object.values(pictograms), words.lot, words.made]
      expect(texts.every(text => text.trim() === text && text !== '')).toBe(true)
      expect(Object.keys(names)).toEqual(Object.keys(labelWords.en.substances))
      expect(words.keepBelow('40 °C')).toContain('40 °C')
      expect(words.qr('https://a.example/')).toContain('https://a.example/')
    }
    const signals = labelLanguages.map(language => labelWords[language].signals)
    expect(new Set(signals.map(({ Danger }) => Danger)).size).toBe(4)
    expect(signals.every(({ Danger, Warning }) => Danger !== Warning)).toBe(true)
  })

  test('name every substance whose classes have to be told with its name', () => {
    const naming = /^(?:Acute Tox|Skin Corr|Eye Dam|Muta|Carc|Repr|Resp\. Sens|Skin Sens|STOT)/u
    const gases = /dioxide|monoxide|trioxide$|anhydrous/u
    const wanted = substances
      .filter(({ classes }) => classes.some(one => naming.test(one.class)))
      .map(({ names }) => names[0]!)
      .filter(name => name === 'chromium trioxide' || !gases.test(name))
    const known = Object.keys(labelWords.en.substances)
    expect(wanted.length).toBeGreaterThan(8)
    expect(wanted.filter(name => !known.includes(name))).toEqual([])
  })
})

describe('a wish in words', () => {
  test('is read', () => {
    expect(readContainer('drum', '60L', '2.5 kg')).toMatchObject({
      capacity_L: { value: 60 },
      holds_g: { value: 2500, written: '2.5 kg' }
    })
    expect(readLanguages('de, en')).toEqual(['de', 'en'])
  })

  test.each([
    [readContainer('drum', '60', '1 g'), 'write the capacity with its unit'],
    [readContainer('drum', '0 L', '1 g'), 'write the capacity with its unit'],
    [readContainer('drum', '60 L', '1,5 kg'), 'write the nominal quantity with its unit'],
    [readLanguages('de,nl'), "there are no label texts in 'nl'"]
  ])('or refused: %j', (said, why) => {
    expect(said).toContain(why)
  })
})

describe('rules of a market', () => {
  const german = { profile: 'eu-2015', languages: ['de', 'en'] } as const
  const american = { profile: 'us' } as const
  const ofTheUN = { profile: 'eu-2028', wording: 'un' } as const
  test.each([
    ['European and in English where nothing is said', {}, undefined, 'eu-2028', undefined, ['en']],
    ['as recorded', {}, german, 'eu-2015', undefined, ['de', 'en']],
    [
      'asked language before the recorded',
      { languages: ['fr'] },
      german,
      'eu-2015',
      undefined,
      ['fr']
    ],
    ['the recorded wording', {}, ofTheUN, 'eu-2028', 'un', ['en']],
    [
      'asked sizes leave the recorded wording',
      { profile: 'eu-2015' },
      ofTheUN,
      'eu-2015',
      undefined,
      ['en']
    ],
    ['an American label is in English', { profile: 'us' }, german, 'us', undefined, ['en']],
    [
      'a wording of the UN goes with European sizes',
      { wording: 'un' },
      american,
      'eu-2028',
      'un',
      ['en']
    ],
    ['a wording of the UN is in English', { wording: 'un' }, german, 'eu-2028', 'un', ['en']]
  ] as const)('%s', (_, asked, recorded, profile, wording, languages) => {
    expect(rulesFor(asked, recorded as Parameters<typeof rulesFor>[1])).toEqual({
      profile,
      languages,
      ...(wording === undefined ? {} : { wording })
    })
  })

  test('labels of a lot are those the producer asks for', () => {
    const files = withChange(
      demo,
      'producer.yaml',
      'roles:',
      'labels: { profile: eu-2015, languages: [de] }\nroles:'
    )
    const [label] = lotLabels(
      ownChain(files, 'EB-26-012')!,
      'EB-26-012',
      { containers: [pouch] },
      { register: noRegister }
    ).labels
    const asked = only('EB-26-012', { profile: 'eu-2015', languages: ['de'] }, files)
    expect([label!.languages, label!.subject]).toEqual([['de'], asked.subject])
  })
})

describe('what is of unknown acute toxicity', () => {
  const withRest = (fraction: string) =>
    withChange(
      filled('fill: { P264: hands }, fill-in-languages: { de: { P264: Hände } }'),
      'batches/EB-1.yaml',
      'hazards:\n',
      `hazards:\n  residues: [{ substance: wimblite, fraction: ${fraction} }]\n`
    )
  const saidIn = (fraction: string, wanted: Partial<LabelWish>) =>
    only('EB-1', wanted, withRest(fraction)).contents[0]!.blocks.map(({ hazards }) =>
      hazards.slice(1)
    )

  // CLP Annex I, 3.1.3.6.2.2: from 1 % on.
  test('is said on labels of every market, from 1 % on', () => {
    const english = ['oral', 'dermal', 'inhalation'].map(
      route => `1.5 % of the mixture consists of ingredients of unknown acute toxicity (${route}).`
    )
    const german =
      '1,5 % des Gemisches bestehen aus Bestandteilen von unbekannter akuter Toxizität (oral).'
    expect(saidIn('1.5 %', { languages: ['en'] })).toEqual([english])
    expect(saidIn('1.5 %', { languages: ['de'] })[0]![0]).toBe(german)
    expect(saidIn('0.9 %', { languages: ['en'] })).toEqual([[]])
    expect(saidIn('1.5 %', { profile: 'us', languages: ['en'] })[0]!.at(-1)).toBe(english[2])
  })
})
