import { Air, Plate, Pleats, Word } from './plate'

export function DuctedHome() {
  return (
    <Plate
      title="A home with ducts"
      desc="A house cut open. One unit stands below. Ducts carry air from it to grilles in several rooms, and one larger grille draws air back to it."
      height={236}
    >
      <path d="M6,86 L160,10 L314,86 M24,78 V206 M296,78 V206 M24,206 H296 M24,140 H296 M160,78 V140" />
      <rect x="128" y="148" width="56" height="54" rx="2" strokeWidth="3" />
      <path d="M184,164 H250 V140 M184,174 H262 V140" />
      <path d="M128,170 H66 V140 M128,194 H46 V140" />
      <rect x="42" y="134" width="30" height="8" fill="currentColor" />
      <rect x="246" y="134" width="20" height="8" fill="currentColor" />
      <Air from={[57, 94]} to={[57, 128]} />
      <Air from={[256, 128]} to={[256, 94]} />
      <Air from={[118, 182]} to={[80, 182]} />
      <Word at={[100, 108]}>air in</Word>
      <Word at={[214, 108]}>air out</Word>
      <Word at={[160, 230]}>One unit, grilles in the rooms</Word>
    </Plate>
  )
}

export function DuctlessHead() {
  return (
    <Plate
      title="A ductless head with its front flap up"
      desc="A long box high on a wall. Its front flap is lifted. Behind it two thin mesh screens slide out. Air goes in at the top and comes out below."
      height={228}
    >
      <rect x="24" y="70" width="272" height="82" rx="8" strokeWidth="3" />
      <path d="M24,82 L10,40 H310 L296,82" />
      <path d="M44,138 H276" strokeWidth="5" />
      {[44, 166].map((x) => (
        <g key={x}>
          <rect x={x} y="84" width="110" height="42" strokeWidth="2.5" />
          <path
            d={`M${x + 18},84 v42 M${x + 36},84 v42 M${x + 54},84 v42 M${x + 72},84 v42 M${x + 90},84 v42 M${x},98 h110 M${x},112 h110`}
            strokeWidth="1"
          />
        </g>
      ))}
      <Air from={[90, 6]} to={[90, 36]} />
      <Air from={[230, 6]} to={[230, 36]} />
      <Air from={[110, 158]} to={[86, 186]} />
      <Air from={[210, 158]} to={[186, 186]} />
      <Word at={[160, 62]}>flap up</Word>
      <Word at={[160, 216]} strong>
        Two mesh screens to wash
      </Word>
    </Plate>
  )
}

export function Ventilator() {
  return (
    <Plate
      title="A fresh-air ventilator"
      desc="A box with four round ducts: two to the outdoors and two to the rooms. Inside, an air screen stands on each side of the core."
      height={228}
    >
      <rect x="84" y="36" width="152" height="128" rx="4" strokeWidth="3" />
      <path d="M84,52 H20 M84,82 H20 M84,118 H20 M84,148 H20 M236,52 H300 M236,82 H300 M236,118 H300 M236,148 H300" />
      <path d="M160,52 L208,100 L160,148 L112,100 Z" />
      <Pleats x={120} y={48} width={10} height={44} />
      <Pleats x={190} y={48} width={10} height={44} />
      <Air from={[22, 67]} to={[76, 67]} />
      <Air from={[76, 133]} to={[22, 133]} />
      <Air from={[298, 67]} to={[244, 67]} />
      <Air from={[244, 133]} to={[298, 133]} />
      <Word at={[48, 192]}>outdoors</Word>
      <Word at={[278, 192]}>rooms</Word>
      <Word at={[160, 106]}>core</Word>
      <Word at={[160, 24]} strong>
        screens
      </Word>
      <path d="M140,28 L127,46 M180,28 L194,46" strokeWidth="1.4" />
      <Word at={[160, 220]}>Four ducts</Word>
    </Plate>
  )
}

export function NoFilter() {
  return (
    <Plate
      title="Radiators and baseboards have no filter"
      desc="A radiator with upright ribs, and a long low baseboard heater along the foot of a wall. No air is blown through a duct, so neither has a filter."
      height={228}
    >
      {[0, 1, 2, 3, 4, 5].map((rib) => (
        <rect key={rib} x={24 + rib * 20} y="30" width="15" height="110" rx="7" />
      ))}
      <path d="M24,128 H10 V150 M28,140 v10 M136,140 v10" />
      <rect x="166" y="110" width="148" height="40" rx="2" />
      <path d="M170,120 H310 M170,142 H310" />
      {[0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11].map((fin) => (
        <path key={fin} d={`M${178 + fin * 11},124 v14`} strokeWidth="1.2" />
      ))}
      <path d="M4,150 H316" strokeWidth="1.2" />
      <Word at={[84, 176]}>radiator</Word>
      <Word at={[240, 176]}>baseboard</Word>
      <Word at={[160, 214]} strong>
        No filter here
      </Word>
    </Plate>
  )
}

export function WindowUnit() {
  return (
    <Plate
      title="A window unit"
      desc="A box that sits in an open window with the sash closed down on it. It has a small screen of its own behind the front."
      height={228}
    >
      <rect x="60" y="8" width="200" height="180" strokeWidth="3" />
      <path d="M160,8 V104 M60,56 H260 M60,104 H260" />
      <rect x="84" y="104" width="152" height="76" rx="3" strokeWidth="3" />
      <path d="M96,118 h84 M96,130 h84 M96,142 h84 M96,154 h84 M96,166 h84" strokeWidth="1.4" />
      <circle cx="208" cy="126" r="9" />
      <circle cx="208" cy="154" r="9" />
      <path d="M44,188 H276" strokeWidth="4" />
      <Word at={[160, 216]}>Its own small screen, own booklet</Word>
    </Plate>
  )
}
