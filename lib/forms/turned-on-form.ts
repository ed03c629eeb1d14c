import { z } from 'zod'

/** How the equipment started again after the finder's step. */
export interface TurnedOn {
  /** Anything that is not said to be as always is not. */
  answer: 'as-always' | 'not-as-always'
  home: string
  began: number
  /** The card's own address. */
  back: string
}

const schema = z.object({
  home: z
    .string()
    .regex(/^[0-9a-z]{16}$/)
    .catch(''),
  t: z
    .string()
    .regex(/^\d{1,9}$/)
    .catch('0'),
  back: z
    .string()
    .max(2000)
    .regex(/^\/find\?[\w.=&%+-]*$/)
    .catch('/find?'),
})

/** Reads the form; what cannot be read is left out, and an unclear answer is the cautious one. */
export function parseTurnedOn(form: FormData): TurnedOn {
  const { home, t, back } = schema.parse(Object.fromEntries(form))
  const answer = form.get('answer') === 'as-always' ? 'as-always' : 'not-as-always'
  return { answer, home, began: Number(t), back: answer === 'as-always' ? `${back}&on=1` : back }
}
