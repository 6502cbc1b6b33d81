/** Why a class applies, in German. */

import { capital } from '../../capital.ts'
import type { Classified, Conflict } from '../../../hazards/classify.ts'
import type { Finding } from '../../../hazards/mixture.ts'
import type { LimitedPart, Saying } from '../../../hazards/sayings.ts'
import type { Form } from '../../../hazards/substances.ts'
import { number as num } from './numbers.ts'
import { cited } from './sources.ts'
import { substanceName } from './substances.ts'

/** Names of ingredients that only the record has stay as it writes them. */
const nameOf = (name: string): string => substanceName(name) ?? name

export const className = (name: string): string =>
  name
    .replace(/ inhalation$/u, ' inhalativ')
    .replace(/ airways$/u, ' Atemwege')
    .replace(/ narcotic$/u, ' narkotisch')

export const forms: Readonly<Record<Form, string>> = {
  oral: 'oral',
  dermal: 'dermal',
  gas: 'Gas',
  vapour: 'Dampf',
  mist: 'Nebel'
}

const limited = ({ name, percent, limit, own }: LimitedPart): string =>
  `${nameOf(name)} ${num(percent)} %, ${own ? 'eigener Grenzwert' : 'Grenzwert'} ${num(limit)} %`

type Of<Kind extends Saying['is']> = Extract<Saying, { is: Kind }>

const sum = ({ parts, sum: together }: Of<'sum'>): string =>
  together === undefined
    ? parts.map(limited).join('; ')
    : `${parts.map(limited).join('; ')}; Anteile an ihren Grenzwerten zusammen ${num(together)}, Grenzwert 1`

function toxicity({ parts, unit, form, mixture, most, unknown }: Of<'toxicity'>): string {
  const all = parts.map(
    ({ name, percent, ate }) => `${nameOf(name)} ${num(percent)} % mit ATE ${num(ate)} ${unit}`
  )
  const less =
    unknown === undefined ? '' : `, ${num(unknown)} % unbekannter Toxizität herausgerechnet`
  return `${all.join('; ')}: ATEmix ${num(mixture)} ${unit} (${forms[form]}), höchstens ${num(most)}${less}`
}

function weighed({ parts, sum: total, limit }: Of<'weighed'>): string {
  const all = parts.map(
    ({ name, percent, weight }) =>
      `${weight === undefined ? '' : `${num(weight)} × `}${nameOf(name)} ${num(percent)} %`
  )
  return `${all.join(' + ')} = ${num(total)} %, Grenzwert ${num(limit)} %`
}

function sentence(said: Saying): string {
  switch (said.is) {
    case 'sum':
      return sum(said)
    case 'toxicity':
      return toxicity(said)
    case 'weighed':
      return weighed(said)
    case 'alone':
      return limited({ ...said, name: `${nameOf(said.name)} (${className(said.class)})` })
    case 'follows':
      return `folgt aus ${className(said.from)}`
    case 'as such':
      return `${nameOf(said.name)} als solcher Stoff`
    case 'band':
      return limited(said.part)
    case 'extreme pH':
      return `pH ${num(said.pH)}, bei ${num(said.limit)} oder ${said.side === 'low' ? 'darunter' : 'darüber'}`
    case 'recorded':
      return said.because
  }
}

const margins: Readonly<Record<NonNullable<Classified['margin']>, string>> = {
  'reached only with the uncertainty added': 'nur mit zugerechneter Messunsicherheit erreicht',
  'not reached with the uncertainty taken off': 'mit abgezogener Messunsicherheit nicht erreicht'
}

export const why = ({ reasons, margin }: Classified): string[] => [
  ...reasons.map(
    ({ said, clauses }) =>
      `${capital(sentence(said))}. ${[...new Set(clauses.map(cited))].join('; ')}.`
  ),
  ...(margin === undefined
    ? []
    : [
        `Ein Grenzwert liegt innerhalb der Messunsicherheit: ${margins[margin]}; es gilt die strengere Seite.`
      ])
]

const sides = ({ reasons }: Finding) =>
  reasons
    .map(({ said, clauses }) => `${sentence(said)} (${clauses.map(cited).join('; ')})`)
    .join('; ')

export function conflict({ byLimits, byPH, settled }: Conflict): string {
  const limits = byLimits
    ? `${className(byLimits.class)}: ${sides(byLimits)}`
    : 'keine Klasse für die Haut'
  const outcome =
    settled === undefined
      ? 'die strengere gilt, bis eine sachkundige Person eine Entscheidung aufzeichnet'
      : settled === 'limits'
        ? 'entschieden für die Konzentrationsgrenzwerte'
        : 'entschieden für den pH-Wert'
  return `Die Konzentrationsgrenzwerte ergeben ${limits}; der pH-Wert ergibt ${className(byPH.class)}: ${sides(byPH)}; ${outcome}.`
}
