/**
 * Keeps a page of the workshop's own server up to date: what is wrong with the records is shown within
 * the page, and a page built anew is loaded where its reader was.
 */

interface State {
  /** Which build the server shows. */
  readonly build: string
  /** Whether what is shown is not what the records say. */
  readonly isBroken: boolean
  /** How the records stand, in a line; empty where there is nothing to say. */
  readonly standing: string
  /** Each problem as the terminal shows it. */
  readonly problems: readonly string[]
}

/** What was unfolded, and how far down the page. */
interface Spot {
  readonly top: number
  readonly unfolded: readonly number[]
}

const build = document.currentScript?.dataset['build']
const spotKey = `live ${location.pathname}`
const foldKey = 'live folded'
const folds = () => [...document.querySelectorAll<HTMLDetailsElement>('details:not(#live)')]

function keepSpot(): void {
  const unfolded = folds().flatMap((fold, index) => (fold.open ? [index] : []))
  const spot: Spot = { top: scrollY, unfolded }
  sessionStorage.setItem(spotKey, JSON.stringify(spot))
}

function returnToSpot(): void {
  const kept = sessionStorage.getItem(spotKey)
  if (kept === null) return
  sessionStorage.removeItem(spotKey)
  const { top, unfolded } = JSON.parse(kept) as Spot
  for (const [index, fold] of folds().entries()) fold.open = unfolded.includes(index)
  scrollTo({ top, behavior: 'instant' })
}

const panel = document.createElement('details')
panel.id = 'live'
panel.hidden = true
const standingLine = document.createElement('summary')
const said = document.createElement('span')
said.setAttribute('role', 'status')
standingLine.append(said)
const list = document.createElement('div')
list.tabIndex = 0
list.setAttribute('role', 'region')
list.setAttribute('aria-label', 'Problems in the records')
panel.append(standingLine, list)

function show({ isBroken, standing, problems }: State): void {
  panel.hidden = standing === ''
  panel.classList.toggle('broken', isBroken)
  if (said.textContent !== standing) {
    said.textContent = standing
    // Folded once, it stays so on every page until there is something else to say.
    panel.open = isBroken && sessionStorage.getItem(foldKey) !== standing
  }
  list.replaceChildren(
    ...problems.map(problem => {
      const block = document.createElement('pre')
      block.textContent = problem
      return block
    })
  )
}

standingLine.addEventListener('click', () => {
  if (panel.open) sessionStorage.setItem(foldKey, said.textContent)
  else sessionStorage.removeItem(foldKey)
})

/** The end of the page, and what is focused, stay in sight above the panel. */
new ResizeObserver(() => {
  const height = panel.hidden ? '' : `${panel.offsetHeight}px`
  document.body.style.paddingBottom = height
  document.documentElement.style.scrollPaddingBottom = height
}).observe(panel)

function receive(event: MessageEvent<string>): void {
  const state = JSON.parse(event.data) as State
  if (state.build === build) return show(state)
  keepSpot()
  location.reload()
}

/** Browsers hold few connections to one server: pages that nobody sees leave theirs. */
let source: EventSource | undefined
function listenWhileSeen(): void {
  source?.close()
  source = undefined
  if (document.visibilityState === 'hidden') return
  source = new EventSource('/-/events')
  source.addEventListener('state', receive)
}

document.body.append(panel)
returnToSpot()
listenWhileSeen()
document.addEventListener('visibilitychange', listenWhileSeen)
// A page taken back from the browser's memory has lost its connection.
addEventListener('pageshow', event => {
  if (event.persisted) listenWhileSeen()
})
