/** The page of each certificate, and of the register they stand in. */

import { compareText } from '../problem.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import { shortFingerprint } from '../register/fingerprint.ts'
import { revisionsOf } from '../register/standing.ts'
import { groupedBy } from './grouped.ts'
import type { Issued, IssuedRegister } from './issued.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { certificateUrl, lotUrl } from './lot.ts'
import type { CertificatePage, Paper, RegisterText, RevisionText } from './types.ts'
import { unstopped } from './words.ts'

/** Addresses of the files that go with an issued revision. */
export function issuedPaths({ number, revision }: { number: string; revision: number }) {
  const start = `${certificateUrl(number)}${number}-r${revision}`
  return { pdf: `${start}.pdf`, data: `${start}.json`, proof: `${start}.proof.json` }
}

/** What an edition shows of a lot: its page, and its papers with what they say. */
export interface Shown {
  readonly hasPage: (lot: string) => boolean
  readonly hasPapers: (lot: string) => boolean
}

/** A page a certificate, the newest first. */
export function certificatePages(
  register: IssuedRegister,
  shown: Shown,
  tongue = english
): CertificatePage[] {
  return [...groupedBy(register.issued, ({ revision }) => revision.number).values()]
    .map(revisions => revisions.reverse())
    .sort(
      (a, b) => compareText(newestDay(b), newestDay(a)) || compareText(numberOf(b), numberOf(a))
    )
    .map(revisions => pageOf(register, revisions, shown, tongue))
}

const numberOf = ([newest]: readonly Issued[]) => newest!.revision.number
const newestDay = ([newest]: readonly Issued[]) => newest!.revision.date

function pageOf(
  { log }: IssuedRegister,
  revisions: readonly Issued[],
  { hasPage, hasPapers }: Shown,
  tongue: Tongue
): CertificatePage {
  const { number, lot } = revisions[0]!.revision
  const withdrawn = revisionsOf(log.standing, number).at(-1)?.withdrawn
  return {
    number,
    lot,
    ...(hasPage(lot) ? { lotUrl: lotUrl(lot) } : {}),
    url: certificateUrl(number),
    notices: withdrawn ? [tongue.register.withdrawnNotice(withdrawn.date)] : [],
    revisions: revisions.map(issued => ({
      ...revisionText(issued, tongue),
      ...(hasPapers(lot) ? saidText(issued, tongue) : { changes: [], papers: [] })
    }))
  }
}

/** What a revision says of its lot, and where to read it. */
function saidText(
  issued: Issued,
  tongue: Tongue
): Pick<RevisionText, 'answer' | 'changes' | 'papers'> {
  const { answer, changes = [] } = issued.frozen.certificate
  return { answer, changes, papers: papersOf(issued, tongue) }
}

function revisionText(
  issued: Issued,
  tongue: Tongue
): Omit<RevisionText, 'answer' | 'changes' | 'papers'> {
  const { revision, state, frozen } = issued
  const { certificate } = frozen
  return {
    title: certificate.title,
    revision: String(revision.revision),
    issued: tongue.numbers.date(certificate.dated),
    ...languageText(certificate.language, tongue),
    dated: certificate.dated,
    signatory: certificate.signatory,
    state,
    standing: standingText(issued, tongue),
    fingerprint: shortFingerprint(revision.data),
    signature: signatureText(issued, tongue),
    ...(revision.reason === undefined ? {} : { reason: `${reasonIn(revision.reason, tongue)}.` })
  }
}

/** Its language where that is not the page's: the paper's own words are told as they are. */
const languageText = (language: PaperLanguage, page: Tongue): Pick<RevisionText, 'language'> =>
  language === page.language
    ? {}
    : { language: { code: language, name: page.pages.languageNames[language] } }

/** A reason without its full stop, whether or not its author ended it so. */
const reasonIn = (reason: string, { own }: Tongue) => unstopped(own(reason))

/** How a revision stands, with day and reason. */
export function standingText({ revision, successor }: Issued, tongue = english): string {
  const { register: words } = tongue
  const { withdrawn } = revision
  if (successor) {
    const reason = successor.reason ? reasonIn(successor.reason, tongue) : ''
    return words.superseded(successor.revision, successor.date, reason)
  }
  if (withdrawn) return words.withdrawn(withdrawn.date, reasonIn(withdrawn.reason, tongue))
  return words.stands(revision.date)
}

function signatureText(
  { revision: { signatures }, frozen: { pdfSigner }, cms }: Issued,
  { register: words }: Tongue
): string {
  const said =
    signatures.length === 0
      ? words.notSigned
      : words.signed(signatures.map(({ key, date }) => ({ key: shortFingerprint(key), date })))
  return pdfSigner && cms ? `${said} ${words.pdfSigned(pdfSigner.name, pdfSigner.issuer)}` : said
}

function papersOf(issued: Issued, { register: words }: Tongue): Paper[] {
  const { number, revision } = issued.revision
  const { pdf, data, proof } = issuedPaths(issued.revision)
  const json = 'application/json'
  return [
    { title: words.certificate(number, revision), url: pdf, mediaType: 'application/pdf' },
    { title: words.says, url: data, mediaType: json },
    { title: words.proof, url: proof, mediaType: json }
  ]
}

/** Address of the register for programs. */
export const registerFile = 'register/register.json'

/** Address of the list in which a customer's copy is looked up. */
export const copiesFile = 'register/copies.json'

/** What the register's own page says; undefined where nothing was ever issued. */
export function registerText(
  { log, head, issued }: IssuedRegister,
  tongue = english
): RegisterText | undefined {
  if (head.size === 0) return undefined
  const { register: words, own, pages } = tongue
  return {
    sentence: words.sentence(head.size, issued.length),
    size: String(head.size),
    root: head.root,
    keys: [...log.standing.keys.values()].map(({ key, date, retired }) => ({
      id: shortFingerprint(key),
      from: date,
      until: retired ? words.retired(pages.day(retired.date), own(retired.reason)) : words.inUse
    })),
    papers: [{ title: words.register, url: registerFile, mediaType: 'application/json' }]
  }
}
