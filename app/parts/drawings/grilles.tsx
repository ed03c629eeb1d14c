import { Air, Cut, Plate, Word } from './plate'

/** Horizontal slats of a grille seen from the front. */
function Slats(props: { x: number; y: number; width: number; height: number; gap: number }) {
  const { x, y, width, height, gap } = props
  const lines: string[] = []
  for (let down = gap; down < height; down += gap) lines.push(`M${x},${y + down} h${width}`)
  return <path d={lines.join(' ')} strokeWidth="1.6" />
}

/** A wall cut through, with an opening from `top` to `bottom` that slats close. Room left, duct right. */
function CutWall({ top, bottom }: { top: number; bottom: number }) {
  const slats: string[] = []
  for (let y = top + 8; y < bottom - 2; y += 12) slats.push(`M236,${y} l12,7`)
  return (
    <g>
      <Cut x={236} y={26} width={12} height={top - 26} />
      <Cut x={236} y={bottom} width={12} height={186 - bottom} />
      <path d={slats.join(' ')} strokeWidth="2.4" />
    </g>
  )
}

export function ReturnGrille() {
  return (
    <Plate
      title="A return grille: it draws air in"
      desc="From the front: a large grille with many thin slats and no lever. From the side: a sheet of tissue is held before it and sticks flat to the slats. Arrows show air that goes from the room into the wall."
      height={234}
    >
      <rect x="10" y="26" width="132" height="160" rx="3" />
      <rect x="20" y="36" width="112" height="140" strokeWidth="1.6" />
      <Slats x={20} y={36} width={112} height={140} gap={9} />
      <Word at={[76, 208]} strong>
        Large
      </Word>
      <Word at={[76, 228]}>no lever</Word>
      <CutWall top={56} bottom={166} />
      <Word at={[190, 20]}>room</Word>
      <Word at={[284, 20]}>duct</Word>
      <path d="M176,44 L228,60" strokeWidth="4" />
      <circle cx="229" cy="61" r="4" fill="currentColor" />
      <path d="M230,62 C237,76 229,86 234,98 C229,110 237,120 233,150" strokeWidth="6" />
      <Air from={[164, 88]} to={[222, 92]} />
      <Air from={[164, 118]} to={[222, 118]} />
      <Air from={[164, 150]} to={[222, 144]} />
      <Air from={[256, 92]} to={[312, 88]} />
      <Air from={[256, 118]} to={[312, 118]} />
      <Air from={[256, 144]} to={[312, 150]} />
      <Word at={[240, 208]} strong>
        Tissue sticks
      </Word>
      <Word at={[240, 228]}>air goes in</Word>
    </Plate>
  )
}

export function SupplyRegister() {
  return (
    <Plate
      title="A supply register: it blows air out"
      desc="From the front: a small register with a lever at its side. From the side: a sheet of tissue is held before it and flies away from the slats. Arrows show air that comes out of the wall into the room."
      height={234}
    >
      <rect x="10" y="76" width="132" height="60" rx="3" />
      <path d="M24,86 v40 M36,86 v40 M48,86 v40 M60,86 v40 M72,86 v40 M84,86 v40 M96,86 v40 M108,86 v40" />
      <path d="M126,86 v40" strokeWidth="1.6" />
      <path d="M126,98 l12,-6" strokeWidth="4" />
      <circle cx="139" cy="91" r="6" fill="currentColor" />
      <path d="M130,58 L138,80" strokeWidth="1.6" />
      <Word at={[116, 52]}>lever</Word>
      <Word at={[76, 208]} strong>
        Small
      </Word>
      <Word at={[76, 228]}>most have a lever</Word>
      <CutWall top={76} bottom={146} />
      <Word at={[190, 20]}>room</Word>
      <Word at={[284, 20]}>duct</Word>
      <path d="M176,44 L226,68" strokeWidth="4" />
      <circle cx="227" cy="69" r="4" fill="currentColor" />
      <path d="M227,71 C216,80 204,74 194,84 C184,92 176,86 166,94" strokeWidth="5" />
      <Air from={[312, 98]} to={[256, 104]} />
      <Air from={[312, 122]} to={[256, 122]} />
      <Air from={[224, 108]} to={[168, 114]} />
      <Air from={[224, 126]} to={[168, 136]} />
      <Word at={[240, 208]} strong>
        Tissue flies off
      </Word>
      <Word at={[240, 228]}>air comes out</Word>
    </Plate>
  )
}
