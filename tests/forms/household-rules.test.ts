import { describe, expect, test } from 'vitest'
import { parseHouseholdFile } from '@/lib/forms/household-file'
import { ON } from '../support/arbitrary-file'
import { larkspur } from '../support/larkspur'

type Edit = [place: string, value: unknown]

/** The example with some places replaced (`undefined` takes a key away), as `path: say` lines. */
function faultsWith(...edits: Edit[]): string[] {
  const file = larkspur()
  for (const [place, value] of edits) {
    const steps = place.split('.')
    let holder: Record<string, unknown> = file.households[0] ?? {}
    for (const step of steps.slice(0, -1)) holder = holder[step] as Record<string, unknown>
    holder[steps.at(-1) ?? ''] = value
  }
  const read = parseHouseholdFile(JSON.stringify(file), ON)
  return read.ok ? [] : read.faults.map(({ path, say }) => `${path.replace('households[0].', '')}: ${say}`)
}

describe('one wrong value has one fault with its path and what to do', () => {
  test.each<[string, unknown, string]>([
    ['filters.0.nominal.depthIn', 0, 'filters[0].nominal.depthIn: must be between 0.5 and 6 (inches), but is 0'],
    [
      'filters.0.nominal.widthIn',
      '16',
      'filters[0].nominal.widthIn: must be between 4 and 40 (inches), but is the text "16"',
    ],
    ['filters.0.nominal.heightIn', 41, 'filters[0].nominal.heightIn: must be between 4 and 40'],
    ['filters.0.merv', 21, 'filters[0].merv: must be a whole number between 1 and 20'],
    ['filters.0.labelLimitDays', 0, 'filters[0].labelLimitDays: '],
    ['people', 2.5, 'people: must be a whole number between 0 and 30 (people), but is 2.5'],
    ['pets', 31, 'pets: '],
    ['petFactor', 11, 'petFactor: must be between 0.1 and 10'],
    ['elevationFt', -301, 'elevationFt: '],
    ['timeZone', 'America/Larkspur', 'timeZone: must be the name of a time zone'],
    ['timeZone', '+05:00', 'timeZone: '],
    ['since', '2026-02-29', 'since: must be a day that exists'],
    ['emergencyNumber', 'the neighbour', 'emergencyNumber: '],
    ['smoking', 'no', 'smoking: must be true or false'],
    ['tenure', 'lease', 'tenure: must be one of own, rent, let, but is the text "lease"'],
    ['name', 'two\nlines', 'name: '],
    ['id', 'x'.repeat(65), 'id: must be a text of 1 to 64'],
    ['colour', 'red', 'colour: is not a key that is known here; known are id, name'],
    ['climate.hdd65', 20_001, 'climate.hdd65: must be between 0 and 20 000'],
    ['climate.cdd65', 8001, 'climate.cdd65: '],
    ['climate.heatingDesignF', 66, 'climate.heatingDesignF: must be between -60 and 65'],
    ['climate.coolingDesignF', 64, 'climate.coolingDesignF: '],
    ['climate.kind', 'daily', 'climate.kind: must be one of annual, monthly'],
    ['systems.0.cool', { tons: 3 }, 'systems[0].cool.source: is missing'],
    ['systems.0.cool.tons', 0.4, 'systems[0].cool.tons: '],
    ['systems.0.heat.inputBtuh', 9999, 'systems[0].heat.inputBtuh: must be between 10 000 and 400 000'],
    [
      'systems.0.heat.efficiency',
      80,
      'systems[0].heat.efficiency: must be between 0.3 and 1.2 (0.8 is 80 %), but is 80',
    ],
    ['systems.0.fan', { mode: 'circulate' }, 'systems[0].fan.minutesPerHour: is missing'],
    ['systems.0.fan', { mode: 'circulate', minutesPerHour: 61 }, 'systems[0].fan.minutesPerHour: '],
    ['systems.0.thermostat', { heatSetpointF: 70 }, 'systems[0].thermostat.coolSetpointF: is missing'],
    ['systems.0.thermostat.heatSetpointF', 91, 'systems[0].thermostat.heatSetpointF: '],
    ['systems', {}, 'systems: must be a list of systems in square brackets, but is a group of keys'],
    ['devices.0.system', 'attic', 'devices[0].system: names the system "attic", but this household has main'],
    ['devices.0.endOfLife', '2021-02-28', 'devices[0].endOfLife: is 2021-02-28, before it was made (2021-03-01)'],
    ['filters.0.place', 'ductless-head', 'filters[0].place: is a ductless head, but this system’s'],
    ['records.1.filter', 'attic', 'records[1].filter: names the filter "attic", but this household has hall'],
    ['records.1.on', '2026-11-26', 'records[1].on: is 2026-11-26, but today is 2026-11-25'],
    ['records.2.by', 'resident', 'records[2].by: must be technician'],
    ['records.2.subject', 'hall', 'records[2].subject: is a filter, but the task heating-service is done to a system'],
    ['records.2.subject', 'co1', 'records[2].subject: is a co-alarm, but'],
    ['records.2.subject', 'attic', 'records[2].subject: names the system "attic"'],
    ['readings.0.system', 'attic', 'readings[0].system: names the system "attic"'],
    ['readings.0.to', '2026-09-30', 'readings[0].to: is 2026-09-30, before its beginning 2026-10-01'],
    ['readings.0.to', '2026-11-26', 'readings[0].to: is 2026-11-26, but today is 2026-11-25'],
    [
      'readings.0.heatHours',
      745,
      'readings[0].heatHours: must be at most 744, the hours from 2026-10-01 to 2026-10-31',
    ],
    ['readings.0.fanHours', 744.1, 'readings[0].fanHours: '],
    ['readings.0.coolHours', -1, 'readings[0].coolHours: '],
    ['readings.1.therms', 610, 'readings[1].therms: would mean 745 hours of heating'],
    ['dustEvents.0.to', '2026-09-30', 'dustEvents[0].to: '],
  ])('%s = %j', (place, value, expected) => {
    const faults = faultsWith([place, value])
    expect(faults).toHaveLength(1)
    expect(faults[0]).toContain(expected.replace('’', "'"))
  })

  test('1e999 is no number', () => {
    const text = JSON.stringify(larkspur()).replace('"hdd65":6200', '"hdd65":1e999')
    expect(parseHouseholdFile(text, ON)).toMatchObject({ ok: false, faults: [{ path: 'households[0].climate.hdd65' }] })
  })
})

