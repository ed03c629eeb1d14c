import { ErrorSummary } from '@/app/parts/error-summary'
import { TextField } from '@/app/parts/text-field'
import type { Fault } from '@/lib/core/fault'
import type { TypedSize } from '@/lib/forms/size-form'

interface SizeFormProps {
  typed: TypedSize
  faults: Fault[]
  /** The size stands on the card already: the form is folded away. */
  isKnown: boolean
  /** What the address holds besides the size. */
  hidden: { a: string; t: string; home: string }
}

/** Asks for the three sides, as printed or as measured. What was typed stays in the address, so that nothing is lost. */
export function SizeForm({ typed, faults, isKnown, hidden }: SizeFormProps) {
  const fault = (path: string) => faults.find((found) => found.path === path)?.say
  const form = (
    <form method="get" action="/find" className="size-form no-print" key={JSON.stringify(typed)}>
      {!isKnown && <h2>What size is it?</h2>}
      <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path, say }))} />
      {Object.entries(hidden).map(
        ([name, value]) => value && <input key={name} type="hidden" name={name} value={value} />,
      )}
      <div className="inline">
        <div className="field">
          <label className="label" htmlFor="from">
            How do you know it?
          </label>
          <select id="from" name="from" defaultValue={typed.from}>
            <option value="printed">I read it on the frame</option>
            <option value="measured">I measured the frame</option>
          </select>
        </div>
        <div className="field">
          <label className="label" htmlFor="u">
            Counted in
          </label>
          <select id="u" name="u" defaultValue={typed.u}>
            <option value="in">inches</option>
            <option value="cm">centimeters</option>
            <option value="mm">millimeters</option>
          </select>
        </div>
      </div>
      <div className="inline sides">
        <TextField
          id="w"
          label="Width"
          inputMode="text"
          className="short"
          autoComplete="off"
          defaultValue={typed.w}
          fault={fault('w')}
        />
        <TextField
          id="h"
          label="Height"
          className="short"
          autoComplete="off"
          defaultValue={typed.h}
          fault={fault('h')}
        />
        <TextField
          id="d"
          label="Depth"
          className="short"
          autoComplete="off"
          defaultValue={typed.d}
          fault={fault('d')}
        />
      </div>
      <p className="hint">Like 16, 25 and 1. Fractions may be written 15 1/2 or 15.5. The depth is the thin side.</p>
      <button type="submit">Put it on the card</button>
    </form>
  )
  if (!isKnown) return form
  return (
    <details className="no-print">
      <summary>Is the size wrong?</summary>
      {form}
    </details>
  )
}
