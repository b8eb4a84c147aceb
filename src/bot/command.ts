import type { z } from 'zod'
import type { Context } from './context.ts'
import { type Conditional, idleLines } from './idle.ts'
import type { OptionSchema } from './option.ts'
import type { Reply } from './reply.ts'

/** Something that can be run: the options it takes, and a function of their values and the context. */
export interface Action {
  readonly summary: string
  readonly options: OptionSchema
  /** How many times as long as others it may take, where what it makes is large; once where it is left out. */
  readonly patience?: number
  /** Throws a Refusal for a request that cannot be answered as it stands. */
  readonly run: (input: Record<string, unknown>, context: Context) => Reply | Promise<Reply>
}

/** One slash command: either an action of its own, or verbs that each are one (`project start`). */
export interface Command {
  readonly name: string
  readonly summary: string
  /** Lines as typed; every one must parse. */
  readonly examples: readonly string[]
  readonly action?: Action
  readonly verbs?: Readonly<Record<string, Action>>
  /** The verb that is meant when none is given. */
  readonly fallback?: string
}

interface ActionDefinition<Schema extends OptionSchema> {
  readonly summary: string
  readonly options: Schema
  readonly patience?: number
  /** Options that have no use beside some others; where one goes for nothing, a note says so. */
  readonly idle?: readonly Idle<z.output<Schema>>[]
  readonly run: (input: z.output<Schema>, context: Context) => Reply | Promise<Reply>
}

/** An option of an action that goes for nothing, by all that was typed and by what the channel keeps. */
export type Idle<Input> = Conditional<Input, { readonly input: Input; readonly context: Context }>

/** An action whose `run` gets the values that its `options` promise. */
export const defineAction = <Schema extends OptionSchema>({
  idle = [],
  ...definition
}: ActionDefinition<Schema>): Action => ({
  ...definition,
  run: async (typed, context) => {
    // The router only ever passes what this very schema has parsed.
    const input = typed as z.output<Schema>
    const reply = await definition.run(input, context)
    const lines = idleLines(input, { input, context }, idle)
    return lines.length === 0 ? reply : { ...reply, notes: [...lines, ...(reply.notes ?? [])] }
  },
})

/** A command with one action. */
export const defineCommand = <Schema extends OptionSchema>(
  definition: ActionDefinition<Schema> & { readonly name: string; readonly examples: readonly string[] },
): Command => ({
  name: definition.name,
  summary: definition.summary,
  examples: definition.examples,
  action: defineAction(definition),
})

/** A command with verbs: a second word, each with options of its own. */
export const defineVerbs = (definition: {
  readonly name: string
  readonly summary: string
  readonly examples: readonly string[]
  readonly verbs: Readonly<Record<string, Action>>
  readonly fallback: string
}): Command => definition
