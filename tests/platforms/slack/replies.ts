import type { Reply } from '../../../src/bot/reply.ts'
import type { Answer, Request, Response } from '../../../src/bot/request.ts'
import { showIn } from '../../../src/bot/show.ts'
import { inches } from '../../../src/core/measure/length.ts'

const inch = { units: 'inch', tape: 16, millimetreStep: 1 } as const

export const show = showIn(inch, { ...inch, tape: 32 })

/** Something of everything. */
export const full: Reply = {
  answer: 'Cut 2 panels 18 x 15 in & <mark> them',
  cautions: [{ id: 'guard', task: 'rip', text: 'Guard on.' }],
  tables: [{ title: 'Panels (in)', columns: ['', 'Long'], rows: [['A', { length: inches(18) }]] }],
  pictures: [
    {
      name: 'panels',
      alt: 'Two panels, 18 x 15 in, with <marks>',
      scene: { width: 1, height: 1, shapes: [] },
    },
  ],
  notes: ['kerf 1/8 in'],
  files: [{ name: 'cuts.csv', type: 'text/csv', content: 'a,b\r\n' }],
  buttons: [{ label: 'Undo', line: 'project undo' }],
  figures: {},
}

export const respond = (reply: Reply): Response => ({ ok: true, reply, show })

/** Answers everything with the same, and keeps what was asked. */
export function answerWith(reply: Reply | Response): Answer & { readonly asked: readonly Request[] } {
  const asked: Request[] = []
  const response = 'ok' in reply ? reply : respond(reply)
  return Object.assign(
    async (request: Request) => {
      asked.push(request)
      return response
    },
    { asked },
  )
}
