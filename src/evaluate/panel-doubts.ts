/** What makes a panel's figures doubtful, or unfit to be set against another's. */

import { type Problem, problemAt } from '../problem.ts'
import type { Panel, Records } from '../records/types.ts'
import type { EvaluatedPanel } from './types.ts'

/** Warnings on one panel. */
export const doubtPanel = (content: Records, panel: EvaluatedPanel): Problem[] => [
  ...thickerDry(panel),
  ...strayLines(panel),
  ...unlikeBare(content, panel),
  ...overdueUses(panel)
]

/** Part of a film by which its own unevenness may hide that it shrank. */
const ROOM = 1.1

/** A film shrinks as it dries. */
function thickerDry({ entry, results }: EvaluatedPanel): Problem[] {
  const { wetFilm_mm: wet, dryFilm_mm: dry } = results
  if (!wet || !dry || dry.estimate.value <= ROOM * wet.estimate.value) return []
  const shown = (value: number) => Number(value.toPrecision(3))
  return [
    problemAt(
      entry.at(['dryFilm', 'readings']),
      'CONTRADICTION',
      `the dry film is ${shown(dry.estimate.value)} mm thick, more than the wet one of ${shown(wet.estimate.value)} mm`,
      'check units and coats: with several coats, the wet film is the sum of all'
    )
  ]
}

/** A back that would have to jump by more than this, K, and back again at the next line. */
const JUMP_K = 50

/** A line of the log that lies off both lines around it: a digit or a contact went wrong. */
function strayLines({ entry }: EvaluatedPanel): Problem[] {
  const { log = [] } = entry.record
  return log.flatMap(({ temperature_C: own }, index) => {
    const [before, after] = [log[index - 1]?.temperature_C, log[index + 1]?.temperature_C]
    if (!before || !after) return []
    const [least, most] = [before.value, after.value].sort((a, b) => a - b) as [number, number]
    const off = Math.max(least - own.value, own.value - most)
    if (off <= Math.max(JUMP_K, most - least)) return []
    return [
      problemAt(
        entry.at(['log', index, 'temperature_C']),
        'SCATTERED_READINGS',
        `is ${own.written} between ${before.written} and ${after.written}`,
        'check the digits, and whether the thermocouple touched the plate'
      )
    ]
  })
}

/** What must be the same of a coated panel and a bare one, or the plate's own heat stays in the difference. */
const sameOf = ({ plate, how }: Panel) => ({
  plate: plate.what,
  'thickness of the plate': plate.thickness_mm.written,
  heating: how ?? ''
})

function unlikeBare({ panels }: Records, { entry }: EvaluatedPanel): Problem[] {
  const own = sameOf(entry.record)
  return (entry.record.bare ?? []).flatMap((number, index) => {
    const bare = panels.get(number)
    if (!bare) return []
    const other = sameOf(bare.record)
    const differing = (Object.keys(own) as (keyof typeof own)[]).filter(
      key => own[key] !== other[key]
    )
    if (differing.length === 0) return []
    return [
      problemAt(
        entry.at(['bare', index]),
        'UNLIKE_PANELS',
        `${number} differs from this panel: ${differing.map(key => `${key} ${other[key] || 'not said'} against ${own[key] || 'not said'}`).join('; ')}`,
        'a time gained needs the same plate, heated alike'
      )
    ]
  })
}

const overdueUses = ({ entry, overdue }: EvaluatedPanel): Problem[] =>
  overdue.map(({ instrument, due, used, field }) =>
    problemAt(
      entry.at(field),
      'NO_CALIBRATION',
      `${instrument} was read on ${used}; its calibration was due on ${due}`,
      'calibrate it, and record what was found'
    )
  )
