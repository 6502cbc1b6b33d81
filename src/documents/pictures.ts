/** Pictures that records name: held against the files there are, and worded for a lot's page. */

import { barLength_mm, drawScaleBar } from '../figures/scale-bar.ts'
import { toDecimal } from '../metrology/rounding.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { Batch, Entry, Foil, Records } from '../records/types.ts'
import { suggestion } from '../records/validate.ts'
import { withUnit } from './figure.ts'
import { english } from './languages/tongue.ts'
import { lotUrl } from './lot.ts'
import type { PictureHead, PictureText, Pictures } from './picture-types.ts'

/** A page of pictures beyond this would not open at once where the line is thin. */
const MOST_BYTES = 1_000_000

type Recorded = NonNullable<(Batch | Foil)['pictures']>

/** Pictures that are not there, or cannot be shown. */
export function checkPictures(content: Records, pictures: Pictures): Problem[] {
  const lots: readonly Entry<Batch | Foil>[] = [
    ...content.batches.values(),
    ...content.foils.values()
  ]
  return lots.flatMap(entry =>
    (entry.record.pictures ?? []).flatMap(({ file }, index) => {
      const place = entry.at(['pictures', index, 'file'])
      const head = pictures.get(file)
      if (!head)
        return problemAt(
          place,
          'PICTURE_MISSING',
          `the content folder has no picture pictures/${file}`,
          suggestion(
            file,
            [...pictures.keys()],
            'put the file into pictures/, or take the line out'
          )
        )
      const fault = faultOf(head)
      return fault ? problemAt(place, 'PICTURE_UNUSABLE', ...fault) : []
    })
  )
}

function faultOf(head: PictureHead): [message: string, hint: string] | undefined {
  if ('fault' in head)
    return [
      `the picture ${head.fault}`,
      'turn or mend it in any editor, and save it as JPEG or PNG'
    ]
  if (head.size_bytes > MOST_BYTES)
    return [
      `the picture takes ${toDecimal(head.size_bytes / 1e6)
        .toSignificantDigits(2)
        .toFixed()} MB, and a page of it would open slowly`,
      'save it smaller: 1600 pixels across show all that a page can'
    ]
  return undefined
}

/** Pictures for the page of a lot; those that cannot be shown were told before. */
export const pictureTexts = (
  lot: string,
  recorded: Recorded,
  pictures: Pictures,
  { own } = english
): PictureText[] =>
  recorded.flatMap(({ file, caption, width_mm }, index) => {
    const head = pictures.get(file)
    if (!head || 'fault' in head) return []
    const { kind, width_px, height_px } = head
    return {
      file,
      url: `${lotUrl(lot)}picture-${index + 1}.${kind}`,
      caption: own(caption),
      width_px,
      height_px,
      ...(width_mm ? { scale: scaleOf(width_mm.value) } : {})
    }
  })

function scaleOf(width_mm: number): NonNullable<PictureText['scale']> {
  const length_mm = barLength_mm(width_mm)
  return { text: lengthText(length_mm), drawing: drawScaleBar(width_mm, length_mm) }
}

/** '200 µm', '5 mm': a round length in the unit that needs no decimals. */
const lengthText = (length_mm: number): string =>
  length_mm < 1
    ? withUnit(toDecimal(length_mm * 1000).toFixed(), 'µm')
    : withUnit(toDecimal(length_mm).toFixed(), 'mm')
