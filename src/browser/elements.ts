/** Elements of the page: found, and made. */

/** An element of the page's own that must be there. */
export function part<Kind extends HTMLElement>(id: string, kind: new () => Kind): Kind {
  const found = document.getElementById(id)
  if (!(found instanceof kind)) throw new Error(`the page has no ${kind.name} named ${id}`)
  return found
}

export type Child = Node | string

/** A new element; an attribute that is undefined is left out. */
export function make<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  attributes: Readonly<Record<string, string | undefined>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name)
  for (const [attribute, value] of Object.entries(attributes))
    if (value !== undefined) element.setAttribute(attribute, value)
  element.append(...children)
  return element
}
