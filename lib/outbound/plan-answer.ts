import { createHash } from 'node:crypto'
import * as clock from '@/lib/clock'
import type { Day } from '@/lib/core/day'
import { joinPlans, type PlannedHome } from '@/lib/core/joined-plan'
import { planJson } from '@/lib/core/plan-json'
import type { Plan } from '@/lib/core/plan-types'
import type { Figures } from '@/lib/core/tables'
import type { Viewer } from '@/lib/core/viewer'
import { daysByZone } from '@/lib/core/zone'
import { listExportNames, type NamedHome } from '@/lib/data/export-names'
import type { KeptPlans } from '@/lib/data/kept-plans'
import { hasAlready } from './if-none-match'

/** Where the parts of a plan come from, and the tables they were made with. */
export interface PlanSource {
  parts: KeptPlans<PlannedHome>
  figures: Figures
  /** Another for whatever makes other plans of the same facts. */
  version: string | number
}

/**
 * Answers a program with the plan of an account's open homes, as the command line prints it. The tag is of the homes'
 * revisions and days, which every write and every midnight change: an unchanged account is answered 304, and nothing
 * is read or planned for it.
 */
export async function answerPlan(request: Request, viewer: Viewer, source: PlanSource): Promise<Response> {
  const today = daysByZone(clock.today)
  const homes = (await listExportNames(viewer)).filter(({ state }) => state === 'open')
  const tag = tagOf(homes, today, source.version)
  const headers = { etag: tag, 'cache-control': 'private, no-cache', vary: 'authorization' }
  if (hasAlready(request, tag)) return new Response(null, { status: 304, headers })
  const plan = await readPlan(viewer, homes, { source, today })
  // The answer is read as it is written: the text of ten thousand homes is never held whole.
  return new Response(request.method === 'HEAD' ? null : streamOf(planJson(plan)), {
    headers: { ...headers, 'content-type': 'application/json; charset=utf-8' },
  })
}

async function readPlan(
  viewer: Viewer,
  homes: NamedHome[],
  { source, today }: { source: PlanSource; today: (timeZone: string) => Day },
): Promise<Plan> {
  const planned = await source.parts.list(viewer, ({ timeZone }) => today(timeZone))
  const byId = new Map(planned.map(({ home, plan }) => [home.id, plan]))
  const parts = homes.flatMap(({ id, exportedAs }) => {
    const part = byId.get(id)
    // Gone since the list was read; under another id where two owners use the same.
    if (!part) return []
    if (part.home.id === exportedAs) return [part]
    return [{ ...part, home: { ...part.home, id: exportedAs }, plan: { ...part.plan, id: exportedAs } }]
  })
  return joinPlans(parts, source.figures, today('UTC'))
}

function tagOf(homes: NamedHome[], today: (timeZone: string) => Day, version: string | number): string {
  const hash = createHash('sha256').update(`${version} ${today('UTC')}`)
  for (const { id, exportedAs, revision, timeZone } of homes)
    hash.update(`\n${id} ${exportedAs} ${revision} ${today(timeZone)}`)
  return `"${hash.digest('base64url').slice(0, 32)}"`
}

const PIECES_A_TIME = 100

// A chunk a turn of the event loop, so that whoever else asks is not kept waiting for all of it.
function streamOf(pieces: Generator<string>): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder()
  return new ReadableStream({
    async pull(controller) {
      await new Promise(setImmediate)
      let text = ''
      for (let i = 0; i < PIECES_A_TIME; i++) {
        const { value, done } = pieces.next()
        if (value) text += value
        if (done) {
          if (text) controller.enqueue(encoder.encode(text))
          return controller.close()
        }
      }
      controller.enqueue(encoder.encode(text))
    },
  })
}
