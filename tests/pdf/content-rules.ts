/** Rules on page contents: everything drawn is tagged or decoration, every sign has a name. */

import type { Dict, Objects, Value } from './inspect.ts'

/** Marks, and the operators that put something on the page; texts are hexadecimal. */
const TOKENS =
  /\/(\w+)\s*<<([^>]*)>>\s*BDC|\/(\w+) BMC|\b(EMC)\b|\/(F\d+) [\d.]+ Tf|(\[[^\]]*\]) TJ|^(?:f|f\*|S|s|B|b)$/gm

/** Everything wrong with what is drawn. */
export function contentFaults(pdf: Objects): string[] {
  return pdf.pages.flatMap((page, index) => [
    ...markFaults(pdf, page).map(fault => `page ${index + 1}: ${fault}`),
    ...glyphFaults(pdf, page).map(fault => `page ${index + 1}: ${fault}`)
  ])
}

const tokensOf = (pdf: Objects, page: Dict) =>
  pdf.content(page['/Contents']).toString('latin1').matchAll(TOKENS)

function markFaults(pdf: Objects, page: Dict): string[] {
  const faults: string[] = []
  const open: string[] = []
  const seen: number[] = []
  for (const [, tag, options, untyped, end] of tokensOf(pdf, page)) {
    const opened = tag ?? untyped
    if (end) open.pop()
    else if (opened) {
      if (open.length > 0) faults.push(`${opened} inside ${open.join()}`)
      open.push(opened)
      const mark = /\/MCID (\d+)/.exec(options ?? '')
      if (mark) seen.push(Number(mark[1]))
      else if (opened !== 'Artifact') faults.push(`${opened} without an element`)
    } else if (open.length !== 1) faults.push('something drawn outside any mark')
  }
  return [...faults, ...parentFaults(pdf, page, seen)]
}

/** Each mark belongs to one element, which the tree can be asked for. */
function parentFaults(pdf: Objects, page: Dict, seen: readonly number[]): string[] {
  const numbers = pdf.list(
    pdf.dict(pdf.dict(pdf.catalog['/StructTreeRoot'])['/ParentTree'])['/Nums']
  )
  const parents = pdf.list(numbers[numbers.indexOf(page['/StructParents'] as Value) + 1])
  const inOrder = seen.every((mark, index) => mark === index)
  return [
    ...(inOrder ? [] : ['marks are not numbered one by one']),
    ...(parents.length === seen.length && parents.every(parent => '/S' in pdf.dict(parent))
      ? []
      : ['a mark has no element'])
  ]
}

function glyphFaults(pdf: Objects, page: Dict): string[] {
  const fonts = pdf.dict(pdf.dict(page['/Resources'])['/Font'])
  const faults = new Set<string>()
  let names = new Map<number, string>()
  for (const [, , , , , font, shown] of tokensOf(pdf, page)) {
    if (font) names = unicodeNames(pdf, pdf.dict(fonts[`/${font}`]))
    for (const code of codesIn(shown ?? '')) {
      const name = names.get(code)
      if (code === 0 || !name || /^(0000|feff|fffe)$/i.test(name)) faults.add('a sign has no name')
      else if (/^[ef][0-8][0-9a-f]{2}$/i.test(name)) faults.add(`a sign is private: ${name}`)
    }
  }
  return [...faults]
}

const codesIn = (shown: string): number[] =>
  [...shown.matchAll(/<([0-9a-f]+)>/gi)].flatMap(([, hex]) =>
    (hex!.match(/.{4}/g) ?? []).map(code => parseInt(code, 16))
  )

/** Glyph code to hexadecimal Unicode, from ranges that list a name for each code. */
function unicodeNames(pdf: Objects, font: Dict): Map<number, string> {
  const map = pdf.content(font['/ToUnicode']).toString('latin1')
  const ranges = [...map.matchAll(/<([0-9a-f]{4})> <[0-9a-f]{4}> \[([^\]]*)\]/gi)]
  return new Map(
    ranges.flatMap(([, first, names]) =>
      [...names!.matchAll(/<([^>]*)>/g)].map(
        ([, name], index) => [parseInt(first!, 16) + index, name!] as const
      )
    )
  )
}
