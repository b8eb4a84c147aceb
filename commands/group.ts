import { defineVerbs } from '../src/bot/command.ts'
import { layout, order } from '../src/bot/group/cutting.ts'
import { handout } from '../src/bot/group/handout.ts'
import { list } from '../src/bot/group/list.ts'
import { change, join, kit, leave } from '../src/bot/group/members.ts'
import { money, paid } from '../src/bot/group/money.ts'
import { bring, claim, drop, need, needs } from '../src/bot/group/needs.ts'
import { close, open, plan, set } from '../src/bot/group/openings.ts'
import { lock, post } from '../src/bot/group/posting.ts'
import { progress } from '../src/bot/group/progress.ts'
import { show } from '../src/bot/group/standing.ts'
import { stations } from '../src/bot/group/stations.ts'
import { tick } from '../src/bot/group/ticks.ts'

export default defineVerbs({
  name: 'group',
  summary: 'One build for many: join, one cut list, one layout, who brings what, what it costs',
  examples: [
    'group open Spring planters date=Saturday 9 May places=12',
    'group join object=14in round height=15in',
    'group list',
    'group need clamps count=8',
    'group claim clamps count=2',
    'group handout',
    'group',
  ],
  verbs: {
    show,
    open,
    set,
    plan,
    join,
    change,
    leave,
    kit,
    list,
    layout,
    order,
    handout,
    needs,
    need,
    claim,
    drop,
    bring,
    money,
    paid,
    stations,
    tick,
    progress,
    post,
    lock,
    close,
  },
  fallback: 'show',
})
