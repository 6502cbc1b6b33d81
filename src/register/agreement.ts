/** What a carried proof adds: whether it is sound, of this document, and of this register. */

import type { Finding } from './answer.ts'
import { compareHead } from './compare.ts'
import type { ReadProof } from './proof.ts'
import type { ReadPublished } from './published.ts'
import type { Subject } from './subject.ts'

type Sound<Read> = Extract<Read, { ok: true }>

export async function proofFindings(
  subject: Subject,
  proof: ReadProof,
  register: ReadPublished | undefined
): Promise<Finding[]> {
  if (!proof.ok)
    return [{ word: 'altered', sentence: `The proof was changed or is none: ${proof.why}.` }]
  const { number, revision } = proof.proof
  const known = proof.standing.byData.get(subject.hash)
  const isOfIt = known?.number === number && known.revision === revision
  return [
    ...(isOfIt ? [] : [mismatch(subject, number, revision)]),
    ...(register?.ok ? [await agreement(proof, register)] : [])
  ]
}

/** A proof of another document than the one held. */
function mismatch(subject: Subject, number: string, revision: number): Finding {
  const isOther =
    subject.is === 'canonical' && (subject.number !== number || subject.revision !== revision)
  return {
    word: isOther ? 'unknown' : 'altered',
    sentence: `The proof is of ${number} revision ${revision}, and not of the document given here.`
  }
}

const REWRITTEN =
  'the register was rewritten since the proof was taken, or the proof is of another register'

async function agreement(
  { proof }: Sound<ReadProof>,
  { log, tree }: Sound<ReadPublished>
): Promise<Finding> {
  const [had, has] = [proof.size, log.lines.length]
  const changed = proof.lines.find(({ index, line }) => index < has && log.lines[index] !== line)
  if (changed) {
    const sentence = `Line ${changed.index + 1} of the register is not the one in the proof: ${REWRITTEN}.`
    return { word: 'altered', sentence }
  }
  if (had > has)
    return {
      sentence: `The proof was taken from ${counted(had)}, and the register given here has ${has}: it is an older copy, or lines at its end were dropped.`
    }
  return (await compareHead(tree, proof)).length === 0
    ? {
        sentence: `The register still begins with the ${counted(had)} that the proof was taken from.`
      }
    : {
        word: 'altered',
        sentence: `The first ${counted(had)} of the register ${had === 1 ? 'is not that' : 'are not those'} of the proof: ${REWRITTEN}.`
      }
}

const counted = (lines: number) => (lines === 1 ? '1 line' : `${lines} lines`)
