/** An issued certificate, looked at with programs of others. */

import { execFileSync } from 'node:child_process'
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { fingerprint, shortFingerprint } from '../../src/register/fingerprint.ts'
import { done, eventsOf, registerOf, workshopOf } from '../site/issuing.ts'
import { requireTool } from '../tools.ts'

const tools = [
  requireTool('pdftoppm', 'poppler-utils'),
  requireTool('zbarimg', 'zbar-tools'),
  requireTool('openssl', 'openssl')
].every(found => found)

const run = (...[file = '', ...args]: string[]) =>
  execFileSync(file, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] })

/** DER around the 32 bytes of an Ed25519 public key: RFC 8410, section 10.1. */
const DER = Buffer.from('302a300506032b6570032100', 'hex')

test.skipIf(!tools)(
  'code, fingerprint, files and signature of a paper are those of the site',
  async () => {
    const place = workshopOf()
    const producer = join(place, 'content', 'producer.yaml')
    appendFileSync(producer, 'site: https://fennick.example.org\n')
    const day = ['--date', '2026-03-01']
    await done(place, 'keys', '--make', ...day)
    await done(place, 'issue', 'EB-1', ...day)
    await done(place, 'build')
    const at = (...parts: string[]) => join(place, ...parts)
    const paper = at('archive', 'CT-1-r1.pdf')

    run('pdftoppm', '-r', '200', '-png', paper, at('page'))
    const pages = execFileSync('sh', ['-c', 'ls page*.png'], { cwd: place, encoding: 'utf8' })
      .trim()
      .split('\n')
    const code = pages
      .map(page => {
        try {
          return run('zbarimg', '-q', '--raw', at(page)).trim()
        } catch {
          return ''
        }
      })
      .join('')
    const { origin, pathname } = new URL(code)
    expect(origin).toMatch(/^https:/u)
    const html = readFileSync(
      at('_site', pathname.slice(pathname.indexOf('certificates/')), 'index.html'),
      'utf8'
    )

    const text = registerOf(place)['CT-1-r1.json']!
    const short = shortFingerprint(await fingerprint(text))
    expect(run('pdftotext', paper, '-').replaceAll(/\s+/gu, ' ')).toContain(short)
    expect(html).toContain(short)

    for (const [name, published] of [
      ['certificate.json', 'CT-1-r1.json'],
      ['proof.json', 'CT-1-r1.proof.json']
    ] as const) {
      run('pdfdetach', '-savefile', name, '-o', at(name), paper)
      const [path] = execFileSync('find', ['_site', '-name', published], {
        cwd: place,
        encoding: 'utf8'
      })
        .trim()
        .split('\n')
      expect(readFileSync(at(name), 'utf8'), name).toBe(readFileSync(at(path!), 'utf8'))
    }
    expect(readFileSync(at('certificate.json'), 'utf8')).toBe(text)

    const events = eventsOf(place) as unknown as Record<string, string>[]
    const value = (is: string, name: string) =>
      Buffer.from(events.find(event => event['is'] === is)![name]!, 'base64')
    writeFileSync(at('key.der'), Buffer.concat([DER, value('key-added', 'publicKey')]))
    writeFileSync(at('signature'), value('signed', 'signature'))
    const check = [
      'openssl',
      'pkeyutl',
      '-verify',
      '-rawin',
      '-pubin',
      '-keyform',
      'DER',
      '-inkey',
      at('key.der'),
      '-sigfile',
      at('signature'),
      '-in'
    ]
    expect(run(...check, at('certificate.json'))).toContain('Signature Verified Successfully')
    writeFileSync(at('other.json'), text.replace('EB-1', 'EB-3'))
    expect(() => run(...check, at('other.json'))).toThrow()
  }
)
