/** The one clock of the program: it proposes a date that is written down and then stands. */

/** Today's date where the user is, YYYY-MM-DD. */
export function today(): string {
  const now = new Date()
  const two = (part: number) => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
