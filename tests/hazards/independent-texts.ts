/**
 * Statement texts by another hand: the LaTeX package ghsystem 4.8c as Debian packages it, which holds
 * CLP's wording of 2008. It is fetched and unpacked, never kept.
 */

import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Language } from '../../src/hazards/statements.ts'

const DEBIAN_PACKAGE = 'texlive-science'
const FOLDER = 'usr/share/texlive/texmf-dist/tex/latex/ghsystem/language'

const fileNames: Record<Language, string> = {
  en: 'ghsystem_english.def',
  de: 'ghsystem_german.def',
  fr: 'ghsystem_french.def',
  es: 'ghsystem_spanish.def',
  it: 'ghsystem_italian.def'
}

/**
 * Folder of the package's language files: unpacked by `.ci/run`, else fetched now.
 *
 * @returns undefined where it cannot be fetched on a desk, loudly
 * @throws Error where it cannot be had and CI is set
 */
export function fetchIndependentTexts(): string | undefined {
  const given = process.env['LOTFOLIO_TEXLIVE_SCIENCE']
  try {
    const folder = join(given ?? unpacked(), FOLDER)
    if (existsSync(folder)) return folder
    throw new Error(`${folder} is not there`)
  } catch (fault) {
    const message = `${DEBIAN_PACKAGE} could not be fetched: ${String(fault)}`
    if (process.env['CI']) throw new Error(message)
    console.warn(`\nSKIPPED TESTS: ${message}\n`)
    return undefined
  }
}

function unpacked(): string {
  const folder = mkdtempSync(join(tmpdir(), 'texlive-science-'))
  const options = { cwd: folder, stdio: 'pipe', timeout: 45_000 } as const
  execFileSync('apt-get', ['download', DEBIAN_PACKAGE], options)
  const archive = readdirSync(folder).find(name => name.endsWith('.deb'))!
  execFileSync('dpkg', ['-x', archive, '.'], options)
  return folder
}

/** Every statement of a language by code, in letters alone. */
export function readIndependentTexts(folder: string, language: Language): Map<string, string> {
  const text = readFileSync(join(folder, fileNames[language]), 'utf8').replace(/^%.*$/gmu, '')
  const [, ...entries] = text.split(/\\ghsystem_add_statement:nnn\s*/u)
  return new Map(
    entries.map(entry => {
      const [, kind, number, rest] = /^\{\s*(\w+)\s*\}\s*\{([^}]*)\}([\s\S]*)$/u.exec(entry)!
      const code = number!.replace(/\s/gu, '').replaceAll('+', `+${kind}`)
      return [`${kind}${code}`, lettersOf(fromTex(firstGroup(rest!)))]
    })
  )
}

/** The first group in braces, with the braces in it. */
function firstGroup(text: string): string {
  let depth = 0
  for (const [index, sign] of [...text].entries()) {
    if (sign === '{') depth += 1
    if (sign === '}') depth -= 1
    if (sign === '}' && depth === 0) return [...text].slice(0, index).join('')
  }
  throw new Error(`a group is not closed: ${text.slice(0, 60)}`)
}

/** Accents and macros of TeX taken off, as `lettersOf` takes them off everything. */
const fromTex = (text: string): string =>
  text
    .replace(/\\oe\b\s*/gu, 'oe')
    .replace(/\\ss\b\s*/gu, 'ss')
    .replace(/\\c\s*\{?c\}?/gu, 'c')
    .replace(/\\i\b/gu, 'i')
    .replace(/\\[a-zA-Z_]+(?::[a-zA-Z]*)?/gu, '')
    .replace(/\\./gu, '')

/** What is left of a text without case, accents, punctuation, blanks and gaps for the supplier. */
export const lettersOf = (text: string): string =>
  text
    .replace(/<[^<>]*>/gu, '')
    .toLowerCase()
    .replaceAll('œ', 'oe')
    .replaceAll('ß', 'ss')
    .normalize('NFD')
    .replace(/[^a-z]/gu, '')
