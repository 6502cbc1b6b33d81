/** How long a page takes to answer a key or a choice, by real keys in Chromium. */

import type { CDPSession, Page } from 'playwright-core'

/** One answer, in ms. */
export interface Answer {
  /** Our own script: from the first to the last who hears of the 'input' event. */
  readonly script: number
  /**
   * From the event until the page's thread has painted the next frame, waiting for that frame included:
   * style, layout and paint are done; putting it on a screen is the browser's other threads'.
   */
  readonly painted: number
  /**
   * The processor's time of the page's thread for all of it, from the key on: with rows below the edge of
   * the screen, which come after that frame.
   */
  readonly processor: number
}

type Watch = keyof Answer

/** By then what an answer sets off after its frame is done; the address is written later, once. */
const AFTER_ms = 100

/** Keeps the times of the latest event. */
const LISTEN = `(() => {
  if ('answered' in globalThis) return
  globalThis.answered = undefined
  let event
  addEventListener('input', () => {
    const one = (event = { start: performance.now() })
    globalThis.answered = new Promise(resolve =>
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () =>
          resolve({ script: one.script, painted: performance.now() - one.start })
        port2.postMessage(0)
      })
    )
  }, true)
  addEventListener('input', () => {
    event.script = performance.now() - event.start
  })
})()`

/** What is done to a field: letters typed and taken away again, or one choice after the other. */
export interface Doing {
  readonly id: string
  readonly types?: string
  readonly chooses?: readonly string[]
}

/** Do all of it, each step after the answer to the one before. */
export async function answersTo(page: Page, doings: readonly Doing[]): Promise<Answer[]> {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable', { timeDomain: 'threadTicks' })
  await page.evaluate(LISTEN)
  const answers: Answer[] = []
  for (const { id, types = '', chooses = [] } of doings) {
    await page.focus(`#${id}`)
    const keys = [...types].map(key => (key === ' ' ? 'Space' : key))
    for (const key of [...keys, ...keys.map(() => 'Backspace')])
      answers.push(await answerTo(page, session, () => page.keyboard.press(key)))
    for (const choice of chooses)
      answers.push(await answerTo(page, session, () => page.selectOption(`#${id}`, choice)))
  }
  await session.detach()
  return answers
}

async function answerTo(
  page: Page,
  session: CDPSession,
  act: () => Promise<unknown>
): Promise<Answer> {
  const before = await processor_ms(session)
  await act()
  const times = await page.evaluate<Omit<Answer, 'processor'>>('globalThis.answered')
  await page.waitForTimeout(AFTER_ms)
  return { ...times, processor: (await processor_ms(session)) - before }
}

async function processor_ms(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  return metrics.find(({ name }) => name === 'TaskDuration')!.value * 1000
}

/** The value that a part of all answers stay within. */
export function within(answers: readonly Answer[], watch: Watch, part: number): number {
  const sorted = answers.map(answer => answer[watch]).sort((a, b) => a - b)
  return sorted[Math.max(0, Math.ceil(part * sorted.length) - 1)]!
}
