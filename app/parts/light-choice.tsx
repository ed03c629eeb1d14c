import { LIGHTS, type Light } from '@/lib/core/household'
import { lightInWords } from '@/lib/core/words'
import { ChoiceRows } from './choice-rows'

interface LightChoiceProps {
  name?: string
  chosen?: string
  fault?: string
  /** Whether it is asked of the filter that came out, or of one that stays in. */
  of?: 'old' | 'fitted'
}

/** How much light passes the filter, held to a lamp; may be left open. */
export function LightChoice({ name = 'light', chosen, fault, of = 'old' }: LightChoiceProps) {
  return (
    <ChoiceRows
      name={name}
      legend={of === 'old' ? 'How did the old filter look against a lamp?' : 'How does it look against a lamp?'}
      hint="It teaches us how dusty your home really is, and the next day gets better. Leave it open if you didn’t look."
      choices={LIGHTS.map((light) => ({
        value: light,
        label: lightInWords(light),
        drawing: <LightDrawing light={light} />,
      }))}
      chosen={chosen}
      fault={fault}
    />
  )
}

// Pleats with the light between them: all clear, half grey with dust, filled.
function LightDrawing({ light }: { light: Light }) {
  const dusty = { clear: [], half: [1, 2, 4], dark: [0, 1, 2, 3, 4] }[light]
  return (
    <svg viewBox="0 0 48 48" aria-hidden="true" focusable="false">
      {dusty.map((pleat) => (
        <rect key={pleat} x={4 + pleat * 8} y="4" width="8" height="40" fill="currentColor" />
      ))}
      <path d="M4 4h40v40H4Z" fill="none" stroke="currentColor" strokeWidth="3" />
      {[12, 20, 28, 36].map((x) => (
        <path key={x} d={`M${x} 4v40`} stroke="currentColor" strokeWidth="1.6" />
      ))}
    </svg>
  )
}
