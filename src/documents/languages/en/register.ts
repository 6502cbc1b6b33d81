/** Certificates issued and the register they stand in, in English; and how a lot's papers are called. */

import { counted, date } from './numbers.ts'

export const register = {
  withdrawnNotice: (on: string) =>
    `Do not rely on this certificate. It was withdrawn on ${date(on)}.`,
  superseded: (by: number, on: string, reason: string) =>
    `Superseded by revision ${by} on ${date(on)}${reason === '' ? '.' : `: ${reason}.`}`,
  withdrawn: (on: string, reason: string) => `Withdrawn on ${date(on)}: ${reason}.`,
  stands: (on: string) => `Stands as issued on ${date(on)}.`,
  notSigned: 'Not signed; its fingerprint stands in the register.',
  signed: (keys: readonly { readonly key: string; readonly date: string }[]) =>
    `Signed with ${keys.map(({ key, date: on }) => `key ${key} on ${date(on)}`).join(' and ')}.`,
  pdfSigned: (name: string, issuer: string) =>
    `Its PDF is signed for ${name} as well, with a certificate of the X.509 kind issued by ${issuer}.`,
  certificate: (number: string, revision: number) =>
    `Certificate ${number}, revision ${revision} (PDF)`,
  says: 'What it says, for programs (JSON)',
  proof: 'Proof that it stands in the register (JSON)',
  register: 'The register (JSON)',
  sentence: (lines: number, revisions: number) =>
    `The register has ${counted(lines, 'line')} on ${counted(revisions, 'revision')}. Each line holds the hash of the line before, and the root stands for all of them: whoever keeps it can tell whether anything older was changed.`,
  inUse: 'in use',
  retired: (on: string, reason: string) => `${on}, ${reason}`,
  papers: {
    preview: 'Preview of the certificate (PDF)',
    certificate: (number: string, revision: string, state: string) =>
      `Certificate ${number}, revision ${revision}${state === '' ? '' : `, ${state}`} (PDF)`,
    states: { superseded: 'superseded', withdrawn: 'withdrawn', prepared: 'prepared, not issued' },
    data: 'Figures for programs (JSON)',
    working: 'Statement of working (PDF)',
    datasheet: (grade: string) => `Datasheet of grade ${grade} as it is now (PDF)`
  },
  news: {
    lot: (lot: string, kind: string, state: string) => `Lot ${lot}, ${kind}: ${state}`,
    certificate: (number: string, revision: number, lot: string, isWithdrawn: boolean) =>
      `Certificate ${number}, revision ${revision}, of lot ${lot}: ${isWithdrawn ? 'withdrawn' : 'issued'}`
  }
}
