/**
 * Where tests put their folders: into memory where there is room. They write and remove a hundred
 * thousand small files, and a disk takes longer to remove one than a test to write it.
 */

import { accessSync, constants, statfsSync } from 'node:fs'

const MEMORY = '/dev/shm'

/** More than all tests together have at a time. */
const ROOM_bytes = 4 * 1024 ** 3

/** Name the folder to programs that are started from here on, unless a user has chosen one. */
export function useMemory() {
  if (process.env.TMPDIR) return
  try {
    accessSync(MEMORY, constants.W_OK)
    const { bavail, bsize } = statfsSync(MEMORY)
    if (bavail * bsize > ROOM_bytes) process.env.TMPDIR = MEMORY
  } catch {
    // No such folder here: the system's own serves.
  }
}
