'use client'

import { useAnswer } from '@/app/parts/action-form'

/** All homes, or those of one building. */
export function BuildingChoice({ buildings, homes }: { buildings: string[]; homes: number }) {
  const { typed, faults } = useAnswer().answer
  const fault = faults.find(({ path }) => path === 'building')?.say
  return (
    <div className="field">
      <label className="label" htmlFor="building">
        Which homes?
      </label>
      {fault !== undefined && (
        <span className="fault" id="building-fault">
          {fault}
        </span>
      )}
      <select
        key={typed.building?.[0]}
        id="building"
        name="building"
        defaultValue={typed.building?.[0] ?? ''}
        aria-describedby={fault === undefined ? undefined : 'building-fault'}
      >
        <option value="">All {homes} that I own</option>
        {buildings.map((name) => (
          <option key={name} value={name}>
            Those in {name}
          </option>
        ))}
      </select>
    </div>
  )
}
