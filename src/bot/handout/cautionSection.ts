import type { Caution, CautionRule } from '../../core/checks/caution.ts'
import type { Section } from './handout.ts'

/** All cautions once, gravest first, each in full. */
export function cautionSection(
  cautions: readonly Caution[],
  rules: readonly CautionRule[],
): readonly Section[] {
  const all = distinct(cautions, rules)
  if (all.length === 0) return []
  return [
    {
      title: 'Before you start',
      blocks: [
        { block: 'points', items: all.map(({ text }) => text) },
        {
          block: 'words',
          text: "Follow your tool's manual and local rules; where they differ from this, they are right.",
        },
      ],
    },
  ]
}

/** `cautions` without what is said twice, in order of gravity, as the rules stand. */
export function distinct(cautions: readonly Caution[], rules: readonly CautionRule[]): readonly Caution[] {
  const place = new Map(rules.map(({ id }, index) => [id, index]))
  const unique = [...new Map(cautions.map((caution) => [caution.text, caution])).values()]
  return unique.sort((a, b) => (place.get(a.id) ?? rules.length) - (place.get(b.id) ?? rules.length))
}
