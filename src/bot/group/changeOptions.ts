import { z } from 'zod'
import { planOptions } from '../planOptions.ts'

/**
 * The options of a plan for a change of it. Each is described in a few words, for what a command says of itself is bounded
 * on a chat platform and these stand in several of its verbs; "help sizing" has them in full.
 */
export const changeOptions: typeof planOptions = described(planOptions)

/** The same without anything that may stand first without its name. */
export const namedChangeOptions: typeof planOptions = {
  ...changeOptions,
  object: changeOptions.object.meta({ ...z.globalRegistry.get(changeOptions.object), first: false }),
}

function described<Options extends Readonly<Record<string, z.ZodType>>>(options: Options): Options {
  const rows = Object.entries(options).map(([name, schema]) => [
    name,
    schema.meta({ ...z.globalRegistry.get(schema), description: `the new ${name.replace('-', ' ')}` }),
  ])
  return Object.fromEntries(rows) as Options
}
