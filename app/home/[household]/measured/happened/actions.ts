'use server'

import { redirect } from 'next/navigation'
import { refused } from '@/app/refusal'
import { tables } from '@/content/tables'
import { action, type Ran } from '@/lib/access/action'
import type { Household } from '@/lib/core/household'
import { usualMeanF } from '@/lib/core/modelled-hours'
import { temperatureInWords } from '@/lib/core/unit-words'
import type { Act } from '@/lib/core/viewer'
import { getHousehold } from '@/lib/data/households'
import { saveHousehold } from '@/lib/data/save-household'
import { type Typed, typedOf } from '@/lib/forms/describe/answers'
import { type Happened, readHappened } from '@/lib/forms/happened-form'
import { withHappened, withoutHappened } from './happened'

const TRIES = 3

/** Keeps something that happened; the page then says which dates it moved. */
export const keepHappened = action<Typed>({
  name: 'measured-keep-happened',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: typedOf(form) }),
  run: async ({ input, act, viewer, householdId }) => {
    const { household: home } = await getHousehold(viewer, householdId)
    const read = readHappened(input, home.units)
    if (!read.ok) return read
    const fault = unusualFault(home, read.value)
    if (fault) return { ok: false, faults: [{ path: 'high', say: fault }] }
    return change(act, householdId, (now) => withHappened(now, read.value))
  },
})

/** Takes something that happened out again, by its place in the list and what it is. */
export const takeHappenedOut = action<{ list: string; is: string }>({
  name: 'measured-take-happened-out',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: { list: String(form.get('list')), is: String(form.get('is')) } }),
  run: ({ input, act, householdId }) =>
    change(act, householdId, (now) => {
      const without = withoutHappened(now, input.list, input.is)
      return without && { home: without, did: 'out' }
    }),
})

async function change(
  act: Act,
  householdId: string,
  deed: (home: Household) => { home: Household; did: string } | null,
): Promise<Ran<null>> {
  for (let attempt = 1; ; attempt++) {
    const { household, revision } = await getHousehold(act.viewer, householdId)
    const next = deed(household)
    if (!next) return refused('not-found')
    const saved = await saveHousehold(act, householdId, next.home, revision)
    if (saved.ok) redirect(`/home/${householdId}/measured/happened?did=${encodeURIComponent(next.did)}`)
    // Somebody changed the home in these milliseconds: it is added to what stands now.
    if (saved.because !== 'changed' || attempt === TRIES) return refused(saved.because)
  }
}

/** A heat wave that is no hotter than usual adds nothing, and is a mistyped figure. */
function unusualFault(home: Household, happened: Happened): string | null {
  if (happened.list !== 'weather') return null
  const { spell } = happened
  const usual = usualMeanF(home.climate, spell, tables)
  const mean = (spell.highF + spell.lowF) / 2
  if (spell.kind === 'hot' ? mean > usual : mean < usual) return null
  const words = (fahrenheit: number) => temperatureInWords(fahrenheit, home.units)
  return `Day and night together that is ${words(mean)}, and these days usually have ${words(usual)}: no ${spell.kind === 'hot' ? 'hotter' : 'colder'} than usual. Look at the temperatures and the days.`
}
