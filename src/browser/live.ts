/**
 * Keeps a page of the workshop's own server up to date: what is wrong with the records is shown within
 * the page, and a page built anew is loaded where its reader was.
 */

interface State {
  /** How many builds have succeeded. */
  readonly build: number
  /** Why what is shown is not what the records say; empty where it is. */
  readonly standing: string
  /** Each problem as the terminal shows it. */
  readonly problems: readonly string[]
}

/** What was unfolded, and how far down the page. */
interface Spot {
  readonly top: number
  readonly unfolded: readonly number[]
}

const spotKey = `live ${location.pathname}`
const folds = () => [...document.querySelectorAll('details')]

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

const panel = document.createElement('section')
panel.id = 'live'
panel.setAttribute('aria-label', 'Problems in the records')
panel.tabIndex = 0
const status = document.createElement('p')
status.setAttribute('role', 'status')
panel.append(status)

function show({ standing, problems }: State): void {
  status.textContent = standing
  panel.replaceChildren(
    status,
    ...problems.map(problem => {
      const block = document.createElement('pre')
      block.textContent = problem
      return block
    })
  )
  panel.hidden = problems.length === 0 && standing === ''
  document.body.style.paddingBottom = panel.hidden ? '' : `${panel.offsetHeight}px`
}

let build: number | undefined

function receive(event: Event): void {
  const state = JSON.parse((event as MessageEvent<string>).data) as State
  if (build !== undefined && state.build > build) {
    keepSpot()
    location.reload()
    return
  }
  build = state.build
  show(state)
}

document.body.append(panel)
panel.hidden = true
returnToSpot()
const source = new EventSource('/-/events')
source.addEventListener('state', receive)
