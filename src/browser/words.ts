/** The words of the page, in its language: English where the page brings none. */

import { type ScriptWords, scriptWords } from '../archive/words.ts'

/** Set by the page as data; the same program writes page and script, so that the shape is the same. */
const brought = document.getElementById('script-words')?.textContent

export const words: ScriptWords = brought
  ? { ...scriptWords, ...(JSON.parse(brought) as Partial<ScriptWords>) }
  : scriptWords

/** A day as the page shows it. */
export const dayText = (day: string): string => {
  const [y = '', m = '', d = ''] = day.split('-')
  return words.day.replace('{y}', y).replace('{m}', m).replace('{d}', d)
}

/** A figure of the list, which has a point, as the page shows figures. */
export const figureIn = (printed: string): string =>
  words.sign === '.' ? printed : printed.replace(/(?<=\d)\.(?=\d)/gu, words.sign)

export const verdictText = (word: string): string => words.verdicts[word] ?? word
export const stateText = (word: string): string => words.states[word] ?? word
