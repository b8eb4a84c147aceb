import { purposeOf } from './planReply.ts'
import type { Purpose } from './reply.ts'

/** Which way the sizes of a row are rounded: up only where every part in it covers, whatever they are called. */
export const partPurpose = ({ name = '' }: { readonly name?: string | undefined }): Purpose =>
  name.split(', ').every((each) => purposeOf({ name: each }) === 'cover') ? 'cover' : 'into'
