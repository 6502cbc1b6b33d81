/** Looking into a PDF with the system's tools: objects through qpdf, text through poppler. */

import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'

/** A PDF value as qpdf writes it: names start with '/', texts with 'u:', references end with ' R'. */
export type Value = null | boolean | number | string | readonly Value[] | Dict
export interface Dict {
  readonly [key: string]: Value
}

interface Stored {
  readonly value?: Value
  readonly stream?: { readonly dict: Dict; readonly data: string }
}

const REFERENCE = /^\d+ \d+ R$/

/** Run `use` with the file's path; the file is gone afterwards. */
export function withFile<T>(bytes: Uint8Array, use: (path: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'pdf-'))
  try {
    const path = join(folder, 'file.pdf')
    writeFileSync(path, bytes)
    return use(path)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** What a program writes about the file; its exit code must be 0. */
export const run = (program: string, args: readonly string[]): string =>
  execFileSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 28 })

/** The text of each page as a reader would copy it, laid out as on paper. */
export const pageTexts = (bytes: Uint8Array): string[] =>
  withFile(bytes, path => run('pdftotext', ['-layout', path, '-']))
    .split('\f')
    .slice(0, -1)

/** All text with every run of white space as one space, so that line breaks don't matter. */
export const plainText = (bytes: Uint8Array): string =>
  withFile(bytes, path => run('pdftotext', [path, '-'])).replace(/\s+/g, ' ')

/** Every word with its box on its page, in points. */
export function wordBoxes(bytes: Uint8Array) {
  const html = withFile(bytes, path => run('pdftotext', ['-bbox', path, '-']))
  const page = /<page width="([\d.]+)" height="([\d.]+)">/g
  const word = /xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g
  const sizes = [...html.matchAll(page)].map(([, width, height]) => [Number(width), Number(height)])
  return html
    .split('<page ')
    .slice(1)
    .flatMap((part, index) =>
      [...part.matchAll(word)].map(([, left, top, right, bottom, text]) => ({
        page: index + 1,
        width: sizes[index]![0]!,
        height: sizes[index]![1]!,
        left: Number(left),
        top: Number(top),
        right: Number(right),
        bottom: Number(bottom),
        text: text!
      }))
    )
}

/** The attached file's bytes as a reader would save them. */
export const attachedBytes = (bytes: Uint8Array): Uint8Array =>
  withFile(bytes, path => {
    const saved = `${path}.attached`
    run('pdfdetach', ['-save', '1', '-o', saved, path])
    return readFileSync(saved)
  })

/** A PDF's objects by reference. */
export class Objects {
  readonly trailer: Dict
  private readonly stored: Readonly<Record<string, Stored>>

  constructor(bytes: Uint8Array) {
    const args = ['--json=2', '--json-stream-data=inline', '--decode-level=generalized']
    const json = withFile(bytes, path => run('qpdf', [...args, path]))
    this.stored = (JSON.parse(json) as { qpdf: [unknown, Record<string, Stored>] }).qpdf[1]
    this.trailer = this.stored['trailer']!.value as Dict
  }

  get catalog(): Dict {
    return this.dict(this.trailer['/Root'])
  }

  get pages(): Dict[] {
    return this.list(this.dict(this.catalog['/Pages'])['/Kids']).map(page => this.dict(page))
  }

  /** All dictionaries that are objects of their own, a stream's included. */
  get all(): Dict[] {
    return Object.values(this.stored)
      .map(({ value, stream }) => stream?.dict ?? value)
      .filter(isDict)
  }

  /** The value itself where `value` is a reference. */
  get(value: Value | undefined): Value | undefined {
    if (typeof value !== 'string' || !REFERENCE.test(value)) return value
    const { value: plain, stream } = this.stored[`obj:${value}`] ?? {}
    return stream?.dict ?? plain
  }

  dict(value: Value | undefined): Dict {
    const found = this.get(value)
    return isDict(found) ? found : {}
  }

  list(value: Value | undefined): readonly Value[] {
    const found = this.get(value)
    return Array.isArray(found) ? found : []
  }

  /** A text, without qpdf's 'u:'. */
  text(value: Value | undefined): string | undefined {
    const found = this.get(value)
    return typeof found === 'string' && found.startsWith('u:') ? found.slice(2) : undefined
  }

  /** A stream's content, decompressed. */
  content(reference: Value | undefined): Buffer {
    const stream = this.stored[`obj:${String(reference)}`]?.stream
    return Buffer.from(stream?.data ?? '', 'base64')
  }
}

const isDict = (value: Value | undefined): value is Dict =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const JAVA = '/usr/share/java'

/** Debian's PDFBox and what its validator needs, by package. */
export const preflightJars: readonly (readonly [jar: string, debianPackage: string])[] = [
  [`${JAVA}/pdfbox2.jar`, 'libpdfbox2-java'],
  [`${JAVA}/preflight.jar`, 'libpdfbox2-java'],
  [`${JAVA}/xmpbox.jar`, 'libpdfbox2-java'],
  [`${JAVA}/fontbox2.jar`, 'libfontbox2-java'],
  [`${JAVA}/commons-logging.jar`, 'libcommons-logging-java'],
  [`${JAVA}/javax.activation.jar`, 'libactivation-java'],
  [`${JAVA}/jaxb-api.jar`, 'libjaxb-api-java']
]

/** A JVM that starts soon and is not to run for long. */
const SHORT_LIVED = ['-XX:TieredStopAtLevel=1', '-XX:+UseSerialGC']

/**
 * What PDFBox Preflight says of PDF/A-1b files, in their order. Give it all there are at once: one
 * start of Java costs more than many files.
 *
 * @throws Error with Preflight's own words, where it says nothing of a file
 */
export function preflightAll(files: readonly Uint8Array[]): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'preflight-'))
  try {
    const paths = files.map((_, index) => join(folder, `${index}.pdf`))
    for (const [index, bytes] of files.entries()) writeFileSync(paths[index]!, bytes)
    const list = join(folder, 'list')
    writeFileSync(list, paths.join('\n'))
    const said = runPreflight(list)
    const report = existsSync(`${list}.preflight.xml`)
      ? readFileSync(`${list}.preflight.xml`, 'utf8')
      : ''
    return paths.map(path => verdictOn(basename(path), report, said))
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Preflight over the files of a list, its report beside the list; returns what it says beside. */
function runPreflight(list: string): string {
  const classes = preflightJars.map(([jar]) => jar).join(':')
  const main = ['org.apache.pdfbox.preflight.Validator_A1b', 'xml', 'group', list]
  const { stdout, stderr } = spawnSync('java', [...SHORT_LIVED, '-cp', classes, ...main], {
    encoding: 'utf8'
  })
  return `${stdout}${stderr}`
}

function verdictOn(name: string, report: string, said: string): string {
  const part = report.split('<preflight ').find(text => text.startsWith(`name="${name}"`))
  const valid = /<isValid type="PDF\/A1-b">(true|false)</u.exec(part ?? '')?.[1]
  if (!part || !valid) throw new Error(`Preflight says nothing of ${name}: ${said}`)
  const faults = part.match(/(?<=<details>)[^<]*/gu) ?? []
  if (valid === 'true' && faults.length === 0) return 'is a valid PDF/A-1b file'
  return ['is not a valid PDF/A-1b file:', ...faults].join('\n')
}

/** What it says of one. */
export const preflight = (bytes: Uint8Array): string => preflightAll([bytes])[0]!
