import { Person, Plate, Word } from './plate'

export function StoolYes() {
  return (
    <Plate
      title="A low stool with someone near is fine"
      desc="One person stands on a low, wide stool and reaches a grille overhead. A second person stands close by."
      height={240}
    >
      <path d="M40,8 H300" strokeWidth="3" />
      <rect x="128" y="8" width="70" height="10" strokeWidth="2.5" />
      <path d="M102,184 H168 M110,184 L102,208 M160,184 L168,208 M60,208 H270" strokeWidth="3" />
      <Person at={[132, 182]} height={122} arm={[168, 22]} />
      <Person at={[222, 206]} height={130} arm={[184, 120]} />
      <path d="M20,100 l10,12 l22,-30" strokeWidth="6" />
      <Word at={[160, 232]} strong>
        Low stool, someone near
      </Word>
    </Plate>
  )
}

export function LadderNo() {
  return (
    <Plate
      title="No ladder, no chair: ask"
      desc="A person stands high on a ladder under a tall ceiling. A heavy cross lies over it. Ask the landlord or a technician."
      height={240}
    >
      <path d="M40,8 H300" strokeWidth="3" />
      <rect x="150" y="8" width="70" height="10" strokeWidth="2.5" />
      <path d="M130,208 L164,84 M208,208 L174,84 M164,84 H174 M60,208 H270" strokeWidth="3" />
      <path d="M136,186 H202 M142,164 H196 M148,142 H190 M154,120 H184" strokeWidth="2.5" />
      <Person at={[166, 120]} height={88} arm={[180, 22]} />
      <path d="M84,40 L256,200 M256,40 L84,200" strokeWidth="9" />
      <Word at={[160, 232]} strong>
        Not on a ladder. Ask.
      </Word>
    </Plate>
  )
}
