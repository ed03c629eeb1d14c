import type { Mark } from '@/lib/core/tables'
import { markInWords } from '@/lib/core/words'

/** Where a figure comes from, in words, beside the figure: `common practice in the trade, no source`. */
export function MarkNote({ mark, source }: { mark: Mark; source?: string | undefined }) {
  return <small className="mark">{source ? `${markInWords(mark)}: ${source}` : markInWords(mark)}</small>
}
