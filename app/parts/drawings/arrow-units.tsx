import { Air, Plate, Pleats, PrintedArrow, Word } from './plate'

/** The fan inside a unit: air is drawn to it. */
function Blower({ x, y, r }: { x: number; y: number; r: number }) {
  return (
    <g>
      <circle cx={x} cy={y} r={r} />
      <circle cx={x} cy={y} r={r * 0.2} fill="currentColor" />
      <path
        d={[0, 1, 2, 3, 4, 5]
          .map((blade) => {
            const angle = (blade * Math.PI) / 3
            const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
            const tip = [Math.cos(angle + 0.5), Math.sin(angle + 0.5)] as const
            const round = (value: number) => Math.round(value * 10) / 10
            return `M${round(x + cos * r * 0.35)},${round(y + sin * r * 0.35)} L${round(x + tip[0] * r * 0.9)},${round(y + tip[1] * r * 0.9)}`
          })
          .join(' ')}
        strokeWidth="2"
      />
    </g>
  )
}

export function ArrowSlot() {
  return (
    <Plate
      title="In a slot beside the furnace the arrow points to the furnace"
      desc="A return duct comes down and turns into the side of a furnace. Between duct and furnace is a narrow slot with a filter in it, partly pulled out. Its printed arrow points from the duct to the furnace and its fan."
      height={240}
    >
      <path d="M20,6 V190 H108 M78,6 V92 H108" />
      <Pleats x={114} y={76} width={30} height={112} />
      <path d="M108,66 V92 M108,190 V196 M150,66 V196" />
      <PrintedArrow from={[104, 134]} to={[172, 134]} />
      <rect x="150" y="20" width="150" height="180" rx="3" />
      <Blower x={232} y={142} r={38} />
      <Air from={[48, 30]} to={[48, 96]} />
      <Air from={[44, 150]} to={[100, 158]} />
      <Air from={[225, 96]} to={[225, 28]} />
      <Word at={[52, 220]}>return duct</Word>
      <Word at={[226, 220]}>furnace</Word>
      <Word at={[130, 56]} strong>
        slot
      </Word>
    </Plate>
  )
}

export function ArrowCabinet() {
  return (
    <Plate
      title="Inside the cabinet the arrow points to the fan"
      desc="An upright air handler cut open from the side. Air comes in at the bottom, passes the filter, and then the fan. The filter's printed arrow points up to the fan."
      height={240}
    >
      <rect x="96" y="10" width="128" height="186" rx="3" />
      <path d="M96,126 H224" strokeWidth="1.4" strokeDasharray="3 5" />
      <Blower x={160} y={68} r={36} />
      <Pleats x={102} y={146} width={116} height={28} />
      <PrintedArrow from={[160, 182]} to={[160, 116]} />
      <Air from={[124, 232]} to={[124, 184]} />
      <Air from={[196, 232]} to={[196, 184]} />
      <Air from={[124, 138]} to={[124, 112]} />
      <Air from={[196, 138]} to={[196, 112]} />
      <Word at={[44, 74]}>fan</Word>
      <path d="M62,68 H118" strokeWidth="1.4" />
      <Word at={[44, 166]}>filter</Word>
      <path d="M70,160 H98" strokeWidth="1.4" />
      <Word at={[276, 150]} strong>
        Arrow
      </Word>
      <Word at={[276, 170]} strong>
        to fan
      </Word>
    </Plate>
  )
}

export function ArrowMedia() {
  return (
    <Plate
      title="In a media cabinet the arrow points to the unit"
      desc="A wide box sits between the return duct and the air handler. It has a small door of its own. A thick filter, four to five inches deep, slides in. Its printed arrow points from the duct to the unit."
      height={240}
    >
      <path d="M6,62 H86 M6,166 H86" />
      <rect x="86" y="44" width="76" height="140" rx="2" strokeWidth="3" />
      <Pleats x={94} y={54} width={60} height={120} />
      <PrintedArrow from={[92, 114]} to={[176, 114]} />
      <rect x="162" y="20" width="144" height="180" rx="3" />
      <Blower x={242} y={114} r={42} />
      <Air from={[12, 88]} to={[78, 88]} />
      <Air from={[12, 140]} to={[78, 140]} />
      <Word at={[4, 220]} anchor="start">
        return duct
      </Word>
      <Word at={[236, 220]}>unit</Word>
      <Word at={[4, 30]} anchor="start" strong>
        thick filter
      </Word>
    </Plate>
  )
}
