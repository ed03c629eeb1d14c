import { spawn } from 'node:child_process'
import { createReadStream, mkdtempSync, openSync, readSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Options, parse } from 'csv-parse'
import type { build as Build } from 'esbuild'
import { parseChoices } from '@/lib/forms/thermostat/choices'
import { csvOptions, HEAD_BYTES, readHead } from '@/lib/forms/thermostat/head'
import { understandExport } from '@/lib/forms/thermostat/understand'
import { atMost, type Row } from './table'

// A year of 5-minute rows: the CSV library alone, and the whole way to hours by month, by turns in one process, whose
// peak memory is taken too: `npm run bench -- thermostat`.

const TURNS = 7
const ROWS = 105_120

function yearOfRows(): string {
  const rows = Array.from({ length: ROWS }, (_, i) => {
    const at = new Date(Date.UTC(2025, 0, 1, 6) + i * 300_000).toISOString()
    const heat = i % 3 === 0 ? (i * 7) % 300 : 0
    return `${at.slice(0, 10)} ${at.slice(11, 16)},${68 + (i % 5)}.5,${heat},${i % 5 === 1 ? 120 : 0},${Math.max(heat, 60)}`
  })
  return `Moment,Room temperature,Heating (sec),Cooling (sec),Blower (sec)\n${rows.join('\n')}\n`
}

/** Milliseconds of the library alone: every record handed over, nothing done with it. */
async function libraryAlone(file: string): Promise<number> {
  const start = process.hrtime.bigint()
  let count = 0
  const parser = createReadStream(file).pipe(parse(csvOptions(',') as Options))
  parser.on('data', () => count++)
  await new Promise((resolve, reject) => parser.on('end', resolve).on('error', reject))
  if (count !== ROWS + 1) throw new Error(`${count} records`)
  return Number(process.hrtime.bigint() - start) / 1e6
}

async function understood(file: string): Promise<number> {
  const start = process.hrtime.bigint()
  const bytes = Buffer.alloc(HEAD_BYTES)
  const head = readHead(bytes.subarray(0, readSync(openSync(file, 'r'), bytes)))
  if (!head.ok) throw new Error(head.say)
  const found = await understandExport(createReadStream(file), head.value, {
    choices: parseChoices(new Map([['zone', 'utc']])),
    ...{ homeZone: 'America/Chicago', today: '2026-11-25', fanRule: { heatBlower: 1.07, coolBlows: true } },
  })
  if (found.faults.length > 0 || found.rows !== ROWS || found.months.length !== 12) throw new Error(found.faults[0])
  return Number(process.hrtime.bigint() - start) / 1e6
}

async function measure(file: string): Promise<void> {
  const times = { alone: [] as number[], whole: [] as number[] }
  for (let turn = 0; turn < TURNS; turn++) {
    times.alone.push(await libraryAlone(file))
    times.whole.push(await understood(file))
  }
  const { maxRSS } = process.resourceUsage()
  process.stdout.write(JSON.stringify({ alone: Math.min(...times.alone), whole: Math.min(...times.whole), maxRSS }))
}

/** Both ways against each other, and the peak memory of the process that ran them. */
export async function thermostatRows(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-bench-'))
  try {
    const file = join(folder, 'year.csv')
    writeFileSync(file, yearOfRows())
    // Bundled, as the app is: tsx itself takes time and memory.
    const { build }: { build: typeof Build } = await import('esbuild')
    const outfile = join(folder, 'measure.mjs')
    await build({
      entryPoints: [import.meta.filename],
      ...{ outfile, bundle: true, platform: 'node', format: 'esm', tsconfig: 'tsconfig.json', external: ['esbuild'] },
      banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
    })
    const child = spawn(process.execPath, [outfile, file], { stdio: ['ignore', 'pipe', 'inherit'] })
    let said = ''
    child.stdout.on('data', (part) => {
      said += part
    })
    await new Promise((resolve) => child.on('close', resolve))
    const { alone, whole, maxRSS } = JSON.parse(said)
    const year = `a year of 5-minute rows (${ROWS.toLocaleString('en-US')}), ${whole.toFixed(0)} ms`
    return [
      atMost(`${year}, against the CSV library alone, ${alone.toFixed(0)} ms`, whole / alone, 1.5),
      atMost('peak memory of the process that reads it', maxRSS / 1024, 150, 'MB'),
    ]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

// Bundled and started by the above, with the file that it is to measure.
if (process.argv[2]?.endsWith('year.csv')) await measure(process.argv[2])
