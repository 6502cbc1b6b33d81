/** What is said of foil alone, in English: how it lies, how it looks, how it serves. */

import type { ServiceParts, VisualParts } from '../parts.ts'
import { counted, date } from './numbers.ts'

const defects: Record<VisualParts['defects'][number]['kind'], readonly [string, string]> = {
  blister: ['blister', 'blisters'],
  crack: ['crack', 'cracks'],
  wrinkle: ['wrinkle', 'wrinkles'],
  scratch: ['scratch', 'scratches'],
  hole: ['hole', 'holes'],
  inclusion: ['inclusion', 'inclusions'],
  'torn edge': ['torn edge', 'torn edges'],
  delamination: ['delamination', 'delaminations']
}

const units: Record<VisualParts['unit'], readonly [string, string]> = {
  sheet: ['sheet', 'sheets'],
  metre: ['metre', 'metres']
}

function visual(said: VisualParts): string {
  const { lotSize, inspected, nonconforming, takenOut, plan, isAccepted } = said
  const seen = said.defects.map(({ kind, count }) => counted(count, ...defects[kind])).join(', ')
  const found =
    nonconforming === 0
      ? 'none nonconforming'
      : `${nonconforming} nonconforming${seen ? ` (${seen})` : ''}, ${takenOut} taken out`
  const size = counted(lotSize, ...units[said.unit])
  if (!plan)
    return `${lotSize === 1 ? `The one ${units[said.unit][0]}` : `All of ${size}`} looked at: ${found}; ${isAccepted ? 'accepted' : 'not accepted'}.`
  const letter =
    plan.letters.length === 1
      ? `letter ${plan.letters[0]}`
      : `letter ${plan.letters[0]}, taken to ${plan.letters[1]}`
  return `${inspected} of ${size} looked at (ISO 2859-1, single sampling, normal inspection, level ${plan.level}, AQL ${plan.aql} %, ${letter}${plan.isPrinted ? '' : '; acceptance number from memory'}): ${found}; accepted up to ${plan.acceptance}, not from ${plan.rejection} on: ${isAccepted ? 'accepted' : 'not accepted'}. Such a plan accepts ${plan.acceptedAtAql} of samples of a process at the AQL, and one in ten at ${plan.onceInTen} nonconforming.`
}

export const foil = {
  sheets: (n: number, mass: string) => `${counted(n, ...units.sheet)}, ${mass}`,
  facts: {
    direction: 'Direction of forming',
    inhibitor: 'Inhibitor',
    visual: 'Visual inspection',
    fireSafe: 'Fire-safe test',
    oxygen: 'Oxygen service'
  },
  directions: {
    'along the length': 'along the length',
    'across the length': 'across the length',
    'not marked': 'not marked'
  },
  visual,
  /** How a lot stands to the look its grade asks for, beside its limits. */
  looks: {
    met: 'The visual inspection it asks for was accepted.',
    'not done': 'The visual inspection it asks for was not done.',
    'too lenient': 'The visual inspection it asks for was done by a plan that lets more through.',
    'not accepted': 'The visual inspection it asks for was not accepted.'
  },
  asked: (plan: string) => `Its grade asks for it: ${plan}.`,
  notDone: (plan: string) => `Not done; its grade asks for it: ${plan}.`,
  wholeLot: 'the whole lot',
  plan: (level: string, aql: string) => `level ${level}, AQL ${aql} %`,
  missing: {
    gasketFactors: 'gasket factors m and y',
    fireSafe: 'behaviour in a fire-safe test',
    oxygen: 'fitness for oxygen service'
  },
  service: ({ says, method, laboratory, number, date: day }: ServiceParts) =>
    `As reported of the grade, not measured on this lot: ${says}; ${method}; ${laboratory ?? 'an external laboratory'}, report ${number} of ${date(day)}.`
}
