/** Rules on the structure tree: what a screen reader is told. See rules.ts. */

import type { Dict, Objects, Value } from './inspect.ts'

interface Node {
  readonly tag: string
  readonly dict: Dict
  readonly children: readonly Node[]
  /** Content on a page, or an annotation, held directly. */
  readonly hasContent: boolean
  readonly annotations: readonly Value[]
}

/** What may stand where; texts and annotations aside. */
const blocks = ['P', 'H1', 'H2', 'H3', 'Table', 'Figure', 'Formula']
const allowed: Readonly<Record<string, readonly string[]>> = {
  /** Blocks, or where a file holds several papers, a part for each. */
  Document: [...blocks, 'Part'],
  Part: blocks,
  Table: ['TR'],
  TR: ['TH', 'TD'],
  TH: ['P'],
  TD: ['P'],
  P: ['Link', 'Figure', 'Form'],
  Figure: [],
  Formula: [],
  H1: [],
  H2: [],
  H3: [],
  Link: [],
  Form: []
}

/** Everything wrong with the tree. */
export function structureFaults(pdf: Objects): string[] {
  const roots = pdf.list(pdf.dict(pdf.catalog['/StructTreeRoot'])['/K']).map(kid => node(pdf, kid))
  const nodes = roots.flatMap(flat)
  if (roots.length !== 1 || roots[0]!.tag !== 'Document') return ['there is no Document element']
  return [
    ...nodes.flatMap(nestingFaults),
    ...nodes.filter(({ tag }) => tag === 'Table').flatMap(table => tableFaults(pdf, table)),
    ...papersIn(roots[0]!).flatMap(paper => headingFaults(flat(paper).map(({ tag }) => tag))),
    ...(nodes.some(
      ({ tag, dict }) => ['Figure', 'Formula'].includes(tag) && !pdf.text(dict['/Alt'])
    )
      ? ['a figure has no words in its place']
      : []),
    ...linkFaults(pdf, nodes),
    ...fieldFaults(pdf, nodes)
  ]
}

function node(pdf: Objects, reference: Value): Node {
  const dict = pdf.dict(reference)
  const kids = pdf.list(dict['/K']).map(kid => (typeof kid === 'number' ? kid : pdf.dict(kid)))
  const children = pdf.list(dict['/K']).filter(kid => '/S' in pdf.dict(kid))
  return {
    tag: String(dict['/S']).slice(1),
    dict,
    children: children.map(kid => node(pdf, kid)),
    hasContent: kids.some(kid => typeof kid === 'number' || kid['/Type'] === '/MCR'),
    annotations: kids.flatMap(kid =>
      typeof kid !== 'number' && kid['/Type'] === '/OBJR' ? [kid['/Obj']!] : []
    )
  }
}

const flat = (root: Node): Node[] => [root, ...root.children.flatMap(flat)]

function nestingFaults({ tag, children, hasContent, annotations }: Node): string[] {
  const may = allowed[tag]
  if (!may) return [`${tag} is not an element in use`]
  const wrong = children.filter(child => !may.includes(child.tag))
  // A field is all that a Form holds.
  const isField = tag === 'Form' && annotations.length === 1
  const empty = children.length === 0 && !hasContent && !isField
  return [...wrong.map(child => `${child.tag} in ${tag}`), ...(empty ? [`${tag} is empty`] : [])]
}

function tableFaults(pdf: Objects, table: Node): string[] {
  const widths = new Set(table.children.map(row => row.children.length))
  const heads = table.children.flatMap(row => row.children.filter(cell => cell.tag === 'TH'))
  const scoped = (cell: Node) =>
    ['/Row', '/Column'].includes(String(pdf.dict(cell.dict['/A'])['/Scope']))
  const split = table.children.some(row => pagesOf(row).size > 1)
  const rowHeads = table.children.every(row => row.children[0]?.tag === 'TH')
  return [
    ...(widths.size === 1 ? [] : ['a table is not rectangular']),
    ...(heads.every(scoped) ? [] : ['a header cell has no scope']),
    ...(split ? ['a row is split over pages'] : []),
    ...(rowHeads ? [] : ['a row does not start with its header'])
  ]
}

