import { listUnits, type Unit } from '@/app/units'
import type { Item } from '@/lib/core/plan-types'
import type { Viewer } from '@/lib/core/viewer'

/** A home as somebody walks to it: what of its plan is theirs to do. */
export interface RoundUnit {
  unit: Unit
  items: Item[]
  mayRecord: boolean
}

/** Every open home with what is to be done there; of a home where the viewer is the technician, the technician's part. */
export async function listRoundUnits(viewer: Viewer): Promise<RoundUnit[]> {
  const units = await listUnits(viewer)
  return units
    .filter(({ home }) => home.state === 'open')
    .map(({ home, plan }) => {
      const isTechnician = home.role === 'technician'
      return {
        unit: plan,
        items: isTechnician ? plan.items.filter(({ doer }) => doer === 'technician') : plan.items,
        mayRecord: !isTechnician,
      }
    })
}

/** Whether the resident tasks of a home are walked together with the other homes of its building. */
export function isShared({ tenure, building }: Unit): boolean {
  return tenure === 'let' && building !== null
}
