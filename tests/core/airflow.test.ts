import psychrolib from 'psychrolib'
import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { airflowOf, airHeatFactor, derating, outputBtuh } from '@/lib/core/airflow'
import type { Household, NominalSize, System } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { aHousehold } from '../support/a-household'

const { figures } = tables
const SYSTEM: System = { id: 'main', name: 'Main', delivery: 'ducted' }

describe('the altitude factor', () => {
  // psychrolib, ASHRAE Handbook – Fundamentals, standard atmosphere [S].
  test.each([
    [5000, 0.8986],
    [5280, 0.8892],
  ])('at %i ft is %f of 1.0800', (feet, wanted) => {
    psychrolib.SetUnitSystem(psychrolib.IP)
    const share = psychrolib.GetStandardAtmPressure(feet) / psychrolib.GetStandardAtmPressure(0)
    expect(airHeatFactor(feet, figures)).toBeCloseTo(1.08 * share, 6)
    expect(airHeatFactor(feet, figures)).toBeCloseTo(wanted, 4)
  })

  test('is 60 · 0.075 · 0.24 at sea level', () => expect(airHeatFactor(0, figures)).toBeCloseTo(60 * 0.075 * 0.24, 12))

  test('a fuel burner loses 4 % of its rating for each 1000 ft, above 2000 ft only (NFPA 54) [S?]', () => {
    expect(derating('gas-furnace', 2000, figures)).toBe(1)
    expect(derating('gas-furnace', 5000, figures)).toBeCloseTo(0.8, 12)
    expect(derating('electric-furnace', 5000, figures)).toBe(1)
  })

  test('a burner of 64 000 Btu/h gives 51 200 at 5000 ft, whether that is printed or is 80 % of its input', () => {
    expect(outputBtuh({ source: 'gas-furnace', outputBtuh: 64_000 }, 5000, figures)).toBeCloseTo(51_200, 6)
    const byInput = { source: 'gas-furnace' as const, inputBtuh: 80_000, efficiency: 0.8 }
    expect(outputBtuh(byInput, 5000, figures)).toBeCloseTo(51_200, 6)
    // 51 200 ÷ (1.08 · 0.832 · 55 °F), of thinner air.
    expect(Math.round(airflowOf({ ...SYSTEM, heat: byInput }, 5000, figures).heat)).toBe(1036)
  })
})

describe('airflow of 64 000 Btu/h by the rating plate’s rise', () => {
  test.each([
    [40, 1481],
    [50, 1185],
    [55, 1077],
    [60, 988],
    [70, 847],
  ])('%i °F: %i cfm', (riseF, cfm) => {
    const heat = { source: 'gas-furnace' as const, outputBtuh: 64_000, riseF }
    expect(Math.round(airflowOf({ ...SYSTEM, heat }, 0, figures).heat)).toBe(cfm)
  })
})

describe('what is not known of the airflow', () => {
  const of = (change: Partial<System>) => airflowOf({ ...SYSTEM, ...change }, 0, figures)
  test('the one takes the other; nothing known is 1000 cfm, and said', () => {
    expect(of({ cool: { source: 'central-ac', tons: 3 }, heat: { source: 'gas-furnace' } })).toMatchObject({
      heat: 1200,
      cool: 1200,
      assumed: false,
    })
    expect(of({ heat: { source: 'gas-furnace' } })).toMatchObject({ heat: 1000, cool: 1000, fan: 1000, assumed: true })
  })

  test('input and efficiency make the output; a heat pump heats with its cooling air; measured air replaces both', () => {
    const byInput = of({ heat: { source: 'gas-furnace', inputBtuh: 80_000, efficiency: 0.8 } })
    expect(Math.round(byInput.heat)).toBe(1077)
    const pump: Partial<System> = {
      heat: { source: 'heat-pump', outputBtuh: 20_000 },
      cool: { source: 'heat-pump', tons: 2 },
    }
    expect(of(pump).heat).toBe(800)
    expect(of({ ...pump, airflowCfm: { heat: 700, cool: 900 } })).toMatchObject({ heat: 700, cool: 900, fan: 900 })
  })

  test('an input without its efficiency tells nothing, and heating alone is enough not to assume', () => {
    const input = { heat: { source: 'gas-furnace' as const, inputBtuh: 80_000 } }
    expect(of(input)).toMatchObject({ heat: 1000, cool: 1000, assumed: true })
    expect(of({ heat: { source: 'gas-furnace', efficiency: 0.8 } })).toMatchObject({ heat: 1000, assumed: true })
    expect(of({ heat: { source: 'gas-furnace', outputBtuh: 64_000 } })).toMatchObject({ assumed: false })
  })

  test('a boiler has no air of its own, so the cooling’s counts', () => {
    const boiler = of({ heat: { source: 'gas-boiler', outputBtuh: 90_000 }, cool: { source: 'central-ac', tons: 2 } })
    expect(boiler).toMatchObject({ greatest: 800, heat: 800, assumed: false })
    expect(of({ heat: { source: 'gas-boiler', outputBtuh: 90_000 } })).toMatchObject({ fan: 1000, assumed: true })
  })

  test('a heat pump with a burner beside it moves the air of its cooling, too', () => {
    const heat = { source: 'dual-fuel' as const, outputBtuh: 64_000 }
    expect(of({ heat, cool: { source: 'heat-pump', tons: 2 } }).heat).toBe(800)
    expect(of({ heat })).toMatchObject({ heat: 1000, assumed: true })
  })

  test('the filter has to pass the larger of the two, whichever that is', () => {
    const heat = { source: 'gas-furnace' as const, outputBtuh: 64_000 }
    expect(Math.round(of({ heat, cool: { source: 'central-ac', tons: 2 } }).greatest)).toBe(1077)
    expect(of({ heat, cool: { source: 'central-ac', tons: 3 } }).greatest).toBe(1200)
  })
})

