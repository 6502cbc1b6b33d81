/**
 * After each test the process listens: one that answers the runner nothing for a minute counts as hung,
 * and on a busy machine tests that never wait for anything take longer than that together.
 */

import { setImmediate } from 'node:timers/promises'
import { afterEach } from 'vitest'

afterEach(() => setImmediate())
