import { remembered } from '../remembered.ts'
import { amountAt } from './compoundRule.ts'
import type { Tokens } from './cursor.ts'
import type { Item, Phrase } from './item.ts'
import { normalise } from './normalise.ts'
import { isBy } from './quantityRule.ts'
import { roleOf } from './role.ts'
import { type Token, tokenise } from './token.ts'
import { unitOf } from './unit.ts'

/** The text as a phrase. Total: anything that is no number, separator or word comes out as a mark. */
export const phraseOf: (text: string) => Phrase = remembered((text) => {
  const tokens = tokenise(normalise(text))
  const items: Item[] = []
  for (let at = 0; at < tokens.length; ) {
    const [item, next] = itemAt(tokens, at, items)
    items.push(item)
    at = next
  }
  return { text, items }
})

function itemAt(tokens: Tokens, at: number, before: readonly Item[]): readonly [Item, number] {
  const token = tokens[at] as Token
  const { gap } = token
  const amount = amountAt(tokens, at)
  if (amount) return [{ is: 'amount', amount: amount.node, text: amount.node.text, gap }, amount.next]
  if (isBy(tokens, at) && maySeparate(token, before)) return [{ is: 'by', text: 'x', gap }, at + 1]
  if (token.kind === 'word') return [{ is: 'word', text: token.text, gap }, at + 1]
  return [{ is: token.kind === 'soup' ? 'soup' : 'mark', text: token.text, gap }, at + 1]
}

/** `by` is a separator after a number or its label; after any other word (`reduce the depth by 2 in`) it is a word. */
function maySeparate(token: Token, before: readonly Item[]): boolean {
  if (token.text !== 'by') return true
  const label = before.at(-1)
  if (label?.is !== 'word') return label !== undefined && label.text !== '('
  return before.at(-2)?.is === 'amount' && isLabel(label.text)
}

const isLabel = (word: string): boolean =>
  roleOf(word) || unitOf(word) !== undefined || /^(?:sq|square|round)$/u.test(word)
