/** Parts of a spreadsheet as elements. */

import { XMLParser } from 'fast-xml-parser'

/** An element: attributes by name with '@' before it, children by tag, text under '#text'. */
export type Element = Readonly<Record<string, unknown>>

const repeated = new Set([
  'sheet',
  'Relationship',
  'row',
  'c',
  'si',
  'r',
  't',
  'numFmt',
  'xf',
  'is'
])

const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '@',
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
  removeNSPrefix: true,
  isArray: (name, _path, _isLeaf, isAttribute) => !isAttribute && repeated.has(name)
})

/** The elements of a part, or undefined where it is no XML. */
export function elementsOf(xml: string): Element | undefined {
  try {
    const read: unknown = parser.parse(xml)
    return isElement(read) ? read : undefined
  } catch {
    return undefined
  }
}

export const isElement = (value: unknown): value is Element =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** The element at a path of tags, one child after the other. */
export const inside = (element: Element | undefined, ...tags: string[]): Element | undefined =>
  tags.reduce<Element | undefined>((at, tag) => {
    const next = at?.[tag]
    return isElement(next) ? next : undefined
  }, element)

/** The repeated children of one tag. A child with nothing in it is an element without fields. */
export function children(element: Element | undefined, tag: string): Element[] {
  const list = element?.[tag]
  return Array.isArray(list)
    ? list.map(item => (isElement(item) ? item : { '#text': String(item) }))
    : []
}

export const attribute = (element: Element, name: string): string | undefined => {
  const value = element[`@${name}`]
  return typeof value === 'string' ? value : undefined
}

/** The text of a child, or of the element itself. */
export function textOf(value: unknown): string {
  if (Array.isArray(value)) return value.map(textOf).join('')
  if (isElement(value)) return textOf(value['#text'] ?? '')
  return typeof value === 'string' ? value : ''
}
