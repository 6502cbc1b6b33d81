/** Texts put into markup. */

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;'
}

/** A text as content or attribute of HTML or XML, read back as it was. */
export const escaped = (text: string): string => text.replace(/[&<>"']/gu, sign => entities[sign]!)
