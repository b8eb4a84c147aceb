/**
 * An element with its attributes and children. Text becomes text nodes and never markup, so whatever people type is shown
 * as they typed it. An attribute that is undefined is left out; `true` stands for its bare name.
 *
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {Readonly<Record<string, string | number | boolean | undefined>>} [attributes]
 * @param {readonly (Node | string)[]} [children]
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function element(tag, attributes = {}, children = []) {
  const made = document.createElement(tag)
  for (const [name, value] of Object.entries(attributes))
    if (value !== undefined && value !== false) made.setAttribute(name, value === true ? '' : String(value))
  made.append(...children)
  return made
}

/**
 * An element of the page by its id.
 *
 * @template {HTMLElement} Found
 * @param {string} id
 * @param {new () => Found} kind
 * @returns {Found}
 */
export function byId(id, kind) {
  const found = document.getElementById(id)
  if (!(found instanceof kind)) throw new Error(`the page has no ${id}`)
  return found
}
