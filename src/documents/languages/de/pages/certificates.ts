/** The pages of certificates and of their register, in German. */

import type * as english from '../../en/pages/certificates.ts'

export const certificates: typeof english.certificates = {
  title: 'Zertifikate',
  heading: 'Ausgestellte Zertifikate',
  lead: 'Jedes Zertifikat, das die Werkstatt verlassen hat, mit seinem heutigen Stand.',
  checkCopy: 'Eine Ausfertigung prüfen.',
  register: 'Register',
  caption: 'Ausgestellte Zertifikate, das jüngste zuerst',
  certificate: 'Zertifikat',
  issued: 'Ausgestellt',
  standing: 'Stand',
  fingerprint: 'Fingerabdruck',
  noneYet: 'Noch ist kein Zertifikat ausgestellt.',
  head: 'Kopf des Registers',
  lines: 'Zeilen',
  root: 'Wurzel',
  keys: 'Schlüssel',
  keysCaption: 'Ed25519-Schlüssel, mit denen Zertifikate signiert sind',
  key: 'Schlüssel',
  inUseFrom: 'In Gebrauch seit',
  from: 'Seit',
  until: 'Bis',
  states: { current: 'gültig', superseded: 'ersetzt', withdrawn: 'zurückgezogen' }
}

export const certificate: typeof english.certificate = {
  title: number => `Zertifikat ${number}`,
  description: (number, lot) =>
    `Alle Revisionen des Zertifikats ${number} zur Charge ${lot} und was sich geändert hat.`,
  on: 'zur',
  lot: lot => `Charge ${lot}`,
  revision: n => `Revision ${n}`,
  states: { current: 'Gültig', superseded: 'Ersetzt', withdrawn: 'Zurückgezogen' },
  by: 'Unterzeichner:',
  language: 'Sprache',
  signature: 'Signatur',
  changes: before => `Änderungen gegenüber Revision ${before}`,
  reason: 'Grund:',
  check: 'Eine Ausfertigung prüfen',
  compare: link => `Den Fingerabdruck auf dem Papier mit dem obigen vergleichen oder ${link}.`,
  compareLink: 'den Browser die Datei selbst vergleichen lassen',
  neverChanged:
    'Ausgestellte Zertifikate werden nie geändert. Eine Berichtigung ist eine neue Revision mit ihrem Grund; die alte bleibt hier stehen.'
}
