import fc from 'fast-check'
import { FINDER } from '@/content/finder/finder'
import { stations } from '@/content/stations'
import { tables } from '@/content/tables'
import { aHousehold } from './a-household'
import { cells, FUZZED_FILES, type Fuzzed, MANY, SOME } from './fuzzed-files'
import { anyForm, anySearch, anyText, anyTyped, mutated } from './garbage'

const ON = '2026-11-25'
const HOME = aHousehold()
const TABLES = { stations, zones: tables.zones, commonSizes: tables.commonSizes }

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
const WALK = '?flow=no-heat&at=29930220&s=gas.no.0_presence.yes.1&n=2'
const DRAFT = { steps: ['home', 'people', 'system-1', 'filter-1-1', 'devices', 'check'] }
const draft = (words: string[]) => fc.dictionary(fc.constantFrom(...DRAFT.steps), anyTyped(words), { maxKeys: 5 })
const steps = fc.constantFrom(...DRAFT.steps)

/** Every reader of what a browser, a file, an address or a program sends. */
export const FUZZED: Record<string, Fuzzed> = {
  ...FUZZED_FILES,
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
  readDevices: typed(ON, HOME.devices),
  readPlace: typed(TABLES),
  readSystem: typed('us'),
  readFilter: typed({ delivery: 'ducted', common: TABLES.commonSizes }),
  sizeSaid: typed(TABLES.commonSizes),
  readHours: typed(HOME.systems, ON),
  readMeter: typed(HOME.systems, ON),
  readBills: typed(HOME, ON),
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
          fc.constantFrom('climate', 'people', 'systems', 'filters', 'devices'),
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
  parseRoom: {
    runs: MANY,
    args: () =>
      fc.tuple(
        fc.oneof(anyText, mutated(fc.constantFrom('61 F', '16,5 °C'))),
        fc.constantFrom(undefined, 'F' as const, 'C' as const),
      ),
  },
  degreesAsked: text(['c']),
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
}
