import { stations } from '@/content/stations'
import { tables } from '@/content/tables'
import { climateFollows, climateFollowsInWords } from '@/lib/core/climate-follows'
import type { DescribeTables } from '@/lib/forms/describe/answers'
import type { ClimateChoices } from './fields/place-fields'

/** What the questions are answered from. */
export const DESCRIBE_TABLES: DescribeTables = { stations, zones: tables.zones, commonSizes: tables.commonSizes }

let choices: ClimateChoices | undefined

/** Every place and zone with what follows from it, reckoned once: seasons move by a day between years at most. */
export function climateChoices(): ClimateChoices {
  choices ??= {
    stations: stations.map((row) => ({ id: row.id, name: row.name, follows: follows(row) })),
    zones: tables.zones.map((row) => ({ zone: row.zone, name: row.name, follows: follows(row) })),
  }
  return choices
}

function follows({
  hdd65,
  cdd65,
  heatingDesignF,
  coolingDesignF,
}: {
  hdd65: number
  cdd65: number
  heatingDesignF: number
  coolingDesignF: number
}): string {
  const climate = { kind: 'annual' as const, hdd65, cdd65, heatingDesignF, coolingDesignF }
  return climateFollowsInWords(climateFollows(climate, tables, '2026-01-01'))
}
