/** The page of a record's form. It needs no script. */

import type { Problem, SourceFile } from '../problem.ts'
import { kindNames, type Kind } from '../records/kinds.ts'
import { type FormState, fieldsHtml, problemHtml } from './fields.ts'
import { type Html, html } from './html.ts'
import { pointer } from './names.ts'
import { type FormPart, type GroupPart, valuesOf } from './parts.ts'
import { namesFor } from './references.ts'

/** An entry that was not written, beside what the file says. */
export interface Unwritten {
  readonly field: string
  readonly entry: string
  readonly file: string
}

export interface FormPage {
  readonly kind: Kind
  /** What the record is called. */
  readonly name: string
  /** The file's path as problems say it. */
  readonly path: string
  /** Address of the form itself. */
  readonly address: string
  readonly token: string
  /** Fingerprint of the text the form was made from. */
  readonly read: string
  readonly form: GroupPart
  readonly files: readonly SourceFile[]
  readonly problems: readonly Problem[]
  readonly sent: FormState['sent']
  readonly isSaved: boolean
  /** Why nothing was written, and what. */
  readonly refused?: { readonly because: string; readonly unwritten: readonly Unwritten[] }
}

export function formPage(page: FormPage): string {
  const { kind, name, form, problems, sent, address, token, read } = page
  const placed = problems.map(problem => ({ problem, target: targetOf(form, problem) }))
  const byField = new Map<string, Problem[]>()
  for (const { problem, target } of placed)
    byField.set(target, [...(byField.get(target) ?? []), problem])
  return shell(
    `${name}: record`,
    html`<p class="kicker">Record of one ${kindNames[kind]}</p>
      <h1>${name}</h1>
      <p class="fine">
        Written to ${page.path}. A quantity takes its unit beside it, as in the record. What is left
        blank is left out; a record may be saved unfinished or wrong, and is told so.
      </p>
      ${page.isSaved && html`<p class="notice" role="status">Saved.</p>`}
      ${page.refused && refusedHtml(page.refused)}
      ${
        placed.length > 0 &&
        html`<section class="summary" id="problems" aria-labelledby="problems-title" tabindex="-1">
          <h2 id="problems-title">
            ${placed.length === 1 ? '1 problem' : `${placed.length} problems`} in this record
          </h2>
          <ul>
            ${placed.map(({ problem, target }) => problemHtml(problem, target))}
          </ul>
        </section>`
      }
      <form method="post" action="${address}" accept-charset="utf-8" id="f">
        <input type="hidden" name="token" value="${token}" />
        <input type="hidden" name="read" value="${read}" />
        ${fieldsHtml(form, { sent, problems: byField })}
        <p><button type="submit" class="save">Save</button></p>
      </form>
      ${listsHtml(form, page.files)}`
  )
}

function refusedHtml({ because, unwritten }: NonNullable<FormPage['refused']>): Html {
  const rows = unwritten.map(
    ({ field, entry, file }) =>
      html`<tr>
        <th scope="row">${field}</th>
        <td>${entry || 'blank'}</td>
        <td>${file || 'blank'}</td>
      </tr>`
  )
  return html`<section class="summary" role="alert">
    <h2>Nothing written</h2>
    <p>${because}</p>
    ${
      rows.length > 0 &&
      html`<div class="scroll" tabindex="0" role="region" aria-label="Entries not written">
        <table>
          <thead>
            <tr>
              <th scope="col">Field</th>
              <th scope="col">Your entry</th>
              <th scope="col">In the file now</th>
            </tr>
          </thead>
          <tbody>
            ${rows}
          </tbody>
        </table>
      </div>`
    }
  </section>`
}

/** The nearest part of the form around the field a problem is about: '' for the whole. */
function targetOf(form: GroupPart, { field }: Problem): string {
  const names = new Set(partsOf(form).map(({ path }) => pointer(path)))
  for (let steps = field.length; steps > 0; steps--) {
    const name = pointer(field.slice(0, steps))
    if (names.has(name)) return name
  }
  return ''
}

const partsOf = (part: FormPart): FormPart[] => [
  part,
  ...(part.is === 'value'
    ? []
    : part.is === 'list'
      ? part.entries.flatMap(partsOf)
      : part.parts.flatMap(partsOf))
]

/** The names fields are chosen from. */
function listsHtml(form: GroupPart, files: readonly SourceFile[]): Html {
  const wanted = [...new Set(valuesOf(form).flatMap(({ reference }) => reference ?? []))]
  return html`${wanted.map(
    reference =>
      html`<datalist id="names-${reference}">
        ${namesFor(reference, files).map(name => html`<option value="${name}"></option>`)}
      </datalist> `
  )}`
}

/** A record that cannot be read as fields, with why. */
export const unreadablePage = (
  name: string,
  { text }: SourceFile,
  why: readonly string[]
): string =>
  shell(
    `${name}: record`,
    html`<h1>${name}</h1>
      <p>
        This file cannot be read as fields, so that there is no form for it: mend it in an editor.
      </p>
      <section class="summary" id="problems">
        <h2>Problems</h2>
        ${why.map(one => html`<pre>${one}</pre>`)}
      </section>
      <h2>The file</h2>
      <div class="scroll" tabindex="0" role="region" aria-label="The file"><pre>${text}</pre></div>`
  )

/** Every record that has a form. */
export const recordsPage = (
  groups: readonly (readonly [
    Kind,
    readonly { readonly name: string; readonly address: string }[]
  ])[]
): string =>
  shell(
    'Records',
    html`<h1>Records</h1>
      <p class="lead">
        Each has a form here, which writes its file in place. Forms are served on this machine
        alone; no page written to disk holds one.
      </p>
      ${groups.map(
        ([kind, records]) =>
          html`<h2>${kindNames[kind].replace(/^./u, sign => sign.toUpperCase())}</h2>
            <ul class="plain records">
              ${records.map(({ name, address }) => html`<li><a href="${address}">${name}</a></li>`)}
            </ul> `
      )}`
  )

/** What is answered where there is nothing to show. */
export const messagePage = (title: string, text: string): string =>
  shell(
    title,
    html`<h1>${title}</h1>
      <p>${text}</p>`
  )

const shell = (title: string, content: Html): string =>
  html`<!DOCTYPE html>
    <html lang="en" class="workshop">
      <head>
        <meta charset="utf-8" />
        <meta
          http-equiv="Content-Security-Policy"
          content="default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'self'"
        />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="robots" content="noindex" />
        <title>${title}</title>
        <link rel="stylesheet" href="/-/site.css" />
        <link rel="stylesheet" href="/-/forms.css" />
      </head>
      <body>
        <a class="skip" href="#content">Skip to content</a>
        <header>
          <p class="private-banner">
            <strong>Workshop edition: private</strong> Not for customers.
          </p>
          <div class="masthead">
            <a class="producer" href="/">Workshop</a>
            <nav aria-label="Site">
              <ul>
                <li><a href="/lots/">Lots</a></li>
                <li><a href="/-/records/">Records</a></li>
              </ul>
            </nav>
          </div>
        </header>
        <main id="content">${content}</main>
      </body>
    </html> `.html
