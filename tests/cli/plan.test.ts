import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, test, vi } from 'vitest'
import { SAMPLE_DAY, sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { planArguments } from '@/lib/cli/plan-arguments'
import { plan } from '@/lib/core/plan'
import type { Plan } from '@/lib/core/plan-types'
import { writeHouseholdFile } from '@/lib/forms/household-file'
import { larkspur } from '../support/larkspur'

vi.setConfig({ testTimeout: 60_000 })

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'plenum-plan-'))
afterAll(() => rmSync(folder, { recursive: true }))

interface Ran {
  status: number | null
  out: string
  err: string
}

/** The real command in a process of its own. */
function run(
  args: string[],
  { input, env }: { input?: string | Uint8Array; env?: Record<string, string> } = {},
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--conditions=react-server', '--import=tsx', 'lib/cli/plan.ts', ...args], {
      cwd: ROOT,
      env: { ...process.env, ...env },
    })
    const ran: Ran = { status: null, out: '', err: '' }
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      ran.out += text
    })
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      ran.err += text
    })
    // The command may stop reading what is too long.
    child.stdin.on('error', () => {})
    child.stdin.end(input ?? '')
    child.on('error', reject)
    child.on('close', (status) => resolve({ ...ran, status }))
  })
}

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name)
  writeFileSync(path, content)
  return path
}

