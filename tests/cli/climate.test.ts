import { spawnSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { ROOT } from '@/lib/cli/root.mjs'
import { dayNumber, dayText } from '@/lib/core/day'
import { parseHouseholdFile, writeHouseholdFile } from '@/lib/forms/household-file'
import { aHousehold } from '../support/a-household'

/** A year of days of one temperature in January and another else, in °F. */
function year(january: number, rest: number): string {
  const first = dayNumber('2025-01-01')
  const rows = Array.from({ length: 365 }, (_, i) => {
    const mean = i < 31 ? january : rest
    return `${dayText(first + i)},${mean - 5},${mean + 5}`
  })
  return ['date,min,max', ...rows].join('\n')
}

/** The real command in a process of its own. */
function run(args: string[], input = '') {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--conditions=react-server', '--import=tsx', 'lib/cli/climate.ts', ...args],
    { cwd: ROOT, input, encoding: 'utf8' },
  )
  return { status, out: stdout, err: stderr }
}

const DESIGN = ['--heating-design', '5', '--cooling-design', '91']

test('daily weather becomes the climate of a household file, which is read as one', () => {
  const { status, out, err } = run(['-', ...DESIGN], year(25, 70))
  expect({ status, err }).toEqual({ status: 0, err: '' })
  const { climate } = JSON.parse(out)
  // 40 °F·day below 65 in each of 31 days; 5 above it in all other days.
  expect(climate).toMatchObject({ kind: 'monthly', heatingDesignF: 5, coolingDesignF: 91 })
  expect([climate.hdd65[0], climate.hdd65[1], climate.cdd65[0], climate.cdd65[1]]).toEqual([1240, 0, 0, 140])
  const read = parseHouseholdFile(writeHouseholdFile([aHousehold({ climate })]), '2026-11-25')
  expect(read.ok && read.households[0]?.climate).toEqual(climate)
})

test('a file in °C has its design temperatures in °C too', () => {
  const celsius = year(25, 70).replace(/,(-?\d+),(-?\d+)/g, (_, min, max) =>
    [min, max].map((degrees) => `,${(((Number(degrees) - 32) * 5) / 9).toFixed(4)}`).join(''),
  )
  const { out } = run(['-', '--celsius', '--heating-design=-15', '--cooling-design', '33'], celsius)
  const { climate } = JSON.parse(out)
  expect(climate).toMatchObject({ heatingDesignF: 5, coolingDesignF: 91.4 })
  expect([climate.hdd65[0], climate.cdd65[1]]).toEqual([1240, 140])
})

test('what cannot be read is said, all of it, with the way to call the command', () => {
  const lacking = run(['-', '--heating-design', '5'], year(25, 70))
  expect(lacking).toMatchObject({ status: 2, out: '' })
  expect(lacking.err).toMatch(/--cooling-design must be a temperature in °F\.\nclimate -- FILE/)
  expect(run(['-', ...DESIGN, '--heating-design', 'cold'], year(25, 70)).status).toBe(2)
  const rows = 'date,min,max\n2025-01-01,20,10\n2025-02-30,1,2\n'
  const faults = run(['-', ...DESIGN], rows)
  expect(faults).toMatchObject({ status: 2, out: '' })
  expect(
    faults.err
      .trim()
      .split('\n')
      .map((line) => line.split(':')[0]),
  ).toEqual(['line 2', 'line 3'])
  expect(run(['no-such-file.csv', ...DESIGN]).err).toContain('no-such-file.csv: cannot be read: there is no such file')
  expect(run([]).err).toContain('Name one file of daily weather')
}, 60_000)