describe('what cannot be built is explained', () => {
  const boiler = {
    id: 'main',
    name: 'Boiler',
    delivery: 'hydronic',
    heat: { source: 'gas-boiler', inputBtuh: 100_000 },
  }

  test('a boiler with radiators has no filter', () => {
    const [fault, ...more] = faultsWith(['systems.0', boiler])
    expect(more).toEqual([])
    expect(fault).toMatch(/^filters\[0\]\.place: cannot be a wall grille: a boiler with radiators moves no air/)
  })

  test('a boiler that feeds an air handler with ducts may have one, cooled or not', () => {
    expect(faultsWith(['systems.0', { ...boiler, delivery: 'ducted' }])).toEqual([])
    expect(
      faultsWith(['systems.0', { ...boiler, delivery: 'ducted', cool: { source: 'central-ac', tons: 3 } }]),
    ).toEqual([])
  })

  test.each([
    ['gas-furnace', 'hydronic', true],
    ['gas-furnace', 'room', true],
    ['dual-fuel', 'hydronic', true],
    ['wall-furnace', 'ducted', true],
    ['electric-baseboard', 'hydronic', true],
    ['electric-baseboard', 'room', false],
    ['wall-furnace', 'room', false],
    ['heat-pump', 'hydronic', false],
    ['heat-pump', 'room', false],
    ['oil-boiler', 'hydronic', false],
  ])('%s with delivery %s: refused %s', (source, delivery, isRefused) => {
    const faults = faultsWith(
      ['systems.0', { id: 'main', name: 'Main', delivery, heat: { source, inputBtuh: 80_000 } }],
      ['filters', []],
      ['records', []],
    )
    expect(faults.map((fault) => fault.split(':')[0])).toEqual(isRefused ? ['systems[0].delivery'] : [])
  })

  test('a ductless system has no return grille, and a heat pump no efficiency', () => {
    const heads = {
      id: 'main',
      name: 'Heads',
      delivery: 'ductless',
      heat: { source: 'heat-pump', efficiency: 1.1, inputBtuh: 10_000 },
    }
    const paths = faultsWith(['systems.0', heads], ['readings', []]).map((fault) => fault.split(':')[0])
    expect(paths.toSorted()).toEqual(['filters[0].place', 'systems[0].heat.efficiency'])
    expect(
      faultsWith(
        ['systems.0', { ...heads, heat: { source: 'heat-pump' } }],
        ['readings', []],
        ['filters.0.place', 'ductless-head'],
      ),
    ).toEqual([])
  })

  test('a bill needs the rating of what burnt it', () => {
    expect(faultsWith(['systems.0.heat.inputBtuh', undefined])[0]).toMatch(
      /^readings\[1\]: is a bill, but the system "main" has no heat.inputBtuh/,
    )
    expect(faultsWith(['systems.0.heat', undefined])[0]).toMatch(/^readings\[1\]: is a bill/)
  })

  test('a reading without hours measures nothing', () => {
    const empty = { system: 'main', from: '2026-10-01', to: '2026-10-31', source: 'thermostat' }
    expect(faultsWith(['readings.0', empty])).toEqual([
      'readings[0]: has no hours; write heatHours, coolHours or fanHours, whichever was measured',
    ])
  })
})

