import fc from 'fast-check'
import { zipSync } from 'fflate'
import { FINDER } from '@/content/finder/finder'
import { stations } from '@/content/stations'
import { tables } from '@/content/tables'
import { writeHouseholdFile } from '@/lib/forms/household-file'
import { aHousehold } from './a-household'
import { householdFile } from './arbitrary-file'
import { anyForm, anySearch, anyText, anyTyped, mutated, mutatedBytes } from './garbage'

/** What a reader is given: made of the words that its own file knows. */
export interface Fuzzed {
  runs: number
  args: (words: string[]) => fc.Arbitrary<unknown[]>
}

const ON = '2026-11-25'
const HOME = aHousehold()
const TABLES = { stations, zones: tables.zones, commonSizes: tables.commonSizes }
const [FEW, SOME, MANY] = [60, 170, 340]

const form = (...more: unknown[]): Fuzzed => ({
  runs: SOME,
  args: (words) => fc.tuple(anyForm(words)).map(([one]) => [one, ...more]),
})
const typed = (...more: unknown[]): Fuzzed => ({
  runs: SOME,
  args: (words) => fc.tuple(anyTyped(words)).map(([one]) => [one, ...more]),
})
const search: Fuzzed = { runs: MANY, args: (words) => fc.tuple(anySearch(words)) }
const text = (valid: string[] = [], ...more: unknown[]): Fuzzed => ({
  runs: MANY,
  args: (words) =>
    fc
      .tuple(fc.oneof(anyText, mutated(fc.constantFrom(...(valid.length > 0 ? valid : words)))))
      .map(([one]) => [one, ...more]),
})
const bytesOf = (one: string): Uint8Array => new TextEncoder().encode(one)
const cells = (words: string[]) => fc.array(fc.oneof(anyText, fc.constantFrom(...words)), { maxLength: 12 })
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
const WALK = '?flow=no-heat&at=29930220&s=gas.no.0_presence.yes.1&n=2'
const DRAFT = { steps: ['home', 'people', 'system-1', 'filter-1-1', 'devices', 'check'] }
const draft = (words: string[]) => fc.dictionary(fc.constantFrom(...DRAFT.steps), anyTyped(words), { maxKeys: 5 })
const steps = fc.constantFrom(...DRAFT.steps)

