import type { ContainerCount } from '../core/quantities/containers.ts'

/** Cans as they are asked for at the counter: `1 quart and 1 half-pint`, `2 x 2.5 L`. */
export const cans = (containers: readonly ContainerCount[]): string =>
  containers
    .map(({ name, count }) => {
      if (/^\d/u.test(name)) return `${count} x ${name}`
      return count === 1 ? `1 ${name}` : `${count} ${name}s`
    })
    .join(' and ')
