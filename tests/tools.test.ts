import { afterEach, describe, expect, it, vi } from 'vitest'
import { requireTool } from './tools.ts'

afterEach(() => {
  vi.unstubAllEnvs()
  vi.restoreAllMocks()
})

describe('a program some tests need', () => {
  it('is found on the path, or by its full path', () => {
    expect(requireTool('node', 'nodejs')).toBe(true)
    expect(requireTool(process.execPath, 'nodejs')).toBe(true)
  })

  it('is loudly missed on a desk', () => {
    vi.stubEnv('CI', '')
    const warn = vi.spyOn(console, 'warn').mockImplementation(() => undefined)
    expect(requireTool('no-such-program', 'some-package')).toBe(false)
    expect(warn.mock.calls.join()).toContain('apt-get install some-package')
  })

  it('fails the run in CI', () => {
    vi.stubEnv('CI', 'true')
    expect(() => requireTool('/usr/share/java/no-such.jar', 'some-package')).toThrow('some-package')
  })
})
