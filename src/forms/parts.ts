/** A record as the parts of a form: what is written in it, and room for what may be. */

import type { FieldPath } from '../problem.ts'
import type { RecordValue } from '../records/edit.ts'
import { entryLabel, labelOf, pointer } from './names.ts'
import { referenceOf } from './references.ts'
import { ANY_VALUE, type FieldOf, type Shape } from './shape.ts'

interface Common {
  readonly path: FieldPath
  readonly label: string
  /** Whether a finished record needs it. */
  readonly isRequired: boolean
  /** Whether it can be taken out as a whole. */
  readonly canGo: boolean
}

export interface ValuePart extends Common {
  readonly is: 'value'
  readonly value: string
  readonly words?: readonly string[]
  readonly hint?: string
  /** Which names it is chosen from, where it names another record. */
  readonly reference?: string
  /** Holds signs that no form gives back as they were. */
  readonly isFixed: boolean
}

export interface ListPart extends Common {
  readonly is: 'list'
  /** Entries written, then empty ones. */
  readonly entries: readonly FormPart[]
  readonly written: number
}

export interface GroupPart extends Common {
  readonly is: 'group'
  readonly isWritten: boolean
  readonly parts: readonly FormPart[]
  /** Names of parts that may be put in; free where any name may. */
  readonly more: readonly string[] | 'free'
}

export type FormPart = ValuePart | ListPart | GroupPart

/** Empty entries behind those of a list: of single values, and of groups. */
const EMPTY_VALUES = 3
const EMPTY_GROUPS = 2

interface At {
  readonly path: FieldPath
  readonly label: string
  readonly isRequired: boolean
  readonly canGo: boolean
  /** Field that holds the record's own number. */
  readonly own: string
  /** Parts to show although nothing is written of them, as pointers. */
  readonly shown: readonly string[]
}

/**
 * The form of a record. Nothing written is left out of it: a field that no schema knows is a text, and
 * what is of another shape than it should be is offered in the shape it has.
 *
 * @param shown pointers of parts to open although nothing is written of them
 */
export function formOf(shape: Shape, data: RecordValue, shown: readonly string[] = []): GroupPart {
  const own = ['number', 'id', 'lot'].find(name => fieldNames(shape).includes(name)) ?? ''
  const at = { path: [], label: '', isRequired: true, canGo: false, own, shown }
  const whole = partAt(shape, data, at)
  if (whole.is !== 'group') throw new Error('a record is a group of fields')
  return whole
}

const fieldNames = (shape: Shape): readonly string[] =>
  shape.is === 'group' ? shape.fields.map(({ name }) => name) : []

/** What is the same for every part of a form. */
type Within = Pick<At, 'own' | 'shown'>

function partAt(expected: Shape, data: RecordValue | undefined, at: At): FormPart {
  const shape = shapeFor(expected, data)
  const { shown, own, ...common } = at
  if (shape.is === 'value') {
    const value = typeof data === 'string' ? data : ''
    const { words, hint, isNumber } = shape
    const reference = isNumber ? referenceOf(at.path, own) : undefined
    return {
      ...common,
      is: 'value',
      value,
      isFixed: UNSAFE.test(value),
      ...(words && { words }),
      ...(hint !== undefined && { hint }),
      ...(reference !== undefined && { reference })
    }
  }
  return shape.is === 'list'
    ? listAt(shape, data, common, { shown, own })
    : groupAt(shape, data, common, { shown, own })
}

/** Signs that browsers drop or change in a field of a form. */
const UNSAFE = /[^\n\t\P{Cc}]|\p{Cs}/u

/** What is written says what it is, where it is not what it should be. */
function shapeFor(expected: Shape, data: RecordValue | undefined): Shape {
  if (data === undefined || data === '') return expected
  if (typeof data === 'string') return expected.is === 'value' ? expected : ANY_VALUE
  if (Array.isArray(data)) return expected.is === 'list' ? expected : ANY_LIST
  return expected.is === 'group' || expected.is === 'names' ? expected : ANY_GROUP
}

const ANY_LIST: Shape = { is: 'list', of: ANY_VALUE }
const ANY_GROUP: Shape = { is: 'group', fields: [] }

