import { Air, Cut, Person, Plate, Pleats, PrintedArrow, Word } from './plate'

export function ArrowCeiling() {
  return (
    <Plate
      title="In a ceiling grille the arrow points up"
      desc="A ceiling cut through. The room with a person is below, the duct above. The filter lies flat behind the grille. Its printed arrow points up, away from the room and into the ceiling, as the air goes."
      height={236}
    >
      <Word at={[48, 30]}>duct</Word>
      <Cut x={4} y={92} width={66} height={16} />
      <Cut x={250} y={92} width={66} height={16} />
      <path d="M70,92 V10 M250,92 V10" />
      <Pleats x={76} y={66} width={168} height={30} />
      <path d="M74,108 H246" strokeWidth="4" strokeDasharray="10 6" />
      <PrintedArrow from={[160, 100]} to={[160, 40]} />
      <Air from={[110, 176]} to={[104, 118]} />
      <Air from={[210, 176]} to={[216, 118]} />
      <Air from={[104, 58]} to={[104, 16]} />
      <Air from={[216, 58]} to={[216, 16]} />
      <Person at={[40, 232]} height={96} />
      <Word at={[160, 200]} strong>
        Arrow up,
      </Word>
      <Word at={[160, 222]}>into the ceiling</Word>
      <Word at={[286, 140]}>room</Word>
    </Plate>
  )
}

export function ArrowWall() {
  return (
    <Plate
      title="In a wall grille the arrow points into the wall"
      desc="A wall cut through. The room with a person is on the left, the duct on the right. The filter stands behind the grille. Its printed arrow points away from the room and into the wall, as the air goes."
      height={236}
    >
      <Cut x={168} y={4} width={16} height={40} />
      <Cut x={168} y={168} width={16} height={40} />
      <path d="M184,44 H316 M184,168 H316" />
      <path d="M168,46 V166" strokeWidth="4" strokeDasharray="10 6" />
      <Pleats x={180} y={50} width={30} height={112} />
      <PrintedArrow from={[176, 106]} to={[236, 106]} />
      <Air from={[94, 70]} to={[158, 74]} />
      <Air from={[94, 142]} to={[158, 138]} />
      <Air from={[222, 72]} to={[300, 72]} />
      <Air from={[222, 142]} to={[300, 142]} />
      <Person at={[40, 208]} height={150} />
      <path d="M4,208 H184" />
      <Word at={[110, 26]}>room</Word>
      <Word at={[274, 32]}>duct</Word>
      <Word at={[184, 230]} strong>
        Arrow into the wall
      </Word>
    </Plate>
  )
}

export function ArrowFloor() {
  return (
    <Plate
      title="In a floor grille the arrow points down"
      desc="A floor cut through. The room with a person is above, the duct below. The filter lies flat under the grille. Its printed arrow points down, away from the room and into the floor, as the air goes."
      height={236}
    >
      <Person at={[36, 118]} height={104} />
      <Cut x={4} y={118} width={66} height={16} />
      <Cut x={250} y={118} width={66} height={16} />
      <path d="M70,134 V214 M250,134 V214" />
      <path d="M74,118 H246" strokeWidth="4" strokeDasharray="10 6" />
      <Pleats x={76} y={130} width={168} height={30} />
      <PrintedArrow from={[160, 126]} to={[160, 186]} />
      <Air from={[104, 66]} to={[104, 110]} />
      <Air from={[216, 66]} to={[216, 110]} />
      <Air from={[104, 168]} to={[104, 210]} />
      <Air from={[216, 168]} to={[216, 210]} />
      <Word at={[160, 30]} strong>
        Arrow down,
      </Word>
      <Word at={[160, 52]}>into the floor</Word>
      <Word at={[284, 90]}>room</Word>
      <Word at={[284, 180]}>duct</Word>
    </Plate>
  )
}
