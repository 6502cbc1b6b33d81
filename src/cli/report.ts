/** Problems as a command shows them. */

import { formatProblem, isError, type Problem, problemData } from '../problem.ts'

/** Every problem in full, errors before warnings, each followed by an empty line. */
export function problemsText(problems: readonly Problem[]): string {
  const errors = problems.filter(isError)
  const warnings = problems.filter(problem => !isError(problem))
  return [...errors, ...warnings].map(problem => `${formatProblem(problem)}\n\n`).join('')
}

/** '12 files read: 3 errors, no warnings, 1 draft'. */
export function summaryLine(files: number, problems: readonly Problem[], drafts = 0): string {
  const errors = problems.filter(isError).length
  const parts = [
    count(errors, 'error'),
    count(problems.length - errors, 'warning'),
    ...(drafts > 0 ? [count(drafts, 'draft')] : [])
  ]
  return `${count(files, 'file')} read: ${parts.join(', ')}`
}

/** '2 lots', '1 lot', 'no lots'. */
export const count = (n: number, noun: string): string =>
  `${n === 0 ? 'no' : n} ${noun}${n === 1 ? '' : 's'}`

/** The report for programs. */
export function problemsJson(files: number, problems: readonly Problem[]): string {
  const errors = problems.filter(isError).length
  const report = {
    files,
    errors,
    warnings: problems.length - errors,
    problems: problems.map(problemData)
  }
  return `${JSON.stringify(report, undefined, 2)}\n`
}