const pagesOf = (root: Node): Set<Value | undefined> =>
  new Set(
    flat(root)
      .filter(({ hasContent }) => hasContent)
      .map(({ dict }) => dict['/Pg'])
  )

/** Each paper has headings of its own; a file of parts holds nothing beside them. */
function papersIn(root: Node): readonly Node[] {
  const parts = root.children.filter(({ tag }) => tag === 'Part')
  return parts.length > 0 && parts.length === root.children.length ? parts : [root]
}

function headingFaults(tags: readonly string[]): string[] {
  const levels = tags.filter(tag => /^H\d$/.test(tag)).map(tag => Number(tag.slice(1)))
  const jumps = levels.some((level, index) => level > (levels[index - 1] ?? 0) + 1)
  const titles = levels.filter(level => level === 1).length
  return [
    ...(jumps ? ['a heading level is left out'] : []),
    ...(titles === 1 ? [] : [`${titles} titles`])
  ]
}

const annotationsOf = (pdf: Objects) => pdf.pages.flatMap(page => pdf.list(page['/Annots']))

/** Fields of a form: ISO 19005-3, 6.2.4.2, 6.3 and 6.4; ISO 14289-1, 7.18.1 and 7.18.4. */
function fieldFaults(pdf: Objects, nodes: readonly Node[]): string[] {
  const widgets = annotationsOf(pdf).filter(one => pdf.dict(one)['/Subtype'] === '/Widget')
  const forms = nodes.filter(({ tag }) => tag === 'Form')
  const tagged = new Set(forms.flatMap(({ annotations }) => annotations))
  const form = pdf.dict(pdf.catalog['/AcroForm'])
  const fields = pdf.list(form['/Fields'])
  return [
    ...('/NeedAppearances' in form || '/XFA' in form ? ['a program is to draw the fields'] : []),
    ...(String(fields) === String(widgets) ? [] : ['the form has other fields than the pages']),
    ...widgets.flatMap(reference => {
      const widget = pdf.dict(reference)
      const shown = pdf.dict(widget['/AP'])
      return [
        ...(tagged.has(reference) ? [] : ['a field is not in a Form element']),
        ...(pdf.text(widget['/TU']) ? [] : ['a field has no words in its place']),
        ...('/StructParent' in widget ? [] : ['a field does not name its element']),
        ...(widget['/F'] === 132 ? [] : ['a field is hidden, or not printed']),
        ...('/A' in widget || '/AA' in widget ? ['a field does something'] : []),
        ...(String(Object.keys(shown)) === '/N' && pdf.content(shown['/N']).length > 0
          ? []
          : ['a field has no appearance, or more than one'])
      ]
    }),
    ...forms.flatMap(({ dict }) => (pdf.text(dict['/Alt']) ? [] : ['a Form has no Alt']))
  ]
}

function linkFaults(pdf: Objects, nodes: readonly Node[]): string[] {
  const onPages = annotationsOf(pdf).filter(one => pdf.dict(one)['/Subtype'] !== '/Widget')
  const links = nodes.filter(({ tag }) => tag === 'Link')
  const tagged = new Set(links.flatMap(({ annotations }) => annotations))
  return [
    ...onPages.flatMap(reference => {
      const annotation = pdf.dict(reference)
      return [
        ...(tagged.has(reference) ? [] : ['an annotation is not in a Link element']),
        ...(pdf.text(annotation['/Contents']) ? [] : ['a link has no Contents']),
        ...('/StructParent' in annotation ? [] : ['a link does not name its element']),
        ...(annotation['/F'] === 4 ? [] : ['a link is not printed'])
      ]
    }),
    ...links.flatMap(({ dict }) => (pdf.text(dict['/Alt']) ? [] : ['a Link has no Alt']))
  ]
}
