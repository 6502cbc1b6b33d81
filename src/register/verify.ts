/** What can be said of a certificate that someone holds, from a proof, a register, or both. */

import { type Answer, answerOf, type Finding, finding, said } from './answer.ts'
import { proofFindings } from './agreement.ts'
import { copyFindings, heldCopy } from './copy-findings.ts'
import { documentFindings, pdfFinding, signatureFindings, type SourceName } from './findings.ts'
import { canHash } from './fingerprint.ts'
import { type ReadProof, readProof } from './proof.ts'
import { type ReadPublished, readPublished } from './published.ts'
import type { Standing } from './standing.ts'
import { type Subject, subjectOf } from './subject.ts'

/** What the document is compared with, each as its file's text. */
export interface Evidence {
  /** The proof carried with the certificate. */
  readonly proof?: string | undefined
  /** The site's `register.json`. */
  readonly published?: string | undefined
  /** The site's `copies.json`, in which a customer's copy is looked up. */
  readonly copies?: string | undefined
  /** The PDF that the document was attached to. */
  readonly pdf?: { readonly sha256: string } | undefined
  /** Where the register is published, for the sentence that sends there. */
  readonly at?: string | undefined
}

/**
 * Check a frozen document. A signature that cannot be checked here never makes it altered; a browser
 * that cannot hash can say nothing.
 *
 * @param dataText the document, byte for byte: decode it strictly, by `textOf`
 */
export async function verify(dataText: string, evidence: Evidence): Promise<Answer> {
  if (!canHash()) return answerOf([finding('unknown', said('noHashing'))])
  const { proof: proofText, published } = evidence
  const proof = proofText === undefined ? undefined : await readProof(proofText)
  const register = published === undefined ? undefined : await readPublished(published)
  const subject = await subjectOf(dataText)
  const copy = heldCopy(subject)
  if (copy) return answerOf(await copyFindings(subject, copy, { ...evidence, register }))
  return answerOf([
    ...(await findingsOn(subject, evidence, proof, register)),
    ...(proof ? await proofFindings(subject, proof, register) : [])
  ])
}

/** What the register says; where none is given, what the proof's lines say. */
async function findingsOn(
  subject: Subject,
  evidence: Evidence,
  proof: ReadProof | undefined,
  register: ReadPublished | undefined
): Promise<Finding[]> {
  if (register?.ok) return against(subject, register.log.standing, evidence, 'the register')
  if (register) return [finding('unknown', said('registerDamaged', { why: register.why }))]
  if (!proof?.ok) return [finding('unknown', said('nothingSound'))]
  return [
    ...(await against(subject, proof.standing, evidence, 'the proof')),
    onlyProof(proof.asOf, evidence.at)
  ]
}

const onlyProof = (date: string, at: string | undefined): Finding =>
  finding(
    undefined,
    said('onlyProof', { date, at: at === undefined ? 'that the producer publishes' : `at ${at}` })
  )

async function against(
  subject: Subject,
  standing: Standing,
  { pdf }: Evidence,
  source: SourceName
): Promise<Finding[]> {
  const { findings, revision } = documentFindings(subject, standing, source)
  if (!revision) return [...findings]
  return [
    ...findings,
    ...(await signatureFindings(subject, standing, revision)),
    ...(pdf ? [pdfFinding(pdf.sha256, revision, source)] : [])
  ]
}
