import QRCode from 'qrcode'

// The standard's white rim, in squares.
const RIM = 4

/** An address as a code to scan: one path of squares, black on white in the dark too, so that every reader reads it. */
export function QrCode({ text }: { text: string }) {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' })
  const side = modules.size + 2 * RIM
  const squares = Array.from(modules.data, (dark, index) => {
    if (!dark) return ''
    return `M${RIM + (index % modules.size)},${RIM + Math.floor(index / modules.size)}h1v1h-1z`
  })
  return (
    <svg className="qr" viewBox={`0 0 ${side} ${side}`} width="200" height="200" role="img" shapeRendering="crispEdges">
      <title>Code that leads to this filter’s page</title>
      <rect width={side} height={side} fill="#fff" />
      <path d={squares.join('')} fill="#000" />
    </svg>
  )
}
