import type { UnitPlace } from '@/lib/core/unit-merge'
import type { DescribeTables } from './describe/answers'
import { isTimeZone } from './household-schema'

/** The place of new units as a form names it: `station chicago`, or `zone 5` with a time zone; null while it is not told. */
export function unitPlace(
  { place, timeZone }: { place: string; timeZone: string },
  { stations, zones }: Pick<DescribeTables, 'stations' | 'zones'>,
): UnitPlace | null {
  const [kind, id] = place.split(' ')
  const station = kind === 'station' ? stations.find((one) => one.id === id) : undefined
  const zone = kind === 'zone' ? zones.find((one) => String(one.zone) === id) : undefined
  const climate = station ?? zone
  const zoneName = station?.timeZone ?? timeZone.trim()
  if (!climate || !isTimeZone(zoneName)) return null
  const { hdd65, cdd65, heatingDesignF, coolingDesignF } = climate
  return {
    timeZone: zoneName,
    units: 'us',
    climate: { kind: 'annual', hdd65, cdd65, heatingDesignF, coolingDesignF },
    ...(station && { elevationFt: station.elevationFt }),
  }
}
