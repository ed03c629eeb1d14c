import { describe, expect, test } from 'vitest'
import { COOL_SOURCES, DEVICE_KINDS, type Device, type Filter, HEAT_SOURCES, type System } from '@/lib/core/household'
import { coolSourceInWords, sourceInWords } from '@/lib/core/source-words'
import { deviceInWords, homeInWords, subjectInWords, systemChoices } from '@/lib/core/subject-words'
import { bareHome } from '../support/plan-of'

const SYSTEMS: System[] = [
  { id: 'up', name: 'Upstairs', delivery: 'ducted' },
  { id: 'down', name: 'Downstairs', delivery: 'ducted' },
]

/** `wall-grille 16 up`: where it is, how wide, and of which system. */
function filter(id: string, says: string): Filter {
  const [place, width, system = 'up'] = says.split(' ')
  return {
    ...{ id, system, place: place as Filter['place'], medium: 'pleated' },
    nominal: { widthIn: Number(width), heightIn: 25, depthIn: 1 },
  }
}

describe('a filter is called', () => {
  test.each<[string, [filters: string[], names: string[]]]>([
    [
      'by its place where it is the only one there',
      [
        ['wall-grille 16', 'floor-grille 16'],
        ['wall grille', 'floor grille'],
      ],
    ],
    [
      'by its size where others there have another',
      [
        ['wall-grille 16', 'wall-grille 20', 'floor-grille 16'],
        ['wall grille, 16 × 25 × 1', 'wall grille, 20 × 25 × 1', 'floor grille'],
      ],
    ],
    [
      'by its system where others there are of another',
      [
        ['wall-grille 16 up', 'wall-grille 16 down'],
        ['wall grille, Upstairs', 'wall grille, Downstairs'],
      ],
    ],
    [
      'by its own name where one other is of its size, though a third is not',
      [
        ['wall-grille 16', 'wall-grille 16', 'wall-grille 20'],
        ['wall grille, “f0”', 'wall grille, “f1”', 'wall grille, 20 × 25 × 1'],
      ],
    ],
    [
      'by its size where one other is of its system, though a third is not',
      [
        ['wall-grille 16 up', 'wall-grille 20 up', 'wall-grille 24 down'],
        ['wall grille, 16 × 25 × 1', 'wall grille, 20 × 25 × 1', 'wall grille, Downstairs'],
      ],
    ],
    [
      'by its own name where nothing else is known of its system',
      [
        ['wall-grille 16 gone', 'wall-grille 16 up'],
        ['wall grille, “f0”', 'wall grille, Upstairs'],
      ],
    ],
  ])('%s', (_, [filters, names]) => {
    const home = bareHome({ systems: SYSTEMS, filters: filters.map((says, i) => filter(`f${i}`, says)) })
    expect(home.filters.map(({ id }) => subjectInWords(home, id))).toEqual(names)
  })
})

test('a device is called by its kind, and by its own name where there are several of the kind', () => {
  const devices: Device[] = [
    { id: 'hall', kind: 'smoke-alarm' },
    { id: 'attic', kind: 'smoke-alarm' },
    { id: 'co', kind: 'co-alarm' },
    { id: 'pad', kind: 'humidifier' },
  ]
  const home = bareHome({ systems: SYSTEMS, filters: [], devices })
  expect(['hall', 'attic', 'co', 'pad', 'up', 'down', 'gone'].map((id) => subjectInWords(home, id))).toEqual([
    ...['smoke alarm, “hall”', 'smoke alarm, “attic”', 'carbon monoxide alarm', 'humidifier'],
    ...['Upstairs', 'Downstairs', 'gone'],
  ])
})

test('whatever heats, cools or stands in a home has a name of its own', () => {
  for (const names of [
    HEAT_SOURCES.map(sourceInWords),
    COOL_SOURCES.map(coolSourceInWords),
    DEVICE_KINDS.map(deviceInWords),
  ])
    expect(new Set(names.filter((name) => name.length > 2)).size).toBe(names.length)
  expect(sourceInWords('dual-fuel')).toBe('a heat pump with a furnace beside it')
  expect(COOL_SOURCES.map(coolSourceInWords)).toEqual(['central air conditioning', 'a heat pump'])
})

test('two systems of one name are told apart wherever they are named, and a third is called by its name', () => {
  const systems: System[] = [...SYSTEMS, { id: 'up-2', name: 'Upstairs', delivery: 'ducted' }]
  const home = {
    ...bareHome(),
    systems,
    filters: [filter('a', 'wall-grille 16 up'), filter('b', 'wall-grille 16 down')],
  }
  expect(systems.map(({ id }) => subjectInWords(home, id))).toEqual([
    'Upstairs, “up”',
    'Downstairs',
    'Upstairs, “up-2”',
  ])
  expect(systemChoices(home).map(({ name }) => name)).toEqual(['Upstairs, “up”', 'Downstairs', 'Upstairs, “up-2”'])
  expect(subjectInWords(home, 'a')).toBe('wall grille, Upstairs, “up”')
})

test('a home is called by its building too, unless its name or nobody says one', () => {
  expect(homeInWords({ name: '2B', building: 'Elm Court' })).toBe('2B, Elm Court')
  expect(homeInWords({ name: 'ELM court 2B', building: 'Elm Court' })).toBe('ELM court 2B')
  expect(homeInWords({ name: '2B', building: null })).toBe('2B')
  expect(homeInWords({ name: '2B' })).toBe('2B')
})
