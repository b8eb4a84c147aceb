import { PHONE_COLUMNS } from '../../bot/format.ts'

/** What the terminal room shows: tables as narrow as on a phone, so that an answer looks the same everywhere. */
export const limits = { tableColumns: PHONE_COLUMNS } as const
