import { csvText } from '@/lib/core/csv'
import type { Household } from '@/lib/core/household'
import { sheetRows } from '@/lib/core/unit-sheet'
import { DUSTY_YEAR } from './a-dusty-year'
import { aHousehold } from './a-household'
import { fortyUnits } from './many-units'

/** A dusty home with a long past and one of everything: two systems, three filters, devices, a service. */
export const TOLD: Household = aHousehold({
  ...DUSTY_YEAR,
  id: 'told',
  hardWater: true,
  systems: [
    ...aHousehold().systems,
    { id: 'attic', name: 'Attic room', delivery: 'room', cool: { source: 'heat-pump', tons: 1 } },
  ],
  filters: [
    ...aHousehold().filters,
    {
      id: 'screen',
      system: 'attic',
      place: 'ductless-head',
      nominal: { widthIn: 30, heightIn: 10, depthIn: 1 },
      medium: 'screen',
    },
    {
      id: 'stairs',
      system: 'main',
      place: 'ceiling-grille',
      nominal: { widthIn: 20, heightIn: 20, depthIn: 1 },
      medium: 'pleated',
      merv: 8,
    },
  ],
  devices: [
    { id: 'co1', kind: 'co-alarm', made: '2021-03-01', endOfLife: '2031-03-01' },
    { id: 'smoke1', kind: 'smoke-alarm', made: '2015-03-01' },
    { id: 'drain', kind: 'condensate-drain' },
  ],
  records: [
    ...DUSTY_YEAR.records,
    { on: '2025-09-12', kind: 'service-done', task: 'heating-service', subject: 'main', by: 'technician' },
  ],
})

/** What somebody typed who described a home and knew little of it. */
export const DRAFT = {
  home: { name: ['Larkspur Lane 9'], tenure: ['own'], station: ['minneapolis'], units: ['us'] },
  people: { people: ['4'], pets: ['2'], 'hard-water': ['unknown'], vulnerable: ['unknown'] },
  'system-1': { how: ['ducts'], fuel: ['unknown'], cool: ['unknown'], fan: ['unknown'] },
  'filter-1-1': { place: ['unknown'], 'size-way': ['unknown'], medium: ['unknown'] },
  devices: { 'alarm-0': ['smoke-alarm'], 'alarm-1': ['co-alarm'], device: ['new:condensate-drain', 'new:hrv'] },
}

/** A thermostat's report of ten days, a row each half hour. */
export function thermostatReport(): string {
  const rows = ['When,Heating (sec),Cooling (sec)']
  for (let at = Date.UTC(2026, 9, 25, 5); at < Date.UTC(2026, 10, 20, 6); at += 1_800_000)
    rows.push(`${new Date(at).toISOString().slice(0, 16).replace('T', ' ')},400,0`)
  return rows.join('\n')
}

/** Forty units as a spreadsheet: two more than stand in it already are new. */
export function unitsSheet(): string {
  const units = fortyUnits().map((household, i) => ({ ...household, ...(i < 2 && { name: `New flat ${i}` }) }))
  return csvText(sheetRows(units.map((household) => ({ household, accessNote: null }))))
}
