'use client'

import { useActionState } from 'react'
import { ChoiceRows } from '@/app/parts/choice-rows'
import { ErrorSummary } from '@/app/parts/error-summary'
import { NOT_SENT } from '@/lib/core/answer'
import { placeName, sizeInWords } from '@/lib/core/filter-words'
import type { Filter, FilterPlace, System } from '@/lib/core/household'
import { saveCard } from './actions'

interface SaveFormProps {
  household: string
  name: string
  filters: Filter[]
  systems: System[]
  place: FilterPlace
  /** The card's address, sent along: the server makes the card anew from it. */
  sent: Record<string, string>
  /** A new filter cannot be kept without its size. */
  hasSize: boolean
}

/** Says which filter of the home the card is about, or that it is another one. */
export function SaveForm({ household, name, filters, systems, place, sent, hasSize }: SaveFormProps) {
  const [{ faults, typed }, save, isSending] = useActionState(saveCard, NOT_SENT)
  const same = filters.filter((filter) => filter.place === place)
  const chosen = typed.which?.[0] ?? (same.length === 1 && same[0] ? `filter ${same[0].id}` : undefined)
  const choices = [
    ...filters.map((filter) => ({
      value: `filter ${filter.id}`,
      label: `The one kept as: ${placeName(filter.place)}`,
      hint: filter.medium === 'screen' ? 'a screen' : sizeInWords(filter.nominal),
    })),
    ...systems.map((system) => ({ value: `system ${system.id}`, label: `Another filter, of: ${system.name}` })),
  ]
  return (
    <form action={save}>
      <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path || undefined, say }))} />
      <input type="hidden" name="household" value={household} />
      {Object.entries(sent).map(([field, value]) => (
        <input key={field} type="hidden" name={field} value={value} />
      ))}
      <ChoiceRows
        name="which"
        legend={`Which filter of ${name} is it?`}
        hint={
          hasSize
            ? undefined
            : 'The card has no size yet: a filter that is kept keeps its own, and another one needs it.'
        }
        choices={choices}
        chosen={chosen}
        fault={faults.find(({ path }) => path === 'which')?.say}
        required
      />
      <button type="submit" className="main" disabled={isSending}>
        {isSending ? 'Saving…' : 'Save it'}
      </button>
    </form>
  )
}
