/** Certificates whose PDF is signed with an X.509 certificate, from issuing to every later build. */

import { chmodSync, cpSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { PassThrough } from 'node:stream'
import { describe, expect, onTestFinished, test } from 'vitest'
import { askUnseen } from '../../src/cli/ask-unseen.ts'
import { run, withFile } from '../pdf/inspect.ts'
import { done, eventsOf, keysOf, putInRegister, registerOf, workshopOf } from '../site/issuing.ts'
import { lotfolio, namesIn, tree } from '../site/workplace.ts'
import { requireTool } from '../tools.ts'
import { throwaway, type Wish } from '../x509/throwaway.ts'

const day = ['--date', '2026-03-01']
const issue = ['issue', 'EB-1', ...day]
const tools = [requireTool('openssl', 'openssl'), requireTool('pdfsig', 'poppler-utils')].every(
  found => found
)

/** A workshop with a PKCS #12 file beside it, and what issuing with it comes to. */
function signingWorkshop(wish: Wish = {}) {
  const place = workshopOf('EB-2')
  onTestFinished(() => rmSync(keysOf(place), { recursive: true, force: true }))
  const { path, phrase } = throwaway(keysOf(place), wish)
  const environment = { LOTFOLIO_KEYS: keysOf(place), LOTFOLIO_PDF_PHRASE: phrase }
  const tryTo = (args: readonly string[], more: Readonly<Record<string, string>> = {}) =>
    lotfolio(args, place, { ...environment, ...more })
  return { place, path, phrase, tryTo }
}

async function issuedWorkshop(wish: Wish = {}) {
  const made = signingWorkshop(wish)
  const { status, stdout, stderr } = await made.tryTo([...issue, '--pdf-key', made.path])
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
  return { ...made, stdout }
}

const paperOf = (place: string) => readFileSync(join(place, 'archive', 'CT-1-r1.pdf'))

describe.skipIf(!tools)('a certificate issued with an X.509 certificate', () => {
  test('has a signed PDF, which every build gives again without the key', async () => {
    const { place, stdout } = await issuedWorkshop({ kind: 'ec', until: '2027-05-01' })
    expect(stdout).toContain(
      'PDF signed for Fennick Flakes (Fennick seal 1); its X.509 certificate ends on 2027-05-01\n'
    )
    const said = withFile(paperOf(place), path => run('pdfsig', ['-nocert', path]))
    expect(said).toMatch(/Total document signed[^]*Signature is Valid\./u)
    expect(Object.keys(registerOf(place))).toEqual(['CT-1-r1.json', 'CT-1-r1.p7s', 'log.jsonl'])
    rmSync(keysOf(place), { recursive: true })
    rmSync(join(place, 'archive'), { recursive: true, force: true })
    expect(await done(place, 'check')).toMatch(/no errors/u)
    await done(place, 'build')
    await done(place, 'papers', 'EB-1')
    const drawn = eventsOf(place).find(({ is }) => is === 'drawn') as unknown as { pdf: string }
    expect(tree(join(place, 'papers'))['CT-1-r1.pdf']).toBe(drawn.pdf)
    const page = join(place, '_site', 'certificates', 'CT-1')
    expect(tree(page)['CT-1-r1.pdf']).toBe(drawn.pdf)
    expect(readFileSync(join(page, 'index.html'), 'utf8')).toContain(
      'Its PDF is signed for Fennick Flakes (Fennick seal 1) as well'
    )
  })

  test('of an RSA key comes to the same bytes on another computer', async () => {
    const { place, path, tryTo } = signingWorkshop()
    const other = `${place}-other`
    onTestFinished(() => rmSync(other, { recursive: true, force: true }))
    cpSync(place, other, { recursive: true })
    await tryTo([...issue, '--pdf-key', path])
    const content = ['--content', join(other, 'content'), '--archive', join(other, 'archive')]
    await tryTo([...issue, ...content], { LOTFOLIO_PDF_KEY: path })
    expect(tree(join(other, 'content', 'register'))).toEqual(
      tree(join(place, 'content', 'register'))
    )
    expect(Buffer.compare(paperOf(other), paperOf(place))).toBe(0)
  })

  test('is told as genuine, and as altered with a byte of the signature changed', async () => {
    const { place } = await issuedWorkshop()
    const paper = paperOf(place)
    expect(await done(place, 'verify', 'archive/CT-1-r1.pdf')).toMatch(
      /^Genuine\n[^]*The file itself bears a signature with an X\.509 certificate: whether that/u
    )
    const at = paper.indexOf('/Contents <30')
    for (const place_ of [at + 300, at + 4000, paper.lastIndexOf('>', at + 16_500) - 1]) {
      const altered = Buffer.from(paper)
      altered[place_] = altered[place_] === 0x30 ? 0x31 : 0x30
      writeFileSync(join(place, 'altered.pdf'), altered)
      const { status, stdout } = await lotfolio(['verify', 'altered.pdf'], place)
      expect([status, stdout.split('\n')[0]], String(place_)).toEqual([1, 'Altered'])
    }
  })

  test('cannot have its signature exchanged, dropped or put to another unnoticed', async () => {
    const { place } = await issuedWorkshop()
    const p7s = join(place, 'content', 'register', 'CT-1-r1.p7s')
    const own = readFileSync(p7s)
    const other = await issuedWorkshop({ kind: 'ec' })
    const told = async () => {
      const { status, stdout, stderr } = await lotfolio(['check'], place)
      expect(status).toBe(1)
      return stdout + stderr
    }
    cpSync(join(other.place, 'content', 'register', 'CT-1-r1.p7s'), p7s)
    expect(await told()).toMatch(/REGISTER_DOCUMENT_CHANGED\s+CT-1-r1\.p7s is not the signature/u)
    rmSync(p7s)
    expect(await told()).toMatch(/log\.jsonl:2:1 REGISTER_NO_DOCUMENT\s+CT-1-r1\.p7s is not there/u)
    putInRegister(place, 'CT-1-r1.p7s', own)
    putInRegister(place, 'CT-9-r1.p7s', own)
    expect(await told()).toMatch(/REGISTER_NO_LINE\s+CT-9-r1\.p7s is in no line/u)
  })

  test('is whole after a stopped run: a signature the log names gets its name', async () => {
    const { place } = await issuedWorkshop()
    const folder = join(place, 'content', 'register')
    cpSync(join(folder, 'CT-1-r1.p7s'), join(folder, 'CT-1-r1.p7s.pending'))
    const sound = tree(folder)['CT-1-r1.p7s']
    rmSync(join(folder, 'CT-1-r1.p7s'))
    putInRegister(place, 'CT-2-r1.p7s.pending', 'left')
    expect(await done(place, 'check')).toMatch(/no errors/u)
    await done(place, 'keys', '--make', ...day)
    expect(namesIn(folder)).toEqual(['CT-1-r1.json', 'CT-1-r1.p7s', 'log.jsonl'])
    expect(tree(folder)['CT-1-r1.p7s']).toBe(sound)
  })

  test('keeps its signature where two registers are joined', async () => {
    const { place } = await issuedWorkshop()
    const empty = workshopOf('EB-2')
    await done(empty, 'join', join(place, 'content'))
    expect(registerOf(empty)['CT-1-r1.p7s']).toBe(registerOf(place)['CT-1-r1.p7s'])
    expect(await done(empty, 'check')).toMatch(/no errors/u)
  })

  test('leaves --unsigned, and later certificates without a key, as they were', async () => {
    const { place, path, tryTo } = signingWorkshop()
    const run = await tryTo([...issue, '--unsigned'], { LOTFOLIO_PDF_KEY: path })
    expect(run).toMatchObject({ status: 0, stderr: '' })
    expect(Object.keys(registerOf(place))).toEqual(['CT-1-r1.json', 'log.jsonl'])
    expect(registerOf(place)['CT-1-r1.json']).not.toContain('pdfSigner')
    const both = await tryTo(['issue', 'EB-2', ...day, '--unsigned', '--pdf-key', path])
    expect(both).toMatchObject({ status: 2 })
  })

  test.for([
    ['another pass phrase', {}, { LOTFOLIO_PDF_PHRASE: 'x' }, 'the pass phrase is not that of'],
    ['no terminal to ask at', {}, { LOTFOLIO_PDF_PHRASE: undefined }, 'needs its pass phrase'],
    ['one expired', { until: '2026-02-28' }, {}, 'expired on 2026-02-28'],
    ['one of later', { from: '2026-03-02' }, {}, 'valid from 2026-03-02, after 2026-02-07'],
    ['a sign that is not printed', { subject: { O: '石墨' } }, {}, 'cannot be printed'],
    ['no file', {}, { LOTFOLIO_PDF_KEY: '/nowhere/x.p12' }, '/nowhere/x.p12: does not exist']
  ] as [string, Wish, Record<string, string>, string][])(
    'is refused for %s, and nothing is written',
    async ([, wish, environment, line]) => {
      const { place, path, tryTo } = signingWorkshop({ kind: 'ec', ...wish })
      const before = tree(place)
      const { status, stdout, stderr } = await tryTo(issue, {
        LOTFOLIO_PDF_KEY: path,
        ...environment
      })
      expect([status, stdout]).toEqual([1, ''])
      expect(stderr).toContain(line)
      expect(tree(place)).toEqual(before)
    }
  )

  test('takes no file from among the records, by whatever name, nor one others may read', async () => {
    const { place, path, tryTo } = signingWorkshop({ kind: 'ec' })
    const inside = join(place, 'content', 'workshop.p12')
    cpSync(path, inside)
    const link = join(keysOf(place), 'link.p12')
    symlinkSync(inside, link)
    for (const one of [inside, link])
      expect((await tryTo([...issue, '--pdf-key', one])).stderr).toContain(
        "must not lie in the workshop's own folder; keep it in a folder of your own"
      )
    rmSync(inside)
    chmodSync(path, 0o640)
    expect((await tryTo([...issue, '--pdf-key', path])).stderr).toContain(
      `others may read this private key; close it: chmod 600 ${path}`
    )
    expect(eventsOf(place)).toEqual([])
  })
})

test('a pass phrase that is typed is not shown', async () => {
  const [input, output] = [new PassThrough(), new PassThrough()]
  const asked = askUnseen('Pass phrase: ', input, output)
  input.write('größer 9\r')
  expect(await asked).toBe('größer 9')
  expect(String(output.read())).toBe('Pass phrase: \n')
  const ended = askUnseen('Again: ', input, output)
  input.write('ab\u0003')
  await expect(ended).rejects.toThrow('no pass phrase was given')
})
