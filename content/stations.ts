import type { Mark } from '@/lib/core/tables'

export interface StationRow {
  id: string
  name: string
  timeZone: string
  elevationFt: number
  /** Degree-days to base 65 °F in a usual year, °F·day. */
  hdd65: number
  cdd65: number
  heatingDesignF: number
  coolingDesignF: number
  mark: Mark
}

type Row = [string, string, string, number, number, number, number, number]

/** Indicative values from memory, rounded: near enough to start from, to be replaced by a person's own station. Checked by tests/core/climate-follows.test.ts against the two cities of the open data set only. */
const ROWS: Row[] = [
  ['albuquerque', 'Albuquerque, New Mexico', 'America/Denver', 5300, 4100, 1300, 20, 93],
  ['anchorage', 'Anchorage, Alaska', 'America/Anchorage', 130, 10100, 10, -9, 70],
  ['atlanta', 'Atlanta, Georgia', 'America/New_York', 1030, 2700, 1850, 24, 91],
  ['boise', 'Boise, Idaho', 'America/Boise', 2840, 5600, 950, 11, 95],
  ['boston', 'Boston, Massachusetts', 'America/New_York', 20, 5600, 750, 13, 87],
  ['buffalo', 'Buffalo, New York', 'America/New_York', 700, 6600, 550, 7, 84],
  ['charlotte', 'Charlotte, North Carolina', 'America/New_York', 750, 3200, 1650, 24, 91],
  ['chicago', 'Chicago, Illinois', 'America/Chicago', 660, 6300, 850, 2, 88],
  ['dallas', 'Dallas, Texas', 'America/Chicago', 560, 2300, 2750, 26, 98],
  ['denver', 'Denver, Colorado', 'America/Denver', 5400, 5950, 750, 5, 91],
  ['detroit', 'Detroit, Michigan', 'America/Detroit', 640, 6200, 750, 7, 87],
  ['fargo', 'Fargo, North Dakota', 'America/Chicago', 900, 9000, 550, -17, 87],
  ['honolulu', 'Honolulu, Hawaii', 'Pacific/Honolulu', 20, 0, 4600, 63, 89],
  ['houston', 'Houston, Texas', 'America/Chicago', 100, 1400, 3000, 34, 95],
  ['kansas-city', 'Kansas City, Missouri', 'America/Chicago', 1000, 5200, 1350, 7, 92],
  ['las-vegas', 'Las Vegas, Nevada', 'America/Los_Angeles', 2180, 2100, 3400, 33, 106],
  ['los-angeles', 'Los Angeles, California', 'America/Los_Angeles', 300, 1300, 700, 45, 84],
  ['miami', 'Miami, Florida', 'America/New_York', 10, 130, 4500, 52, 90],
  ['minneapolis', 'Minneapolis, Minnesota', 'America/Chicago', 840, 7600, 750, -9, 87],
  ['nashville', 'Nashville, Tennessee', 'America/Chicago', 600, 3600, 1700, 19, 92],
  ['new-orleans', 'New Orleans, Louisiana', 'America/Chicago', 10, 1300, 2900, 36, 92],
  ['new-york', 'New York, New York', 'America/New_York', 30, 4700, 1150, 18, 88],
  ['philadelphia', 'Philadelphia, Pennsylvania', 'America/New_York', 40, 4700, 1300, 17, 90],
  ['phoenix', 'Phoenix, Arizona', 'America/Phoenix', 1100, 950, 4600, 42, 108],
  ['pittsburgh', 'Pittsburgh, Pennsylvania', 'America/New_York', 1200, 5600, 750, 9, 86],
  ['portland', 'Portland, Oregon', 'America/Los_Angeles', 40, 4300, 450, 29, 87],
  ['saint-louis', 'Saint Louis, Missouri', 'America/Chicago', 530, 4500, 1600, 11, 93],
  ['salt-lake-city', 'Salt Lake City, Utah', 'America/Denver', 4230, 5500, 1200, 12, 95],
  ['san-francisco', 'San Francisco, California', 'America/Los_Angeles', 50, 2700, 150, 41, 78],
  ['seattle', 'Seattle, Washington', 'America/Los_Angeles', 400, 4700, 200, 29, 82],
  ['washington', 'Washington, D.C.', 'America/New_York', 60, 4000, 1550, 21, 92],
]

export const stations: readonly StationRow[] = ROWS.map(
  ([id, name, timeZone, elevationFt, hdd65, cdd65, heatingDesignF, coolingDesignF]) => ({
    ...{ id, name, timeZone, elevationFt, hdd65, cdd65, heatingDesignF, coolingDesignF },
    mark: 'P',
  }),
)
