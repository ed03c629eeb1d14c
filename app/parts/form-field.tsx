'use client'

import type { ComponentProps } from 'react'
import { useAnswer } from './action-form'
import { ChoiceRows } from './choice-rows'
import { TextField } from './text-field'

/** A line of an `ActionForm`, with what was typed before and what is wrong with it. */
export function FormField({ id, defaultValue, ...rest }: ComponentProps<typeof TextField>) {
  const { typed, faults } = useAnswer().answer
  const fault = faults.find(({ path }) => path === id)?.say
  return <TextField {...rest} id={id} defaultValue={typed[id]?.[0] ?? defaultValue} fault={fault} />
}

/** A question of an `ActionForm` with a few answers, the chosen one kept. */
export function FormChoice({ name, chosen, ...rest }: ComponentProps<typeof ChoiceRows>) {
  const { typed, faults } = useAnswer().answer
  const fault = faults.find(({ path }) => path === name)?.say
  // A new answer makes the rows anew: a browser's own reset would otherwise bring back what was chosen at first.
  return <ChoiceRows {...rest} key={`${typed[name]}`} name={name} chosen={typed[name] ?? chosen} fault={fault} />
}
