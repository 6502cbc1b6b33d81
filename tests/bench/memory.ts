/** Peak memory of a whole build, in a process of its own. */

import { generateWorkshop } from './generate.ts'
import { buildCost, inFolder, writeFiles } from './process.ts'

export const benchMemory = (lots: number): Promise<string> =>
  inFolder(folder => {
    writeFiles(folder, generateWorkshop(lots))
    const { peak_MB } = buildCost(folder)
    const verdict = `(target ≤ 250 MB at 1000 lots: ${peak_MB <= 250 ? 'met' : 'missed'})`
    return Promise.resolve(
      `Memory, whole build of ${lots} lots: peak ${peak_MB.toFixed(0)} MB ${verdict}`
    )
  })
