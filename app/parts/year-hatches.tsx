/** The strokes and dots by which heat and cold are told apart without colour: `url(#<id>-heat)`, `url(#<id>-cool)`. */
export function YearHatches({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={`${id}-heat`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="year-heat-line" x1="0" y1="0" x2="0" y2="6" strokeWidth="2.4" />
      </pattern>
      <pattern id={`${id}-cool`} width="6" height="6" patternUnits="userSpaceOnUse">
        <circle className="year-cool-dot" cx="3" cy="3" r="1.35" />
      </pattern>
    </defs>
  )
}
