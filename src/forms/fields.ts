/** The fields of a form as HTML: labelled, units said, problems beside the field they are about. */

import { formatProblem, type Problem } from '../problem.ts'
import { additionOf, removalOf, type Submitted, textOf } from './changes.ts'
import { type Html, html } from './html.ts'
import { fieldId, labelOf, pointer } from './names.ts'
import type { FormPart, GroupPart, ListPart, ValuePart } from './parts.ts'

/** What is shown in a form beside what the record says. */
export interface FormState {
  /** What was filled in and is not written. */
  readonly sent: Submitted
  /** Problems by the name of the field they are told at. */
  readonly problems: ReadonlyMap<string, readonly Problem[]>
}

export const fieldsHtml = ({ parts, more, path }: GroupPart, state: FormState): Html =>
  html`${parts.map(part => partHtml(part, state))}${adderHtml(path, more)}`

function partHtml(part: FormPart, state: FormState): Html {
  if (part.is === 'value') return valueHtml(part, state)
  const inner =
    part.is === 'group'
      ? fieldsHtml(part, state)
      : part.entries.map(entry => partHtml(entry, state))
  const isRow = part.is === 'list' && part.entries.every(({ is }) => is === 'value')
  return html`<fieldset id="${idOf(part)}" ${isRow && html` class="row"`}>
    <legend>${part.label}${part.isRequired && NEEDED}</legend>
    ${told(part, state)}
    <div class="fields">${inner}</div>
    ${part.canGo && removalHtml(part)}
  </fieldset> `
}

const NEEDED = html` <span class="fine-inline">needed</span>`

const idOf = ({ path }: FormPart) => fieldId(pointer(path))

const removalHtml = ({ path, label }: ListPart | GroupPart): Html =>
  html`<label class="box"
    ><input type="checkbox" name="${removalOf(path)}" /> Take out ${label}</label
  >`

function valueHtml(part: ValuePart, state: FormState): Html {
  const id = idOf(part)
  const hint = hintOf(part)
  const own = state.problems.get(pointer(part.path)) ?? []
  const described = [
    ...(hint === undefined ? [] : [`${id}-hint`]),
    ...(own.length > 0 ? [`${id}-told`] : [])
  ].join(' ')
  const attributes = html`id="${id}"
  name="${pointer(part.path)}"${described !== '' && html` aria-describedby="${described}"`}${own.length > 0 && html` aria-invalid="true"`}`
  return html`<p class="field">
    <label for="${id}">${part.label}${part.isRequired && NEEDED}</label>
    ${controlHtml(part, textOf(part, state.sent), attributes)}
    ${hint !== undefined && html`<span class="fine-inline" id="${id}-hint">${hint}</span>`}
    ${told(part, state)}
  </p> `
}

function hintOf({ hint, isFixed }: ValuePart): string | undefined {
  if (isFixed) return 'holds signs that a form would lose: change it in the file'
  return hint === undefined || hint === 'a plain number' ? hint : hint.replace('quantity in', 'in')
}

function controlHtml(part: ValuePart, value: string, attributes: Html): Html {
  if (part.isFixed) return html`<input type="text" ${attributes} value="${value}" disabled />`
  if (part.words) return selectHtml(part.words, value, attributes)
  if (value.includes('\n') || part.value.includes('\n'))
    return html`<textarea ${attributes} rows="4">${'\n'}${value}</textarea>`
  const list = part.reference !== undefined && html` list="names-${part.reference}"`
  return html`<input
    type="text"
    ${attributes}
    value="${value}"
    ${list}
    autocomplete="off"
    spellcheck="false"
  />`
}

/** A choice; what is written and no word of it can be kept as it is. */
function selectHtml(words: readonly string[], value: string, attributes: Html): Html {
  const all = ['', ...words, ...(value === '' || words.includes(value) ? [] : [value])]
  const options = all.map(
    word => html`<option value="${word}" ${word === value && html` selected`}>${word}</option>`
  )
  return html`<select ${attributes}>
    ${options}
  </select>`
}

/** Problems in the words of the terminal. */
function told(part: FormPart, { problems }: FormState): Html | false {
  const own = problems.get(pointer(part.path)) ?? []
  if (own.length === 0) return false
  const lines = own.map(one => html`${one.message}; ${one.hint}<br />`)
  return html`<span class="told" id="${idOf(part)}-told">${lines}</span>`
}

/** Parts that may be put in: chosen, or named where any name may be. */
function adderHtml(path: GroupPart['path'], more: GroupPart['more']): Html | false {
  if (more !== 'free' && more.length === 0) return false
  const id = `${fieldId(pointer(path))}-add`
  const options = more === 'free' ? [] : more
  const control =
    more === 'free'
      ? html`<input type="text" id="${id}" name="${additionOf(path)}" autocomplete="off" />`
      : html`<select id="${id}" name="${additionOf(path)}">
          <option value=""></option>
          ${options.map(name => html`<option value="${name}">${labelOf(name)}</option>`)}
        </select>`
  const last = path.at(-1)
  const to = typeof last === 'string' ? ` to ${labelOf(last)}` : ''
  return html`<p class="field add">
    <label for="${id}">Add a part${to}</label>
    ${control}
    <button type="submit">Save and add</button>
  </p> `
}

/** A problem as the terminal prints it, with a link to its field. */
export const problemHtml = (problem: Problem, target: string): Html =>
  html`<li>
    <a href="#${fieldId(target)}">${problem.message}</a>
    <pre tabindex="0">${formatProblem(problem)}</pre>
  </li> `
