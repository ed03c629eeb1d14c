import { type SheetUnit, unitKey } from '@/lib/core/unit-sheet'
import { may } from '@/lib/core/viewer'
import type { Home } from '@/lib/data/households'

/** What was found, by its sentence: the lines where it is so. */
export type Findings = Map<string, number[]>

const plainly = (building: string) => unitKey(building, '')

/** The units that stand, by building and name, and the rows of a file that were found among them. */
export class KnownUnits {
  private readonly units = new Map<string, Home[]>()
  private readonly buildings = new Map<string, Home[]>()
  private readonly lines = new Map<string, number>()

  constructor(homes: readonly Home[]) {
    for (const home of homes) {
      if (home.building === null) continue
      push(this.units, unitKey(home.building, home.name), home)
      push(this.buildings, plainly(home.building), home)
    }
  }

  /** The home that a row is about, null for a new one, or why the row cannot be kept. */
  find({ building, unit }: Pick<SheetUnit, 'building' | 'unit'>, line: number): { home: Home | null } | string {
    const key = unitKey(building, unit)
    const alike = this.units.get(key) ?? []
    const same = alike.filter((home) => home.building === building && home.name === unit)
    const found = alike.length > 1 ? same : alike
    if (alike.length > 1 && found.length !== 1)
      return `You see several homes called “${unit}” in “${building}”. Give them different names first.`
    const home = found[0] ?? null
    const before = this.lines.get(home?.id ?? key)
    if (before !== undefined)
      return `“${unit}” in “${building}” stands in row ${before} already. Keep one of the two rows (${before} and ${line}).`
    this.lines.set(home?.id ?? key, line)
    if (home?.state === 'closed') return 'This home is closed. Open it again first, or take the row out.'
    if (home && !may(home.role, 'manage'))
      return 'Your part in this home does not include changing it. Ask its owner, or take the row out.'
    if (!home && this.isOthers(building))
      return `“${building}” belongs to somebody else: only its owner adds units. Ask them, or take the row out.`
    return { home }
  }

  /** A home that stands in each building, from which new units take their climate and time zone. */
  neighbours(buildings: readonly string[]): string[] {
    return [...new Set(buildings.map(plainly))].flatMap((building) => {
      const homes = this.buildings.get(building) ?? []
      return homes.find(({ state, role }) => state === 'open' && role === 'owner')?.id ?? []
    })
  }

  /** A unit that a manager added would be hidden from the building's owner. */
  private isOthers(building: string): boolean {
    const homes = this.buildings.get(plainly(building)) ?? []
    return homes.length > 0 && !homes.some(({ role }) => role === 'owner')
  }
}

function push<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key)
  if (list) list.push(value)
  else lists.set(key, [value])
}
