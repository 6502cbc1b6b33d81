/** The page of each certificate, and of the register they stand in. */

import { compareText } from '../problem.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import { shortFingerprint } from '../register/fingerprint.ts'
import { revisionsOf } from '../register/standing.ts'
import { groupedBy } from './grouped.ts'
import type { Issued, IssuedRegister } from './issued.ts'
import { catalogues } from './languages/index.ts'
import { certificateUrl, lotUrl } from './lot.ts'
import type { CertificatePage, Paper, RegisterText, RevisionText } from './types.ts'
import { counted, dateText } from './words.ts'

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
export function certificatePages(register: IssuedRegister, shown: Shown): CertificatePage[] {
  return [...groupedBy(register.issued, ({ revision }) => revision.number).values()]
    .map(revisions => revisions.reverse())
    .sort(
      (a, b) => compareText(newestDay(b), newestDay(a)) || compareText(numberOf(b), numberOf(a))
    )
    .map(revisions => pageOf(register, revisions, shown))
}

const numberOf = ([newest]: readonly Issued[]) => newest!.revision.number
const newestDay = ([newest]: readonly Issued[]) => newest!.revision.date

function pageOf(
  { log }: IssuedRegister,
  revisions: readonly Issued[],
  { hasPage, hasPapers }: Shown
): CertificatePage {
  const { number, lot } = revisions[0]!.revision
  const withdrawn = revisionsOf(log.standing, number).at(-1)?.withdrawn
  return {
    number,
    lot,
    ...(hasPage(lot) ? { lotUrl: lotUrl(lot) } : {}),
    url: certificateUrl(number),
    notices: withdrawn
      ? [`Do not rely on this certificate. It was withdrawn on ${dateText(withdrawn.date)}.`]
      : [],
    revisions: revisions.map(issued => ({
      ...revisionText(issued),
      ...(hasPapers(lot) ? saidText(issued) : { changes: [], papers: [] })
    }))
  }
}

/** What a revision says of its lot, and where to read it. */
function saidText(issued: Issued): Pick<RevisionText, 'answer' | 'changes' | 'papers'> {
  const { answer, changes = [] } = issued.frozen.certificate
  return { answer, changes, papers: papersOf(issued) }
}

function revisionText(issued: Issued): Omit<RevisionText, 'answer' | 'changes' | 'papers'> {
  const { revision, state, frozen } = issued
  const { certificate } = frozen
  return {
    title: certificate.title,
    revision: String(revision.revision),
    issued: dateText(certificate.dated),
    ...languageText(certificate.language),
    dated: certificate.dated,
    signatory: certificate.signatory,
    state,
    standing: standingText(issued),
    fingerprint: shortFingerprint(revision.data),
    signature: signatureText(issued),
    ...(revision.reason === undefined ? {} : { reason: sentence(revision.reason) })
  }
}

/** Its language where that is not the page's: the paper's own words are told as they are. */
const languageText = (language: PaperLanguage): Pick<RevisionText, 'language'> =>
  language === 'en' ? {} : { language: { code: language, name: catalogues[language].name } }

/** A reason as one sentence, whether or not its author ended it so. */
const sentence = (reason: string) => `${reason.replace(/\.$/u, '')}.`

/** How a revision stands, with day and reason. */
export function standingText({ revision, successor }: Issued): string {
  const { withdrawn } = revision
  if (successor) {
    const reason = successor.reason ? `: ${sentence(successor.reason)}` : '.'
    return `Superseded by revision ${successor.revision} on ${dateText(successor.date)}${reason}`
  }
  if (withdrawn) return `Withdrawn on ${dateText(withdrawn.date)}: ${sentence(withdrawn.reason)}`
  return `Stands as issued on ${dateText(revision.date)}.`
}

function signatureText({ revision: { signatures }, frozen: { pdfSigner }, cms }: Issued): string {
  const said =
    signatures.length === 0
      ? 'Not signed; its fingerprint stands in the register.'
      : `Signed with ${signatures
          .map(({ key, date }) => `key ${shortFingerprint(key)} on ${dateText(date)}`)
          .join(' and ')}.`
  return pdfSigner && cms
    ? `${said} Its PDF is signed for ${pdfSigner.name} as well, with a certificate of the X.509 kind issued by ${pdfSigner.issuer}.`
    : said
}

function papersOf(issued: Issued): Paper[] {
  const { number, revision } = issued.revision
  const { pdf, data, proof } = issuedPaths(issued.revision)
  const name = `${number}, revision ${revision}`
  const json = 'application/json'
  return [
    { title: `Certificate ${name} (PDF)`, url: pdf, mediaType: 'application/pdf' },
    { title: `What it says, for programs (JSON)`, url: data, mediaType: json },
    { title: `Proof that it stands in the register (JSON)`, url: proof, mediaType: json }
  ]
}

/** Address of the register for programs. */
export const registerFile = 'register/register.json'

/** Address of the list in which a customer's copy is looked up. */
export const copiesFile = 'register/copies.json'

/** What the register's own page says; undefined where nothing was ever issued. */
export function registerText({ log, head, issued }: IssuedRegister): RegisterText | undefined {
  if (head.size === 0) return undefined
  return {
    sentence: `The register has ${counted(head.size, 'line')} on ${counted(issued.length, 'revision')}. Each line holds the hash of the line before, and the root stands for all of them: whoever keeps it can tell whether anything older was changed.`,
    size: String(head.size),
    root: head.root,
    keys: [...log.standing.keys.values()].map(({ key, date, retired }) => ({
      id: shortFingerprint(key),
      from: date,
      until: retired ? `${retired.date}, ${retired.reason}` : 'in use'
    })),
    papers: [{ title: 'The register (JSON)', url: registerFile, mediaType: 'application/json' }]
  }
}
