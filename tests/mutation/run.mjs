import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, renameSync } from 'node:fs'

// What these work out once is kept in the module, so that a mutant of theirs needs a worker of its own.
const COLD = [
  'core/due',
  'core/learning',
  'core/belief',
  'core/normal',
  'core/day',
  'core/day-words',
  'core/zone',
  'core/zone-clock',
  'guide/explore',
]
const AT_ONCE = 8
const REPORTS = 'tests/mutation/reports'

function filesOf(room) {
  return readdirSync(room).map((name) => `${room}/${name}`)
}

function run(files, cold) {
  if (files.length === 0) return
  console.log(`\n${new Date().toISOString().slice(11, 19)} ${files.join(' ')}`)
  const flags = ['run', 'tests/mutation/stryker.config.mjs', '--mutate', files.join(',')]
  const env = { ...process.env, COLD: cold ? '1' : '0' }
  spawnSync('node_modules/.bin/stryker', flags, { stdio: 'inherit', env })
  try {
    renameSync(`${REPORTS}/last.json`, `${REPORTS}/${Date.now()}.json`)
  } catch {
    process.exitCode = 1
    console.log(`no report of ${files.join(' ')}`)
  }
}

mkdirSync(REPORTS, { recursive: true })
const named = process.argv.slice(2)
const files = named.length > 0 ? named : [...filesOf('lib/core'), ...filesOf('lib/guide')]
const isCold = (file) => COLD.some((name) => file === `lib/${name}.ts`)
const warm = files.filter((file) => !isCold(file))
for (let i = 0; i < warm.length; i += AT_ONCE) run(warm.slice(i, i + AT_ONCE), false)
run(files.filter(isCold), true)
spawnSync(process.execPath, ['--import=tsx', 'tests/mutation/table.ts'], { stdio: 'inherit' })