describe('plan', () => {
  const path = file('larkspur.json', JSON.stringify(larkspur()))

  test('by model 1.1 every system starts from what the other systems of the file told', async () => {
    const seen = larkspur().households.map((home) => ({
      ...home,
      records: [
        { on: '2026-10-20', kind: 'filter-changed', filter: 'hall' },
        { on: '2026-11-20', kind: 'filter-looked', filter: 'hall', light: 'dark' },
      ],
    }))
    const unseen = seen.map((home) => ({ ...home, id: 'next-door', records: home.records.slice(0, 1) }))
    const both = file('both.json', JSON.stringify({ plenum: 1, households: [...seen, ...unseen] }))
    const theta = async (model: string) => {
      const { out, err } = await run([both, '--on', '2026-11-25', '--model', model])
      expect(err).toBe('')
      return (JSON.parse(out) as Plan).households.map(({ workings }) => workings[0]?.theta?.q50 ?? 0)
    }
    const [alone, together] = [await theta('1'), await theta('1.1')]
    expect(together[1]).toBeGreaterThan(alone[1] as number)
    // Nobody else tells the one that was seen anything: its own look does not come back to it.
    expect(together[0]).toBe(alone[0])
    const wrong = await run([both, '--model', '2'])
    expect(wrong).toMatchObject({ status: 2, out: '' })
    expect(wrong.err).toContain('--model must be 1 or 1.1, but is "2"')
  })

  test('prints the plan as JSON with the documented keys in their order', async () => {
    const { status, out, err } = await run([path, '--on', '2026-11-25'])
    expect([status, err]).toEqual([0, ''])
    const printed = JSON.parse(out) as Plan
    expect(Object.keys(printed)).toEqual(['on', 'households', 'supplies', 'rounds'])
    const [household] = printed.households
    expect(Object.keys(household ?? {})).toEqual(['id', 'items', 'workings', 'warnings'])
    const change = household?.items.find(({ task }) => task === 'change-filter')
    const itemKeys = 'task subject doer earliest due latest lookOn early late basis state reasons'
    expect(Object.keys(change ?? {})).toEqual(itemKeys.split(' '))
    expect(Object.keys(change?.reasons[0] ?? {}).slice(0, 2)).toEqual(['say', 'mark'])
    const workingKeys = `filter heatHours coolHours fanHours airflowCfm faceVelocityFpm dustMicrogramsPerM3 arrestance
      capacityGrams pressureDropCleanInWg loadedFraction theta`
    expect(Object.keys(household?.workings[0] ?? {})).toEqual(workingKeys.split(/\s+/))
    expect(Object.keys(printed.supplies[0] ?? {})).toEqual(['size', 'medium', 'merv', 'count'])
    expect(Object.keys(printed.rounds[0] ?? {})).toEqual(['building', 'doer', 'on', 'items'])
    expect(Object.keys(printed.rounds[0]?.items[0] ?? {})).toEqual(['household', 'task', 'subject'])
  })

  test('prints what the calculation gives, all of it, from a file or standard input', async () => {
    const { households } = sampleFile(SAMPLE_DAY)
    const expected = JSON.parse(JSON.stringify(plan(households, tables, SAMPLE_DAY)))
    const input = writeHouseholdFile(households)
    const [fromInput, fromFile] = await Promise.all([
      run(['-', '--on', SAMPLE_DAY], { input }),
      run(['--on', SAMPLE_DAY, file('sample.json', input)]),
    ])
    expect(JSON.parse(fromInput.out)).toEqual(expected)
    expect(fromFile).toEqual(fromInput)
  })

  test('without --on is for today in the household’s own zone', async () => {
    // Eleven at night in Chicago is already tomorrow in Berlin.
    const env = { PLENUM_NOW: '2026-11-26T05:00:00Z' }
    const berlin = JSON.stringify(larkspur()).replace('America/Chicago', 'Europe/Berlin')
    const [home, abroad, given] = await Promise.all([
      run([path], { env }),
      run(['-'], { env, input: berlin }),
      run([path, '--on', '2026-11-25']),
    ])
    expect(JSON.parse(home.out).households).toEqual(JSON.parse(given.out).households)
    const tomorrow = await run(['-', '--on', '2026-11-26'], { input: berlin })
    expect(JSON.parse(abroad.out).households).toEqual(JSON.parse(tomorrow.out).households)
  })

  test('a long plan is printed to its end', async () => {
    const [household] = sampleFile(SAMPLE_DAY).households
    if (!household) throw new Error('no sample')
    const many = Array.from({ length: 200 }, (_, at) => ({ ...household, id: `home-${at}` }))
    const { status, out } = await run(['-', '--on', SAMPLE_DAY], { input: writeHouseholdFile(many) })
    expect(status).toBe(0)
    expect(out.length).toBeGreaterThan(500_000)
    expect((JSON.parse(out) as Plan).households).toHaveLength(200)
  })

  test('--text prints a table for people', async () => {
    const { status, out } = await run([path, '--on', '2026-11-25', '--text'])
    expect(status).toBe(0)
    expect(out).toContain('Larkspur Court 2')
    expect(out).toMatch(/^state +due +what +who +why$/m)
    expect(out.split('\n').every((line) => line.length <= 100)).toBe(true)
    expect(out).not.toMatch(/undefined|null|\{/)
  })
})

describe('faults', () => {
  test('are one a line on standard error, all at once, with nothing on standard output', async () => {
    const file = larkspur()
    const [household] = file.households
    const [filter] = household?.filters ?? []
    if (!household || !filter) throw new Error('no example')
    household.filters.push({
      ...filter,
      id: 'attic',
      system: 'none',
      nominal: { widthIn: 16, heightIn: 25, depthIn: 0 },
    })
    const { status, out, err } = await run(['-', '--on', '2026-11-25'], {
      input: JSON.stringify({ ...file, 'odd\nkey': 1 }),
    })
    expect([status, out]).toEqual([2, ''])
    expect(err.trimEnd().split('\n')).toEqual([
      'households[0].filters[1].nominal.depthIn: must be between 0.5 and 6 (inches), but is 0',
      '["odd\\nkey"]: is not a key that is known here; known are plenum, households',
      'households[0].filters[1].system: names the system "none", but this household has main',
    ])
  })

  test('records after --on are faults', async () => {
    const { status, err } = await run(['-', '--on', '2026-10-01'], { input: JSON.stringify(larkspur()) })
    expect(status).toBe(2)
    expect(err).toMatch(/^households\[0\]\.records\[1\]\.on: /m)
    expect(err).toMatch(/^households\[0\]\.readings\[0\]\.to: /m)
  })

  test('files that cannot be read, are too large or no JSON, are said by name', async () => {
    const big = file('big.json', new Uint8Array(10_000_000))
    const [missing, isFolder, tooLarge, tooLong, slip] = await Promise.all([
      run([join(folder, 'none.json')]),
      run([folder]),
      run([big]),
      run(['-'], { input: new Uint8Array(10_000_000) }),
      run(['-'], { input: '{"plenum": 1,}' }),
    ])
    expect(missing?.err).toMatch(/none\.json: cannot be read: there is no such file\nusage: /)
    expect(isFolder?.err).toMatch(/cannot be read: it is a folder\nusage: /)
    expect(tooLarge?.err).toMatch(/big\.json: is larger than 9 MB/)
    expect(tooLong?.err).toMatch(/^standard input: is larger than 9 MB/)
    expect(slip?.err).toMatch(/^standard input: is not JSON: line 1, column 14 /)
    for (const { status, out } of [missing, isFolder, tooLarge, tooLong, slip]) expect([status, out]).toEqual([2, ''])
  })

  test('wrong arguments are said with how to call it', async () => {
    const { status, out, err } = await run([])
    expect([status, out]).toEqual([2, ''])
    expect(err).toMatch(/^name a household file, or - for standard input\nusage: /)
  })

  test.each([
    [['a', 'b'], /^name one household file, not 2$/],
    [['a', '--on', '2026-02-29'], /^--on must be a day written like 2026-11-25, but is "2026-02-29"$/],
    [['a', '--when', 'x'], /--when/],
    [['a', '--on'], /--on/],
  ])('wrong arguments %j', (args, expected) => {
    expect(planArguments(args)).toEqual({ ok: false, say: expect.stringMatching(expected) })
  })
})
