/** The sign that stands before a verdict's word, and repeats it. */

export const verdictMarks: Readonly<Record<string, string>> = {
  pass: '✓',
  'conditional pass': '(✓)',
  'conditional fail': '(✗)',
  fail: '✗',
  'not decidable': '?',
  'not judged': '–',
  'not published': '–'
}

export const markOf = (word: string): string => verdictMarks[word] ?? '–'