function homeWith(nominal: NominalSize, change: Partial<Household> = {}): Household {
  return aHousehold({
    people: 2,
    pets: 0,
    carpet: false,
    dustEvents: [],
    readings: [],
    devices: [],
    // 1750 blower hours a year, and nothing else.
    systems: [
      {
        ...SYSTEM,
        cool: undefined,
        airflowCfm: { cool: 1200 },
        fan: { mode: 'circulate', minutesPerHour: (60 * 1750) / 8760 },
      },
    ],
    filters: [{ id: 'hall', system: 'main', place: 'wall-grille', nominal, medium: 'pleated', merv: 8 }],
    records: [{ on: '2026-01-01', kind: 'filter-changed', filter: 'hall' }],
    ...change,
  })
}

describe('the reference filter', () => {
  test('16×25×1 MERV 8, 1200 cfm, 1750 blower hours a year, reference home: about 79 days', () => {
    const home = homeWith({ widthIn: 16, heightIn: 25, depthIn: 1 })
    const { items, workings } = plan([home], tables, '2026-02-01').households[0] ?? {}
    expect(items?.[0]).toMatchObject({ due: '2026-03-21', basis: 'loading' })
    expect(workings?.[0]?.fanHours).toBeCloseTo(1750, 6)
    expect(workings?.[0]?.capacityGrams).toBeCloseTo((13 * 400) / 144, 9)
    expect(workings?.[0]?.loadedFraction).toBeCloseTo(31 / 79, 2)
  })

  test.each([
    [16, 20, 540],
    [16, 25, 432],
    [20, 25, 346],
    [24, 24, 300],
    [20, 30, 288],
  ])('%i×%i at 1200 cfm: %i fpm, and small for its grille above 300 [S?]', (widthIn, heightIn, fpm) => {
    const home = homeWith({ widthIn, heightIn, depthIn: 1 })
    const { workings, warnings } = plan([home], tables, '2026-02-01').households[0] ?? {}
    expect(Math.round(workings?.[0]?.faceVelocityFpm ?? 0)).toBe(fpm)
    expect(warnings?.some((w) => w.code === 'filter-small-for-airflow')).toBe(fpm > 300)
  })

  test.each([
    [16, 20, true],
    [16, 25, false],
  ])('%i×%i at 1200 cfm in the furnace’s slot: small above 500 fpm only: %s [S?]', (widthIn, heightIn, small) => {
    const home = homeWith({ widthIn, heightIn, depthIn: 1 })
    home.filters = home.filters.map((f) => ({ ...f, place: 'furnace-slot' as const }))
    const { warnings } = plan([home], tables, '2026-02-01').households[0] ?? {}
    expect(warnings?.some((w) => w.code === 'filter-small-for-airflow')).toBe(small)
  })

  test('a filter in air of its own, and one without a loading model, have no clean resistance', () => {
    const dropOf = (change: Partial<Household['filters'][number]>) => {
      const home = homeWith({ widthIn: 16, heightIn: 25, depthIn: 1 })
      home.filters = home.filters.map((f) => ({ ...f, ...change }))
      return plan([home], tables, '2026-02-01').households[0]?.workings[0]?.pressureDropCleanInWg
    }
    expect(dropOf({ place: 'ventilator' })).toBeNull()
    expect(dropOf({ medium: 'screen' })).toBeNull()
  })

  test('a medium that the table does not know is no plan', () => {
    const home = homeWith({ widthIn: 16, heightIn: 25, depthIn: 1 })
    expect(() => plan([home], { ...tables, media: [] }, '2026-02-01')).toThrow(
      'no row in the table of media for pleated',
    )
  })

  // ASHRAE 52.2's test velocities [S?]; the table's figures are at 300 fpm [P].
  test.each([118, 246, 295, 374, 492, 630, 748])('clean resistance follows the velocity at %i fpm', (fpm) => {
    const cfm = (fpm * 400) / 144
    const home = homeWith({ widthIn: 16, heightIn: 25, depthIn: 1 })
    home.systems = [{ ...SYSTEM, airflowCfm: { cool: cfm } }]
    const drop = plan([home], tables, '2026-02-01').households[0]?.workings[0]?.pressureDropCleanInWg
    expect(drop).toBeCloseTo(0.15 * (fpm / 300) ** 1.4, 9)
  })
})
