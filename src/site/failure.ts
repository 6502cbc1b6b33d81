/** What can go wrong around the records, said in one plain line instead of a stack. */
export class Failure extends Error {
  override readonly name = 'Failure'
}

/** Faults of the disk a person can do something about, by the code the system gives them. */
const diskFaults: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EMFILE: 'too many files are open',
  ENAMETOOLONG: 'the name is too long',
  EBUSY: 'another program holds it',
  ENOTDIR: 'is not a folder',
  ELOOP: 'is a link that leads back to itself'
}

/** A fault of the disk as a Failure, wherever in a chain of errors it hides; others as they are. */
export function plainFault(error: unknown): unknown {
  for (let inner = error; inner instanceof Error; inner = causeOf(inner)) {
    const { code, path } = inner as NodeJS.ErrnoException
    const fault = code === undefined ? undefined : diskFaults[code]
    if (fault) return new Failure(path ? `${path}: ${fault}` : fault)
  }
  return error
}

/** The error behind an error: the language calls it cause, Eleventy originalError. */
const causeOf = (error: Error): unknown =>
  error.cause ?? (error as { originalError?: unknown }).originalError

/** Whether an error says that a file or folder does not exist. */
export const isMissing = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'ENOENT'