function listAt(
  shape: Shape & { is: 'list' },
  data: RecordValue | undefined,
  common: Common,
  within: Within
): ListPart {
  const written = Array.isArray(data) ? (data as readonly RecordValue[]) : []
  const room = shape.of.is === 'value' ? EMPTY_VALUES : EMPTY_GROUPS
  const name = String(common.path.at(-1))
  const entries = [...written, ...Array<undefined>(room).fill(undefined)].map((entry, index) =>
    partAt(shape.of, entry, {
      path: [...common.path, index],
      label: entryLabel(name, index),
      isRequired: false,
      canGo: entry !== undefined && entry !== '',
      ...within
    })
  )
  return { ...common, is: 'list', entries, written: written.length }
}

type GroupLike = Shape & { is: 'group' | 'names' }

function groupAt(
  shape: GroupLike,
  data: RecordValue | undefined,
  common: Common,
  within: Within
): GroupPart {
  const { shown } = within
  const written = isGroup(data) ? data : {}
  const fields = fieldsFor(shape, written, common.path, shown)
  const isRow = typeof common.path.at(-1) === 'number' && data === undefined
  const isOpen = ({ name, shape: inner, isRequired }: FieldOf) =>
    Object.hasOwn(written, name) ||
    isShown([...common.path, name], shown) ||
    (shape.is === 'group' && (isSimple(inner) || (isRequired && !isDeep(inner, isRow))))
  const parts = fields.filter(isOpen).map(({ name, shape: inner, isRequired }) =>
    partAt(inner, written[name], {
      path: [...common.path, name],
      label: labelOf(name),
      isRequired,
      canGo: !isRequired && typeof (written[name] ?? '') !== 'string',
      ...within
    })
  )
  const rest = fields.filter(field => !isOpen(field)).map(({ name }) => name)
  const isFree = shape.is === 'names' && !shape.names
  const more = isRow ? [] : isFree ? ('free' as const) : rest
  return { ...common, is: 'group', isWritten: isGroup(data), parts, more }
}

/** A part that is filled in on the spot: a value, or a list of values. */
const isSimple = (shape: Shape) =>
  shape.is === 'value' || (shape.is === 'list' && shape.of.is === 'value')

/** In an empty row, what a row needs is offered as well, but no lists of groups. */
const isDeep = (shape: Shape, isRow: boolean) => isRow && shape.is === 'list'

const isGroup = (
  data: RecordValue | undefined
): data is { readonly [field: string]: RecordValue } =>
  typeof data === 'object' && !Array.isArray(data)

/** Fields the shape names, then what is written or asked for beside them. */
function fieldsFor(
  shape: GroupLike,
  written: { readonly [field: string]: RecordValue },
  path: FieldPath,
  shown: readonly string[]
): FieldOf[] {
  const of = shape.is === 'names' ? shape.of : ANY_VALUE
  const listed: readonly FieldOf[] =
    shape.is === 'group'
      ? shape.fields
      : (shape.names ?? []).map(name => ({ name, shape: of, isRequired: false }))
  const asked = shape.is === 'names' && !shape.names ? askedIn(path, shown) : []
  const names = new Set(listed.map(({ name }) => name))
  const others = [...new Set([...Object.keys(written), ...asked])].filter(name => !names.has(name))
  return [...listed, ...others.map(name => ({ name, shape: of, isRequired: false }))]
}

const isShown = (path: FieldPath, shown: readonly string[]) => {
  const own = pointer(path)
  return shown.some(one => one === own || one.startsWith(`${own}/`))
}

/** Free names asked for right below a path. */
function askedIn(path: FieldPath, shown: readonly string[]): string[] {
  const own = `${pointer(path)}/`
  return shown
    .filter(one => one.startsWith(own))
    .map(one => one.slice(own.length).split('/', 1)[0]!)
    .map(step => step.replaceAll('~1', '/').replaceAll('~0', '~'))
    .filter(name => name !== '')
}

/** Every value of a form, empty rows included. */
export function valuesOf(part: FormPart): ValuePart[] {
  if (part.is === 'value') return [part]
  return (part.is === 'list' ? part.entries : part.parts).flatMap(valuesOf)
}
