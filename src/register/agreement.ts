/** What a carried proof adds: whether it is sound, of this document, and of this register. */

import { type Finding, finding, said } from './answer.ts'
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
  if (!proof.ok) return [finding('altered', said('proofDamaged', { why: proof.why }))]
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
  return finding(isOther ? 'unknown' : 'altered', said('proofOther', { number, revision }))
}

async function agreement(
  { proof }: Sound<ReadProof>,
  { log, tree }: Sound<ReadPublished>
): Promise<Finding> {
  const [had, has] = [proof.size, log.lines.length]
  const changed = proof.lines.find(({ index, line }) => index < has && log.lines[index] !== line)
  if (changed) return finding('altered', said('lineChanged', { line: changed.index + 1 }))
  const lines = counted(had)
  if (had > has) return finding(undefined, said('olderCopy', { lines, has, n: had }))
  return (await compareHead(tree, proof)).length === 0
    ? finding(undefined, said('stillBegins', { lines, n: had }))
    : finding(
        'altered',
        said('beginsOtherwise', {
          lines,
          n: had,
          are: had === 1 ? 'is not that' : 'are not those'
        })
      )
}

const counted = (lines: number) => (lines === 1 ? '1 line' : `${lines} lines`)
