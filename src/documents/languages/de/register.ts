/** Certificates issued and the register they stand in, in German; and how a lot's papers are called. */

import type { register as english } from '../en/register.ts'
import { counted, date, list } from './numbers.ts'

export const register: typeof english = {
  withdrawnNotice: on =>
    `Auf dieses Zertifikat darf man sich nicht verlassen. Es wurde am ${date(on)} zurückgezogen.`,
  superseded: (by, on, reason) =>
    `Ersetzt durch Revision ${by} am ${date(on)}${reason === '' ? '.' : `: ${reason}.`}`,
  withdrawn: (on, reason) => `Zurückgezogen am ${date(on)}: ${reason}.`,
  stands: on => `Gilt, wie am ${date(on)} ausgestellt.`,
  notSigned: 'Nicht signiert; der Fingerabdruck steht im Register.',
  signed: keys =>
    `Signiert mit ${list(keys.map(({ key, date: on }) => `Schlüssel ${key} am ${date(on)}`))}.`,
  pdfSigned: (name, issuer) =>
    `Auch die PDF-Datei ist signiert, für ${name}, mit einem Zertifikat nach X.509, ausgestellt von ${issuer}.`,
  certificate: (number, revision) => `Zertifikat ${number}, Revision ${revision} (PDF)`,
  says: 'Was es aussagt, für Programme (JSON)',
  proof: 'Nachweis, dass es im Register steht (JSON)',
  register: 'Das Register (JSON)',
  sentence: (lines, revisions) =>
    `Das Register hat ${counted(lines, 'Zeile', 'Zeilen')} zu ${counted(revisions, 'Revision', 'Revisionen')}. Jede Zeile enthält den Hash der Zeile davor, und die Wurzel steht für alle: Wer sie aufbewahrt, kann erkennen, ob etwas Älteres geändert wurde.`,
  inUse: 'in Gebrauch',
  retired: (on, reason) => `${on}, ${reason}`,
  papers: {
    preview: 'Vorschau des Zertifikats (PDF)',
    certificate: (number, revision, state) =>
      `Zertifikat ${number}, Revision ${revision}${state === '' ? '' : `, ${state}`} (PDF)`,
    states: {
      superseded: 'ersetzt',
      withdrawn: 'zurückgezogen',
      prepared: 'vorbereitet, nicht ausgestellt'
    },
    data: 'Werte für Programme (JSON)',
    working: 'Rechengänge aller Werte (PDF)',
    datasheet: grade => `Datenblatt der Sorte ${grade}, heutiger Stand (PDF)`
  },
  news: {
    lot: (lot, kind, state) => `Charge ${lot}, ${kind}: ${state}`,
    certificate: (number, revision, lot, isWithdrawn) =>
      `Zertifikat ${number}, Revision ${revision}, zur Charge ${lot}: ${isWithdrawn ? 'zurückgezogen' : 'ausgestellt'}`
  }
}
