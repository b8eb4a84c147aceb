/** Something to wait at until it is let go. */
export interface Gate {
  readonly promise: Promise<void>
  readonly release: () => void
}

export function createGate(): Gate {
  let release: () => void = () => undefined
  const promise = new Promise<void>((resolve) => {
    release = resolve
  })
  return { promise, release }
}
