import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'

type Collect = (options: { readonly type: 'minor' }) => void

setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as Collect

/**
 * Lets go of what a picture needed while it was painted. Its pixels lie outside of what the collector counts, so that by itself it
 * lets hundreds of megabytes of them pile up.
 */
export const letGo = (): void => collect({ type: 'minor' })
