/**
 * The page that checks a certificate: reads the file a visitor chooses or drops, and compares it with
 * the register that came with the page. Nothing is sent anywhere.
 */

import { fingerprint } from '../register/fingerprint.ts'
import type { Word } from '../register/answer.ts'
import { verify } from '../register/verify.ts'
import {
  checkPageWords,
  type CheckPageWords,
  checkWords,
  type CheckWords,
  type Said,
  sayIn
} from '../register/words.ts'
import { holdingOf } from '../verify/holding.ts'

/** Set by register/published.js and register/copies.js, scripts beside this one. */
declare const lotfolioRegister: string | undefined
declare const lotfolioCopies: string | undefined

/** Set by a page in another language, as data. */
const brought = document.getElementById('script-words')?.textContent
const { checks, checkPage } = {
  checks: checkWords,
  checkPage: checkPageWords,
  ...(brought ? (JSON.parse(brought) as { checks?: CheckWords; checkPage?: CheckPageWords }) : {})
}

interface Told {
  readonly word: Word
  readonly sentences: readonly string[]
}

const part = (id: string): HTMLElement => document.getElementById(id)!

/** Check one file and show the answer. */
async function check(file: File): Promise<void> {
  part('outcome').replaceChildren(paragraph(checkPage.comparing))
  show(file.name, await toldOf(new Uint8Array(await file.arrayBuffer())))
}

async function toldOf(bytes: Uint8Array): Promise<Told> {
  const published = typeof lotfolioRegister === 'string' ? lotfolioRegister : undefined
  if (published === undefined)
    return {
      word: 'unknown',
      sentences: [checkPage.failed]
    }
  const holding = await holdingOf(bytes)
  if (typeof holding === 'string') return { word: 'unknown', sentences: [refusalIn(holding)] }
  const { data, proof, pdf } = holding
  const { word, says } = await verify(data, {
    published,
    ...(typeof lotfolioCopies === 'string' ? { copies: lotfolioCopies } : {}),
    ...(proof === undefined ? {} : { proof }),
    ...(pdf ? { pdf: { sha256: await fingerprint(pdf) } } : {})
  })
  return { word, sentences: says.map(sentenceOf) }
}

const sentenceOf = (says: readonly Said[]): string =>
  says.map(one => sayIn(checks, one, checkPage.terms)).join(' ')

/** Why a file is no certificate, by the English sentence that says so. */
function refusalIn(sentence: string): string {
  const keys = ['empty', 'neither', 'noData'] as const
  const key = keys.find(one => checkWords[one] === sentence)
  return key ? checks[key] : sentence
}

function show(name: string, { word, sentences }: Told): void {
  const heading = document.createElement('p')
  heading.className = `verdict-word ${word}`
  const strong = document.createElement('strong')
  strong.textContent = checkPage.answers[word]
  heading.append(strong, ` – ${name}`)
  const list = document.createElement('ul')
  list.className = 'plain'
  for (const sentence of sentences) {
    const item = document.createElement('li')
    item.textContent = sentence
    list.append(item)
  }
  part('outcome').replaceChildren(heading, list)
}

function paragraph(text: string): HTMLParagraphElement {
  const element = document.createElement('p')
  element.textContent = text
  return element
}

function listen(): void {
  const input = part('copy') as HTMLInputElement
  const drop = part('drop')
  input.addEventListener('change', () => {
    const file = input.files?.[0]
    if (file) void check(file)
  })
  // Anywhere on the page: a file let go beside the field must not replace the page.
  document.addEventListener('dragover', event => {
    event.preventDefault()
    drop.classList.add('over')
  })
  document.addEventListener('dragleave', () => drop.classList.remove('over'))
  document.addEventListener('drop', event => {
    event.preventDefault()
    drop.classList.remove('over')
    const file = event.dataTransfer?.files[0]
    if (file) void check(file)
  })
  drop.hidden = false
  part('unscripted').hidden = true
}

listen()
