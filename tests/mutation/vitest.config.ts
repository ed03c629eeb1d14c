import { statSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type Reporter, type TestSpecification } from 'vitest/node'
import { FILES } from './left-out'
import { warmWorker } from './warm-worker'

const path = (file: string) => fileURLToPath(new URL(`../../${file}`, import.meta.url))
const rooms = (process.env.ROOMS ?? 'core guide forms app').split(' ')
// A mutant is dead at the first test that fails: those that try everything come last.
const LATE = [
  'core/nominal-size',
  'core/belief',
  'core/rounds',
  'forms/weather-file',
  'guide/words',
  'core/normal',
  'core/home-story',
  'core/joined-plan',
  'core/oracle',
  'core/properties',
  'core/pooling',
  'forms/household-file',
  'forms/household-rules',
  'forms/describe/describe',
  'app/year-layout',
  'app/story',
  'guide/replay',
  'guide/sweep',
  'forms/thermostat/parts',
  'forms/thermostat/formats',
  'forms/units-sheet',
  'guide/place',
  'guide/finder',
  'guide/checker',
  'core/light-picture',
]

// The file that killed the last mutant is tried first on the next one, which is most often its neighbour.
const killers: string[] = []

const watchKillers: Reporter = {
  onTestModuleEnd(module) {
    if (module.state() !== 'failed') return
    const at = killers.indexOf(module.moduleId)
    if (at >= 0) killers.splice(at, 1)
    killers.unshift(module.moduleId)
  },
}

class KillersFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const late = ({ moduleId }: TestSpecification) => LATE.findIndex((name) => moduleId.includes(`/${name}.test.`))
    const killer = ({ moduleId }: TestSpecification) => killers.indexOf(moduleId) >>> 0
    const size = ({ moduleId }: TestSpecification) => statSync(moduleId).size
    return files.toSorted((a, b) => killer(a) - killer(b) || late(a) - late(b) || size(a) - size(b))
  }
}

export default defineConfig({
  root: path('.'),
  resolve: {
    alias: [
      { find: /^@\//, replacement: path('./') },
      { find: /^server-only$/, replacement: path('./node_modules/server-only/empty.js') },
      { find: /^fast-check$/, replacement: path('./tests/mutation/short-properties.ts') },
    ],
  },
  plugins: [
    {
      name: 'warm',
      // The mutation runner asks for threads by a flag, which comes before this file's `pool`.
      configureVitest({ project }) {
        if (process.env.COLD === '1') return
        project.config.pool = 'warm'
        project.config.poolRunner = { name: 'warm', createPoolWorker: warmWorker }
      },
    },
  ],
  test: {
    include: rooms.map((room) => `tests/${room.includes('/') ? room : `${room}/**/*`}.test.{ts,tsx}`),
    exclude: FILES.map((name) => `tests/${name}.test.{ts,tsx}`),
    setupFiles: ['tests/support/console.ts', 'tests/mutation/set-up.ts'],
    testTimeout: 60_000,
    // One worker a mutant at least, so that what the tests import is read once.
    isolate: false,
    reporters: [watchKillers],
    sequence: { sequencer: KillersFirst },
  },
})
