/** Notices that a file under some folders has changed. */

import { watch, type FSWatcher } from 'node:fs'

/** Pause after the last change before it counts, as saving a file takes several steps, in ms. */
const QUIET_ms = 150

/** Call `changed` once after each burst of changes under the folders. */
export function watchFolders(folders: readonly string[], changed: () => void) {
  let timer: NodeJS.Timeout | undefined
  const soon = () => {
    clearTimeout(timer)
    timer = setTimeout(changed, QUIET_ms)
  }
  const watchers = folders.map(folder => watchFolder(folder, soon))
  return {
    close: () => {
      clearTimeout(timer)
      for (const watcher of watchers) watcher.close()
    }
  }
}

function watchFolder(folder: string, changed: () => void): FSWatcher {
  const watcher = watch(folder, { recursive: true }, changed)
  // A folder that vanishes while it is watched is a change like any other.
  watcher.on('error', changed)
  return watcher
}
