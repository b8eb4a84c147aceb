import { fileURLToPath } from 'node:url'

/** Where things lie: beside the sources, or beside the bundle that launch.mjs makes of them. */
export interface Places {
  readonly config: string
  readonly commands: string
  /** The page of the room in the browser. */
  readonly page: string
  /** Modules that threads start with; undefined for those of the sources. */
  readonly searchThread: URL | undefined
  readonly painterThread: URL | undefined
  readonly printerThread: URL | undefined
}

/** `main` is the address of the main module, as it runs. */
export function placesOf(main: string): Places {
  const isBundled = !main.endsWith('.ts')
  const at = (name: string): string => fileURLToPath(new URL(name, main))
  // The bundle lies in a folder of its own in `.build`.
  const project = isBundled ? '../../../' : '../'
  return {
    config: at(`${project}config`),
    commands: at('../commands'),
    page: at(`${project}src/platforms/web/page`),
    searchThread: isBundled ? new URL('./search/worker.js', main) : undefined,
    painterThread: isBundled ? new URL('./painting/worker.js', main) : undefined,
    printerThread: isBundled ? new URL('./printing/worker.js', main) : undefined,
  }
}

/** `{ [name]: url }`, or nothing where there is none. */
export const place = <Name extends string>(
  name: Name,
  url: URL | undefined,
): { readonly [Key in Name]?: URL } =>
  url === undefined ? {} : ({ [name]: url } as { readonly [Key in Name]: URL })
