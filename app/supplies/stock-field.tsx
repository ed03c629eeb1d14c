'use client'

import { useAnswer } from '@/app/parts/action-form'

/** A number in a table's cell, with what was typed before and what is wrong with it. */
export function StockField({ name, label, value }: { name: string; label: string; value: number }) {
  const { typed, faults } = useAnswer().answer
  const fault = faults.find(({ path }) => path === name)?.say
  const id = name.replaceAll(' ', '-')
  return (
    <>
      {fault !== undefined && (
        <span className="fault" id={`${id}-fault`}>
          {fault}
        </span>
      )}
      <input
        // Made anew when what is kept changes: the browser would otherwise bring back what stood there at first.
        key={`${typed[name]?.[0]} ${value}`}
        id={name}
        name={name}
        aria-label={label}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        aria-invalid={fault === undefined ? undefined : true}
        inputMode="numeric"
        className="short"
        defaultValue={typed[name]?.[0] ?? value}
      />
    </>
  )
}
