import { execFile } from 'node:child_process'
import { promisify } from 'node:util'
import { beforeAll, expect, test } from 'vitest'
import { z } from 'zod'
import { ROOT } from '@/lib/cli/root.mjs'
import { ACTIONS, CLASSES, HAZARDS, NODE_KINDS, SLOTS } from '@/lib/guide/types'

function guide(...args: string[]): Promise<{ stdout: string; stderr: string }> {
  const command = ['--conditions=react-server', '--import=tsx', 'lib/cli/guide.ts', ...args]
  return promisify(execFile)(process.execPath, command, { cwd: ROOT, maxBuffer: 1 << 25 })
}

// The shape that doors.md section 3 fixes: nothing more, and nothing left out.
const name = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9-]*$/)
const when = z.record(name, z.array(name).min(1))
const says = z.array(z.enum(CLASSES))
const answer = z.strictObject({
  id: name,
  as: z.enum(['button', 'text']),
  text: z.string().min(1),
  to: name,
  sets: z.record(name, name).optional(),
  when: when.optional(),
})
const section = z.strictObject({
  slot: z.enum(SLOTS),
  text: z.string().min(1),
  when: when.optional(),
  says: says.optional(),
})
const node = z.strictObject({
  id: name,
  kind: z.enum(NODE_KINDS),
  hazard: z.enum(HAZARDS).optional(),
  fact: name.optional(),
  action: z.enum(ACTIONS).optional(),
  turnsOn: z.boolean().optional(),
  minutes: z.int().positive().optional(),
  severity: z.literal([0, 1, 2, 3]).optional(),
  text: z.string().min(1),
  says: says.optional(),
  when: when.optional(),
  answers: z.array(answer).optional(),
  sections: z.array(section).optional(),
  sources: z.array(name).min(1),
  reviewed: z.iso.date(),
})
const fact = z.strictObject({ id: name, values: z.array(name).min(1), from: z.enum(['household', 'episode', 'asked']) })
const exported = z.strictObject({
  flows: z.array(
    z.strictObject({
      id: name,
      title: z.string().min(1),
      start: name,
      changed: name,
      facts: z.array(fact),
      nodes: z.array(node),
    }),
  ),
})

let flows: z.infer<typeof exported>['flows'] = []
beforeAll(async () => {
  flows = exported.parse(JSON.parse((await guide('--json')).stdout)).flows
})

test('the export has the shape that other programs rely on, for ten flows', () => {
  expect(flows.map(({ id }) => id)).toHaveLength(10)
  expect(() => exported.parse({ flows: [{ ...flows[0], more: 1 }] })).toThrow()
})

test('every name in the export stands for something: targets, marks and their values', () => {
  for (const flow of flows) {
    const ids = new Set(flow.nodes.map(({ id }) => id))
    const parts = flow.nodes.flatMap((each) => [each, ...(each.answers ?? []), ...(each.sections ?? [])])
    const marks = new Map<string, Set<string>>()
    const add = (mark: string, value: string) => marks.set(mark, (marks.get(mark) ?? new Set()).add(value))
    for (const { id, values } of flow.facts) for (const value of values) add(id, value)
    for (const part of parts)
      if ('sets' in part) for (const [mark, value] of Object.entries(part.sets ?? {})) add(mark, value)
    for (const part of parts) {
      if ('to' in part) expect(ids, `${flow.id}: ${part.to}`).toContain(part.to)
      for (const [mark, values] of Object.entries(part.when ?? {}))
        for (const value of values) expect(marks.get(mark), `${flow.id}: ${mark} ${value}`).toContain(value)
    }
    expect(ids).toContain(flow.start)
    const changed = flow.nodes.find(({ id }) => id === flow.changed)
    expect(changed).toMatchObject({ kind: 'outcome', severity: 3 })
    expect(changed?.answers ?? []).toEqual([])
  }
})

test('the checker finds nothing broken, and takes less than ten seconds', async () => {
  const before = performance.now()
  const { stdout, stderr } = await guide('--check')
  expect(stdout).toBe('')
  expect(stderr).toMatch(/^10 flows, \d{5} states, 0 broken, \d\.\d s$/m)
  expect(performance.now() - before).toBeLessThan(10_000)
})

test('another wish is refused in a line', async () => {
  await expect(guide('--draw')).rejects.toMatchObject({ code: 2, stdout: '', stderr: 'guide -- --json | --check\n' })
})
