import type { Handout, Printed } from '../bot/handout/handout.ts'
import { printHandout } from './printHandout.ts'

/** A document as a PDF, squeezed. */
export const work = (handout: Handout): Promise<Printed> => printHandout(handout)
