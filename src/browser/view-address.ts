/** The view kept behind the '#' of the address, to be shared and come back to. */

import { addressOf, type Query } from '../archive/query.ts'

/** Where somebody left the list: how many lots were shown, and which one was opened. */
export interface Spot {
  readonly shown: number
  readonly lot: string
}

/** Writing waits until typing rests: a browser takes longer over it than a search does, and limits it. */
const REST_ms = 300

let waiting: Query | undefined
let timer: number | undefined

/** Have an address say a view, soon: at the latest when somebody turns to another place. */
export function keepInAddress(query: Query): void {
  clearTimeout(timer)
  waiting = query
  timer = setTimeout(write, REST_ms)
}

function write(): void {
  if (!waiting) return
  const address = addressOf(waiting)
  waiting = undefined
  history.replaceState(null, '', address === '' ? location.pathname : `#${address}`)
}

/** Keep where the list is left with this step of the browser's history. */
export const leaveFrom = (spot: Spot): void => history.replaceState(spot, '', location.href)

/** Where it was left, for somebody who came back to this step. */
export function spotLeft(): Spot | undefined {
  const state: unknown = history.state
  if (typeof state !== 'object' || state === null) return undefined
  if (!('shown' in state && 'lot' in state)) return undefined
  const { shown, lot } = state
  return typeof shown === 'number' && typeof lot === 'string' ? { shown, lot } : undefined
}

// Whoever follows a link comes back to this view; whoever turns to the address copies it.
document.addEventListener('click', write, { capture: true })
window.addEventListener('blur', write)
