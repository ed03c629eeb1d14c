import fc from 'fast-check'
import { zipSync } from 'fflate'
import { writeHouseholdFile } from '@/lib/forms/household-file'
import { aHousehold } from './a-household'
import { householdFile } from './arbitrary-file'
import { anyText, mutated, mutatedBytes } from './garbage'

/** What a reader is given: made of the words that its own file knows. */
export interface Fuzzed {
  runs: number
  args: (words: string[]) => fc.Arbitrary<unknown[]>
}

export const [FEW, SOME, MANY] = [60, 170, 340]
const ON = '2026-11-25'
const HOME = aHousehold()
const bytesOf = (one: string): Uint8Array => new TextEncoder().encode(one)
export const cells = (words: string[]) => fc.array(fc.oneof(anyText, fc.constantFrom(...words)), { maxLength: 12 })
async function* inPieces(bytes: Uint8Array, piece: number) {
  for (let at = 0; at < bytes.length; at += piece) yield bytes.subarray(at, at + piece)
}

const FILE = writeHouseholdFile([HOME])
const households = fc.oneof(fc.constant(FILE), householdFile().map(writeHouseholdFile))
const file = fc.oneof({ weight: 1, arbitrary: anyText }, { weight: 5, arbitrary: mutated(households) })
const archive = mutated(households).map((json) =>
  zipSync({ 'household.json': bytesOf(json), 'photos.json': bytesOf('[]'), 'photos/a.webp': new Uint8Array(9) }),
)
const SHEET =
  'Building,Unit,Heat,Tons,Filter size,Last change\n"Elm Row","1",gas,2.5,16x25x1,11/20/2026\nElm Row,2,boiler,,20x20x1,25/1/2026\n'
const EXPORT =
  'Date,Time,Heat Stage 1 (sec),Cool (sec),System Mode\n2026-10-01,00:00,300,0,heat\n2026-10-01,00:05,120,,off\n'
const HEAD = {
  encoding: 'utf8',
  delimiter: ',',
  skipped: 1,
  headings: ['Date', 'Time', 'Heat Stage 1 (sec)', 'Cool (sec)', 'Mode'],
  rows: [],
}
const ROLES = ['time', 'clock', 'heat-s', 'cool-s', 'state']
const WEATHER = 'date,min,max\n2026-01-01,-5,20\n2026-01-02,-6,21.5\n'
const BODY = '--edge\r\ncontent-disposition: form-data; name="file"; filename="a.csv"\r\n\r\na,b\r\n--edge--\r\n'
const MANIFEST = '{"plenum":"backup","format":1,"files":[{"name":"plenum.db","bytes":1,"sha256":"00"}]}'

/** The readers of files and of what stands in them. */
export const FUZZED_FILES: Record<string, Fuzzed> = {
  matchColumns: { runs: SOME, args: (words) => fc.tuple(cells(words)) },
  parseMatching: { runs: SOME, args: (words) => fc.tuple(cells(words)) },
  guessRoles: {
    runs: SOME,
    args: (words) => fc.tuple(cells([...words, 'Heat (sec)', 'Date']), fc.array(cells(words), { maxLength: 3 })),
  },
  slashOrder: { runs: SOME, args: (words) => fc.tuple(cells([...words, '11/25/2026', '25/11/2026'])) },
  readUnitRow: {
    runs: MANY,
    args: (words) =>
      fc
        .tuple(
          cells(words),
          fc.array(
            fc.constantFrom('building', 'unit', 'heat', 'tons', 'size-1', 'changed-1', 'merv-1', 'accessNote', ''),
            { maxLength: 12 },
          ),
        )
        .map(([row, matching]) => [row, matching, { today: ON, order: 'unknown' }]),
  },
  readUnitsTable: {
    runs: SOME,
    args: () => fc.tuple(fc.oneof(mutated(fc.constant(SHEET)), mutatedBytes(fc.constant(bytesOf(SHEET))))),
  },
  readHead: {
    runs: SOME,
    args: () =>
      fc.tuple(fc.oneof(mutatedBytes(fc.constant(bytesOf(EXPORT))), mutated(fc.constant(EXPORT)).map(bytesOf))),
  },
  readRows: {
    runs: SOME,
    args: () =>
      mutated(fc.constant(EXPORT)).map((one) => [
        inPieces(bytesOf(one), 7),
        HEAD,
        { roles: ROLES, words: new Map(), isDays: false },
      ]),
  },
  understandExport: {
    runs: SOME,
    args: () =>
      fc.tuple(mutated(fc.constant(EXPORT)), fc.constantFrom('home', 'utc')).map(([one, zone]) => [
        inPieces(bytesOf(one), 9),
        HEAD,
        {
          choices: {
            system: 'main',
            roles: ROLES,
            words: new Map(),
            order: undefined,
            zone,
            together: {},
            fan: 'auto',
          },
          ...{ homeZone: 'America/Chicago', today: ON, fanRule: { heatBlower: 1.05, coolBlows: true } },
        },
      ]),
  },
  fileInForm: { runs: SOME, args: () => mutated(fc.constant(BODY)).map((one) => [inPieces(bytesOf(one), 5), 'edge']) },
  parseWeatherFile: { runs: SOME, args: () => fc.tuple(mutated(fc.constant(WEATHER)), fc.constantFrom('F', 'C')) },
  readText: { runs: SOME, args: () => fc.tuple(fc.oneof(anyText, mutatedBytes(fc.constant(bytesOf(FILE))))) },
  readJson: { runs: MANY, args: () => fc.tuple(file) },
  parseHouseholdFile: { runs: MANY, args: () => file.map((one) => [one, ON]) },
  isArchive: { runs: FEW, args: () => fc.tuple(mutatedBytes(archive)) },
  readBrought: {
    runs: SOME,
    args: () =>
      fc
        .tuple(fc.oneof(file, archive, mutatedBytes(archive)))
        .map(([one]) => [one, { on: () => ON, now: `${ON}T18:00:00.000Z` }]),
  },
  parseBackupManifest: {
    runs: SOME,
    args: () => fc.tuple(fc.oneof(mutatedBytes(fc.constant(bytesOf(MANIFEST))), anyText.map(bytesOf))),
  },
}
