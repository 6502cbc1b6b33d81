/** The pages of certificates and of their register, in English. */

import type { RevisionText } from '../../../types.ts'

type State = RevisionText['state']

export const certificates = {
  title: 'Certificates',
  heading: 'Certificates issued',
  lead: 'Every certificate that left the workshop, as it stands today.',
  checkCopy: 'Check a copy you hold.',
  register: 'Register',
  caption: 'Certificates issued, newest first',
  certificate: 'Certificate',
  issued: 'Issued',
  standing: 'Standing',
  fingerprint: 'Fingerprint',
  noneYet: 'No certificate has been issued yet.',
  head: 'Head of the register',
  lines: 'Lines',
  root: 'Root',
  keys: 'Keys',
  keysCaption: 'Ed25519 keys certificates are signed with',
  key: 'Key',
  inUseFrom: 'In use from',
  from: 'From',
  until: 'Until',
  states: {
    current: 'current',
    superseded: 'superseded',
    withdrawn: 'withdrawn'
  } satisfies Record<State, string>
}

export const certificate = {
  title: (number: string) => `Certificate ${number}`,
  description: (number: string, lot: string) =>
    `Every revision of certificate ${number} of lot ${lot}, and what changed.`,
  /** Between the paper's title and the lot it is on. */
  on: 'on',
  lot: (lot: string) => `lot ${lot}`,
  revision: (n: string) => `Revision ${n}`,
  states: {
    current: 'Current',
    superseded: 'Superseded',
    withdrawn: 'Withdrawn'
  } satisfies Record<State, string>,
  by: 'by the',
  language: 'Language',
  signature: 'Signature',
  changes: (before: number) => `Changes since revision ${before}`,
  reason: 'Reason:',
  check: 'Check a copy',
  compare: (link: string) => `Hold the paper's fingerprint against the one above, or let ${link}.`,
  compareLink: 'your browser compare the file itself',
  neverChanged:
    'Issued certificates are never changed. A correction is a new revision with its reason; the old one stays here.'
}