/** Every reader of what a browser, a file, an address or a program sends. */
export const FUZZED: Record<string, Fuzzed> = {
  ...Object.fromEntries(
    [
      ...[
        'parseSignIn',
        'parseName',
        'parseAddressChange',
        'parseDeletion',
        'parseSignUps',
        'parseNothing',
        'parseToken',
      ],
      ...[
        'parseInvitationId',
        'parseMember',
        'parsePurge',
        'parseForgot',
        'parseRecovery',
        'parseLink',
        'parseInvitee',
      ],
      ...[
        'parseReminderWish',
        'parseNewFeed',
        'parseFeed',
        'parsePushTarget',
        'parseAway',
        'parseInviteMany',
        'parseStock',
      ],
      ...[
        'parseTurnedOn',
        'parseBringForm',
        'parseUnitsForm',
        'parsePhotoForm',
        'parseTicked',
        'parseEntries',
        'parseMessage',
      ],
      ...['parseNewToken', 'parseStep', 'parseEdit', 'parseChoices', 'typedOf'],
    ].map((name) => [name, form()]),
  ),
  parseRecordForm: form(ON),
  parsePutOffForm: form(ON),
  parseNewLink: form(ON),
  parseClearance: form({ today: ON, lastFault: '2026-11-01' }),
  parseGuideAnswer: form(29_930_220),
  ...Object.fromEntries(
    [
      'parseSuppliesQuery',
      'parseRoundsQuery',
      'parseWalkQuery',
      'parseHomesQuery',
      'parseLogQuery',
      'parseBuildingTask',
    ].map((name) => [name, search]),
  ),
  readPeople: typed(),
  readContacts: typed(),
  readEvents: typed(),
  readDevices: typed(HOME.devices),
  readPlace: typed(TABLES),
  readSystem: typed('us'),
  readFilter: typed({ delivery: 'ducted', common: TABLES.commonSizes }),
  sizeSaid: typed(TABLES.commonSizes),
  readReading: typed(HOME.systems, ON),
  readMeter: typed(HOME.systems, ON),
  readBills: typed(HOME.systems, ON),
  readHappened: typed('metric'),
  alarmRows: typed(),
  readStep: {
    runs: SOME,
    args: (words) => fc.tuple(steps, draft(words)).map(([step, all]) => [step, all, TABLES, ON]),
  },
  stepFaults: {
    runs: SOME,
    args: (words) => fc.tuple(steps, draft(words)).map(([step, all]) => [step, all, { tables: TABLES, on: ON }]),
  },
  describedHome: { runs: SOME, args: (words) => draft(words).map((all) => [all, { tables: TABLES, today: () => ON }]) },
  draftZone: { runs: SOME, args: (words) => draft(words).map((all) => [all, TABLES]) },
  unitsOf: { runs: SOME, args: (words) => fc.tuple(draft(words)) },
  stepsOf: { runs: SOME, args: (words) => fc.tuple(draft(words)) },
  applyPart: {
    runs: SOME,
    args: (words) =>
      fc
        .tuple(
          fc.constantFrom('climate', 'people', 'systems', 'filters', 'devices', 'events', 'readings'),
          anyText,
          fc.boolean(),
          anyTyped(words),
        )
        .map(([group, other, remove, one]) => [
          HOME,
          { group, subject: group === 'systems' ? 'main' : group === 'filters' ? 'hall' : other, remove },
          one,
          { tables: TABLES, on: ON },
        ]),
  },
  findStep: text(DRAFT.steps),
  localPath: text(['/home/a?b=c', '//evil.example', '/check', '/\\evil.example']),
  isTimeZone: text(['America/Chicago', 'UTC']),
  typedNumber: text(['15 1/2', '16', '0.5']),
  parseRoom: text(['61 F', '16,5 °C']),
  readRun: { runs: MANY, args: () => fc.tuple(anyText, fc.constantFrom('s', 'min', 'h', 'pct', 'flag')) },
  wordMeans: text(['heating', 'off', 'Aux Heat 1']),
  boundaryOf: text(['multipart/form-data; boundary=edge', 'multipart/form-data; boundary="a b"']),
  parseWatch: text(['call~0_inducer~12']),
  parseWalk: text([WALK]),
  readPhoneMemory: text(['trip~29930220~no-heat.gas.1']),
  phoneCookieIn: text(['a=b; plenum-guide=trip~29930220~x; c=d']),
  answersFromAddress: text(['no.no.own']),
  parseTimes: {
    runs: SOME,
    args: () =>
      fc
        .array(anyText, { maxLength: 6 })
        .map((all) => [all.map((one, i) => ({ name: `t${i}`, label: 'Line', text: one }))]),
  },
  typedSize: {
    runs: SOME,
    args: () =>
      fc
        .array(anyText, { minLength: 5, maxLength: 5 })
        .map((all) => [(name: string) => all['whduf'.indexOf(name[0] ?? '')]]),
  },
  parseSize: {
    runs: SOME,
    args: () => fc.tuple(anyText, anyText, anyText).map(([w, h, d]) => [{ from: 'printed', w, h, d, u: 'in' }]),
  },
  walkFinder: {
    runs: SOME,
    args: () =>
      fc
        .tuple(fc.oneof(anyText, mutated(fc.constant('no.no.own'))), anyText, anyText)
        .map(([a, t, k]) => [FINDER, { a, t, k }, 29_930_220]),
  },
  replayFinder: { runs: SOME, args: (words) => cells([...words, 'no', 'own', 'yes']).map((all) => [FINDER, all]) },
  unitPlace: {
    runs: SOME,
    args: () =>
      fc
        .tuple(fc.oneof(anyText, fc.constantFrom('station chicago', 'zone 5')), anyText)
        .map(([place, timeZone]) => [{ place, timeZone }, TABLES]),
  },
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
