/** A part of a file that a test breaks. */
export type Part = Record<string, unknown>

/** The example of the format's description, key for key: the file every refusal starts from. A new one each time. */
export function larkspur() {
  return {
    plenum: 1,
    households: [
      {
        id: 'larkspur-2',
        name: 'Larkspur Court 2',
        building: 'Larkspur Court',
        tenure: 'own',
        since: '2026-09-01',
        timeZone: 'America/Chicago',
        units: 'us',
        elevationFt: 600,
        emergencyNumber: '911',
        climate: { kind: 'annual', hdd65: 6200, cdd65: 850, heatingDesignF: 2, coolingDesignF: 88 },
        people: 3,
        pets: 1,
        petFactor: 1.4,
        smoking: false,
        carpet: true,
        hardWater: false,
        vulnerable: false,
        dustEvents: [{ kind: 'renovation', from: '2026-10-01', to: '2026-10-20' }],
        systems: [
          {
            id: 'main',
            name: 'Main system',
            delivery: 'ducted',
            heat: {
              source: 'gas-furnace',
              inputBtuh: 80000,
              outputBtuh: 64000,
              efficiency: 0.8,
              riseF: 55,
              installed: 2012,
            },
            cool: { source: 'central-ac', tons: 3, installed: 2012 },
            fan: { mode: 'auto' },
            thermostat: { heatSetpointF: 70, coolSetpointF: 75 },
            airflowCfm: { heat: 1077, cool: 1200 },
          },
        ],
        filters: [
          {
            id: 'hall',
            system: 'main',
            place: 'wall-grille',
            nominal: { widthIn: 16, heightIn: 25, depthIn: 1 },
            medium: 'pleated',
            merv: 8,
            labelLimitDays: 90,
          },
        ],
        devices: [{ id: 'co1', kind: 'co-alarm', made: '2021-03-01', endOfLife: '2031-03-01' }],
        records: [
          {
            on: '2026-09-20',
            kind: 'filter-changed',
            filter: 'hall',
            light: 'dark',
            fitted: { medium: 'pleated', merv: 11 },
          },
          { on: '2026-10-20', kind: 'filter-looked', filter: 'hall', light: 'half' },
          { on: '2026-09-02', kind: 'service-done', task: 'heating-service', subject: 'main', by: 'technician' },
        ],
        readings: [
          {
            system: 'main',
            from: '2026-10-01',
            to: '2026-10-31',
            source: 'thermostat',
            heatHours: 61.5,
            coolHours: 2,
            fanHours: 70,
          },
          { system: 'main', from: '2026-01-05', to: '2026-02-04', source: 'bill', therms: 118, baseTherms: 14 },
        ],
      },
    ],
  }
}