describe('no day is measured twice', () => {
  const reading = (from: string, to: string, hours: object) => ({
    system: 'main',
    from,
    to,
    source: 'thermostat',
    ...hours,
  })

  test('one day in common is named with both spans, a bill counts as heating', () => {
    const [fault, ...more] = faultsWith([
      'readings.0',
      reading('2026-02-04', '2026-02-10', { heatHours: 3, coolHours: 1 }),
    ])
    expect(more).toEqual([])
    expect(fault).toMatch(
      /^readings\[1\]: .*heating hours from 2026-01-05 to 2026-02-04.*readings\[0\].*from 2026-02-04 to 2026-02-10/,
    )
  })

  test('neighbouring days, other quantities and other systems are fine', () => {
    expect(faultsWith(['readings.0', reading('2026-02-05', '2026-02-10', { heatHours: 3 })])).toEqual([])
    expect(faultsWith(['readings.0', reading('2026-01-05', '2026-02-04', { coolHours: 3, fanHours: 9 })])).toEqual([])
  })

  test('a long span is held against all that lie within it', () => {
    const faults = faultsWith([
      'readings',
      [
        reading('2026-01-01', '2026-06-30', { fanHours: 9 }),
        reading('2026-02-01', '2026-02-03', { fanHours: 9 }),
        reading('2026-03-01', '2026-03-03', { fanHours: 9 }),
        reading('2026-07-01', '2026-07-03', { fanHours: 9 }),
      ],
    ])
    expect(faults.map((fault) => fault.split(':')[0])).toEqual(['readings[1]', 'readings[2]'])
  })
})

describe('all faults at once', () => {
  test('a wrong number hides neither a rule across keys nor a fault in another household', () => {
    const file = larkspur()
    const [first] = file.households
    if (!first) throw new Error('no household')
    const text = JSON.stringify({
      plenum: 1,
      households: [
        {
          ...first,
          people: 'three',
          filters: [{ ...first.filters[0], system: 'attic', nominal: { widthIn: 0, heightIn: 25, depthIn: 1 } }],
        },
        { ...first, records: [{ on: '2027-01-01', kind: 'filter-looked', filter: 'hall' }], extra: 1 },
      ],
    })
    const read = parseHouseholdFile(text, ON)
    if (read.ok) throw new Error('read')
    expect(read.faults.map(({ path }) => path).toSorted()).toEqual([
      'households[0].filters[0].nominal.widthIn',
      'households[0].filters[0].system',
      'households[0].people',
      'households[1].extra',
      'households[1].id',
      'households[1].records[0].on',
    ])
  })

  test('a list that cannot be read raises no follow-on faults about what names its parts', () => {
    expect(faultsWith(['systems', 'none']).map((fault) => fault.split(':')[0])).toEqual(['systems'])
    expect(faultsWith(['systems.0.id', 7]).map((fault) => fault.split(':')[0])).toEqual(['systems[0].id'])
  })

  test('ids are unique within their list, and only there', () => {
    const [filter] = larkspur().households[0]?.filters ?? []
    expect(faultsWith(['filters', [filter, filter]])[0]).toMatch(/^filters\[1\]\.id: is also the id of another filter/)
    expect(faultsWith(['devices.0.id', 'main'])).toEqual([])
  })

  test('a month list has twelve numbers, and its year keeps the limit', () => {
    const climate = { kind: 'monthly', heatingDesignF: 2, coolingDesignF: 88, cdd65: Array(12).fill(0) }
    expect(faultsWith(['climate', { ...climate, hdd65: Array(11).fill(1) }])[0]).toMatch(
      /^climate\.hdd65: must be a list of twelve numbers.*but has 11/,
    )
    expect(faultsWith(['climate', { ...climate, hdd65: Array(12).fill(1700) }])[0]).toMatch(
      /^climate\.hdd65: must come to 20000 at most/,
    )
    expect(faultsWith(['climate', { ...climate, hdd65: Array(12).fill(500) }])).toEqual([])
  })

  test('today is the household’s own', () => {
    const text = JSON.stringify(larkspur()).replace(
      '2026-10-20","kind":"filter-looked',
      '2026-11-25","kind":"filter-looked',
    )
    const asked: string[] = []
    const read = parseHouseholdFile(text, (zone) => {
      asked.push(zone)
      return '2026-11-24'
    })
    expect(asked).toEqual(['America/Chicago'])
    expect(read).toMatchObject({ ok: false, faults: [{ path: 'households[0].records[1].on' }] })
  })
})

test('what stands beside a deciding word that is not known is judged by no rule, and nothing breaks', () => {
  expect(faultsWith(['readings', [{ system: 'main', from: 'soon', to: '2026-01-01', source: 'guess' }]])).toEqual([
    'readings[0].source: must be one of thermostat, hour-meter, bill, but is the text "guess"',
  ])
})
