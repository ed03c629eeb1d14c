import { Plate, PrintedArrow, Word } from './plate'

export function PrintedSize() {
  return (
    <Plate
      title="The size is printed on the frame"
      desc="A filter seen at a slant. On the thin edge of its frame stand 16 × 25 × 1 and an arrow."
      height={222}
    >
      <path d="M40,130 L110,20 H306 L280,130 Z" />
      <path d="M40,130 V172 H280 V130 M280,172 L306,62 V20" strokeWidth="3" />
      <path d="M40,130 H280" strokeWidth="3" />
      {[0, 1, 2, 3, 4, 5, 6, 7, 8].map((pleat) => (
        <path key={pleat} d={`M${64 + pleat * 24},124 L${126 + pleat * 20},26`} strokeWidth="1.2" />
      ))}
      <Word at={[118, 157]} strong>
        16 × 25 × 1
      </Word>
      <PrintedArrow from={[212, 151]} to={[266, 151]} />
      <Word at={[160, 208]}>Read the edge of the frame</Word>
    </Plate>
  )
}

export function ThreeSides() {
  return (
    <Plate
      title="Measure three sides"
      desc="A filter with three measuring lines: width along the short side, height along the long side, and depth across the thin edge."
      height={240}
    >
      <rect x="70" y="14" width="130" height="176" strokeWidth="3" />
      <path d="M70,190 L88,210 H218 V34 L200,14 M200,190 L218,210" strokeWidth="3" />
      {[0, 1, 2, 3, 4, 5, 6].map((pleat) => (
        <path key={pleat} d={`M${86 + pleat * 16},22 V182`} strokeWidth="1.1" />
      ))}
      <path d="M52,14 V190 M46,14 h12 M46,190 h12 M88,222 H218 M88,216 v12 M218,216 v12" />
      <path d="M211,3 L230,23 M206,8 L216,-1 M225,28 L235,18" />
      <Word at={[26, 96]}>long</Word>
      <Word at={[26, 116]}>side</Word>
      <Word at={[266, 228]}>short side</Word>
      <Word at={[272, 26]}>depth</Word>
      <Word at={[270, 110]}>frame,</Word>
      <Word at={[270, 130]}>edge to</Word>
      <Word at={[270, 150]}>edge</Word>
    </Plate>
  )
}
