import { Plate, Word } from './plate'

/**
 * A lamp behind a pleated filter, in greys of its own: the picture is about brightness, and the page's colours
 * turn round in the dark. `through` is the share of light that passes, 0–1.
 */
function LampBehind({ through, felt }: { through: number; felt: number }) {
  const glow = grey(through)
  const lines = Array.from({ length: 17 }, (_, pleat) => 78 + pleat * 10)
  const rays = Array.from({ length: 12 }, (_, ray) => (ray * Math.PI) / 6)
  return (
    <g>
      <rect x="4" y="4" width="312" height="176" rx="4" fill="#161616" stroke="#161616" />
      <g stroke="#fff" strokeWidth="3">
        {rays.map((angle) => (
          <path
            key={angle}
            d={`M${fixed(160 + Math.cos(angle) * 112)},${fixed(92 + Math.sin(angle) * 75)} L${fixed(160 + Math.cos(angle) * 136)},${fixed(92 + Math.sin(angle) * 85)}`}
          />
        ))}
      </g>
      <rect x="70" y="24" width="180" height="136" fill={grey(through * 0.45 + 0.04)} stroke="none" />
      {[62, 50, 38, 26].map((radius, ring) => (
        <circle key={radius} cx="160" cy="92" r={radius} fill={glow} fillOpacity={0.25 + ring * 0.2} stroke="none" />
      ))}
      <g stroke="#000" strokeWidth="2.5">
        {lines.map((x) => (
          <path key={x} d={`M${x},26 V158`} strokeOpacity={0.55} />
        ))}
      </g>
      {felt > 0 && <rect x="70" y="24" width="180" height="136" fill="#4a4a48" fillOpacity={felt} stroke="none" />}
      <rect x="70" y="24" width="180" height="136" stroke="#9a9a9a" strokeWidth="8" />
    </g>
  )
}

function grey(level: number): string {
  const part = Math.round(Math.min(1, level) * 255)
    .toString(16)
    .padStart(2, '0')
  return `#${part}${part}${part}`
}

function fixed(value: number): number {
  return Math.round(value * 10) / 10
}

export function LightClear() {
  return (
    <Plate
      title="Clear: the lamp shines through"
      desc="A filter before a lamp. The lamp's glow is bright and its round shape is plain between the pleats."
      height={230}
    >
      <LampBehind through={1} felt={0} />
      <Word at={[160, 202]} strong>
        Clear
      </Word>
      <Word at={[160, 222]}>you see the lamp</Word>
    </Plate>
  )
}

export function LightHalf() {
  return (
    <Plate
      title="Half: a dull glow comes through"
      desc="A filter before a lamp. Only a dull, gray glow shows between the pleats."
      height={230}
    >
      <LampBehind through={0.5} felt={0.15} />
      <Word at={[160, 202]} strong>
        Half
      </Word>
      <Word at={[160, 222]}>a dull glow</Word>
    </Plate>
  )
}

export function LightDark() {
  return (
    <Plate
      title="Dark: hardly any light comes through"
      desc="A filter before a lamp. Gray felt covers the pleats and the lamp cannot be seen."
      height={230}
    >
      <LampBehind through={0.06} felt={0.7} />
      <Word at={[160, 202]} strong>
        Dark
      </Word>
      <Word at={[160, 222]}>gray felt, no lamp</Word>
    </Plate>
  )
}
